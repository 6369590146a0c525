// Oxygen and temperature by depth: before, and at the dawn of the shown night under each ramp.

#include "engine/output/picture_tables.h"
#include "engine/run/depths.h"
#include "widgets/charts/chart_parts.h"
#include "widgets/charts/picture.h"
#include "widgets/document/pond_units.h"
#include "widgets/document/to_qstring.h"
#include "widgets/document/wording.h"

#include <QCoreApplication>
#include <QLocale>
#include <qcustomplot.h>

#include <algorithm>
#include <cmath>

namespace widgets {
namespace {

constexpr double kLegend = 190.0;  // [px]

QString tr(const char* text) {
    return QCoreApplication::translate("ProfilesView", text);
}

std::size_t dawnHour(const Outcome& outcome, const engine::RampRun& run, int night) {
    return engine::dawnHour(outcome.backdrop, run, night);
}

struct Panel {
    QRectF area;
    double low = 0.0, high = 1.0, deep = 1.0;
    [[nodiscard]] QPointF at(double value, double depth) const {
        return {area.left() + area.width() * (value - low) / (high - low),
                area.top() + area.height() * depth / deep};
    }
};

using Member = double engine::LayerRow::*;

std::vector<QPointF> lineOf(const Outcome& outcome, const engine::RampRun& run, std::size_t hour,
                            Member member, const Panel& panel) {
    std::vector<QPointF> line;
    const auto& layers = run.layers[hour];
    for (std::size_t i = 0; i < layers.size(); ++i) {
        line.push_back(panel.at(layers[i].*member, outcome.comparison.model.grid.middle[i]));
    }
    return line;
}

void paintLine(QCPPainter& painter, const std::vector<QPointF>& line, const Panel& panel, const QPen& pen) {
    painter.setPen(pen);
    for (const auto& piece : cut(line, panel.area)) {
        painter.drawPolyline(piece.data(), static_cast<int>(piece.size()));
    }
}

/// @param unit  Of what goes across; its marks are round in it.
void paintFrame(QCPPainter& painter, const Panel& panel, const QString& title, const PlotStyle& style,
                const ShownUnit& unit, const ShownUnit& depthUnit, bool hasDepths) {
    const QFontMetricsF metrics(style.font);
    painter.setPen(style.quietInk);
    painter.drawText(QPointF(panel.area.left(), panel.area.top() - metrics.height() - 10), title);
    const double low = unit.toShown(panel.low), high = unit.toShown(panel.high);
    const double step = roundStep(high - low, 6);
    for (double at = std::ceil(low / step) * step; at <= high + 1e-9; at += step) {
        const double x = panel.at(unit.toFile(at), 0).x();
        painter.setPen(QPen(style.hairline, 0));
        painter.drawLine(QPointF(x, panel.area.top()), QPointF(x, panel.area.bottom()));
        painter.setPen(style.ink);
        const QString text = QString::number(std::lround(at));
        painter.drawText(QPointF(x - metrics.horizontalAdvance(text) / 2, panel.area.top() - 6), text);
    }
    const double deep = depthUnit.toShown(panel.deep), every = roundStep(deep, 6);
    for (double depth = 0.0; depth <= deep + 1e-9; depth += every) {
        const double y = panel.at(0, depthUnit.toFile(depth)).y();
        painter.setPen(QPen(style.hairline, 0));
        painter.drawLine(QPointF(panel.area.left(), y), QPointF(panel.area.right(), y));
        if (hasDepths) {
            painter.setPen(style.ink);
            painter.drawText(QRectF(panel.area.left() - 62, y - metrics.height() / 2, 56, metrics.height()),
                             Qt::AlignRight | Qt::AlignVCenter,
                             QStringLiteral("%1\u00a0%2")
                                 .arg(QLocale().toString(depth, 'g', 3), QString::fromUtf8(depthUnit.text)));
        }
    }
}

/// Both panels, whose scales hold the start and the dawn of every run.
struct Panels {
    Panel oxygen, heat;

    Panels(const QRectF& whole, const Outcome& outcome, const std::vector<std::size_t>& order, int night,
           double textHeight) {
        double most = 1.0, cold = 1e9, warm = -1e9;
        const auto look = [&](const engine::RampRun& run, std::size_t hour) {
            for (const engine::LayerRow& layer : run.layers[hour]) {
                most = std::max(most, layer.oxygen);
                cold = std::min(cold, layer.temperature);
                warm = std::max(warm, layer.temperature);
            }
        };
        for (const std::size_t i : order) {
            const engine::RampRun& run = outcome.comparison.runs[i];
            look(run, 0);
            look(run, dawnHour(outcome, run, night));
        }
        const double left = 70.0, top = 2.0 * textHeight + 16;
        const double width = (whole.width() - left - kLegend - 40.0) / 2.0;
        const double height = whole.height() - top - 14.0;
        const double deep = outcome.comparison.model.grid.face.back();
        oxygen = {QRectF(left, whole.top() + top, width, height), 0.0, std::ceil(most + 0.2), deep};
        heat = {QRectF(left + width + 40.0, whole.top() + top, width, height), std::floor(cold - 0.2),
                std::ceil(warm + 0.2), deep};
    }
};

/// Stress and lethal are places here too, upright ones.
void paintThresholds(QCPPainter& painter, const Panel& oxygen, const engine::OxygenThresholds& thresholds,
                     const PlotStyle& style) {
    const auto below = [&](double line) {
        return QRectF(oxygen.area.topLeft(), oxygen.at(std::min(line, oxygen.high), oxygen.deep));
    };
    painter.fillRect(below(thresholds.stress), mixed(style.paper, style.stress, kBandShare));
    const QRectF lethal = below(thresholds.lethal);
    painter.fillRect(lethal, mixed(style.paper, style.lethal, kBandShare));
    hatch(painter, lethal, QPen(style.hatch, 0.8), 9.0);
    for (const auto& [line, ink] :
         {std::pair(thresholds.stress, style.stressInk), std::pair(thresholds.lethal, style.lethalInk)}) {
        const QRectF band = below(line);
        painter.setPen(QPen(ink, 0.8));
        painter.drawLine(band.topRight(), band.bottomRight());
    }
}

/// The line of a run in both panels.
void paintRun(QCPPainter& painter, const Outcome& outcome, const engine::RampRun& run, std::size_t hour,
              const Panels& panels, const QPen& pen) {
    paintLine(painter, lineOf(outcome, run, hour, &engine::LayerRow::oxygen, panels.oxygen), panels.oxygen,
              pen);
    paintLine(painter, lineOf(outcome, run, hour, &engine::LayerRow::temperature, panels.heat), panels.heat,
              pen);
}

void paintBottomWater(QCPPainter& painter, const engine::BottomWater& bottom, const Panels& panels,
                      const PlotStyle& style) {
    if (!bottom.exists()) {
        return;
    }
    const double height = QFontMetricsF(style.font).height();
    const double at = panels.oxygen.at(0, bottom.depth).y();
    QPen pen(style.ink, 1.0);
    pen.setDashPattern({2, 4});
    painter.setPen(pen);
    painter.drawLine(QPointF(panels.oxygen.area.left(), at), QPointF(panels.heat.area.right(), at));
    painter.setPen(style.quietInk);
    painter.drawText(QRectF(panels.heat.area.left(), at + 1, panels.heat.area.width() - 4, height),
                     Qt::AlignRight | Qt::AlignVCenter, tr("bottom water"));
}

void paint(QCPPainter& painter, const QRectF& whole, const Outcome& outcome,
           const std::vector<std::size_t>& order, std::size_t selected, int night, const PlotStyle& style) {
    const QFontMetricsF metrics(style.font);
    const Panels panels(whole, outcome, order, night, metrics.height());
    const auto& runs = outcome.comparison.runs;
    paintThresholds(painter, panels.oxygen, outcome.comparison.model.parameters.thresholds, style);
    const engine::UnitSystem system = unitsOf(outcome.comparison.model.pond);
    const ShownUnit depths = shownUnitOf("m", system);
    paintFrame(painter, panels.oxygen, tr("oxygen, mg/L"), style, ShownUnit{}, depths, true);
    paintFrame(painter, panels.heat, tr("temperature, %1").arg(unitText("degC", system)), style,
               shownUnitOf("degC", system), depths, false);
    QPen before(style.quietInk, 1.6);
    before.setDashPattern({1.2, 2.2});
    paintRun(painter, outcome, runs[order.back()], 0, panels, before);
    double y = panels.oxygen.area.top();
    const double x = panels.heat.area.right() + 14;
    const auto name = [&](const QPen& pen, const QString& text, bool isHeavy) {
        painter.setPen(pen);
        painter.drawLine(QPointF(x, y + metrics.height() / 2), QPointF(x + 24, y + metrics.height() / 2));
        QFont font = style.font;
        font.setBold(isHeavy);
        painter.setFont(font);
        painter.setPen(style.ink);
        painter.drawText(QRectF(x + 30, y, kLegend - 46, metrics.height()), Qt::AlignLeft | Qt::AlignVCenter,
                         QFontMetricsF(font).elidedText(text, Qt::ElideRight, kLegend - 48));
        painter.setFont(style.font);
        y += metrics.height() + 3;
    };
    name(before, tr("at the start"), false);
    for (const std::size_t i : order) {
        const QPen pen = style.linePen(lookOf(outcome.comparison, i), i == selected);
        paintRun(painter, outcome, runs[i], dawnHour(outcome, runs[i], night), panels, pen);
        name(pen, rampText(runs[i].name, i), i == selected);
    }
    paintBottomWater(painter, outcome.comparison.model.bottom, panels, style);
}

/// Runs that are drawn and whose layers were kept, in the order of drawing.
std::vector<std::size_t> layeredRuns(const Outcome& outcome, const Selection& selection) {
    std::vector<std::size_t> order = drawingOrder(outcome.comparison, selection);
    std::erase_if(order, [&](std::size_t i) { return outcome.comparison.runs[i].layers.empty(); });
    return order;
}

}  // namespace

Picture profilesPicture(const OutcomePtr& outcome, const Selection& selection) {
    const std::size_t run = shownRun(*outcome, selection);
    const engine::RampRun& rows = outcome->comparison.runs[run];
    const int night = selection.night();
    Picture picture;
    picture.size = QSize(600, 380);
    const std::vector<std::size_t> order = layeredRuns(*outcome, selection);
    picture.csv = [outcome, night, order] {
        return engine::profilesCsv(outcome->comparison, outcome->backdrop, order, night);
    };
    picture.draw = [outcome, order, run, night](QCustomPlot& plot, const PlotStyle& style) {
        addCanvas(plot, style, [=](QCPPainter& painter, const QRectF& whole) {
            if (!order.empty()) {
                paint(painter, whole, *outcome, order, run, night, style);
            }
        });
    };
    if (!isDrawn(rows) || rows.layers.empty()) {
        picture.headline = tr("This run was not kept layer by layer.");
        picture.words = picture.headline;
        return picture;
    }
    const auto& dawn = rows.layers[dawnHour(*outcome, rows, night)];
    const engine::UnitSystem system = unitsOf(outcome->comparison.model.pond);
    const auto degrees = [&](const engine::LayerRow& top, const engine::LayerRow& bottom) {
        return tr("%1\u00a0%2")
            .arg(roundedText((top.temperature - bottom.temperature) / shownUnitOf("degC", system).factor),
                 unitText("degC", system));
    };
    picture.headline =
        tr("%1: at the dawn of night %2 the surface has %3 and the bottom %4 mg/L; at the start %5 and %6.")
            .arg(rampText(rows.name, run))
            .arg(night)
            .arg(oxygenText(dawn.front().oxygen), oxygenText(dawn.back().oxygen),
                 oxygenText(rows.layers[0].front().oxygen), oxygenText(rows.layers[0].back().oxygen));
    picture.detail =
        tr("The surface is %1 warmer than the bottom then, and was %2 warmer at the start.")
            .arg(degrees(dawn.front(), dawn.back()), degrees(rows.layers[0].front(), rows.layers[0].back())) +
        QLatin1Char(' ') +
        localized(engine::sentencesOf(outcome->comparison),
                  {engine::SentenceKey::BalanceMiss, engine::SentenceKey::BalanceContrary});
    QStringList words{picture.headline, picture.detail};
    for (std::size_t i = 0; i < dawn.size(); i += 4) {
        words << tr("%1: %2 mg/L, %3.")
                     .arg(depthText(outcome->comparison.model.grid.middle[i], system),
                          oxygenText(dawn[i].oxygen), amountText(dawn[i].temperature, "degC", system));
    }
    picture.words = words.join(QLatin1Char(' '));
    return picture;
}

}  // namespace widgets
