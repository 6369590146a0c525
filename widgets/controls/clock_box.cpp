#include "widgets/controls/clock_box.h"

#include <QRegularExpression>
#include <QStyle>
#include <QStyleOptionSpinBox>
#include <QWheelEvent>

namespace widgets {
namespace {

constexpr int kMinutesPerDay = 1440;
constexpr int kStep_min = 15;

}  // namespace

QString clockText(engine::ClockTime time) {
    return QStringLiteral("%1:%2")
        .arg(time.minutes / 60, 2, 10, QLatin1Char('0'))
        .arg(time.minutes % 60, 2, 10, QLatin1Char('0'));
}

ClockBox::ClockBox(QWidget* parent) : QAbstractSpinBox(parent), EntryOf(this, lineEdit()) {
    setFocusPolicy(Qt::StrongFocus);
}

void ClockBox::setTakenIfEmpty(std::optional<engine::ClockTime> time, const QString& placeholder) {
    m_taken = time;
    lineEdit()->setPlaceholderText(placeholder);
}

void ClockBox::stepBy(int steps) {
    if (!entry().commit()) {
        return;
    }
    const int from = value() ? value()->minutes : m_taken ? m_taken->minutes : 12 * 60;
    // To the next whole quarter, and on past midnight.
    const int base = steps > 0 ? from / kStep_min : (from + kStep_min - 1) / kStep_min;
    const int to = (base + steps) * kStep_min % kMinutesPerDay;
    step(engine::ClockTime{(to + kMinutesPerDay) % kMinutesPerDay});
    lineEdit()->selectAll();
}

void ClockBox::wheelEvent(QWheelEvent* event) {
    if (hasFocus()) {
        QAbstractSpinBox::wheelEvent(event);
    } else {
        event->ignore();
    }
}

void ClockBox::paintEvent(QPaintEvent* event) {
    QAbstractSpinBox::paintEvent(event);
    if (!entry().fault().isEmpty()) {
        paintFaultMark(*this);
    }
}

QSize ClockBox::sizeHint() const {
    ensurePolished();
    QStyleOptionSpinBox option;
    initStyleOption(&option);
    const QSize text(fontMetrics().horizontalAdvance(QStringLiteral("00000.0")),
                     lineEdit()->sizeHint().height());
    return style()->sizeFromContents(QStyle::CT_SpinBox, &option, text, this);
}

TextReading<std::optional<engine::ClockTime>> ClockBox::parse(const QString& text) const {
    const QString trimmed = text.trimmed();
    if (trimmed.isEmpty()) {
        return {};
    }
    static const QRegularExpression kForm(QStringLiteral("^([0-9]{1,2})(?:[:.,h ]?([0-9]{2}))?h?$"));
    const QRegularExpressionMatch match = kForm.match(trimmed);
    if (!match.hasMatch()) {
        return {std::nullopt,
                tr("“%1” is not a time of the day; write hours and minutes, such as 07:30.").arg(trimmed)};
    }
    const int hours = match.captured(1).toInt();
    const int minutes = match.captured(2).toInt();
    if (hours > 23 || minutes > 59) {
        return {std::nullopt, tr("The time is %1, but must be from 00:00 to 23:59.").arg(trimmed)};
    }
    return {engine::ClockTime{60 * hours + minutes}, {}};
}

QString ClockBox::format(const std::optional<engine::ClockTime>& value) const {
    return value ? clockText(*value) : QString();
}

}  // namespace widgets
