#include "widgets/paper_figures.h"

#include "engine/local_time.h"
#include "engine/results_io.h"
#include "engine/units.h"
#include "widgets/chart_parts.h"
#include "widgets/night_plot.h"
#include "widgets/paper_axes.h"
#include "widgets/sheets.h"
#include "widgets/shown.h"
#include "widgets/whole_run_plot.h"
#include "widgets/wording.h"

#include <QCoreApplication>
#include <qcustomplot.h>

#include <algorithm>
#include <cmath>

namespace widgets {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("PaperFigure", text);
}

/// The charts' own style on white paper, in the papers' type.
PlotStyle paperStyle() {
    const PaperLook look = PaperLook::standard();
    QFont font(look.family);
    font.setPointSizeF(8.5);
    font.setHintingPreference(QFont::PreferNoHinting);
    font.setLetterSpacing(QFont::AbsoluteSpacing, 0.01);
    PlotStyle style = PlotStyle::light(font);
    const QColor dusk(0x6f, 0x7f, 0xb0);
    style.paper = Qt::white;
    style.ink = look.ink;
    style.hairline = look.hairline;
    style.night[0] = mixed(style.paper, dusk, 0.06);
    style.night[1] = mixed(style.paper, dusk, 0.12);
    style.night[2] = mixed(style.paper, dusk, 0.19);
    return style;
}

/// A drawing of the charts as a figure. @param draw  Into a plot of a size in dots.
std::function<void(QCPPainter&)> plotted(const QSizeF& size,
                                         std::function<void(QCustomPlot&, const PlotStyle&)> draw) {
    return [size, draw = std::move(draw)](QCPPainter& painter) {
        QCustomPlot plot;
        const QSize dots = (size / kPixel).toSize();
        const PlotStyle style = paperStyle();
        plot.setFont(style.font);
        plot.setViewport(QRect(QPoint(0, 0), dots));
        draw(plot, style);
        painter.scale(kPixel, kPixel);
        plot.toPainter(&painter, dots.width(), dots.height());
    };
}

struct HourBand {
    QVector<double> hour, low, high;
};

/// 5 to 95 % of a ramp's fish water in one night, hours after noon.
HourBand bandOf(const engine::Comparison& comparison, std::size_t ramp, int night) {
    HourBand band;
    const engine::RampEnsemble* members = engine::membersOf(comparison, ramp);
    if (members == nullptr) {
        return band;
    }
    for (std::size_t i = 0; i < members->hours.size(); ++i) {
        const double hour = (members->hours[i] - (night - 0.5) * engine::kDay) / engine::kHour;
        if (hour >= -1e-6 && hour <= 24.0 + 1e-6) {
            band.hour << hour;
            band.low << members->fishWater[i].front();
            band.high << members->fishWater[i].back();
        }
    }
    return band;
}

/// Puts a band under the curves of a night that is drawn already.
void addBand(QCustomPlot& plot, const HourBand& band, const QColor& edge, const QBrush& fill) {
    if (plot.layer(QStringLiteral("band")) == nullptr) {
        plot.addLayer(QStringLiteral("band"), plot.layer(QStringLiteral("main")), QCustomPlot::limBelow);
    }
    QCPAxisRect* rect = plot.axisRect();
    QCPGraph* ends[2] = {nullptr, nullptr};
    for (int i = 0; i < 2; ++i) {
        ends[i] = plot.addGraph(rect->axis(QCPAxis::atBottom), rect->axis(QCPAxis::atLeft));
        ends[i]->setData(band.hour, i == 0 ? band.high : band.low, true);
        ends[i]->setPen(QPen(edge, 0.8));
        ends[i]->setLayer(QStringLiteral("band"));
    }
    ends[0]->setBrush(fill);
    ends[0]->setChannelFillGraph(ends[1]);
}

/// Lines that a band must not hide.
void addLines(QCustomPlot& plot, const NightScene& scene, const PlotStyle& style) {
    for (const auto& [level, ink] :
         {std::pair(scene.stress, style.stressInk), std::pair(scene.lethal, style.lethalInk)}) {
        QCPGraph* line =
            plot.addGraph(plot.axisRect()->axis(QCPAxis::atBottom), plot.axisRect()->axis(QCPAxis::atLeft));
        line->setData({0.0, 24.0}, {level, level}, true);
        line->setPen(QPen(ink, 0.9));
        line->setLayer(QStringLiteral("band"));
    }
}

}  // namespace

PaperFigure nightFigure(const FigureSource& source, double height) {
    const engine::Comparison& comparison = source.outcome->comparison;
    Selection selection;
    selection.setExtent(comparison.days, comparison.runs.size());
    selection.setRamp(source.plan);
    selection.setNight(worstNight(comparison));
    NightScene scene = nightScene(*source.outcome, selection, {false, false});
    std::erase_if(scene.lines, [&](const NightLine& line) {
        return line.look != 0 && line.look != source.plan && line.look != source.fast;
    });
    for (NightLine& line : scene.lines) {
        line.isLowSaid = line.look != 0;
    }
    scene.readings.clear();
    std::vector<std::pair<std::size_t, HourBand>> bands;
    if (source.fast) {
        bands.emplace_back(*source.fast, bandOf(comparison, *source.fast, selection.night()));
    }
    bands.emplace_back(source.plan, bandOf(comparison, source.plan, selection.night()));
    double highest = scene.top;
    for (const auto& [ramp, band] : bands) {
        highest = band.high.isEmpty()
                      ? highest
                      : std::max(highest, *std::max_element(band.high.begin(), band.high.end()));
    }
    scene.top = axisTop(highest);
    PaperFigure figure;
    figure.width = source.width;
    figure.height = height;
    figure.paint = plotted(QSizeF(figure.width, height), [=](QCustomPlot& plot, const PlotStyle& style) {
        drawNight(plot, scene, style);
        for (const auto& [ramp, band] : bands) {
            if (!band.hour.isEmpty()) {
                const QColor line = style.lineColour(ramp);
                addBand(plot, band, line,
                        ramp == source.plan ? QBrush(mixed(style.paper, line, 0.28))
                                            : QBrush(mixed(style.paper, line, 0.55), Qt::BDiagPattern));
            }
        }
        if (plot.layer(QStringLiteral("band")) != nullptr) {
            addLines(plot, scene, style);
        }
    });
    QStringList lows;
    for (const NightLine& line : scene.lines) {
        lows << tr("%1: low of %2 mg/L at %3").arg(line.name, oxygenText(line.low), clockText(line.lowTime));
    }
    const QString bandText = bands.back().second.hour.isEmpty()
                                 ? QString()
                                 : tr(" Tinted and hatched: where nine of ten ponds like this one run.");
    figure.caption = tr("**The worst night, %1.** Oxygen in the fish water from noon to noon, mg/L.%2")
                         .arg(nightName(*source.outcome, selection.night()), bandText);
    figure.words = tr("In words: %1.").arg(lows.join(QStringLiteral("; ")));
    return figure;
}

PaperFigure wholeRunFigure(const FigureSource& source) {
    const engine::Comparison& comparison = source.outcome->comparison;
    PaperFigure figure;
    figure.width = source.width;
    figure.height = 82.0 * kMillimetre;
    figure.paint =
        plotted(QSizeF(figure.width, figure.height),
                [outcome = source.outcome, plan = source.plan](QCustomPlot& plot, const PlotStyle& style) {
                    Selection selection;
                    selection.setExtent(outcome->comparison.days, outcome->comparison.runs.size());
                    selection.setRamp(plan);
                    selection.setNight(worstNight(outcome->comparison));
                    drawWholeRun(plot, outcome, selection, style);
                });
    figure.caption = tr("**The whole run, %1 days from %2.** Fish-water oxygen under every ramp (mg/L), when "
                        "the air runs, and the "
                        "weather that was taken. Framed: the worst night.")
                         .arg(comparison.days)
                         .arg(shown(engine::formatDate(*comparison.model.pond.place.firstDay)));
    return figure;
}

}  // namespace widgets
