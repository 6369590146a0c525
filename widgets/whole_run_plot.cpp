#include "widgets/whole_run_plot.h"

#include "engine/csv_table.h"
#include "engine/results_io.h"
#include "engine/text.h"
#include "engine/units.h"
#include "engine/weather.h"
#include "widgets/chart_parts.h"
#include "widgets/wording.h"

#include <QCoreApplication>
#include <QLocale>
#include <qcustomplot.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace widgets {
namespace {

// Over more days dashes swallow whole nights, and painting them takes seconds.
constexpr int kMostDashedDays = 21;
constexpr int kLeft = 76, kRight = 12;  // [px]; the strip's names stand at the left

QString tr(const char* text) {
    return QCoreApplication::translate("WholeRunPlot", text);
}

/// The air of one calendar day.
struct DayOfAir {
    double lowest = 1e9, highest = -1e9;  // [degC]
    double wind = 0.0, cloud = 0.0;       // means
    int hours = 0;
};

std::map<int, DayOfAir> daysOfAir(const Outcome& outcome) {
    std::map<int, DayOfAir> days;
    for (const engine::AirHour& hour : outcome.backdrop.hours) {
        DayOfAir& day = days[static_cast<int>(std::floor(hour.time / engine::kDay)) + 1];
        day.lowest = std::min(day.lowest, hour.air);
        day.highest = std::max(day.highest, hour.air);
        day.wind += hour.wind;
        day.cloud += hour.cloud;
        ++day.hours;
    }
    for (auto& [number, day] : days) {
        day.wind /= day.hours;
        day.cloud /= day.hours;
    }
    return days;
}

double firstDayOf(const Outcome& outcome) {
    return outcome.comparison.model.startTime / engine::kDay;
}

std::vector<Shade> allNights(const Outcome& outcome) {
    std::vector<Shade> shades;
    for (const engine::NightSky& sky : outcome.backdrop.nights) {
        if (sky.sunset && sky.sunrise) {
            shades.push_back({*sky.sunset / engine::kDay, *sky.sunrise / engine::kDay, 1});
        }
    }
    return shades;
}

/// Day numbers in the middle of their days, as many as fit.
std::vector<std::pair<double, QString>> dayLabels(int days, double width, const QFontMetricsF& metrics) {
    const double one = metrics.horizontalAdvance(tr("day %1").arg(88)) + 10;
    const int step = std::max(1, static_cast<int>(std::ceil(one * days / std::max(width, 1.0))));
    std::vector<std::pair<double, QString>> labels;
    for (int day = 1; day <= days; day += step) {
        labels.emplace_back(day - 0.5, tr("day %1").arg(day));
    }
    return labels;
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
                                 style.lineColour(i));
            }
        }
    }
    painter.setPen(style.quietInk);
    painter.drawText(QRectF(2, area.top(), area.left() - 8, area.height()), Qt::AlignLeft | Qt::AlignVCenter,
                     tr("air on"));
}

/// Three rows of the weather: air, cloud, wind; a number a day where it fits.
void paintWeather(QCPPainter& painter, const QCPAxisRect& of, const Outcome& outcome,
                  const PlotStyle& style) {
    const QCPAxis* across = of.axis(QCPAxis::atBottom);
    const QRectF area = of.rect();
    const double row = area.height() / 3.0;
    QFont font = style.font;
    font.setPointSizeF(font.pointSizeF() * 0.85);
    painter.setFont(font);
    const QFontMetricsF metrics(font);
    const auto cell = [&](const QRectF& box, const QString& text, const QColor& ink) {
        if (metrics.horizontalAdvance(text) + 2 <= box.width()) {
            painter.setPen(ink);
            painter.drawText(box, Qt::AlignCenter, text);
        }
    };
    for (const auto& [number, day] : daysOfAir(outcome)) {
        const double from = std::max(area.left(), across->coordToPixel(number - 1.0));
        const double to = std::min(area.right(), across->coordToPixel(number));
        if (to - from < 1.0) {
            continue;
        }
        const QRectF air(from, area.top(), to - from, row), cloud(from, area.top() + row, to - from, row),
            wind(from, area.top() + 2 * row, to - from, row);
        const QColor ink = number > outcome.backdrop.lastWeatherDay ? style.quietInk : style.ink;
        const QString high = QString::number(std::lround(day.highest)),
                      low = QString::number(std::lround(day.lowest));
        const QString both = low + QStringLiteral("\u2013") + high;
        cell(air, metrics.horizontalAdvance(both) + 2 <= air.width() ? both : high, ink);
        const QColor grey = mixed(style.paper, style.quietInk, 0.55 * day.cloud);
        painter.fillRect(cloud.adjusted(0.5, 1, -0.5, -1), grey);
        cell(cloud, QString::number(std::lround(100.0 * day.cloud)),
             contrast(ink, grey) > 3.0 ? ink : style.paper);
        cell(wind, QLocale().toString(day.wind, 'f', 1), ink);
    }
    painter.setPen(style.quietInk);
    const QStringList names{tr("air, \u00b0C"), tr("cloud, %"), tr("wind, m/s")};
    for (int i = 0; i < 3; ++i) {
        painter.drawText(QRectF(2, area.top() + i * row, area.left() - 4, row),
                         Qt::AlignLeft | Qt::AlignVCenter, names[i]);
    }
    painter.setFont(style.font);
}

QCPAxisRect* addRect(QCustomPlot& plot, int row, const QMargins& margins) {
    auto* rect = new QCPAxisRect(&plot, false);  // owned by the layout
    plot.plotLayout()->addElement(row, 0, rect);
    rect->setAutoMargins(QCP::msNone);
    rect->setMargins(margins);
    return rect;
}

void hideAxes(QCPAxisRect& rect) {
    for (QCPAxis* axis : rect.axes()) {
        axis->setTickLabels(false);
    }
}

void addCurves(QCPAxisRect& rect, const Outcome& outcome, std::size_t selected, const PlotStyle& style) {
    const auto& runs = outcome.comparison.runs;
    for (const std::size_t i : drawingOrder(outcome.comparison, selected)) {
        std::vector<double> day, oxygen;
        for (const engine::HourRow& hour : runs[i].hours) {
            day.push_back(hour.time / engine::kDay);
            oxygen.push_back(hour.fishWater);
        }
        QPen pen = style.linePen(i, false);
        pen.setWidthF(i == selected ? 1.7 : 1.0);
        if (outcome.comparison.days > kMostDashedDays) {
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
    const double first = firstDayOf(outcome), last = outcome.comparison.days + 0.5;
    const double top =
        axisTop(highestFishWater(outcome.comparison, outcome.comparison.model.parameters.lines.stress));

    QCPAxisRect* curves = addRect(plot, 0, QMargins(kLeft, text + 8, kRight, 4));
    dress(*curves, style, first, last, top, {});
    const QSharedPointer<QCPAxisTickerFixed> steps(new QCPAxisTickerFixed);
    steps->setTickStep(4.0);
    curves->axis(QCPAxis::atLeft)->setTicker(steps);
    Ground ground;
    ground.shades = allNights(outcome);
    ground.stress = outcome.comparison.model.parameters.lines.stress;
    ground.lethal = outcome.comparison.model.parameters.lines.lethal;
    ground.rules = oxygenSteps(top, 4.0);
    addGround(*curves, style, std::move(ground));
    addCurves(*curves, outcome, selection.ramp(), style);
    addPainted(
        *curves, style, [style, night = selection.night()](QCPPainter& painter, const QCPAxisRect& of) {
            const QCPAxis* across = of.axis(QCPAxis::atBottom);
            const QFontMetricsF font(style.font);
            painter.setPen(QPen(style.ink, 1.5));
            const double left = std::max(across->coordToPixel(night - 0.5), 1.0 * of.rect().left());
            painter.drawRect(QRectF(left, of.rect().top() - 2.0, across->coordToPixel(night + 0.5) - left,
                                    of.rect().height() + 4.0));
            painter.setPen(style.quietInk);
            painter.drawText(QPointF(2, font.ascent() + 1),
                             tr("oxygen in the fish water over the whole run, mg/L"));
        });

    QCPAxisRect* air = addRect(plot, 1, QMargins(kLeft, 2, kRight, 2));
    dress(*air, style, first, last, 1.0, {});
    hideAxes(*air);
    air->setMinimumSize(10, runsHeight);
    air->setMaximumSize(QWIDGETSIZE_MAX, runsHeight + 4);
    Ground quiet;
    quiet.shades = allNights(outcome);
    addGround(*air, style, quiet);
    addPainted(*air, style,
               [shared, style, selected = selection.ramp()](QCPPainter& painter, const QCPAxisRect& of) {
                   paintRuns(painter, of, *shared, selected, style);
               });

    QCPAxisRect* weather = addRect(plot, 2, QMargins(kLeft, 2, kRight, text + 8));
    dress(*weather, style, first, last, 1.0,
          dayLabels(outcome.comparison.days, plot.viewport().width() - kLeft - kRight, metrics));
    weather->axis(QCPAxis::atLeft)->setTickLabels(false);
    weather->setMinimumSize(10, weatherHeight);
    weather->setMaximumSize(QWIDGETSIZE_MAX, weatherHeight + 2 + text + 8);
    addPainted(*weather, style, [shared, style](QCPPainter& painter, const QCPAxisRect& of) {
        paintWeather(painter, of, *shared, style);
    });
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
    for (const auto& [number, day] : daysOfAir(outcome)) {
        if (number >= 1 && number <= outcome.comparison.days) {
            words << tr("Day %1: %2 to %3 \u00b0C, cloud %4 %, wind %5 m/s.")
                         .arg(QString::number(number), QString::number(std::lround(day.lowest)),
                              QString::number(std::lround(day.highest)),
                              QString::number(std::lround(100.0 * day.cloud)),
                              QLocale().toString(day.wind, 'f', 1));
        }
    }
    return words.join(QLatin1Char(' '));
}

std::string wholeRunCsv(const Outcome& outcome) {
    std::string csv =
        "ramp,time_h,fish_water_mg_per_l,running,air_c,wind_m_per_s,cloud_percent,shortwave_w_per_m2\r\n";
    const auto airAt = [&](double time) -> const engine::AirHour* {
        const auto& hours = outcome.backdrop.hours;
        const auto found =
            std::upper_bound(hours.begin(), hours.end(), time + 1.0,
                             [](double t, const engine::AirHour& hour) { return t < hour.time; });
        return found == hours.begin() ? nullptr : &*(found - 1);
    };
    for (const engine::RampRun& run : outcome.comparison.runs) {
        for (const engine::HourRow& hour : run.hours) {
            csv += engine::csvField(run.name) + ',' + engine::shortest(hour.time / engine::kHour) + ',' +
                   engine::shortest(hour.fishWater) + ',' + engine::shortest(hour.running);
            if (const engine::AirHour* air = airAt(hour.time)) {
                csv += ',' + engine::shortest(air->air) + ',' + engine::shortest(air->wind) + ',' +
                       engine::shortest(100.0 * air->cloud) + ',' + engine::shortest(air->shortwave) + "\r\n";
            } else {
                csv += ",,,,\r\n";
            }
        }
    }
    return csv;
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

double WholeRunPlot::dayAt(const QPointF& place) const {
    return plot().axisRect()->axis(QCPAxis::atBottom)->pixelToCoord(place.x());
}

QString WholeRunPlot::readOut(const QPointF& place) const {
    if (outcome() == nullptr || plot().axisRectCount() == 0) {
        return {};
    }
    const double day = dayAt(place);
    if (day < firstDayOf(*outcome()) || day > outcome()->comparison.days + 0.5) {
        return {};
    }
    QStringList rows{tr("day %1, %2").arg(std::floor(day) + 1).arg(clockText(day * engine::kDay))};
    const auto& runs = outcome()->comparison.runs;
    for (std::size_t i = 0; i < runs.size(); ++i) {
        const auto hour = std::lower_bound(runs[i].hours.begin(), runs[i].hours.end(), day * engine::kDay,
                                           [](const engine::HourRow& row, double t) { return row.time < t; });
        if (isDrawn(runs[i]) && hour != runs[i].hours.end()) {
            rows << tr("%1 mg/L  %2").arg(oxygenText(hour->fishWater), rampText(runs[i].name, i));
        }
    }
    return rows.join(QLatin1Char('\n'));
}

void WholeRunPlot::clicked(const QPointF& place) {
    if (outcome() != nullptr && plot().axisRectCount() > 0) {
        selection().setNight(static_cast<int>(std::floor(dayAt(place) + 0.5)));
    }
}

}  // namespace widgets
