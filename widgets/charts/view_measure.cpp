// What to measure: which inputs the worst low hangs on, and what a reading of each would bring.

#include "engine/ensemble/measure_choice.h"
#include "engine/ensemble/site_visit.h"
#include "engine/wording/sentence_measure.h"
#include "engine/wording/wording.h"
#include "widgets/charts/chart_parts.h"
#include "widgets/charts/picture.h"
#include "widgets/document/to_qstring.h"
#include "widgets/document/wording.h"

#include <QCoreApplication>
#include <QLocale>
#include <qcustomplot.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace widgets {
namespace {

using engine::MeasuredInput;
using engine::MeasureResult;

constexpr double kLeft = 232.0, kShares = 52.0, kWays = 300.0, kRow = 54.0;
constexpr std::size_t kMostRows = 10;

QString tr(const char* text) {
    return QCoreApplication::translate("MeasureView", text);
}

QString percent(double share) {
    return QString::number(std::lround(100.0 * share));
}

QString termText(std::string_view term) {
    return QCoreApplication::translate("Term", std::string(engine::englishTerm(term)).c_str());
}

QString nameOf(const MeasuredInput& input) {
    return QCoreApplication::translate("Term", engine::inputWords(input.name).c_str());
}

/// How an input is measured, and what that brings.
std::array<QString, 2> wayTexts(const MeasuredInput& input) {
    if (input.way == nullptr) {
        return {tr("no usual way to measure it"), {}};
    }
    return {termText(input.way->term),
            engine::gainOf(input) < engine::kLeastGain
                ? tr("brings little")
                : tr("makes the spread %1 % narrower").arg(percent(engine::gainOf(input)))};
}

/// Where things stand: names at the left, bars in the middle, shares and ways at the right.
struct Sheet {
    QRectF area;        ///< Of the bars
    double ways, left;  ///< Width of the ways; right end of the names
    double top = 1.0;   ///< Of the oxygen axis [g/m^3]
    double row, foot;   ///< Height of a row; lower end of the last

    Sheet(const QRectF& whole, const MeasureResult& result, const std::vector<MeasuredInput>& inputs,
          double textHeight)
        : ways(std::min(kWays, 0.34 * whole.width())), left(std::min(kLeft, 0.28 * whole.width())) {
        area = whole.adjusted(left, 2.0 * textHeight + 14.0, -ways - kShares, -8.0);
        top = std::max(result.high, 1.0);
        for (const MeasuredInput& input : inputs) {
            top = std::max({top, input.worstAtLow, input.worstAtHigh});
        }
        top = std::ceil(top);
        const auto rows = static_cast<double>(inputs.size());
        row = std::min(kRow, area.height() / std::max<double>(1.0, rows));
        foot = area.top() + row * rows;
    }
    [[nodiscard]] double x(double oxygen) const { return area.left() + area.width() * oxygen / top; }
};

void paintGround(QCPPainter& painter, const Sheet& sheet, const MeasureResult& result,
                 const PlotStyle& style) {
    const QFontMetricsF metrics(style.font);
    const QRectF& area = sheet.area;
    const engine::OxygenThresholds& thresholds = result.model.parameters.thresholds;
    const auto below = [&](double line, const QColor& colour, const QColor& edge) {
        const QRectF band(area.topLeft(), QPointF(sheet.x(std::min(line, sheet.top)), sheet.foot));
        painter.fillRect(band, mixed(style.paper, colour, kBandShare));
        painter.setPen(QPen(edge, 0.8));
        painter.drawLine(band.topRight(), band.bottomRight());
    };
    below(thresholds.stress, style.stress, style.stressInk);
    below(thresholds.lethal, style.lethal, style.lethalInk);
    const double step = sheet.top > 10.0 ? 4.0 : sheet.top > 4.0 ? 2.0 : 1.0;
    for (double at = 0.0; at <= sheet.top + 1e-9; at += step) {
        const double x = sheet.x(at);
        painter.setPen(QPen(style.hairline, 0));
        painter.drawLine(QPointF(x, area.top()), QPointF(x, sheet.foot));
        painter.setPen(style.ink);
        painter.drawText(QRectF(x - 20, area.top() - metrics.height() - 4, 40, metrics.height()),
                         Qt::AlignCenter, QString::number(std::lround(at)));
    }
    painter.setPen(style.quietInk);
    painter.drawText(QPointF(2.0, metrics.ascent() + 2), tr("lowest fish water of the run, mg/L"));
    painter.drawText(QRectF(area.right() + 6, 2, kShares + sheet.ways, metrics.height()),
                     Qt::AlignLeft | Qt::AlignVCenter, tr("share, %, and what a reading brings"));
    QPen middle(style.ink, 1.0, Qt::DashLine);
    painter.setPen(middle);
    painter.drawLine(QPointF(sheet.x(result.median), area.top()),
                     QPointF(sheet.x(result.median), sheet.foot));
}

/// The row of an input. @param y  Its middle.
void paintInput(QCPPainter& painter, const Sheet& sheet, const MeasuredInput& input, double y,
                const PlotStyle& style) {
    const QFontMetricsF metrics(style.font);
    const auto text = [&](double from, double width, Qt::Alignment side, const QString& words,
                          double line = 0.0) {  // from the row's middle down
        painter.drawText(QRectF(from, y + (line - 0.5) * metrics.height(), width, metrics.height()),
                         side | Qt::AlignVCenter, metrics.elidedText(words, Qt::ElideRight, width));
    };
    const QPointF low(sheet.x(input.worstAtLow), y), high(sheet.x(input.worstAtHigh), y);
    painter.setPen(style.ink);
    text(2.0, sheet.left - 14.0, Qt::AlignRight, nameOf(input));
    painter.setPen(QPen(style.lineColour(1), 5.0, Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(low, high);
    painter.setPen(QPen(style.lineColour(1), 1.8));
    painter.setBrush(style.paper);
    painter.drawEllipse(low, 5.0, 5.0);
    painter.setBrush(style.lineColour(1));
    painter.drawEllipse(high, 5.0, 5.0);
    painter.setBrush(Qt::NoBrush);
    const double right = sheet.area.right(), width = sheet.ways - 4.0;
    painter.setPen(style.ink);
    text(right + 6, kShares - 18.0, Qt::AlignRight, percent(input.share));
    painter.setPen(style.quietInk);
    const auto [way, gain] = wayTexts(input);
    const bool isTwo = !gain.isEmpty() && sheet.row >= 2.2 * metrics.height();
    text(right + kShares, width, Qt::AlignLeft, way, isTwo ? -0.5 : 0.0);
    if (isTwo) {
        text(right + kShares, width, Qt::AlignLeft, gain, 0.5);
    }
}

void paint(QCPPainter& painter, const QRectF& whole, const MeasureResult& result, const PlotStyle& style) {
    const std::vector<MeasuredInput> inputs = engine::tellingInputs(result, kMostRows);
    const Sheet sheet(whole, result, inputs, QFontMetricsF(style.font).height());
    paintGround(painter, sheet, result, style);
    for (std::size_t i = 0; i < inputs.size(); ++i) {
        const double y = sheet.area.top() + sheet.row * (static_cast<double>(i) + 0.5);
        paintInput(painter, sheet, inputs[i], y, style);
    }
}

QString headlineOf(const MeasureResult& result) {
    const std::vector<MeasuredInput> inputs = engine::tellingInputs(result, kMostRows);
    if (inputs.empty()) {
        return tr("No single input moves the worst low of \u201c%1\u201d much.").arg(toQString(result.ramp));
    }
    const QString most =
        tr("The worst low of \u201c%1\u201d depends most on %2: %3 % of its spread.")
            .arg(toQString(result.ramp), nameOf(inputs.front()), percent(inputs.front().share));
    const MeasuredInput* best = engine::bestReading(result);
    return best == nullptr
               ? most + QLatin1Char(' ') + tr("No usual reading narrows it much.")
               : most + QLatin1Char(' ') + tr("Worth most at the pond: %1.").arg(termText(best->way->term));
}

}  // namespace

Picture measurePicture(const OutcomePtr& outcome, const Selection& /*selection*/) {
    Picture picture;
    if (outcome->measured == nullptr) {
        picture.headline =
            tr("Working out what to measure on %L1 ponds like this one ...").arg(engine::kMembersToMeasure);
        picture.words = picture.headline;
        picture.draw = [](QCustomPlot& plot, const PlotStyle& style) { prepare(plot, style); };
        picture.csv = [] { return engine::measureFiles({}).front().text; };
        return picture;
    }
    const MeasureResult& result = *outcome->measured;
    picture.headline = headlineOf(result);
    picture.detail = tr("A bar goes from the low end of an input (ring) to its high end (dot), 5 and 95 %; "
                        "the dashed line "
                        "is the middle pond, %1 mg/L, and nine of ten lie between %2 and %3.")
                         .arg(oxygenText(result.median), oxygenText(result.low), oxygenText(result.high));
    QStringList words{picture.headline};
    for (const engine::Sentence& sentence : engine::sentencesOf(result)) {
        if (sentence.part == engine::SentencePart::Shares || sentence.part == engine::SentencePart::Visit) {
            words << localized(sentence);
        }
    }
    picture.words = words.join(QLatin1Char(' '));
    picture.draw = [outcome](QCustomPlot& plot, const PlotStyle& style) {
        addCanvas(plot, style, [=](QCPPainter& painter, const QRectF& whole) {
            paint(painter, whole, *outcome->measured, style);
        });
    };
    picture.csv = [outcome] { return engine::measureFiles(*outcome->measured).front().text; };
    return picture;
}

}  // namespace widgets
