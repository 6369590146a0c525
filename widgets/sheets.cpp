#include "widgets/sheets.h"

#include "engine/local_time.h"
#include "engine/weather.h"
#include "engine/wording.h"
#include "widgets/dawn_lows_plot.h"
#include "widgets/night_plot.h"
#include "widgets/shown.h"
#include "widgets/whole_run_plot.h"
#include "widgets/wording.h"

#include <QCoreApplication>

#include <algorithm>

namespace widgets {
namespace {

constexpr QSize kNight{600, 380};
constexpr QSize kStrip{600, 240};

QString tr(const char* text) {
    return QCoreApplication::translate("Sheets", text);
}

/// Pond, first day and what no one may forget who sees the chart alone.
QString foot(const Outcome& outcome) {
    const engine::Pond& pond = outcome.comparison.model.pond;
    QStringList words;
    if (!pond.title.empty()) {
        words << shown(pond.title) + QLatin1Char('.');
    }
    words << tr("Day 1 is %1.").arg(shown(engine::formatDate(*pond.place.firstDay)));
    for (const auto key : {engine::SentenceKey::CautionComparison, engine::SentenceKey::CautionReadings}) {
        words << worded({engine::SentencePart::Caution, key, {}});
    }
    return words.join(QLatin1Char(' '));
}

/// A drawing of an outcome that keeps the selection as it is now: a sheet is drawn when it is saved.
template <class Draw>
auto drawingOf(const OutcomePtr& outcome, const Selection& selection, Draw draw) {
    return [outcome, draw, night = selection.night(), ramp = selection.ramp()](QCustomPlot& plot,
                                                                               const PlotStyle& style) {
        Selection kept;
        kept.setExtent(outcome->comparison.days, outcome->comparison.runs.size());
        kept.setNight(night);
        kept.setRamp(ramp);
        draw(plot, kept, style);
    };
}

}  // namespace

ChartSheet nightSheet(const OutcomePtr& outcome, const Selection& selection, bool criteria) {
    const NightScene scene = nightScene(*outcome, selection, {criteria, false});
    ChartSheet sheet;
    sheet.name =
        selection.mode() == Selection::Mode::AllRamps ? QStringLiteral("night") : QStringLiteral("nights");
    sheet.headline = scene.headline;
    sheet.detail = scene.title + QLatin1String(". ") + scene.detail;
    sheet.foot = foot(*outcome);
    sheet.words = inWords(scene);
    sheet.size = kNight;
    sheet.draw = [scene](QCustomPlot& plot, const PlotStyle& style) { drawNight(plot, scene, style); };
    sheet.csv = nightCsv(*outcome, selection);
    return sheet;
}

ChartSheet dawnLowsSheet(const OutcomePtr& outcome, const Selection& selection, bool criteria) {
    ChartSheet sheet;
    sheet.name = QStringLiteral("lows");
    sheet.headline = tr("Low of each night under each ramp");
    sheet.foot = foot(*outcome);
    sheet.words = dawnLowsInWords(*outcome);
    sheet.size = kStrip;
    sheet.csv = dawnLowsCsv(*outcome);
    sheet.detail =
        worded(engine::sentencesOfNights(outcome->comparison, selection.ramp()), engine::SentencePart::Night);
    sheet.draw =
        drawingOf(outcome, selection,
                  [outcome, criteria](QCustomPlot& plot, const Selection& kept, const PlotStyle& style) {
                      drawDawnLows(plot, outcome, kept, criteria, style);
                  });
    return sheet;
}

ChartSheet wholeRunSheet(const OutcomePtr& outcome, const Selection& selection) {
    ChartSheet sheet;
    sheet.name = QStringLiteral("run");
    sheet.headline = tr("The whole run: oxygen in the fish water, when the air runs, and the weather");
    sheet.foot = foot(*outcome);
    sheet.words = wholeRunInWords(*outcome);
    sheet.size = kStrip + QSize(0, 60);
    sheet.csv = wholeRunCsv(*outcome);
    sheet.draw = drawingOf(outcome, selection,
                           [outcome](QCustomPlot& plot, const Selection& kept, const PlotStyle& style) {
                               drawWholeRun(plot, outcome, kept, style);
                           });
    return sheet;
}

std::size_t chosenRamp(const engine::Comparison& comparison) {
    const engine::Pond& pond = comparison.model.pond;
    const auto found = std::find_if(pond.ramps.begin(), pond.ramps.end(),
                                    [&](const engine::Ramp& ramp) { return ramp.name == pond.chosenRamp; });
    if (found != pond.ramps.end()) {
        return static_cast<std::size_t>(found - pond.ramps.begin()) + 1;
    }
    return pond.ramps.empty() ? 0 : 1;
}

int worstNight(const engine::Comparison& comparison) {
    const engine::RampRun* worst = nullptr;
    for (std::size_t i = comparison.runs.size() > 1 ? 1 : 0; i < comparison.runs.size(); ++i) {
        const engine::RampRun& run = comparison.runs[i];
        if (isDrawn(run) && (worst == nullptr || run.worst().lowest < worst->worst().lowest)) {
            worst = &run;
        }
    }
    return worst == nullptr ? 1 : worst->worst().day;
}

std::vector<ChartSheet> allSheets(const OutcomePtr& outcome) {
    Selection selection;
    selection.setExtent(outcome->comparison.days, outcome->comparison.runs.size());
    selection.setRamp(chosenRamp(outcome->comparison));
    selection.setNight(worstNight(outcome->comparison));
    std::vector<ChartSheet> sheets{nightSheet(outcome, selection, true),
                                   dawnLowsSheet(outcome, selection, true),
                                   wholeRunSheet(outcome, selection)};
    selection.setMode(Selection::Mode::AllNights);
    sheets.push_back(nightSheet(outcome, selection, true));
    return sheets;
}

}  // namespace widgets
