// What a ramp adds to the risk, against the days it takes: too fast and too slow both have an edge.

#include "engine/ensemble/ramp_risk.h"
#include "engine/output/picture_tables.h"
#include "widgets/charts/chart_parts.h"
#include "widgets/charts/label_layout.h"
#include "widgets/charts/picture.h"
#include "widgets/document/wording.h"

#include <QCoreApplication>
#include <qcustomplot.h>

#include <algorithm>
#include <cmath>

namespace widgets {
namespace {

using engine::RampRisk;
using engine::RiskLine;

constexpr double kLeft = 60.0, kRight = 200.0, kTop = 30.0, kBottom = 46.0;

QString tr(const char* text) {
    return QCoreApplication::translate("RiskView", text);
}

QString percent(double share) {
    return QString::number(std::lround(100.0 * share));
}

QString nameOf(RiskLine line) {
    return line == RiskLine::Stress ? tr("stress line") : tr("lethal line");
}

/// Where a ramp stands across the picture: "later", after the last day, if its air never stays on.
double daysOf(const Outcome& outcome, const RampRisk& risk) {
    return risk.daysToContinuous.value_or(outcome.comparison.days + 1);
}

/// The area of the curves and what stands where in it.
struct Sheet {
    QRectF area;
    double last = 1.0;  // [d]

    Sheet(const QRectF& whole, int days)
        : area(whole.adjusted(kLeft, kTop, -kRight, -kBottom)), last(days + 1.5) {}
    [[nodiscard]] double x(double days) const { return area.left() + area.width() * (days - 0.5) / last; }
    [[nodiscard]] double y(double share) const { return area.bottom() - area.height() * share; }
};

void paintAxes(QCPPainter& painter, const Sheet& sheet, int days, RiskLine line, const PlotStyle& style) {
    const QFontMetricsF metrics(style.font);
    const QRectF& area = sheet.area;
    for (const double share : {0.0, 0.25, 0.5, 0.75, 1.0}) {
        painter.setPen(QPen(style.hairline, 0));
        painter.drawLine(QPointF(area.left(), sheet.y(share)), QPointF(area.right(), sheet.y(share)));
        painter.setPen(style.ink);
        painter.drawText(QRectF(0, sheet.y(share) - metrics.height() / 2, kLeft - 8, metrics.height()),
                         Qt::AlignRight | Qt::AlignVCenter, percent(share));
    }
    const int step = std::max(1, static_cast<int>(std::ceil(sheet.last * 26.0 / area.width())));
    for (int day = 1; day <= days; day += step) {
        if (sheet.x(day) > sheet.x(days + 1) - 50.0) {
            break;  // room for "later"
        }
        painter.drawText(QRectF(sheet.x(day) - 20, area.bottom() + 6, 40, metrics.height()), Qt::AlignCenter,
                         QString::number(day));
    }
    painter.setPen(style.quietInk);
    painter.drawText(QPointF(2, metrics.ascent() + 2), tr("chance to go below the %1, %").arg(nameOf(line)));
    painter.drawText(
        QRectF(area.left(), area.bottom() + 8 + metrics.height(), area.width(), metrics.height()),
        Qt::AlignCenter, tr("first day of air around the clock"));
}

/// Bar, circle and name of each ramp.
void paintRamps(QCPPainter& painter, const Sheet& sheet, const Outcome& outcome,
                const std::vector<RampRisk>& risks, RiskLine line, std::size_t selected,
                const PlotStyle& style) {
    const QFontMetricsF metrics(style.font);
    const QRectF& area = sheet.area;
    std::vector<double> wanted;
    for (const RampRisk& risk : risks) {
        wanted.push_back(sheet.y(risk.below(line)));
    }
    const auto places = spreadApart(wanted, metrics.height(), area.top(), area.bottom());
    for (std::size_t i = 0; i < risks.size(); ++i) {
        const RampRisk& risk = risks[i];
        const std::size_t look = lookOf(outcome.comparison, risk.run);
        const double at = sheet.x(daysOf(outcome, risk));
        // The bar is what the ramp adds, the open circle the whole chance.
        const double top = sheet.y(std::max(risk.added(line), 0.0));
        painter.fillRect(QRectF(at - 5, top, 10, area.bottom() - top),
                         mixed(style.paper, style.lineColour(look), 0.85));
        painter.setPen(QPen(style.lineColour(look), risk.run == selected ? 3.0 : 1.8));
        painter.setBrush(style.paper);
        painter.drawEllipse(QPointF(at, wanted[i]), 5.5, 5.5);
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(style.textColour(look), 0.8));
        painter.drawLine(QPointF(at + 7, wanted[i]), QPointF(area.right() + 6, places[i]));
        QFont font = style.font;
        font.setBold(risk.run == selected);
        painter.setFont(font);
        painter.drawText(
            QRectF(area.right() + 9, places[i] - metrics.height() / 2, kRight - 12, metrics.height()),
            Qt::AlignLeft | Qt::AlignVCenter,
            QFontMetricsF(font).elidedText(rampText(outcome.comparison.runs[risk.run].name, risk.run),
                                           Qt::ElideRight, kRight - 14));
        painter.setFont(style.font);
    }
}

void paint(QCPPainter& painter, const QRectF& whole, const Outcome& outcome,
           const std::vector<RampRisk>& risks, std::size_t selected, const PlotStyle& style) {
    const RiskLine line = engine::riskLine(outcome.comparison);
    const int days = outcome.comparison.days;
    const Sheet sheet(whole, days);
    paintAxes(painter, sheet, days, line, style);
    if (const auto alone = engine::belowByItself(outcome.comparison, line)) {
        painter.setPen(style.linePen(0, false));
        painter.drawLine(QPointF(sheet.area.left(), sheet.y(*alone)),
                         QPointF(sheet.area.right(), sheet.y(*alone)));
    }
    paintRamps(painter, sheet, outcome, risks, line, selected, style);
    const double height = QFontMetricsF(style.font).height();
    painter.setPen(style.ink);
    painter.drawText(QRectF(sheet.x(days + 1) - 40, sheet.area.bottom() + 6, 80, height), Qt::AlignCenter,
                     tr("later"));
}

QString headlineOf(const Outcome& outcome, const std::vector<RampRisk>& risks, RiskLine line) {
    const auto name = [&](const RampRisk& risk) {
        return rampText(outcome.comparison.runs[risk.run].name, risk.run);
    };
    const auto alone = engine::belowByItself(outcome.comparison, line);
    const QString byItself = alone ? percent(*alone) : tr("?");
    const engine::RiskEnds ends = engine::riskEnds(risks, line);
    const RampRisk &best = risks[ends.least], &worst = risks[ends.most];
    const auto added = [&](const RampRisk& risk) {
        const double share = risk.added(line);
        return share < 0.0 ? tr("%1 fewer").arg(percent(-share)) : tr("%1 more").arg(percent(share));
    };
    const QString least = added(best), most = added(worst);
    const QString first =
        line == RiskLine::Stress
            ? tr("Of a hundred ponds like this one, %1 go below the stress line left alone;")
            : tr("Nearly all ponds like this one go below the stress line left alone. Of a hundred, %1 "
                 "go "
                 "below the lethal line left alone;");
    return first.arg(byItself) + QLatin1Char(' ') +
           (most == least ? tr("with every ramp %1.").arg(least)
                          : tr("with %1 %2, with %3 %4.").arg(name(best), least, name(worst), most));
}

QString inWords(const Outcome& outcome, const std::vector<RampRisk>& risks, RiskLine line,
                const QString& headline) {
    QStringList words{headline};
    for (const RampRisk& risk : risks) {
        const QString when = risk.daysToContinuous
                                 ? tr("around the clock from day %1").arg(daysOf(outcome, risk))
                                 : tr("not around the clock in this time");
        words << tr("%1: %2; below the %3 %4 %, added %5 %.")
                     .arg(rampText(outcome.comparison.runs[risk.run].name, risk.run), when, nameOf(line),
                          percent(risk.below(line)), percent(risk.added(line)));
    }
    return words.join(QLatin1Char(' '));
}

}  // namespace

Picture riskPicture(const OutcomePtr& outcome, const Selection& selection) {
    const std::vector<RampRisk> risks = engine::rampRisks(outcome->comparison);
    Picture picture;
    picture.csv = [outcome, risks] { return engine::riskCsv(outcome->comparison, risks); };
    if (risks.empty()) {
        picture.headline = outcome->comparison.runs.size() < 2 ? tr("There is no ramp in this pond yet.")
                           : outcome->isGivenUp ? tr("The chances were not worked out: it was stopped.")
                                                : tr("Working out the chances.");
        picture.words = picture.headline;
        picture.draw = [](QCustomPlot& plot, const PlotStyle& style) { prepare(plot, style); };
        return picture;
    }
    const RiskLine line = engine::riskLine(outcome->comparison);
    picture.headline = headlineOf(*outcome, risks, line);
    picture.detail =
        tr("Bars: ponds that the ramp takes below the line and that stay above it left alone. "
           "Circles: all below the line. Long dashes: do nothing.");
    picture.words = inWords(*outcome, risks, line, picture.headline);
    picture.draw = [outcome, risks, selected = selection.ramp()](QCustomPlot& plot, const PlotStyle& style) {
        addCanvas(plot, style, [=](QCPPainter& painter, const QRectF& whole) {
            paint(painter, whole, *outcome, risks, selected, style);
        });
    };
    return picture;
}

}  // namespace widgets
