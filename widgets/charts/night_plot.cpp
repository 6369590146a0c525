#include "widgets/charts/night_plot.h"

#include "engine/base/units.h"
#include "widgets/charts/chart_parts.h"
#include "widgets/charts/night_labels.h"
#include "widgets/charts/sheets.h"
#include "widgets/document/wording.h"

#include <QLocale>
#include <qcustomplot.h>

#include <algorithm>
#include <cmath>

namespace widgets {
namespace {

constexpr int kLeft = 34, kTop = 44, kBottom = 26;  // [px] at the least; large type takes more

QPen penOf(const NightLine& line, const PlotStyle& style) {
    QPen pen = style.linePen(line.look, line.isHeavy);
    if (line.isGhost) {
        pen.setWidthF(1.0);
        pen.setStyle(Qt::SolidLine);
        if (!line.isLabelled) {
            pen.setColor(mixed(pen.color(), style.paper, 0.55));
        }
    }
    return pen;
}

/// The marks of the clock, or every other one where their words would touch.
std::vector<std::pair<double, QString>> marksOf(const NightScene& scene, double width,
                                                const QFontMetricsF& metrics) {
    auto marks = clockMarks(scene.to - scene.from);
    double widest = 0.0;
    for (const auto& [hour, text] : marks) {
        widest = std::max(widest, metrics.horizontalAdvance(text));
    }
    const double room = (widest + metrics.horizontalAdvance(QStringLiteral("00"))) / 2 + 6.0;
    if (marks.size() > 2 && (marks[1].first - marks[0].first) * width / (scene.to - scene.from) < room) {
        const double apart = 2.0 * (marks[1].first - marks[0].first);
        std::erase_if(marks, [&](const auto& mark) { return std::fmod(mark.first, apart) > 1e-6; });
    }
    return marks;
}

}  // namespace

void drawNight(QCustomPlot& plot, const NightScene& scene, const PlotStyle& style) {
    prepare(plot, style);
    auto* rect = new QCPAxisRect(&plot, false);  // owned by the layout
    plot.plotLayout()->addElement(0, 0, rect);
    const QFontMetricsF metrics(style.font);
    rect->setAutoMargins(QCP::msNone);
    const int left = std::max(kLeft, static_cast<int>(metrics.horizontalAdvance(QStringLiteral("noon"))));
    rect->setMargins(QMargins(left, std::max(kTop, static_cast<int>(2.5 * metrics.height())),
                              static_cast<int>(std::ceil(nightNameWidth(scene, style))),
                              std::max(kBottom, static_cast<int>(metrics.height()) + 10)));
    const double step = scene.top <= 4.0 ? 1.0 : 2.0;
    applyStyle(*rect, style, scene.from, scene.to, scene.top,
               marksOf(scene, plot.viewport().width() - left - nightNameWidth(scene, style), metrics));
    const QSharedPointer<QCPAxisTickerFixed> steps(new QCPAxisTickerFixed);
    steps->setTickStep(step);
    rect->axis(QCPAxis::atLeft)->setTicker(steps);

    Ground ground;
    ground.shades = shadesOf(scene, [](double hour) { return hour; });
    ground.stress = scene.stress;
    ground.lethal = scene.lethal;
    ground.levels = scene.criteria;
    ground.rules = oxygenSteps(scene.top, step);
    ground.uprights = {12.0};
    for (const NightBand& band : scene.bands) {
        const SmoothLine low = smoothLine(band.hour, band.low), high = smoothLine(band.hour, band.high);
        ground.tints.push_back({low.x, low.y, high.y, style.lineColour(band.look), band.isDotted});
    }
    addGround(*rect, style, std::move(ground));
    for (const NightLine& line : scene.lines) {
        const SmoothLine smooth = smoothLine(line.hour, line.oxygen);
        addCurve(*rect, smooth.x, smooth.y, penOf(line, style));
    }
    addPainted(*rect, style, [scene, style](QCPPainter& painter, const QCPAxisRect& of) {
        paintNightLabels(painter, of, scene, style);
    });
}

NightPlot::NightPlot(Selection& selection, QWidget* parent) : ChartView(tr("The night"), selection, parent) {}

void NightPlot::setCriteria(bool isShown) {
    m_options.criteria = isShown;
    showAnew();
}

void NightPlot::setGhost(bool isShown) {
    m_options.ghost = isShown;
    showAnew();
}

QString NightPlot::refresh() {
    m_scene = nightScene(*outcome(), selection(), m_options);
    emit sceneChanged();
    return inWords(m_scene);
}

void NightPlot::draw(QCustomPlot& plot, const PlotStyle& style) {
    drawNight(plot, m_scene, style);
}

ChartSheet NightPlot::sheet() const {
    return nightSheet(outcome(), selection(), m_options.criteria);
}

std::optional<double> NightPlot::timeAt(const QPointF& place) const {
    if (plot().axisRectCount() == 0 || !plot().axisRect()->rect().contains(place.toPoint())) {
        return std::nullopt;
    }
    const double hour = plot().axisRect()->axis(QCPAxis::atBottom)->pixelToCoord(place.x());
    return (selection().night() - 0.5) * engine::kDay + hour * engine::kHour;
}

std::optional<Selection::Span> NightPlot::shownSpan() const {
    const double noon = selection().night() - 0.5;
    return Selection::Span{noon + m_scene.from / 24.0, noon + m_scene.to / 24.0};
}

void NightPlot::setShownSpan(std::optional<Selection::Span> span) {
    const double noon = selection().night() - 0.5;
    selection().setHours(
        span ? std::optional(Selection::Span{(span->from - noon) * 24.0, (span->to - noon) * 24.0})
             : std::nullopt);
}

void NightPlot::clicked(const QPointF& place) {
    if (const auto time = timeAt(place)) {
        selection().setCursor(*time);
    }
}

QString NightPlot::readAt(double time) const {
    const double hour = (time / engine::kDay - (selection().night() - 0.5)) * 24.0;
    QStringList rows{clockText(time)};
    for (auto line = m_scene.lines.rbegin(); line != m_scene.lines.rend(); ++line) {
        if (!line->isGhost && !line->hour.empty() && hour >= -1e-6 && hour <= 24.0 + 1e-6) {
            const double oxygen = engine::interpolate(line->hour, line->oxygen, hour);
            rows << tr("%1 mg/L  %2").arg(oxygenText(oxygen), line->name);
        }
    }
    return rows.size() > 1 ? rows.join(QLatin1Char('\n')) : QString();
}

QString NightPlot::readOut(const QPointF& place) const {
    const auto time = timeAt(place);
    if (!time) {
        return {};
    }
    for (const NightReading& reading : m_scene.readings) {
        const double x = plot().axisRect()->axis(QCPAxis::atBottom)->coordToPixel(reading.hour);
        const double y = plot().axisRect()->axis(QCPAxis::atLeft)->coordToPixel(reading.oxygen);
        if (std::hypot(place.x() - x, place.y() - y) < 8.0) {
            return reading.text;
        }
    }
    return readAt(*time);
}

}  // namespace widgets
