#include "widgets/name_edit.h"

#include <QHelpEvent>
#include <QStyle>
#include <QStyleOptionFrame>
#include <QStylePainter>
#include <QToolTip>

namespace widgets {
namespace {

constexpr int kTextMargin = 2;  // what QLineEdit keeps beside its text

}  // namespace

NameEdit::NameEdit(QWidget* parent) : QLineEdit(parent), EntryOf(this, this) {}

QSize NameEdit::sizeHint() const {
    return {fontMetrics().horizontalAdvance(QStringLiteral("00000.00000")), QLineEdit::sizeHint().height()};
}

QSize NameEdit::minimumSizeHint() const {
    return sizeHint();
}

QRect NameEdit::textArea() const {
    QStyleOptionFrame option;
    initStyleOption(&option);
    return style()
        ->subElementRect(QStyle::SE_LineEditContents, &option, this)
        .adjusted(kTextMargin, 0, -kTextMargin, 0);
}

bool NameEdit::isCut() const {
    return fontMetrics().horizontalAdvance(text()) > textArea().width();
}

bool NameEdit::event(QEvent* event) {
    if (event->type() == QEvent::ToolTip && isCut()) {
        QToolTip::showText(static_cast<QHelpEvent*>(event)->globalPos(), text(), this);
        return true;
    }
    return QLineEdit::event(event);
}

void NameEdit::paintEvent(QPaintEvent* event) {
    if (hasFocus() || !isCut()) {
        QLineEdit::paintEvent(event);
    } else {
        QStylePainter painter(this);
        QStyleOptionFrame option;
        initStyleOption(&option);
        painter.drawPrimitive(QStyle::PE_PanelLineEdit, option);
        painter.setPen(palette().color(QPalette::Text));
        painter.drawText(textArea(), Qt::AlignVCenter | Qt::AlignLeading,
                         fontMetrics().elidedText(text(), Qt::ElideRight, textArea().width()));
    }
    if (!entry().fault().isEmpty()) {
        paintFaultMark(*this);
    }
}

TextReading<QString> NameEdit::parse(const QString& text) const {
    const QString name = text.trimmed();
    return {name, name.isEmpty() ? tr("A name is needed here.") : QString()};
}

}  // namespace widgets
