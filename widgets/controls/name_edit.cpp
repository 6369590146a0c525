#include "widgets/controls/name_edit.h"

namespace widgets {

NameEdit::NameEdit(QWidget* parent) : ElidedEdit(parent), EntryOf(this, this) {}

void NameEdit::paintEvent(QPaintEvent* event) {
    ElidedEdit::paintEvent(event);
    if (!entry().fault().isEmpty()) {
        paintFaultMark(*this);
    }
}

TextReading<QString> NameEdit::parse(const QString& text) const {
    const QString name = text.trimmed();
    return {name, name.isEmpty() ? tr("A name is needed here.") : QString()};
}

}  // namespace widgets
