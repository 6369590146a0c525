#include "widgets/charts/whole_run_plot.h"

#include "engine/base/units.h"
#include "engine/run/day_air.h"
#include "engine/run/nights.h"
#include "widgets/charts/chart_parts.h"
#include "widgets/charts/day_axis.h"
#include "widgets/charts/sheets.h"
#include "widgets/document/pond_units.h"
#include "widgets/document/wording.h"

#include <QCoreApplication>
#include <QLocale>
#include <qcustomplot.h>

#include <algorithm>
#include <cmath>

namespace widgets {
namespace {

// Over more days dashes swallow whole nights, and painting them takes seconds.
constexpr int kMostDashedDays = 21;
constexpr int kLeft = kDaysLeft, kRight = kDaysRight;

QString tr(const char* text) {
    return QCoreApplication::translate("WholeRunPlot", text);
}

/// When the air runs: one row a ramp.
void paintRuns(QCPPainter& painter, const QCPAxisRect& of, const Outcome& outcome, std::size_t selected,
               const PlotStyle& style) {
    const auto& runs = outcome.comparison.runs;
    if (runs.size() < 2) {
        return;
    }
    const QCPAxis* across = of.axis(QCPAxis::atBottom);
    const QRectF area = of.rect();
    const double height = area.height() / static_cast<double>(runs.size() - 1);
    for (std::size_t i = 1; i < runs.size(); ++i) {
        const double top = area.top() + height * static_cast<double>(i - 1);
        const double thick = std::min(height - 2.0, i == selected ? 8.0 : 5.0);
        for (const engine::RunBlock& block : runs[i].schedule) {
            const double from = std::max(area.left(), across->coordToPixel(block.start / engine::kDay));
            const double to = std::min(area.right(), across->coordToPixel(block.end / engine::kDay));
            if (from < to) {
                painter.fillRect(QRectF(from, top + (height - thick) / 2, std::max(to - from, 1.0), thick),
                                 style.lineColour(lookOf(outcome.comparison, i)));
            }
        }
    }
    painter.setPen(style.quietInk);
    painter.drawText(QRectF(2, area.top(), area.left() - 8, area.height()), Qt::AlignLeft | Qt::AlignVCenter,
                     tr("air on"));
}

void hideAxes(QCPAxisRect& rect) {
    for (QCPAxis* axis : rect.axes()) {
        axis->setTickLabels(false);
    }
}

void addCurves(QCPAxisRect& rect, const Outcome& outcome, const Selection& selection,
               const PlotStyle& style) {
    const auto& runs = outcome.comparison.runs;
    for (const std::size_t i : drawingOrder(outcome.comparison, selection)) {
        std::vector<double> day, oxygen;
        for (const engine::HourRow& hour : runs[i].hours) {
            day.push_back(hour.time / engine::kDay);
            oxygen.push_back(hour.fishWater);
        }
        QPen pen = style.linePen(lookOf(outcome.comparison, i), false);
        pen.setWidthF(i == selection.ramp() ? 2.2 : 1.3);
        if (outcome.comparison.days > kMostDashedDays) {
            pen.setWidthF(i == selection.ramp() ? 1.7 : 1.0);
            pen.setStyle(Qt::SolidLine);
        }
        addCurve(rect, day, oxygen, pen);
    }
}

/// Heights of the parts [px].
struct Heights {
    int text, runs, weather;
    [[nodiscard]] int least() const {
        constexpr int kLeastCurves = 40;
        return text + 12 + kLeastCurves + runs + 4 + weather + 2 + text + 8;
    }
};

Heights heightsOf(const Outcome& outcome, const QFontMetricsF& metrics) {
    const int text = static_cast<int>(std::ceil(metrics.height()));
    const int ramps = static_cast<int>(outcome.comparison.runs.size()) - 1;
    return {text, std::max(text, ramps * (ramps > 6 ? 6 : 9)), 3 * (text - 1)};
}

}  // namespace

void drawWholeRun(QCustomPlot& plot, const OutcomePtr& shared, const Selection& selection,
                  const PlotStyle& style) {
    const Outcome& outcome = *shared;
    prepare(plot, style);
    const QFontMetricsF metrics(style.font);
    const auto [text, runsHeight, weatherHeight] = heightsOf(outcome, metrics);
    static_cast<void>(weatherHeight);
    const Selection::Span span = shownDays(outcome, selection);
    const double first = span.from, last = span.to;
    const double top =
        axisTop(highestFishWater(outcome.comparison, outcome.comparison.model.parameters.thresholds.stress));

    QCPAxisRect* curves = addRect(plot, 0, QMargins(kLeft, text + 8, kRight, 4));
    applyStyle(*curves, style, first, last, top, {});
    const QSharedPointer<QCPAxisTickerFixed> steps(new QCPAxisTickerFixed);
    steps->setTickStep(4.0);
    curves->axis(QCPAxis::atLeft)->setTicker(steps);
    Ground ground;
    ground.shades = nightShades(outcome);
    ground.stress = outcome.comparison.model.parameters.thresholds.stress;
    ground.lethal = outcome.comparison.model.parameters.thresholds.lethal;
    ground.rules = oxygenSteps(top, 4.0);
    addGround(*curves, style, std::move(ground));
    addCurves(*curves, outcome, selection, style);
    addPainted(
        *curves, style,
        [style, night = selection.night(), cursor = selection.cursor()](QCPPainter& painter,
                                                                        const QCPAxisRect& of) {
            const QCPAxis* across = of.axis(QCPAxis::atBottom);
            const QFontMetricsF font(style.font);
            painter.setPen(QPen(style.ink, 1.5));
            const double left = std::max(across->coordToPixel(night - 0.5), 1.0 * of.rect().left());
            const double right = std::min(across->coordToPixel(night + 0.5), 1.0 * of.rect().right());
            if (left < right) {
                painter.drawRect(QRectF(left, of.rect().top() - 2.0, right - left, of.rect().height() + 4.0));
            }
            if (cursor) {
                const double at = across->coordToPixel(*cursor / engine::kDay);
                if (at >= of.rect().left() && at <= of.rect().right()) {
                    painter.setPen(QPen(style.ink, 1.0));
                    painter.drawLine(QPointF(at, of.rect().top()), QPointF(at, of.rect().bottom()));
                }
            }
            painter.setPen(style.quietInk);
            painter.drawText(QPointF(2, font.ascent() + 1),
                             tr("oxygen in the fish water over the whole run, mg/L"));
        });

    QCPAxisRect* air = addRect(plot, 1, QMargins(kLeft, 2, kRight, 2));
    applyStyle(*air, style, first, last, 1.0, {});
    hideAxes(*air);
    air->setMinimumSize(10, runsHeight);
    air->setMaximumSize(QWIDGETSIZE_MAX, runsHeight + 4);
    Ground quiet;
    quiet.shades = nightShades(outcome);
    addGround(*air, style, quiet);
    addPainted(*air, style,
               [shared, style, selected = selection.ramp()](QCPPainter& painter, const QCPAxisRect& of) {
                   paintRuns(painter, of, *shared, selected, style);
               });

    addWeatherStrip(plot, 2, shared, span, style);
}

QString wholeRunInWords(const Outcome& outcome) {
    QStringList words{tr("The whole run: fish water, run times and weather.")};
    const auto& runs = outcome.comparison.runs;
    for (std::size_t i = 1; i < runs.size(); ++i) {
        QStringList minutes;
        for (const engine::DayRow& row : runs[i].days) {
            minutes << QString::number(std::lround(row.runMinutes));
        }
        words << tr("%1 runs, in minutes a day: %2.")
                     .arg(rampText(runs[i].name, i), minutes.join(QStringLiteral("; ")));
    }
    const engine::UnitSystem system = unitsOf(outcome.comparison.model.pond);
    for (const auto& [number, day] : engine::daysOfAir(outcome.backdrop)) {
        if (number >= 1 && number <= outcome.comparison.days) {
            words << tr("Day %1: %2 to %3, cloud %4 %, wind %5.")
                         .arg(QString::number(number), amountText(day.lowest, "degC", system),
                              amountText(day.highest, "degC", system),
                              QString::number(std::lround(100.0 * day.cloud)),
                              amountText(day.wind, "m/s", system));
        }
    }
    return words.join(QLatin1Char(' '));
}

WholeRunPlot::WholeRunPlot(Selection& selection, QWidget* parent)
    : ChartView(tr("The whole run"), selection, parent) {}

QString WholeRunPlot::refresh() {
    setMinimumHeight(heightsOf(*outcome(), QFontMetricsF(font())).least());
    return wholeRunInWords(*outcome());
}

void WholeRunPlot::draw(QCustomPlot& plot, const PlotStyle& style) {
    drawWholeRun(plot, outcome(), selection(), style);
}

ChartSheet WholeRunPlot::sheet() const {
    return wholeRunSheet(outcome(), selection());
}

std::optional<Selection::Span> WholeRunPlot::shownSpan() const {
    return shownDays(*outcome(), selection());
}

std::optional<double> WholeRunPlot::timeAt(const QPointF& place) const {
    if (outcome() == nullptr || plot().axisRectCount() == 0) {
        return std::nullopt;
    }
    const double day = plot().axisRect()->axis(QCPAxis::atBottom)->pixelToCoord(place.x());
    const Selection::Span span = shownDays(*outcome(), selection());
    return day < span.from || day > span.to ? std::nullopt : std::optional(day * engine::kDay);
}

QString WholeRunPlot::readAt(double time) const {
    QStringList rows{momentText(time)};
    for (const std::size_t i : drawingOrder(outcome()->comparison, selection())) {
        const engine::RampRun& run = outcome()->comparison.runs[i];
        const auto hour = std::lower_bound(run.hours.begin(), run.hours.end(), time,
                                           [](const engine::HourRow& row, double t) { return row.time < t; });
        if (hour != run.hours.end()) {
            rows << tr("%1 mg/L  %2").arg(oxygenText(hour->fishWater), rampText(run.name, i));
        }
    }
    return rows.join(QLatin1Char('\n'));
}

QString WholeRunPlot::readOut(const QPointF& place) const {
    const auto time = timeAt(place);
    return time ? readAt(*time) : QString();
}

void WholeRunPlot::clicked(const QPointF& place) {
    if (const auto time = timeAt(place)) {
        selection().setCursor(*time);
        selection().setNight(engine::nightAt(*time));
    }
}

}  // namespace widgets
