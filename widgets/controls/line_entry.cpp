#include "widgets/controls/line_entry.h"

#include "engine/pond/local_time.h"
#include "widgets/document/to_qstring.h"

namespace widgets {

LineEntry::LineEntry(Kind kind, QWidget* parent) : ElidedEdit(parent), EntryOf(this, this), m_kind(kind) {}

void LineEntry::paintEvent(QPaintEvent* event) {
    ElidedEdit::paintEvent(event);
    if (!entry().fault().isEmpty()) {
        paintFaultMark(*this);
    }
}

TextReading<std::string> LineEntry::parse(const QString& text) const {
    const std::string plain = text.trimmed().toStdString();
    switch (m_kind) {
        case Kind::Text:
            return {plain, {}};
        case Kind::Date:
            if (const auto date = engine::parseDate(plain)) {
                return {engine::formatDate(*date), {}};
            }
            return {{}, tr("Write the date like 2026-06-14, not “%1”.").arg(text.trimmed())};
        case Kind::Time:
            if (const auto time = engine::parseLocalTime(plain)) {
                return {engine::formatLocalTime(*time), {}};
            }
            return {{}, tr("“%1” is not a date and time; write 2026-06-14 05:40.").arg(text.trimmed())};
    }
    return {};
}

QString LineEntry::format(const std::string& value) const {
    return toQString(value);
}

}  // namespace widgets
