#include "widgets/charts/sheets.h"

#include "engine/output/picture_tables.h"
#include "engine/pond/local_time.h"
#include "engine/ramps/weather.h"
#include "engine/run/nights.h"
#include "engine/wording/wording.h"
#include "widgets/charts/dawn_lows_plot.h"
#include "widgets/charts/night_plot.h"
#include "widgets/charts/picture.h"
#include "widgets/charts/whole_run_plot.h"
#include "widgets/document/to_qstring.h"
#include "widgets/document/wording.h"

#include <QCoreApplication>

#include <algorithm>
#include <string_view>

namespace widgets {
namespace {

constexpr QSize kNight{600, 380};
constexpr QSize kStrip{600, 240};

QString tr(const char* text) {
    return QCoreApplication::translate("Sheets", text);
}

}  // namespace

QString sheetFoot(const Outcome& outcome) {
    const engine::Pond& pond = outcome.comparison.model.pond;
    QStringList words;
    if (!pond.title.empty()) {
        words << toQString(pond.title) + QLatin1Char('.');
    }
    words << tr("Day 1 is %1.").arg(toQString(engine::formatDate(*pond.place.firstDay)));
    for (const auto key : {engine::SentenceKey::CautionComparison, engine::SentenceKey::CautionReadings}) {
        words << localized({engine::SentencePart::Caution, key, {}});
    }
    return words.join(QLatin1Char(' '));
}

namespace {

/// A drawing of an outcome that keeps the selection as it is now: a sheet is drawn when it is saved.
template <class Draw>
auto drawingOf(const Selection& selection, Draw draw) {
    const auto kept = std::make_shared<Selection>();
    kept->copy(selection);
    kept->setCursor(std::nullopt);
    return [draw, kept](QCustomPlot& plot, const PlotStyle& style) { draw(plot, *kept, style); };
}

}  // namespace

ChartSheet nightSheet(const OutcomePtr& outcome, const Selection& selection, bool criteria) {
    NightScene scene = nightScene(*outcome, selection, {criteria, false});
    scene.cursor.reset();
    ChartSheet sheet;
    sheet.name =
        selection.mode() == Selection::Mode::AllRamps ? QStringLiteral("night") : QStringLiteral("nights");
    sheet.headline = scene.headline;
    sheet.detail = scene.title + QLatin1String(". ") + scene.detail;
    sheet.foot = sheetFoot(*outcome);
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
    sheet.foot = sheetFoot(*outcome);
    sheet.words = dawnLowsInWords(*outcome);
    sheet.key = keyOf(*outcome, selection);
    sheet.size = kStrip;
    sheet.csv = engine::nightLowsCsv(outcome->comparison);
    sheet.detail = localized(engine::sentencesOfNights(outcome->comparison, selection.ramp()),
                             engine::SentencePart::Night);
    sheet.draw = drawingOf(
        selection, [outcome, criteria](QCustomPlot& plot, const Selection& kept, const PlotStyle& style) {
            drawDawnLows(plot, outcome, kept, criteria, style);
        });
    return sheet;
}

ChartSheet wholeRunSheet(const OutcomePtr& outcome, const Selection& selection) {
    ChartSheet sheet;
    sheet.name = QStringLiteral("run");
    sheet.headline = tr("The whole run: oxygen in the fish water, when the air runs, and the weather");
    sheet.detail = tr("Bars: when the air runs, a row for each ramp in the order of their names.");
    sheet.foot = sheetFoot(*outcome);
    sheet.words = wholeRunInWords(*outcome);
    sheet.key = keyOf(*outcome, selection);
    sheet.size = kStrip + QSize(0, 60);
    sheet.csv = engine::wholeRunCsv(outcome->comparison, outcome->backdrop);
    sheet.draw =
        drawingOf(selection, [outcome](QCustomPlot& plot, const Selection& kept, const PlotStyle& style) {
            drawWholeRun(plot, outcome, kept, style);
        });
    return sheet;
}

std::vector<ChartSheet> allSheets(const OutcomePtr& outcome) {
    Selection selection;
    selection.setExtent(outcome->comparison.days, outcome->comparison.runs.size());
    selection.setRamp(chosenRamp(outcome->comparison));
    selection.setNight(chosenNight(outcome->comparison));
    std::vector<ChartSheet> sheets{nightSheet(outcome, selection, false),
                                   dawnLowsSheet(outcome, selection, false),
                                   wholeRunSheet(outcome, selection)};
    for (const ViewKind& kind : viewKinds()) {
        if (std::string_view(kind.id) != kMeasureView || outcome->measured != nullptr) {
            sheets.push_back(sheetOf(kind, outcome, selection));
        }
    }
    selection.setMode(Selection::Mode::AllNights);
    sheets.push_back(nightSheet(outcome, selection, false));
    return sheets;
}

}  // namespace widgets
