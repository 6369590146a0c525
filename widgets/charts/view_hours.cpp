// Hour by day: a calendar sheet, days down and hours across from noon to noon, oxygen as colour, runs
// outlined, hatched where the fish water is below the stress line.

#include "engine/base/text.h"
#include "engine/base/units.h"
#include "engine/output/results_io.h"
#include "widgets/charts/chart_parts.h"
#include "widgets/charts/picture.h"
#include "widgets/document/to_qstring.h"
#include "widgets/document/wording.h"

#include <QCoreApplication>
#include <qcustomplot.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace widgets {
namespace {

constexpr double kLeft = 62.0, kRight = 58.0, kTop = 26.0, kBottom = 10.0;

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

int nightOf(double time) {
    return static_cast<int>(std::floor(time / engine::kDay - 0.5 + 1e-9)) + 1;
}

/// Outlines of the runs, in pieces of nights.
void paintRuns(QCPPainter& painter, const engine::Schedule& schedule, const Sheet& sheet,
               const PlotStyle& style) {
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(style.ink, 1.6));
    for (const engine::RunBlock& block : engine::joined(schedule)) {
        for (int night = std::max(1, nightOf(block.start)); night <= sheet.nights; ++night) {
            const double noon = (night - 0.5) * engine::kDay;
            const double from = std::max(block.start, noon), to = std::min(block.end, noon + engine::kDay);
            if (noon > block.end) {
                break;
            }
            if (from < to) {
                const double left = sheet.x((from - noon) / engine::kHour),
                             right = sheet.x((to - noon) / engine::kHour);
                painter.drawRect(
                    QRectF(left, sheet.y(night) + 1.5, std::max(right - left, 2.0), sheet.row() - 3.0));
            }
        }
    }
}

void paint(QCPPainter& painter, const QRectF& whole, const Outcome& outcome, std::size_t run, double top,
           int shown, const PlotStyle& style) {
    const Sheet sheet(whole, outcome.comparison.days);
    const engine::RampRun& rows = outcome.comparison.runs[run];
    const double stress = outcome.comparison.model.parameters.thresholds.stress;
    const double lethal = outcome.comparison.model.parameters.thresholds.lethal;
    const QFontMetricsF metrics(style.font);
    for (const engine::HourRow& hour : rows.hours) {
        const int night = nightOf(hour.time);
        const double after = (hour.time - (night - 0.5) * engine::kDay) / engine::kHour;
        if (night < 1 || night > sheet.nights) {
            continue;
        }
        const QRectF cell(sheet.x(after), sheet.y(night), sheet.area.width() / 24.0 + 0.5, sheet.row() + 0.5);
        const QColor colour = depthOfColour(style, hour.fishWater / top);
        painter.fillRect(cell.intersected(sheet.area), colour);
        if (hour.fishWater < stress) {
            const QPen pen(hour.fishWater < lethal ? style.lethalInk : mixed(colour, style.stressInk, 0.75),
                           hour.fishWater < lethal ? 1.4 : 0.8);
            hatch(painter, cell.intersected(sheet.area), pen, hour.fishWater < lethal ? 5.0 : 8.0);
        }
    }
    painter.setPen(QPen(style.hairline, 0));
    for (int night = 1; night <= sheet.nights + 1; ++night) {
        painter.drawLine(QPointF(sheet.area.left(), sheet.y(night)),
                         QPointF(sheet.area.right(), sheet.y(night)));
    }
    painter.drawLine(QPointF(sheet.x(12), sheet.area.top()), QPointF(sheet.x(12), sheet.area.bottom()));
    // Sunset and sunrise from row to row.
    painter.setPen(QPen(style.quietInk, 1.2));
    for (const engine::NightSky& sky : outcome.backdrop.nights) {
        const double noon = (sky.night - 0.5) * engine::kDay;
        for (const auto& edge : {sky.sunset, sky.sunrise}) {
            if (edge) {
                const double x = sheet.x((*edge - noon) / engine::kHour);
                painter.drawLine(QPointF(x, sheet.y(sky.night)), QPointF(x, sheet.y(sky.night + 1)));
            }
        }
    }
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
    painter.setPen(QPen(style.ink, 2.2));
    painter.drawRect(QRectF(sheet.area.left() - 2, sheet.y(shown), sheet.area.width() + 4, sheet.row()));
    paintScale(painter, style,
               QRectF(sheet.area.right() + 16, sheet.area.top() + 18, 12, sheet.area.height() * 0.6), top);
}

}  // namespace

Picture hoursPicture(const OutcomePtr& outcome, const Selection& selection) {
    const std::size_t run = shownRun(*outcome, selection);
    const engine::RampRun& rows = outcome->comparison.runs[run];
    const double stress = outcome->comparison.model.parameters.thresholds.stress;
    const double top = std::max(6.0, std::ceil(highestFishWater(outcome->comparison, stress)));
    std::array<int, 24> belowAt{};
    int below = 0;
    for (const engine::HourRow& hour : rows.hours) {
        if (hour.fishWater < stress && nightOf(hour.time) >= 1) {
            ++below;
            ++belowAt[static_cast<std::size_t>(((std::lround(hour.time / engine::kHour) % 24) + 24) % 24)];
        }
    }
    const auto worst = std::max_element(belowAt.begin(), belowAt.end());
    Picture picture;
    const QString name = rampText(rows.name, run);
    picture.headline = below == 0
                           ? tr("%1: the fish water stays above the stress line of %2 mg/L at every hour.")
                                 .arg(name, oxygenText(stress))
                           : tr("%1: %2 hours below the stress line, most often at %3 (%4 of %5 nights).")
                                 .arg(name)
                                 .arg(below)
                                 .arg(clockText(static_cast<double>(worst - belowAt.begin()) * engine::kHour))
                                 .arg(*worst)
                                 .arg(outcome->comparison.days);
    picture.detail =
        tr("Colour is oxygen in the fish water, hatched below the stress line, closely below the lethal one; "
           "outlined: air runs; upright strokes: sunset and sunrise.");
    QStringList words{picture.headline, picture.detail};
    for (std::size_t hour = 0; hour < belowAt.size(); ++hour) {
        if (belowAt[hour] > 0) {
            words << tr("%1: %2 nights below.")
                         .arg(clockText(static_cast<double>(hour) * engine::kHour))
                         .arg(belowAt[hour]);
        }
    }
    picture.words = words.join(QLatin1Char(' '));
    picture.draw = [outcome, run, top, night = selection.night()](QCustomPlot& plot, const PlotStyle& style) {
        addCanvas(plot, style, [=](QCPPainter& painter, const QRectF& whole) {
            painter.setAntialiasing(false);
            paint(painter, whole, *outcome, run, top, night, style);
        });
    };
    picture.csv = [outcome, run] {
        std::string csv = "ramp,night,time_h,fish_water_mg_per_l,running\r\n";
        const engine::RampRun& all = outcome->comparison.runs[run];
        for (const engine::HourRow& hour : all.hours) {
            csv += engine::csvField(all.name) + ',' + std::to_string(nightOf(hour.time)) + ',' +
                   engine::shortest(hour.time / engine::kHour) + ',' + engine::shortest(hour.fishWater) +
                   ',' + engine::shortest(hour.running) + "\r\n";
        }
        return csv;
    };
    picture.readOut = [outcome, run](const QRectF& whole, const QPointF& place) {
        const auto cell = Sheet(whole, outcome->comparison.days).at(place);
        if (!cell) {
            return QString();
        }
        const double time = (cell->first - 0.5) * engine::kDay + std::floor(cell->second) * engine::kHour;
        for (const engine::HourRow& hour : outcome->comparison.runs[run].hours) {
            if (std::abs(hour.time - time) < 1.0) {
                return tr("Night %1, %2: %3 mg/L; air on %4 % of the hour.")
                    .arg(cell->first)
                    .arg(clockText(time), oxygenText(hour.fishWater))
                    .arg(std::lround(100.0 * hour.running));
            }
        }
        return QString();
    };
    picture.click = [outcome](const QRectF& whole, const QPointF& place, Selection& to) {
        if (const auto cell = Sheet(whole, outcome->comparison.days).at(place)) {
            to.setNight(cell->first);
            to.setCursor((cell->first - 0.5) * engine::kDay + cell->second * engine::kHour);
        }
    };
    picture.at = [outcome, run](double time) {
        for (const engine::HourRow& hour : outcome->comparison.runs[run].hours) {
            if (std::abs(hour.time - time) < engine::kHour / 2) {
                return tr("%1: %2 mg/L in the fish water").arg(clockText(time), oxygenText(hour.fishWater));
            }
        }
        return QString();
    };
    return picture;
}

}  // namespace widgets
