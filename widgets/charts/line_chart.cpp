#include "widgets/charts/line_chart.h"

#include "widgets/charts/chart_parts.h"
#include "widgets/charts/label_layout.h"

#include <qcustomplot.h>

#include <algorithm>
#include <cmath>

namespace widgets {
namespace {

constexpr double kRoomAbove = 1.08;

double topOf(const LineChart& chart) {
    double top = std::max(chart.stress, 1.0);
    for (const LineChart::Line& line : chart.lines) {
        for (const std::vector<double>* values : {&line.y, &line.high}) {
            for (const double value : *values) {
                top = std::max(top, value);
            }
        }
    }
    for (const LineChart::Dot& dot : chart.dots) {
        top = std::max(top, dot.y + dot.error);
    }
    return std::ceil(kRoomAbove * top);
}

/// The names of the lines at their ends, moved apart.
void paintNames(QCPPainter& painter, const QCPAxisRect& of, const LineChart& chart, const PlotStyle& style) {
    const QFontMetricsF text(style.font);
    std::vector<double> wanted;
    std::vector<const LineChart::Line*> named;
    for (const LineChart::Line& line : chart.lines) {
        if (!line.y.empty()) {
            named.push_back(&line);
            wanted.push_back(of.axis(QCPAxis::atLeft)->coordToPixel(line.y.back()));
        }
    }
    const std::vector<double> places = spreadApart(wanted, text.height(), of.rect().top() + text.height() / 2,
                                                   of.rect().bottom() - text.height() / 2);
    for (std::size_t i = 0; i < named.size(); ++i) {
        painter.setPen(style.textColour(named[i]->look));
        painter.drawText(QPointF(of.rect().right() + 6, places[i] + text.ascent() / 2 - 1), named[i]->name);
    }
}

void paintMarks(QCPPainter& painter, const QCPAxisRect& of, const LineChart& chart, const PlotStyle& style) {
    const QFontMetricsF text(style.font);
    double free = -1e9;
    int line = 0;
    for (const LineChart::Mark& mark : chart.marks) {
        const double x = of.axis(QCPAxis::atBottom)->coordToPixel(mark.x);
        painter.setPen(QPen(style.quietInk, 1.0, Qt::DashLine));
        painter.drawLine(QPointF(x, of.rect().top()), QPointF(x, of.rect().bottom()));
        line = x < free ? (line + 1) % 3 : 0;  // a word under the one before where that is in the way
        const double left = std::min(x + 3, of.rect().right() - text.horizontalAdvance(mark.text));
        painter.setPen(style.quietInk);
        painter.drawText(QPointF(left, of.rect().top() + text.ascent() + line * text.height()), mark.text);
        free = left + text.horizontalAdvance(mark.text) + 6;
    }
}

void paintDots(QCPPainter& painter, const QCPAxisRect& of, const LineChart& chart, const PlotStyle& style) {
    const QCPAxis* across = of.axis(QCPAxis::atBottom);
    const QCPAxis* up = of.axis(QCPAxis::atLeft);
    painter.setPen(QPen(style.ink, 1.3));
    painter.setBrush(style.paper);
    for (const LineChart::Dot& dot : chart.dots) {
        const double x = across->coordToPixel(dot.x);
        if (dot.error > 0.0) {
            painter.drawLine(QPointF(x, up->coordToPixel(dot.y + dot.error)),
                             QPointF(x, up->coordToPixel(std::max(dot.y - dot.error, 0.0))));
        }
        painter.drawEllipse(QPointF(x, up->coordToPixel(dot.y)), 3.2, 3.2);
    }
    painter.setBrush(Qt::NoBrush);
}

}  // namespace

void drawLines(QCustomPlot& plot, const LineChart& chart, const PlotStyle& style) {
    prepare(plot, style);
    const QFontMetricsF metrics(style.font);
    double names = 0.0;
    for (const LineChart::Line& line : chart.lines) {
        names = std::max(names, metrics.horizontalAdvance(line.name));
    }
    auto* rect = new QCPAxisRect(&plot, false);  // owned by the layout
    plot.plotLayout()->addElement(0, 0, rect);
    rect->setAutoMargins(QCP::msNone);
    // The unit stands clear of the topmost number, half of which is above the axis.
    rect->setMargins(
        QMargins(34, static_cast<int>(1.5 * metrics.height()) + 8, static_cast<int>(names) + 14, 24));
    const double top = topOf(chart);
    applyStyle(*rect, style, chart.from, chart.to, top, chart.labels);
    const QSharedPointer<QCPAxisTickerFixed> steps(new QCPAxisTickerFixed);
    const double step = top > 9.0 || plot.viewport().height() < 9 * metrics.height() ? 4.0 : 2.0;
    steps->setTickStep(step);
    rect->axis(QCPAxis::atLeft)->setTicker(steps);
    Ground ground;
    ground.stress = chart.stress;
    ground.lethal = chart.lethal;
    ground.rules = oxygenSteps(top, step);
    for (const LineChart::Line& line : chart.lines) {
        if (!line.low.empty()) {
            ground.tints.push_back({line.x, line.low, line.high, style.lineColour(line.look)});
        }
    }
    addGround(*rect, style, std::move(ground));
    for (const LineChart::Line& line : chart.lines) {
        addCurve(*rect, line.x, line.y, style.linePen(line.look, line.isHeavy));
    }
    addPainted(*rect, style, [chart, style](QCPPainter& painter, const QCPAxisRect& of) {
        paintMarks(painter, of, chart, style);
        paintDots(painter, of, chart, style);
        paintNames(painter, of, chart, style);
        painter.setPen(style.quietInk);
        painter.drawText(QPointF(2, QFontMetricsF(style.font).ascent() + 1), chart.unit);
    });
}

LineChartView::LineChartView(const QString& name, Selection& selection, QWidget* parent)
    : ChartView(name, selection, parent) {}

void LineChartView::setChart(std::optional<LineChart> chart) {
    m_chart = std::move(chart);
    showAnew();
}

ChartSheet LineChartView::sheet() const {
    ChartSheet out;
    out.name = m_chart->name;
    out.headline = m_chart->headline;
    out.detail = m_chart->detail;
    out.foot = m_chart->foot;
    out.words = m_chart->words;
    out.draw = [chart = *m_chart](QCustomPlot& plot, const PlotStyle& style) {
        drawLines(plot, chart, style);
    };
    out.csv = m_chart->csv;
    return out;
}

}  // namespace widgets
