#include "widgets/controls/number_box.h"

#include "engine/base/text.h"
#include "widgets/document/number_text.h"
#include "widgets/document/pond_units.h"

#include <QStyle>
#include <QStyleOptionSpinBox>
#include <QWheelEvent>

#include <algorithm>

namespace widgets {

NumberBox::NumberBox(const engine::NumberRule& rule, double step, Empty empty, QWidget* parent)
    : QAbstractSpinBox(parent), EntryOf(this, lineEdit()), m_rule(rule), m_step(step), m_empty(empty) {
    setFocusPolicy(Qt::StrongFocus);
    setGroupSeparatorShown(false);
}

void NumberBox::setUnits(engine::UnitSystem system) {
    if (system != m_units) {
        m_units = system;
        if (m_taken) {
            setTakenIfEmpty(*m_taken);
        }
        showAgain();
    }
}

void NumberBox::setTakenIfEmpty(double value) {
    m_taken = value;
    const ShownUnit unit = shownUnitOf(m_rule.unit, m_units);
    lineEdit()->setPlaceholderText(tr("%1 (automatic)").arg(numberText(shownNumber(value, unit), locale())));
    update();
}

void NumberBox::setPlaceholder(const QString& text) {
    m_taken.reset();
    lineEdit()->setPlaceholderText(text);
}

QString NumberBox::placeholder() const {
    return lineEdit()->placeholderText();
}

void NumberBox::stepBy(int steps) {
    if (!entry().commit()) {
        return;
    }
    const double from = value() ? *value() : m_taken.value_or(m_rule.low);
    double to = std::clamp(from + steps * m_step, m_rule.low, m_rule.high);
    to = engine::toNumber(engine::fixed(to, 6)).value_or(from);  // 0.1 + 0.2 is 0.3
    if (m_rule.above && to <= m_rule.low) {
        to = from;
    }
    step(to);
    lineEdit()->selectAll();
}

QAbstractSpinBox::StepEnabled NumberBox::stepEnabled() const {
    StepEnabled directions = StepNone;
    const std::optional<double> from = value() ? value() : m_taken;
    directions.setFlag(StepUpEnabled, !from || *from < m_rule.high);
    directions.setFlag(StepDownEnabled, from && *from > m_rule.low);
    return directions;
}

void NumberBox::wheelEvent(QWheelEvent* event) {
    if (hasFocus()) {
        QAbstractSpinBox::wheelEvent(event);
    } else {
        event->ignore();
    }
}

void NumberBox::paintEvent(QPaintEvent* event) {
    QAbstractSpinBox::paintEvent(event);
    if (!entry().fault().isEmpty()) {
        paintFaultMark(*this);
    }
}

void NumberBox::changeEvent(QEvent* event) {
    QAbstractSpinBox::changeEvent(event);
    if (event->type() == QEvent::LocaleChange) {
        if (m_taken) {
            setTakenIfEmpty(*m_taken);
        }
        showAgain();
    }
}

QSize NumberBox::sizeHint() const {
    ensurePolished();
    QStyleOptionSpinBox option;
    initStyleOption(&option);
    const QSize text(fontMetrics().horizontalAdvance(QStringLiteral("00000.0")),
                     lineEdit()->sizeHint().height());
    return style()->sizeFromContents(QStyle::CT_SpinBox, &option, text, this);
}

TextReading<std::optional<double>> NumberBox::parse(const QString& text) const {
    if (text.trimmed().isEmpty()) {
        return {std::nullopt, m_empty == Empty::Allowed ? QString() : tr("A number is needed here.")};
    }
    const TextReading<double> reading = readQuantity(text, m_rule, m_units, locale());
    return {reading.value, reading.fault};
}

QString NumberBox::format(const std::optional<double>& value) const {
    return value ? numberText(shownNumber(*value, shownUnitOf(m_rule.unit, m_units)), locale()) : QString();
}

}  // namespace widgets
