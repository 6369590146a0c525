// Hour by day: a calendar sheet, days down and hours across from noon to noon, oxygen as colour, runs
// outlined, hatched where the fish water is below the stress line.

#include "engine/base/units.h"
#include "engine/output/picture_tables.h"
#include "engine/run/depths.h"
#include "engine/run/nights.h"
#include "engine/water/oxygen_state.h"
#include "widgets/charts/chart_parts.h"
#include "widgets/charts/picture.h"
#include "widgets/document/to_qstring.h"
#include "widgets/document/wording.h"

#include <QCoreApplication>
#include <qcustomplot.h>

#include <algorithm>
#include <cmath>

namespace widgets {
namespace {

constexpr double kLeft = 62.0, kRight = 58.0, kTop = 26.0, kBottom = 10.0;
constexpr double kCasing = 2.0;  // [px] of paper around what lies on colours

QString tr(const char* text) {
    return QCoreApplication::translate("HoursView", text);
}

struct Sheet {
    QRectF area;
    int nights;

    Sheet(const QRectF& whole, int rows)
        : area(whole.adjusted(kLeft, kTop, -kRight, -kBottom)), nights(rows) {}
    [[nodiscard]] double row() const { return area.height() / nights; }
    [[nodiscard]] double x(double hourAfterNoon) const {
        return area.left() + area.width() * hourAfterNoon / 24.0;
    }
    [[nodiscard]] double y(int night) const { return area.top() + row() * (night - 1); }
    [[nodiscard]] std::optional<std::pair<int, double>> at(const QPointF& place) const {
        if (!area.contains(place)) {
            return std::nullopt;
        }
        return std::pair(static_cast<int>((place.y() - area.top()) / row()) + 1,
                         24.0 * (place.x() - area.left()) / area.width());
    }
};

/// Hours after the noon at which a night starts.
double hourOf(int night, double time) {
    return (time - engine::noonOf(night)) / engine::kHour;
}

/// In ink within paper, so that it stands out of deep colours too.
void paintOutline(QCPPainter& painter, const PlotStyle& style, double width, const QRectF& area) {
    painter.setPen(QPen(style.paper, width + kCasing));
    painter.drawRect(area);
    painter.setPen(QPen(style.ink, width));
    painter.drawRect(area);
}

/// Outlines of the runs, in pieces of nights.
void paintRuns(QCPPainter& painter, const engine::Schedule& schedule, const Sheet& sheet,
               const PlotStyle& style) {
    painter.setBrush(Qt::NoBrush);
    for (const engine::RunBlock& block : engine::joined(schedule)) {
        for (int night = std::max(1, engine::nightAt(block.start)); night <= sheet.nights; ++night) {
            const double noon = engine::noonOf(night);
            const double from = std::max(block.start, noon), to = std::min(block.end, noon + engine::kDay);
            if (noon > block.end) {
                break;
            }
            if (from < to) {
                const double left = sheet.x(hourOf(night, from)), right = sheet.x(hourOf(night, to));
                paintOutline(
                    painter, style, 1.6,
                    QRectF(left, sheet.y(night) + 1.5, std::max(right - left, 2.0), sheet.row() - 3.0));
            }
        }
    }
}

/// Oxygen of every hour as colour, hatched below the lines.
void paintHours(QCPPainter& painter, const engine::RampRun& rows, const engine::OxygenThresholds& thresholds,
                const Sheet& sheet, double top, const PlotStyle& style) {
    for (const engine::HourRow& hour : rows.hours) {
        const int night = engine::nightAt(hour.time);
        const double after = hourOf(night, hour.time);
        if (night < 1 || night > sheet.nights) {
            continue;
        }
        const QRectF cell(sheet.x(after), sheet.y(night), sheet.area.width() / 24.0 + 0.5, sheet.row() + 0.5);
        const QColor colour = depthOfColour(style, hour.fishWater / top);
        painter.fillRect(cell.intersected(sheet.area), colour);
        const engine::OxygenState state = engine::stateOf(hour.fishWater, thresholds);
        if (state != engine::OxygenState::Enough) {
            const bool isLethal = state == engine::OxygenState::Lethal;
            const bool isDeep = contrast(style.ink, colour) < contrast(style.paper, colour);
            const QPen pen(isLethal ? style.lethalInk
                           : isDeep ? style.paper
                                    : style.ink,
                           isLethal ? 1.4 : 0.8);
            hatch(painter, cell.intersected(sheet.area), pen, isLethal ? 5.0 : 8.0);
        }
    }
}

/// A rule between nights and one at midnight; over them sunset and sunrise from row to row.
void paintRules(QCPPainter& painter, const Outcome& outcome, const Sheet& sheet, const PlotStyle& style) {
    painter.setPen(QPen(style.hairline, 0));
    for (int night = 1; night <= sheet.nights + 1; ++night) {
        painter.drawLine(QPointF(sheet.area.left(), sheet.y(night)),
                         QPointF(sheet.area.right(), sheet.y(night)));
    }
    painter.drawLine(QPointF(sheet.x(12), sheet.area.top()), QPointF(sheet.x(12), sheet.area.bottom()));
    for (const engine::NightSky& sky : outcome.backdrop.nights) {
        for (const auto& edge : {sky.sunset, sky.sunrise}) {
            if (edge) {
                const double x = sheet.x(hourOf(sky.night, *edge));
                painter.setPen(QPen(style.paper, 1.2 + kCasing));
                painter.drawLine(QPointF(x, sheet.y(sky.night)), QPointF(x, sheet.y(sky.night + 1)));
                painter.setPen(QPen(style.quietInk, 1.2));
                painter.drawLine(QPointF(x, sheet.y(sky.night)), QPointF(x, sheet.y(sky.night + 1)));
            }
        }
    }
}

void paint(QCPPainter& painter, const QRectF& whole, const Outcome& outcome, std::size_t run, double top,
           int shown, const PlotStyle& style) {
    const Sheet sheet(whole, outcome.comparison.days);
    const engine::RampRun& rows = outcome.comparison.runs[run];
    const QFontMetricsF metrics(style.font);
    paintHours(painter, rows, outcome.comparison.model.parameters.thresholds, sheet, top, style);
    paintRules(painter, outcome, sheet, style);
    paintRuns(painter, rows.schedule, sheet, style);

    painter.setPen(style.ink);
    for (const auto& [hour, text] : clockMarks()) {
        const double width = metrics.horizontalAdvance(text);
        painter.drawText(QPointF(sheet.x(hour) - width / 2, sheet.area.top() - 7), text);
    }
    const int step = std::max(1, static_cast<int>(std::ceil(metrics.height() / sheet.row())));
    for (int night = 1; night <= sheet.nights; night += step) {
        painter.drawText(QRectF(2, sheet.y(night), kLeft - 8, sheet.row()), Qt::AlignRight | Qt::AlignVCenter,
                         tr("night %1").arg(night));
    }
    paintOutline(painter, style, 2.2,
                 QRectF(sheet.area.left() - 2, sheet.y(shown), sheet.area.width() + 4, sheet.row()));
    paintScale(painter, style,
               QRectF(sheet.area.right() + 16, sheet.area.top() + 18, 12, sheet.area.height() * 0.6), top);
}

QString headlineOf(const Outcome& outcome, std::size_t run, const engine::HoursBelow& below) {
    const QString name = rampText(outcome.comparison.runs[run].name, run);
    if (below.hours == 0) {
        const double stress = outcome.comparison.model.parameters.thresholds.stress;
        return tr("%1: the fish water stays above the stress line of %2 mg/L at every hour.")
            .arg(name, oxygenText(stress));
    }
    const int worst = below.worstHour();
    return tr("%1: %2 hours below the stress line, most often at %3 (%4 of %5 nights).")
        .arg(name)
        .arg(below.hours)
        .arg(clockText(worst * engine::kHour))
        .arg(below.nightsAt[static_cast<std::size_t>(worst)])
        .arg(outcome.comparison.days);
}

QString inWords(const QString& headline, const QString& detail, const engine::HoursBelow& below) {
    QStringList words{headline, detail};
    for (std::size_t hour = 0; hour < below.nightsAt.size(); ++hour) {
        if (below.nightsAt[hour] > 0) {
            words << tr("%1: %2 nights below.")
                         .arg(clockText(static_cast<double>(hour) * engine::kHour))
                         .arg(below.nightsAt[hour]);
        }
    }
    return words.join(QLatin1Char(' '));
}

/// What a cell of the sheet shows.
QString readOut(const Outcome& outcome, std::size_t run, const QRectF& whole, const QPointF& place) {
    const auto cell = Sheet(whole, outcome.comparison.days).at(place);
    if (!cell) {
        return {};
    }
    const double time = engine::noonOf(cell->first) + std::floor(cell->second) * engine::kHour;
    const engine::HourRow* hour = engine::hourNear(outcome.comparison.runs[run], time, 1.0);
    return hour == nullptr ? QString()
                           : tr("Night %1, %2: %3 mg/L; air on %4 % of the hour.")
                                 .arg(cell->first)
                                 .arg(clockText(time), oxygenText(hour->fishWater))
                                 .arg(std::lround(100.0 * hour->running));
}

}  // namespace

Picture hoursPicture(const OutcomePtr& outcome, const Selection& selection) {
    const std::size_t run = shownRun(*outcome, selection);
    const double stress = outcome->comparison.model.parameters.thresholds.stress;
    const double top = std::max(6.0, std::ceil(highestFishWater(outcome->comparison, stress)));
    const engine::HoursBelow below = engine::hoursBelow(outcome->comparison.runs[run], stress);
    Picture picture;
    picture.headline = headlineOf(*outcome, run, below);
    picture.detail =
        tr("Colour is oxygen in the fish water, hatched below the stress line, closely below the lethal one; "
           "outlined: air runs; upright strokes: sunset and sunrise.");
    picture.words = inWords(picture.headline, picture.detail, below);
    picture.draw = [outcome, run, top, night = selection.night()](QCustomPlot& plot, const PlotStyle& style) {
        addCanvas(plot, style, [=](QCPPainter& painter, const QRectF& whole) {
            painter.setAntialiasing(false);
            paint(painter, whole, *outcome, run, top, night, style);
        });
    };
    picture.csv = [outcome, run] { return engine::nightHoursCsv(outcome->comparison, run); };
    picture.readOut = [outcome, run](const QRectF& whole, const QPointF& place) {
        return readOut(*outcome, run, whole, place);
    };
    picture.click = [outcome](const QRectF& whole, const QPointF& place, Selection& to) {
        if (const auto cell = Sheet(whole, outcome->comparison.days).at(place)) {
            to.setNight(cell->first);
            to.setCursor(engine::noonOf(cell->first) + cell->second * engine::kHour);
        }
    };
    picture.at = [outcome, run](double time) {
        const engine::HourRow* hour = engine::hourNear(outcome->comparison.runs[run], time);
        return hour == nullptr
                   ? QString()
                   : tr("%1: %2 mg/L in the fish water").arg(clockText(time), oxygenText(hour->fishWater));
    };
    return picture;
}

}  // namespace widgets
