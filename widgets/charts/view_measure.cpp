// What to measure: which inputs the worst low hangs on, and what a reading of each would bring.

#include "engine/ensemble/measure.h"
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
constexpr double kShownShare = 0.03;  // less comes by chance (engine/ensemble/measure.h)
constexpr double kShownGain = 0.01;   // of the width

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

std::vector<MeasuredInput> shownInputs(const MeasureResult& result) {
    std::vector<MeasuredInput> inputs;
    std::copy_if(result.inputs.begin(), result.inputs.end(), std::back_inserter(inputs),
                 [](const MeasuredInput& input) { return input.share >= kShownShare; });
    inputs.resize(std::min(inputs.size(), kMostRows));
    return inputs;
}

/// The reading that narrows the worst low most; null if none does.
const MeasuredInput* bestReading(const MeasureResult& result) {
    const auto best = std::min_element(
        result.inputs.begin(), result.inputs.end(), [](const MeasuredInput& a, const MeasuredInput& b) {
            return (a.way != nullptr ? a.left : 1.0) < (b.way != nullptr ? b.left : 1.0);
        });
    return best != result.inputs.end() && best->way != nullptr && 1.0 - best->left >= kShownGain ? &*best
                                                                                                 : nullptr;
}

/// How an input is measured, and what that brings.
std::array<QString, 2> wayTexts(const MeasuredInput& input) {
    if (input.way == nullptr) {
        return {tr("no usual way to measure it"), {}};
    }
    return {termText(input.way->term),
            1.0 - input.left < kShownGain
                ? tr("brings little")
                : tr("makes the spread %1 % narrower").arg(percent(1.0 - input.left))};
}

void paint(QCPPainter& painter, const QRectF& whole, const MeasureResult& result, const PlotStyle& style) {
    const std::vector<MeasuredInput> inputs = shownInputs(result);
    const QFontMetricsF metrics(style.font);
    const double ways = std::min(kWays, 0.34 * whole.width()), left = std::min(kLeft, 0.28 * whole.width());
    const QRectF area = whole.adjusted(left, 2.0 * metrics.height() + 14.0, -ways - kShares, -8.0);
    double top = std::max(result.high, 1.0);
    for (const MeasuredInput& input : inputs) {
        top = std::max({top, input.worstAtLow, input.worstAtHigh});
    }
    top = std::ceil(top);
    const auto x = [&](double oxygen) { return area.left() + area.width() * oxygen / top; };
    const double row =
        std::min(kRow, area.height() / std::max<double>(1.0, static_cast<double>(inputs.size())));
    const double foot = area.top() + row * static_cast<double>(inputs.size());
    const engine::OxygenThresholds& thresholds = result.model.parameters.thresholds;
    painter.fillRect(
        QRectF(QPointF(area.left(), area.top()), QPointF(x(std::min(thresholds.stress, top)), foot)),
        mixed(style.paper, style.stress, 0.72));
    painter.fillRect(
        QRectF(QPointF(area.left(), area.top()), QPointF(x(std::min(thresholds.lethal, top)), foot)),
        mixed(style.paper, style.lethal, 0.72));
    const double step = top > 10.0 ? 4.0 : top > 4.0 ? 2.0 : 1.0;
    for (double at = 0.0; at <= top + 1e-9; at += step) {
        painter.setPen(QPen(style.hairline, 0));
        painter.drawLine(QPointF(x(at), area.top()), QPointF(x(at), foot));
        painter.setPen(style.ink);
        painter.drawText(QRectF(x(at) - 20, area.top() - metrics.height() - 4, 40, metrics.height()),
                         Qt::AlignCenter, QString::number(std::lround(at)));
    }
    painter.setPen(style.quietInk);
    painter.drawText(QPointF(area.left(), metrics.ascent() + 2), tr("lowest fish water of the run, mg/L"));
    painter.drawText(QRectF(area.right() + 6, 2, kShares + ways, metrics.height()),
                     Qt::AlignLeft | Qt::AlignVCenter, tr("share, %, and what a reading brings"));
    QPen middle(style.ink, 1.0, Qt::DashLine);
    painter.setPen(middle);
    painter.drawLine(QPointF(x(result.median), area.top()), QPointF(x(result.median), foot));
    for (std::size_t i = 0; i < inputs.size(); ++i) {
        const MeasuredInput& input = inputs[i];
        const double y = area.top() + row * (static_cast<double>(i) + 0.5);
        const auto text = [&](double from, double width, Qt::Alignment side, const QString& words,
                              double line = 0.0) {  // from the row's middle down
            painter.drawText(QRectF(from, y + (line - 0.5) * metrics.height(), width, metrics.height()),
                             side | Qt::AlignVCenter, metrics.elidedText(words, Qt::ElideRight, width));
        };
        painter.setPen(style.ink);
        text(2.0, left - 14.0, Qt::AlignRight, nameOf(input));
        painter.setPen(QPen(style.lineColour(1), 5.0, Qt::SolidLine, Qt::FlatCap));
        painter.drawLine(QPointF(x(input.worstAtLow), y), QPointF(x(input.worstAtHigh), y));
        painter.setPen(QPen(style.lineColour(1), 1.8));
        painter.setBrush(style.paper);
        painter.drawEllipse(QPointF(x(input.worstAtLow), y), 5.0, 5.0);
        painter.setBrush(style.lineColour(1));
        painter.drawEllipse(QPointF(x(input.worstAtHigh), y), 5.0, 5.0);
        painter.setBrush(Qt::NoBrush);
        painter.setPen(style.ink);
        text(area.right() + 6, kShares - 18.0, Qt::AlignRight, percent(input.share));
        painter.setPen(style.quietInk);
        const auto [way, gain] = wayTexts(input);
        const bool isTwo = !gain.isEmpty() && row >= 2.2 * metrics.height();
        text(area.right() + kShares, ways - 4.0, Qt::AlignLeft, way, isTwo ? -0.5 : 0.0);
        if (isTwo) {
            text(area.right() + kShares, ways - 4.0, Qt::AlignLeft, gain, 0.5);
        }
    }
}

QString headlineOf(const MeasureResult& result) {
    const std::vector<MeasuredInput> inputs = shownInputs(result);
    if (inputs.empty()) {
        return tr("No single input moves the worst low of \u201c%1\u201d much.").arg(toQString(result.ramp));
    }
    const QString most =
        tr("The worst low of \u201c%1\u201d hangs most on %2: %3 % of its spread.")
            .arg(toQString(result.ramp), nameOf(inputs.front()), percent(inputs.front().share));
    const MeasuredInput* best = bestReading(result);
    return best == nullptr
               ? most + QLatin1Char(' ') + tr("No usual reading narrows it much.")
               : most + QLatin1Char(' ') + tr("Worth most at the pond: %1.").arg(termText(best->way->term));
}

}  // namespace

Picture measurePicture(const OutcomePtr& outcome, const Selection& /*selection*/) {
    Picture picture;
    if (outcome->measured == nullptr) {
        picture.headline = tr("What to measure is asked of %L1 ponds like this one; it comes here.")
                               .arg(engine::kMembersToMeasure);
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
