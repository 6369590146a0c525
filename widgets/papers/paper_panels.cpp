// The figures of the papers that are drawn on axes of their own.
#include "engine/ensemble/chances.h"
#include "engine/output/run_list.h"
#include "engine/ramps/weather.h"
#include "engine/run/budget.h"
#include "engine/run/shares.h"
#include "widgets/charts/chart_parts.h"
#include "widgets/charts/night_scene.h"
#include "widgets/controls/plot_style.h"
#include "widgets/document/wording.h"
#include "widgets/papers/paper_axes.h"
#include "widgets/papers/paper_figures.h"
#include "widgets/papers/paper_run.h"

#include <QCoreApplication>
#include <qcustomplot.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace widgets {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("PaperFigure", text);
}

QString dayText(const engine::Pond& pond, int day) {
    return paperDay(engine::dateOfDay(pond, day));
}

/// Days at which an axis is named, at most about `most` of them.
std::vector<int> namedDays(int days, int most) {
    const int step = std::max(1, (days + most - 1) / most);
    std::vector<int> named;
    for (int day = 1; day <= days; day += step) {
        named.push_back(day);
    }
    return named;
}

struct LowsPanel {
    QString name, low;
    std::size_t look = 0;
    std::vector<double> night, p05, p25, p50, p75, p95, central;
};

LowsPanel lowsPanel(const engine::Comparison& comparison, std::size_t ramp) {
    LowsPanel panel;
    const engine::RampRun& run = comparison.runs[ramp];
    panel.name = rampText(run.name, ramp);
    panel.look = lookOf(comparison, ramp);
    panel.low = tr("worst %1 mg/L").arg(oxygenText(run.worst().lowest));
    const engine::RampEnsemble* members = engine::membersOf(comparison, ramp);
    for (const engine::DayRow& row : run.days) {
        panel.night.push_back(row.day);
        panel.central.push_back(row.lowest);
        if (members != nullptr) {
            const engine::Percentiles& own = members->nightLows[static_cast<std::size_t>(row.day - 1)];
            panel.p05.push_back(own[0]);
            panel.p25.push_back(own[1]);
            panel.p50.push_back(own[2]);
            panel.p75.push_back(own[3]);
            panel.p95.push_back(own[4]);
        }
    }
    return panel;
}

/// Paler than on the screen, so that a grey copy tells them from the bands of the members.
void drawLevels(QPainter& painter, const PaperAxes& axes, const PlotStyle& style,
                const engine::OxygenThresholds& thresholds) {
    constexpr double kShare = 0.31;
    const QRectF area = axes.area();
    const auto fill = [&](double level, const QColor& colour) {
        painter.fillRect(QRectF(QPointF(area.left(), axes.y(level)), area.bottomRight()),
                         mixed(Qt::white, colour, kShare));
    };
    fill(thresholds.stress, style.stress);
    fill(thresholds.lethal, style.lethal);
}

void drawLowsPanel(QPainter& painter, const PaperLook& look, const PaperAxes& axes, double top,
                   const LowsPanel& panel, const engine::Comparison& comparison) {
    const PlotStyle style = PlotStyle::light({});
    const engine::OxygenThresholds& thresholds = comparison.model.parameters.thresholds;
    const QRectF area = axes.area();
    drawLevels(painter, axes, style, thresholds);
    axes.rules(painter, look, oxygenSteps(top, top > 8.0 ? 4.0 : 2.0), 0);
    const QColor line = style.lineColour(panel.look);
    if (!panel.p05.empty()) {
        axes.band(painter, panel.night, panel.p05, panel.p95, mixed(Qt::white, line, 0.25), line);
        axes.band(painter, panel.night, panel.p25, panel.p75, mixed(Qt::white, line, 0.5),
                  mixed(Qt::white, line, 0.5));
    }
    axes.curve(painter, panel.night, panel.central, paperPen(mixed(line, look.ink, 0.4), 1.4));
    for (const auto& [level, ink] :
         {std::pair(thresholds.stress, style.stressInk), std::pair(thresholds.lethal, style.lethalInk)}) {
        painter.setPen(paperPen(ink, 0.8, {4, 2}));
        painter.drawLine(QPointF(area.left(), axes.y(level)), QPointF(area.right(), axes.y(level)));
    }
    const double high = 12.0 * kPoint;
    const QFontMetricsF metrics(look.font(7.5, true));
    const QFontMetricsF small(look.font(7.0));
    const QRectF above(area.left(), area.top() - high, area.width(), high);
    // A long name is cut before the number; whole it stands in the words under the figure.
    const double room = area.width() - small.horizontalAdvance(panel.low) - 6.0 * kPoint;
    painter.setPen(look.ink);
    paperText(painter, look, above, Qt::AlignLeft | Qt::AlignVCenter,
              metrics.elidedText(panel.name, Qt::ElideRight, room), 7.5, true);
    painter.setPen(look.quiet);
    paperText(painter, look, above, Qt::AlignRight | Qt::AlignVCenter, panel.low);
    std::vector<std::pair<double, QString>> names;
    for (const int day : namedDays(comparison.days, 4)) {
        names.emplace_back(day, dayText(comparison.model.pond, day));
    }
    axes.below(painter, look, names);
}

/// Where a profile's depths go: down.
struct DepthAxes {
    QRectF area;
    double deepest = 1.0, high = 1.0;
    [[nodiscard]] QPointF at(double value, double depth) const {
        return {area.left() + value / high * area.width(), area.top() + depth / deepest * area.height()};
    }
};

void drawProfilePanel(QPainter& painter, const PaperLook& look, const DepthAxes& axes, const QString& title,
                      const std::vector<double>& depth, const std::vector<double>& values,
                      const FigureSource& source) {
    const engine::PondModel& model = source.outcome->comparison.model;
    const QRectF& area = axes.area;
    const auto y = [&](double metres) { return axes.at(0, std::min(metres, axes.deepest)).y(); };
    if (model.bottom.exists()) {
        painter.fillRect(QRectF(QPointF(area.left(), y(model.bottom.depth)), area.bottomRight()), look.tint);
    }
    painter.setPen(paperPen(look.quiet, 0.6));
    painter.drawRect(area);
    QPolygonF line;
    for (std::size_t i = 0; i < depth.size(); ++i) {
        line << axes.at(values[i], depth[i]);
    }
    painter.setPen(paperPen(look.accent, 1.4));
    painter.drawPolyline(line);
    painter.setBrush(Qt::white);
    for (const QPointF& point : line) {
        painter.drawEllipse(point, 2.0 * kPoint, 2.0 * kPoint);
    }
    painter.setBrush(Qt::NoBrush);
    painter.setPen(look.quiet);
    for (double metres = 0.0; metres <= axes.deepest; metres += axes.deepest > 4.0 ? 2.0 : 1.0) {
        paperText(painter, look,
                  QRectF(area.left() - 63.0 * kPoint, y(metres) - 6.0 * kPoint, 60.0 * kPoint, 12.0 * kPoint),
                  Qt::AlignRight | Qt::AlignVCenter, source.units.depthCell(metres));
    }
    for (int part = 0; part <= 2; ++part) {
        const double value = axes.high * part / 2;
        paperText(painter, look,
                  QRectF(axes.at(value, 0).x() - 30.0 * kPoint, area.bottom() + 2.0 * kPoint, 60.0 * kPoint,
                         11.0 * kPoint),
                  Qt::AlignHCenter | Qt::AlignTop, fixedText(value, 0));
    }
    painter.setPen(look.ink);
    paperText(painter, look, QRectF(area.left(), area.top() - 12.0 * kPoint, area.width(), 12.0 * kPoint),
              Qt::AlignLeft | Qt::AlignVCenter, title, 7.5, true);
}

/// A round step of an axis from zero to a value, so that the axis has two to five.
double niceStep(double highest) {
    const double step = std::pow(10.0, std::floor(std::log10(highest)));
    return highest / step > 5.0 ? 2.0 * step : highest / step > 2.0 ? step : step / 2.0;
}

/// A number of each day of a run, as bars or as a curve. @param values  Of the days from day 1
void drawDaysPanel(QPainter& painter, const QRectF& area, const engine::Pond& pond, const QString& title,
                   const std::vector<double>& values, bool asBars) {
    const PaperLook look = PaperLook::standard();
    const double highest = std::max(1.0, *std::max_element(values.begin(), values.end()));
    const double unit = niceStep(highest);
    const double top = std::ceil(highest / unit) * unit;
    const PaperAxes axes(area, 0.4, static_cast<double>(values.size()) + 0.6, 0.0, top);
    axes.rules(painter, look, oxygenSteps(top, unit), unit < 1.0 ? 1 : 0);
    std::vector<double> days;
    for (std::size_t i = 0; i < values.size(); ++i) {
        days.push_back(static_cast<double>(i + 1));
    }
    if (asBars) {
        const double wide = 0.7 * (axes.x(2.0) - axes.x(1.0));
        for (std::size_t i = 0; i < values.size(); ++i) {
            painter.fillRect(QRectF(QPointF(axes.x(days[i]) - wide / 2, axes.y(values[i])),
                                    QPointF(axes.x(days[i]) + wide / 2, area.bottom())),
                             look.accent);
        }
    } else {
        axes.curve(painter, days, values, paperPen(look.accent, 1.5));
    }
    std::vector<std::pair<double, QString>> names;
    for (const int at : namedDays(static_cast<int>(values.size()), 4)) {
        names.emplace_back(at, dayText(pond, at));
    }
    axes.below(painter, look, names);
    painter.setPen(look.ink);
    paperText(painter, look, QRectF(area.left(), 0, area.width(), 12.0 * kPoint),
              Qt::AlignLeft | Qt::AlignVCenter, title, 7.5, true);
}

QString termText(std::size_t term) {
    constexpr auto kTexts = std::to_array<const char*>(
        {QT_TRANSLATE_NOOP("PaperFigure", "sun on algae and weeds"),
         QT_TRANSLATE_NOOP("PaperFigure", "breathing of algae and weeds"),
         QT_TRANSLATE_NOOP("PaperFigure", "breathing of the fish"), QT_TRANSLATE_NOOP("PaperFigure", "mud"),
         QT_TRANSLATE_NOOP("PaperFigure", "oxygen debt paid"),
         QT_TRANSLATE_NOOP("PaperFigure", "air at the surface"), QT_TRANSLATE_NOOP("PaperFigure", "bubbles"),
         QT_TRANSLATE_NOOP("PaperFigure", "surface aerator"), QT_TRANSLATE_NOOP("PaperFigure", "spring"),
         QT_TRANSLATE_NOOP("PaperFigure", "bubbles that the water gives off")});
    static_assert(kTexts.size() == engine::kTerms);
    return tr(kTexts[term]);
}

}  // namespace

PaperFigure lowsFigure(const FigureSource& source) {
    const engine::Comparison& comparison = source.outcome->comparison;
    std::vector<LowsPanel> panels;
    double highest = comparison.model.parameters.thresholds.stress;
    QStringList lows;
    for (std::size_t i = 0; i < comparison.runs.size(); ++i) {
        if (!isDrawn(comparison.runs[i])) {
            continue;
        }
        panels.push_back(lowsPanel(comparison, i));
        for (const std::vector<double>* values : {&panels.back().central, &panels.back().p95}) {
            highest = values->empty() ? highest
                                      : std::max(highest, *std::max_element(values->begin(), values->end()));
        }
        lows << tr("%1: worst night %2 with %3 mg/L")
                    .arg(panels.back().name)
                    .arg(comparison.runs[i].worst().day)
                    .arg(oxygenText(comparison.runs[i].worst().lowest));
    }
    const double top = axisTop(highest);
    const int perRow = panels.size() <= 2 ? 2 : 3;
    const int rows = (static_cast<int>(panels.size()) + perRow - 1) / perRow;
    const double high = 43.0 * kMillimetre;
    PaperFigure figure;
    figure.width = source.width;
    figure.height = rows * high;
    figure.paint = [=, outcome = source.outcome](QCPPainter& painter) {
        const PaperLook look = PaperLook::standard();
        const double wide = figure.width / perRow;
        for (std::size_t i = 0; i < panels.size(); ++i) {
            const int column = static_cast<int>(i) % perRow, row = static_cast<int>(i) / perRow;
            const QRectF area(column * wide + 16.0 * kPoint, row * high + 14.0 * kPoint, wide - 28.0 * kPoint,
                              high - 32.0 * kPoint);
            const PaperAxes axes(area, 1.0, std::max(2, outcome->comparison.days), 0.0, top);
            drawLowsPanel(painter, look, axes, top, panels[i], outcome->comparison);
        }
    };
    const bool hasMembers = engine::membersOf(comparison, 0) != nullptr;
    const QString bands =
        hasMembers ? tr(" Pale band: nine of ten ponds like this one; dark band: half of them.") : QString();
    figure.caption = tr("**Low of every night under each ramp**, fish-water oxygen in mg/L, all on the same "
                        "axes.%1 Line: every "
                        "input at its value. Dashed: stress and lethal line.")
                         .arg(bands);
    figure.words = tr("In words: %1.").arg(lows.join(QStringLiteral("; ")));
    return figure;
}

PaperFigure doseFigure(const FigureSource& source) {
    const engine::Comparison& comparison = source.outcome->comparison;
    std::vector<double> dose, left;
    for (const engine::DayRow& row : comparison.runs[source.plan].days) {
        dose.push_back(engine::doseOf(comparison.model, row));
        left.push_back(100.0 * row.debtLeft);
    }
    PaperFigure figure;
    figure.width = source.width;
    figure.height = 46.0 * kMillimetre;
    figure.paint = [=, outcome = source.outcome](QCPPainter& painter) {
        const double half = figure.width / 2;
        const engine::Pond& pond = outcome->comparison.model.pond;
        const auto panel = [&](double x, const QString& title, const std::vector<double>& values,
                               bool asBars) {
            const QRectF area(x + 24.0 * kPoint, 14.0 * kPoint, half - 36.0 * kPoint,
                              figure.height - 30.0 * kPoint);
            drawDaysPanel(painter, area, pond, title, values, asBars);
        };
        panel(0, tr("dose, % of the bottom water a day"), dose, true);
        panel(half, tr("oxygen debt left, % of the start"), left, false);
    };
    figure.caption =
        tr("**What the ramp lifts and what is left.** Left: share of the bottom water lifted each day. "
           "Right: oxygen "
           "debt of the whole pond at the next midnight; it may rise above 100 %.");
    figure.words = tr("In words: the largest dose is %1 %; after %2 days %3 % of the debt is left.")
                       .arg(fixedText(*std::max_element(dose.begin(), dose.end()), 0))
                       .arg(dose.size())
                       .arg(fixedText(left.back(), 0));
    return figure;
}

PaperFigure profileFigure(const FigureSource& source) {
    const engine::PondModel& model = source.outcome->comparison.model;
    PaperFigure figure;
    figure.width = source.width;
    figure.height = 52.0 * kMillimetre;
    figure.paint = [=](QCPPainter& painter) {
        const PaperLook look = PaperLook::standard();
        const engine::Profile& profile = source.outcome->comparison.model.profile;
        const double half = figure.width / 2, deepest = source.outcome->comparison.model.basin.maxDepth();
        const auto panel = [&](double x, const QString& title, const std::vector<double>& values,
                               double step) {
            const double highest = std::max(step, *std::max_element(values.begin(), values.end()));
            const DepthAxes axes{
                QRectF(x + 66.0 * kPoint, 14.0 * kPoint, half - 82.0 * kPoint, figure.height - 28.0 * kPoint),
                deepest, std::ceil(highest / step) * step};
            drawProfilePanel(painter, look, axes, title, profile.depth, values, source);
        };
        panel(0, tr("temperature, \u00b0C"), profile.temperature, 10.0);
        panel(half, tr("oxygen, mg/L"), profile.oxygen, 4.0);
    };
    const QString bottom =
        model.bottom.exists()
            ? tr(" Tinted: the bottom water, below %1.").arg(source.units.depth(model.bottom.depth))
            : tr(" The pond is mixed: it has no bottom water.");
    figure.caption = (model.profileIsGuess
                          ? tr("**Temperature and oxygen by depth, guessed:** there is no measured profile.")
                          : tr("**Temperature and oxygen by depth, as measured.**")) +
                     tr(" Depth in %1, downwards.").arg(source.units.depthHead()) + bottom;
    return figure;
}

PaperFigure budgetFigure(const FigureSource& source) {
    const engine::Comparison& comparison = source.outcome->comparison;
    const engine::RampRun& run = comparison.runs[source.plan];
    const int day = run.worst().day;
    const engine::BudgetRow* row = engine::budgetOn(run, day);
    const engine::BudgetTerms terms = row != nullptr ? engine::kilogramsOf(*row) : engine::BudgetTerms{};
    std::vector<std::pair<QString, double>> bars;
    double longest = 1e-6;
    QStringList words;
    for (std::size_t term = 0; term < terms.size(); ++term) {
        const double kilograms = terms[term];
        if (std::fabs(kilograms) > 1e-9) {
            bars.emplace_back(termText(term), kilograms);
            longest = std::max(longest, std::fabs(kilograms));
            words << tr("%1 %2").arg(bars.back().first, fixedText(kilograms, 1));
        }
    }
    PaperFigure figure;
    figure.width = source.width;
    figure.height = (static_cast<double>(bars.size()) * 13.0 + 4.0) * kPoint;
    figure.paint = [=](QCPPainter& painter) {
        const PaperLook look = PaperLook::standard();
        const double names = 130.0 * kPoint, middle = names + (figure.width - names) / 2;
        const double perKilogram = (figure.width - names - 70.0 * kPoint) / 2 / longest;
        double y = 0.0;
        for (const auto& [name, kilograms] : bars) {
            const double to = middle + kilograms * perKilogram, high = 13.0 * kPoint;
            painter.setPen(look.ink);
            paperText(painter, look, QRectF(0, y, names, high), Qt::AlignLeft | Qt::AlignVCenter, name, 8.0);
            const QRectF bar(QPointF(std::min(middle, to), y + 2.5 * kPoint),
                             QPointF(std::max(middle, to), y + high - 2.5 * kPoint));
            painter.fillRect(bar, kilograms > 0.0 ? look.accent : look.hairline);
            const bool isGain = kilograms > 0.0;
            const QRectF beside(isGain ? to + 3.0 * kPoint : to - 43.0 * kPoint, y, 40.0 * kPoint, high);
            paperText(painter, look, beside, (isGain ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter,
                      fixedText(kilograms, 1), 7.5);
            y += high;
        }
        painter.setPen(paperPen(look.ink, 0.7));
        painter.drawLine(QPointF(middle, 0), QPointF(middle, y));
    };
    figure.caption = tr("**Oxygen gained and used on day %1 of the ramp** (%2), kg in the whole pond. To the "
                        "right: gained; to the "
                        "left: used.")
                         .arg(day)
                         .arg(dayText(comparison.model.pond, day));
    figure.words = tr("In words: %1.").arg(words.join(QStringLiteral("; ")));
    return figure;
}

}  // namespace widgets
