#include "widgets/forms/schedule_grid.h"

#include "engine/base/units.h"
#include "engine/ramps/schedule.h"
#include "engine/run/shares.h"
#include "widgets/controls/clock_box.h"
#include "widgets/controls/plot_style.h"
#include "widgets/document/selection.h"
#include "widgets/document/to_qstring.h"
#include "widgets/forms/ramp_actions.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace widgets {
namespace {

constexpr int kSnap_min = 5;
constexpr double kGrip = 7.0;  // [px] about the end of a block
constexpr double kLeft = 64.0, kRight = 150.0, kTop = 28.0, kBottom = 8.0;
constexpr int kUsualStart_min = 600;

}  // namespace

ScheduleGrid::ScheduleGrid(Document& document, Selection& selection, QWidget* parent)
    : QWidget(parent), m_document(document), m_selection(selection) {
    setAccessibleName(tr("Schedule of the ramp"));
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    setMinimumSize(360, 200);
    const auto anew = [this] {
        m_day = std::clamp(m_day, 1, std::max(days(), 1));
        describe();
        update();
    };
    connect(&m_document, &Document::changed, this, anew);
    connect(&m_selection, &Selection::changed, this, anew);
    describe();
}

void ScheduleGrid::setOutcome(const OutcomePtr& outcome) {
    m_outcome = outcome;
    describe();
    update();
}

const engine::Ramp* ScheduleGrid::ramp() const {
    const auto& ramps = m_document.pond().ramps;
    const std::size_t at = m_selection.ramp();
    return at >= 1 && at <= ramps.size() ? &ramps[at - 1] : nullptr;
}

const engine::RampRun* ScheduleGrid::run() const {
    if (m_outcome == nullptr || m_selection.ramp() >= m_outcome->comparison.runs.size()) {
        return nullptr;
    }
    const engine::RampRun& found = m_outcome->comparison.runs[m_selection.ramp()];
    return isDrawn(found) && ramp() != nullptr && found.name == ramp()->name ? &found : nullptr;
}

int ScheduleGrid::days() const {
    return m_outcome == nullptr ? 14 : m_outcome->comparison.days;
}

QRectF ScheduleGrid::area() const {
    return QRectF(rect()).adjusted(kLeft, kTop, -kRight, -kBottom);
}

QPointF ScheduleGrid::placeOf(int day, double minute) const {
    const QRectF inside = area();
    return {inside.left() + inside.width() * minute / engine::kMinutesPerDay,
            inside.top() + inside.height() * (day - 0.5) / std::max(days(), 1)};
}

int ScheduleGrid::startMinute() const {
    const engine::Ramp* shown = ramp();
    if (shown == nullptr) {
        return kUsualStart_min;
    }
    return static_cast<int>(std::lround(engine::dayStart(*shown, 1) / 60.0));
}

int ScheduleGrid::minutesOf(int day) const {
    const engine::Ramp* shown = ramp();
    if (shown == nullptr) {
        return 0;
    }
    if (shown->kind != engine::RampKind::Capped) {
        return engine::ruleMinutes(*shown, day);
    }
    double minutes = 0.0;  // how long a day of it is, only a run can tell
    if (const engine::RampRun* found = run()) {
        for (const engine::RunBlock& block : found->schedule) {
            minutes += block.day == day ? (block.end - block.start) / 60.0 : 0.0;
        }
    }
    return static_cast<int>(std::lround(std::min(minutes, 1.0 * engine::kMinutesPerDay)));
}

QString ScheduleGrid::dayText(int day) const {
    const QString minutes = tr("%1 min").arg(minutesOf(day));
    if (const engine::RampRun* found = run();
        found != nullptr && m_outcome->comparison.model.bottom.exists()) {
        for (const engine::DayRow& row : found->days) {
            if (row.day == day) {
                const double dose = engine::doseOf(m_outcome->comparison.model, row);
                return tr("%1, dose %2 %").arg(minutes).arg(std::lround(dose));
            }
        }
    }
    return minutes;
}

void ScheduleGrid::describe() {
    const engine::Ramp* shown = ramp();
    setAccessibleDescription(
        shown == nullptr
            ? tr("Choose a ramp in the table; do nothing has no schedule.")
            : tr("%1, day %2: %3, from %4. Left and right change the minutes, up and down the day.")
                  .arg(widgets::toQString(shown->name))
                  .arg(m_day)
                  .arg(dayText(m_day), clockText(engine::ClockTime{startMinute() % engine::kMinutesPerDay})));
}

void ScheduleGrid::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    const PlotStyle style = PlotStyle::of(palette(), font());
    painter.fillRect(rect(), style.paper);
    const engine::Ramp* shown = ramp();
    if (shown == nullptr) {
        painter.setPen(style.quietInk);
        painter.drawText(rect(), Qt::AlignCenter | Qt::TextWordWrap,
                         tr("Choose a ramp in the table; do nothing has no schedule."));
        return;
    }
    if (m_outcome != nullptr) {
        paintNights(painter, style);
    }
    paintRules(painter, style);
    paintRuns(painter, *shown, style);
    paintDays(painter, style);
}

/// The nights, before sunrise and after sunset.
void ScheduleGrid::paintNights(QPainter& painter, const PlotStyle& style) const {
    const QRectF inside = area();
    const auto& nights = m_outcome->backdrop.nights;
    for (int day = 1; day <= days(); ++day) {
        const double top = placeOf(day, 0).y() - rowHeight() / 2;
        painter.fillRect(QRectF(inside.left(), top, inside.width(), rowHeight()), style.night[1]);
        const auto at = static_cast<std::size_t>(std::min(day, static_cast<int>(nights.size())) - 1);
        if (nights[at].sunset && nights[at].sunrise) {
            const double set = std::fmod(*nights[at].sunset / 60.0, engine::kMinutesPerDay);
            const double rise = std::fmod(*nights[at].sunrise / 60.0, engine::kMinutesPerDay);
            painter.fillRect(QRectF(QPointF(placeOf(day, rise).x(), top),
                                    QPointF(placeOf(day, set).x(), top + rowHeight())),
                             style.paper);
        }
    }
}

/// Hairlines between days and at every third hour, with the clock over them.
void ScheduleGrid::paintRules(QPainter& painter, const PlotStyle& style) const {
    const QRectF inside = area();
    const QFontMetricsF metrics(font());
    painter.setPen(QPen(style.hairline, 0));
    for (int day = 0; day <= days(); ++day) {
        const double y = inside.top() + rowHeight() * day;
        painter.drawLine(QPointF(inside.left(), y), QPointF(inside.right(), y));
    }
    for (int hour = 0; hour <= 24; hour += 3) {
        const double x = placeOf(1, 60.0 * hour).x();
        painter.setPen(QPen(style.hairline, 0));
        painter.drawLine(QPointF(x, inside.top()), QPointF(x, inside.bottom()));
        painter.setPen(style.ink);
        const QString text = QStringLiteral("%1").arg(hour % 24, 2, 10, QLatin1Char('0'));
        painter.drawText(QPointF(x - metrics.horizontalAdvance(text) / 2, inside.top() - 8), text);
    }
}

/// The blocks of air: as they ran where there are several a day or a window cuts them, else by the minutes.
void ScheduleGrid::paintRuns(QPainter& painter, const engine::Ramp& shown, const PlotStyle& style) const {
    const double row = rowHeight();
    const std::size_t look = m_outcome != nullptr && m_selection.ramp() < m_outcome->comparison.runs.size()
                                 ? lookOf(m_outcome->comparison, m_selection.ramp())
                                 : m_selection.ramp();
    const QColor fill = mixed(style.paper, style.lineColour(look), 0.7);
    const auto block = [&](int day, double from, double to) {
        if (day >= 1 && day <= days() && to > from) {
            const double y = placeOf(day, 0).y() - row * 0.32;
            const QRectF box(QPointF(placeOf(day, from).x(), y),
                             QPointF(placeOf(day, to).x(), y + row * 0.64));
            painter.fillRect(box, fill);
            painter.setPen(QPen(style.ink, 1.2));
            painter.drawRect(box);
        }
    };
    if (shown.pulses || shown.window) {
        if (const engine::RampRun* found = run()) {
            for (const engine::RunBlock& one : engine::joined(found->schedule)) {
                for (int day = static_cast<int>(one.start / engine::kDay) + 1;
                     (day - 1) * engine::kDay < one.end; ++day) {
                    const double midnight = (day - 1) * engine::kDay;
                    block(day, std::max(one.start - midnight, 0.0) / 60.0,
                          std::min(one.end - midnight, engine::kDay) / 60.0);
                }
            }
        }
    } else {
        const double start = startMinute();
        for (int day = 1; day <= days(); ++day) {
            const double end = start + minutesOf(day);
            block(day, start, std::min(end, 1.0 * engine::kMinutesPerDay));
            block(day + 1, 0.0, end - engine::kMinutesPerDay);  // past midnight
        }
    }
}

/// The days' names and what each came to; the chosen day framed.
void ScheduleGrid::paintDays(QPainter& painter, const PlotStyle& style) const {
    const QRectF inside = area();
    const double row = rowHeight();
    const QFontMetricsF metrics(font());
    const int step = std::max(1, static_cast<int>(std::ceil(metrics.height() / row)));
    for (int day = 1; day <= days(); ++day) {
        const QRectF line(0, placeOf(day, 0).y() - row / 2, width(), row);
        if ((day - 1) % step == 0) {
            painter.setPen(style.ink);
            painter.drawText(line.adjusted(2, 0, -(width() - kLeft + 8), 0),
                             Qt::AlignRight | Qt::AlignVCenter, tr("day %1").arg(day));
            painter.setPen(style.quietInk);
            painter.drawText(QRectF(inside.right() + 8, line.top(), kRight - 10, row),
                             Qt::AlignLeft | Qt::AlignVCenter, dayText(day));
        }
        if (day == m_day && hasFocus()) {
            painter.setPen(QPen(style.ink, 2.0));
            painter.drawRect(QRectF(inside.left() - 2, line.top(), inside.width() + 4, row));
        }
    }
}

void ScheduleGrid::edit(const std::function<void(engine::Ramp&)>& change) {
    const engine::Ramp* before = ramp();
    if (before == nullptr) {
        return;
    }
    const std::size_t at = m_selection.ramp() - 1;
    const engine::RampRun* found = run();
    QStringList sentences;
    const auto faults = m_document.edit(
        tr("Draw the schedule of \u201c%1\u201d").arg(toQString(before->name)),
        [&](engine::Pond& pond) {
            engine::Ramp& drawn = pond.ramps[at];
            if (drawn.kind != engine::RampKind::Table) {
                drawn = asTable(drawn, found);
            }
            change(drawn);
        },
        QStringLiteral("schedule/%1/%2").arg(reinterpret_cast<quintptr>(this)).arg(m_burst));
    for (const engine::Diagnostic& fault : faults) {
        sentences << toQString(fault.sentence);
    }
    if (!sentences.isEmpty()) {
        emit refused(sentences.join(QLatin1Char(' ')));
    }
}

void ScheduleGrid::setMinutes(int day, int minutes) {
    minutes = std::clamp(minutes, 0, engine::kMinutesPerDay);
    if (minutes == minutesOf(day)) {
        return;
    }
    edit([day, minutes](engine::Ramp& drawn) {
        // The days up to this one become rows of their own, and the ones after it keep what they had.
        const auto size = static_cast<std::size_t>(day) + 1;
        const double last = drawn.minutes.empty() ? 0.0 : drawn.minutes.back();
        if (drawn.minutes.size() < size) {
            drawn.minutes.resize(size, last);
        }
        drawn.minutes[static_cast<std::size_t>(day - 1)] = minutes;
        while (drawn.minutes.size() > 1 && drawn.minutes.back() == drawn.minutes[drawn.minutes.size() - 2]) {
            drawn.minutes.pop_back();
        }
    });
}

void ScheduleGrid::setStart(int minute) {
    minute = std::clamp(minute, 0, engine::kMinutesPerDay - kSnap_min);
    if (minute != startMinute()) {
        edit([minute](engine::Ramp& drawn) { drawn.startTime = engine::ClockTime{minute}; });
    }
}

void ScheduleGrid::mousePressEvent(QMouseEvent* event) {
    const QRectF inside = area();
    if (event->button() != Qt::LeftButton || ramp() == nullptr ||
        !inside.adjusted(-4, 0, 4, 0).contains(event->position())) {
        return;
    }
    ++m_burst;
    m_day = std::clamp(
        static_cast<int>((event->position().y() - inside.top()) / inside.height() * days()) + 1, 1, days());
    const double minute = (event->position().x() - inside.left()) / inside.width() * engine::kMinutesPerDay;
    const double end = std::min(startMinute() + minutesOf(m_day), engine::kMinutesPerDay);
    if (std::abs(event->position().x() - placeOf(m_day, end).x()) <= kGrip || minute > end) {
        m_drag = Drag::End;
        if (minute > end + kSnap_min && minutesOf(m_day) < engine::kMinutesPerDay) {
            setMinutes(m_day,
                       static_cast<int>(std::lround((minute - startMinute()) / kSnap_min)) * kSnap_min);
        }
    } else {
        m_drag = Drag::Whole;
        m_grabbed = minute - startMinute();
    }
    describe();
    update();
}

void ScheduleGrid::mouseMoveEvent(QMouseEvent* event) {
    const QRectF inside = area();
    const double minute = (event->position().x() - inside.left()) / inside.width() * engine::kMinutesPerDay;
    const auto snapped = [](double minutes) {
        return static_cast<int>(std::lround(minutes / kSnap_min)) * kSnap_min;
    };
    if (m_drag == Drag::End) {
        setMinutes(m_day, snapped(minute - startMinute()));
    } else if (m_drag == Drag::Whole) {
        setStart(snapped(minute - m_grabbed));
    } else if (ramp() != nullptr) {
        const int day = std::clamp(
            static_cast<int>((event->position().y() - inside.top()) / inside.height() * days()) + 1, 1,
            days());
        const double end = std::min(startMinute() + minutesOf(day), engine::kMinutesPerDay);
        setCursor(std::abs(event->position().x() - placeOf(day, end).x()) <= kGrip ? Qt::SizeHorCursor
                                                                                   : Qt::ArrowCursor);
    }
}

void ScheduleGrid::mouseReleaseEvent(QMouseEvent* /*event*/) {
    m_drag = Drag::None;
}

void ScheduleGrid::keyPressEvent(QKeyEvent* event) {
    const bool isFine = (event->modifiers() & Qt::ShiftModifier) != 0,
               isCoarse = (event->modifiers() & Qt::ControlModifier) != 0;
    const int step = isFine ? 1 : isCoarse ? 60 : 10;
    switch (event->key()) {
        case Qt::Key_Up:
        case Qt::Key_Down:
            m_day = std::clamp(m_day + (event->key() == Qt::Key_Down ? 1 : -1), 1, days());
            ++m_burst;
            break;
        case Qt::Key_Left:
        case Qt::Key_Right:
            setMinutes(m_day, minutesOf(m_day) + (event->key() == Qt::Key_Right ? step : -step));
            break;
        case Qt::Key_Delete:
            setMinutes(m_day, 0);
            break;
        default:
            QWidget::keyPressEvent(event);
            return;
    }
    describe();
    update();
}

}  // namespace widgets
