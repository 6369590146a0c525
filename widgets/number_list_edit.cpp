#include "widgets/number_list_edit.h"

#include "widgets/number_text.h"

#include <QEvent>

namespace widgets {

NumberListEdit::NumberListEdit(const engine::NumberRule& rule, Empty empty, QWidget* parent)
    : QLineEdit(parent), EntryOf(this, this), m_rule(rule), m_empty(empty) {}

QSize NumberListEdit::sizeHint() const {
    return {fontMetrics().horizontalAdvance(QStringLiteral("00000.00000")), QLineEdit::sizeHint().height()};
}

QSize NumberListEdit::minimumSizeHint() const {
    return sizeHint();
}

void NumberListEdit::paintEvent(QPaintEvent* event) {
    QLineEdit::paintEvent(event);
    if (!entry().fault().isEmpty()) {
        paintFaultMark(*this);
    }
}

void NumberListEdit::changeEvent(QEvent* event) {
    QLineEdit::changeEvent(event);
    if (event->type() == QEvent::LocaleChange) {
        showAgain();
    }
}

TextReading<std::vector<double>> NumberListEdit::parse(const QString& text) const {
    TextReading<std::vector<double>> reading = readNumbers(text, m_rule, locale());
    if (reading.fault.isEmpty() && reading.value.empty() && m_empty == Empty::Refused) {
        reading.fault = tr("At least one number is needed here.");
    }
    return reading;
}

QString NumberListEdit::format(const std::vector<double>& value) const {
    return numbersText(value, locale());
}

}  // namespace widgets
