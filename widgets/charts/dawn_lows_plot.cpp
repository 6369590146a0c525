#include "widgets/charts/dawn_lows_plot.h"

#include "engine/ensemble/chances.h"
#include "engine/run/nights.h"
#include "widgets/charts/chart_parts.h"
#include "widgets/charts/sheets.h"
#include "widgets/document/wording.h"

#include <QCoreApplication>
#include <QKeyEvent>
#include <qcustomplot.h>

#include <algorithm>
#include <cmath>

namespace widgets {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("DawnLowsPlot", text);
}

std::vector<double> nightsOf(const engine::RampRun& run) {
    std::vector<double> nights;
    for (const engine::DayRow& row : run.days) {
        nights.push_back(row.day);
    }
    return nights;
}

std::vector<double> lowsOf(const engine::RampRun& run) {
    std::vector<double> lows;
    for (const engine::DayRow& row : run.days) {
        lows.push_back(row.lowest);
    }
    return lows;
}

/// Every n-th night has its number, so that numbers never touch.
std::vector<std::pair<double, QString>> nightLabels(int nights, double width, const QFontMetricsF& metrics) {
    const double one = metrics.horizontalAdvance(QStringLiteral("00")) + 10;
    const int step = std::max(1, static_cast<int>(std::ceil(one * nights / std::max(width, 1.0))));
    std::vector<std::pair<double, QString>> labels;
    for (int night = 1; night <= nights; night += step) {
        labels.emplace_back(night, QString::number(night));
    }
    return labels;
}

double highestLow(const Outcome& outcome) {
    double highest = outcome.comparison.model.parameters.thresholds.stress;
    for (const engine::RampRun& run : outcome.comparison.runs) {
        for (const engine::DayRow& row : run.days) {
            highest = isDrawn(run) ? std::max(highest, row.lowest) : highest;
        }
    }
    return highest;
}

}  // namespace

void drawDawnLows(QCustomPlot& plot, const OutcomePtr& shared, const Selection& selection, bool criteria,
                  const PlotStyle& style) {
    const Outcome& outcome = *shared;
    prepare(plot, style);
    const QFontMetricsF metrics(style.font);
    auto* rect = new QCPAxisRect(&plot, false);  // owned by the layout
    plot.plotLayout()->addElement(0, 0, rect);
    rect->setAutoMargins(QCP::msNone);
    rect->setMargins(QMargins(34, static_cast<int>(metrics.height()) + 8, 12, 24));
    const int nights = outcome.comparison.days;
    const double top = axisTop(highestLow(outcome));
    applyStyle(*rect, style, 0.5, nights + 0.5, top,
               nightLabels(nights, plot.viewport().width() - 46.0, metrics));
    const QSharedPointer<QCPAxisTickerFixed> steps(new QCPAxisTickerFixed);
    const double step = plot.viewport().height() < 8 * metrics.height() ? 4.0 : 2.0;
    steps->setTickStep(step);
    rect->axis(QCPAxis::atLeft)->setTicker(steps);

    Ground ground;
    ground.stress = outcome.comparison.model.parameters.thresholds.stress;
    ground.lethal = outcome.comparison.model.parameters.thresholds.lethal;
    ground.rules = oxygenSteps(top, step);
    if (criteria) {
        ground.levels = criteriaLevels(outcome);
    }
    const engine::RampEnsemble* members = engine::membersOf(outcome.comparison, selection.ramp());
    if (members != nullptr && !selection.isHidden(members->name)) {
        Tint& tint = ground.tints.emplace_back();
        tint.colour = style.lineColour(lookOf(outcome.comparison, selection.ramp()));
        for (std::size_t i = 0; i < members->nightLows.size(); ++i) {
            tint.x.push_back(static_cast<double>(i + 1));
            tint.low.push_back(members->nightLows[i].front());
            tint.high.push_back(members->nightLows[i].back());
        }
    }
    addGround(*rect, style, std::move(ground));
    const auto& runs = outcome.comparison.runs;
    for (const std::size_t i : drawingOrder(outcome.comparison, selection)) {
        addCurve(*rect, nightsOf(runs[i]), lowsOf(runs[i]),
                 style.linePen(lookOf(outcome.comparison, i), i == selection.ramp()));
    }
    addPainted(
        *rect, style,
        [shared, style, night = selection.night(), selected = selection.ramp(),
         order = drawingOrder(outcome.comparison, selection)](QCPPainter& painter, const QCPAxisRect& of) {
            const auto& all = shared->comparison.runs;
            const QCPAxis* across = of.axis(QCPAxis::atBottom);
            const QCPAxis* up = of.axis(QCPAxis::atLeft);
            const QFontMetricsF text(style.font);
            for (const std::size_t i : order) {
                if (all[i].days.size() > 31) {
                    continue;  // dots would run together
                }
                painter.setPen(
                    QPen(style.lineColour(lookOf(shared->comparison, i)), i == selected ? 1.8 : 1.2));
                painter.setBrush(style.paper);
                for (const engine::DayRow& row : all[i].days) {
                    painter.drawEllipse(QPointF(across->coordToPixel(row.day), up->coordToPixel(row.lowest)),
                                        i == selected ? 3.2 : 2.4, i == selected ? 3.2 : 2.4);
                }
            }
            painter.setBrush(Qt::NoBrush);
            painter.setPen(QPen(style.ink, 1.5));
            const double left = across->coordToPixel(night - 0.5), right = across->coordToPixel(night + 0.5);
            painter.drawRect(QRectF(left, of.rect().top() - 2.0, right - left, of.rect().height() + 4.0));
            painter.setPen(style.quietInk);
            painter.drawText(QPointF(2, text.ascent() + 1), tr("low of each night, mg/L"));
            const QString axis = tr("night");
            painter.drawText(QPointF(2, of.rect().bottom() + 7 + text.ascent()), axis);
        });
}

QString dawnLowsInWords(const Outcome& outcome) {
    QStringList words{tr("Low of each night in mg/L.")};
    const auto& runs = outcome.comparison.runs;
    for (std::size_t i = 0; i < runs.size(); ++i) {
        if (isDrawn(runs[i])) {
            QStringList lows;
            for (const engine::DayRow& row : runs[i].days) {
                lows << oxygenText(row.lowest);
            }
            words << tr("%1: %2.").arg(rampText(runs[i].name, i), lows.join(QStringLiteral("; ")));
        }
    }
    return words.join(QLatin1Char(' '));
}

DawnLowsPlot::DawnLowsPlot(Selection& selection, QWidget* parent)
    : ChartView(tr("Low of each night"), selection, parent) {}

void DawnLowsPlot::setCriteria(bool isShown) {
    m_criteria = isShown;
    showAnew();
}

QString DawnLowsPlot::refresh() {
    return dawnLowsInWords(*outcome());
}

ChartSheet DawnLowsPlot::sheet() const {
    return dawnLowsSheet(outcome(), selection(), m_criteria);
}

void DawnLowsPlot::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Home || event->key() == Qt::Key_End) {
        selection().setNight(event->key() == Qt::Key_Home ? 1 : selection().nights());
        return;
    }
    ChartView::keyPressEvent(event);
}

void DawnLowsPlot::draw(QCustomPlot& plot, const PlotStyle& style) {
    drawDawnLows(plot, outcome(), selection(), m_criteria, style);
}

int DawnLowsPlot::nightAt(const QPointF& place) const {
    if (outcome() == nullptr || plot().axisRectCount() == 0) {
        return 0;
    }
    const double at = plot().axisRect()->axis(QCPAxis::atBottom)->pixelToCoord(place.x());
    const int night = static_cast<int>(std::lround(at));
    return night >= 1 && night <= outcome()->comparison.days ? night : 0;
}

QString DawnLowsPlot::readOut(const QPointF& place) const {
    const int night = nightAt(place);
    if (night == 0) {
        return {};
    }
    QStringList rows{nightName(*outcome(), night)};
    const auto& runs = outcome()->comparison.runs;
    for (std::size_t i = 0; i < runs.size(); ++i) {
        if (isDrawn(runs[i])) {
            const engine::DayRow& row = engine::nightRow(runs[i], night);
            rows << tr("%1 mg/L at %2  %3")
                        .arg(oxygenText(row.lowest), clockText(row.lowestTime), rampText(runs[i].name, i));
        }
    }
    return rows.join(QLatin1Char('\n'));
}

void DawnLowsPlot::clicked(const QPointF& place) {
    if (const int night = nightAt(place); night > 0) {
        selection().setNight(night);
    }
}

}  // namespace widgets
