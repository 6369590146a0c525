#include "widgets/controls/number_list_edit.h"

#include "widgets/document/number_text.h"
#include "widgets/document/pond_units.h"

#include <QEvent>

namespace widgets {

NumberListEdit::NumberListEdit(const engine::NumberRule& rule, Empty empty, QWidget* parent)
    : ElidedEdit(parent), EntryOf(this, this), m_rule(rule), m_empty(empty) {}

void NumberListEdit::setUnits(engine::UnitSystem system) {
    if (system != m_units) {
        m_units = system;
        showAgain();
    }
}

void NumberListEdit::paintEvent(QPaintEvent* event) {
    ElidedEdit::paintEvent(event);
    if (!entry().fault().isEmpty()) {
        paintFaultMark(*this);
    }
}

void NumberListEdit::changeEvent(QEvent* event) {
    ElidedEdit::changeEvent(event);
    if (event->type() == QEvent::LocaleChange) {
        showAgain();
    }
}

TextReading<std::vector<double>> NumberListEdit::parse(const QString& text) const {
    TextReading<std::vector<double>> reading = readNumbers(text, shownRule(m_rule, m_units), locale());
    const ShownUnit unit = shownUnitOf(m_rule.unit, m_units);
    for (double& value : reading.value) {
        value = unit.toFile(value);
    }
    if (reading.fault.isEmpty() && reading.value.empty() && m_empty == Empty::Refused) {
        reading.fault = tr("At least one number is needed here.");
    }
    return reading;
}

QString NumberListEdit::format(const std::vector<double>& value) const {
    std::vector<double> shown;
    for (const double each : value) {
        shown.push_back(shownNumber(each, shownUnitOf(m_rule.unit, m_units)));
    }
    return numbersText(shown, locale());
}

}  // namespace widgets
