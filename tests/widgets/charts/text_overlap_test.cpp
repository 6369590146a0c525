// No text of any chart lies over another text, or beyond the sheet: measured on the drawings that are
// exported, whose texts stand in the SVG with their places.

#include "engine/ensemble/measure.h"
#include "tests/scenario.h"
#include "tests/widgets/charts/svg_drawing.h"
#include "tests/widgets/typing.h"
#include "widgets/charts/owner_view.h"
#include "widgets/charts/picture.h"
#include "widgets/charts/sheets.h"
#include "widgets/document/recomputation.h"

#include <gtest/gtest.h>

namespace widgets {
namespace {

using engine::test::scenario;
using test::DrawnText;
using test::plain;

void expectApart(const ChartSheet& sheet) {
    const std::vector<DrawnText> texts = test::drawingOf(svgOf(sheet)).texts;
    ASSERT_GE(texts.size(), 3U) << "texts are found";
    constexpr double kLine = 0.6;  // [px] that rounding of fonts and places may take
    for (std::size_t i = 0; i < texts.size(); ++i) {
        const QRectF one = texts[i].box.adjusted(kLine, kLine, -kLine, -kLine);
        EXPECT_GE(one.left(), -1.0) << plain(texts[i].text);
        EXPECT_LE(one.right(), sheet.size.width() + 1.0) << plain(texts[i].text);
        for (std::size_t j = 0; j < i; ++j) {
            EXPECT_FALSE(one.intersects(texts[j].box.adjusted(kLine, kLine, -kLine, -kLine)))
                << '"' << plain(texts[i].text) << "\" over \"" << plain(texts[j].text) << '"';
        }
    }
}

OutcomePtr computed(const engine::Pond& pond, int nights) {
    Outcome outcome = withMembers(outcomeOf(pond, nights, true), 8, true);
    return std::make_shared<const Outcome>(withMeasured(withAnswer(outcome), engine::kLeastMembersToMeasure));
}

/// Every night under every ramp, all nights of each ramp, and every other view.
void expectAllApart(const OutcomePtr& outcome) {
    Selection selection;
    selection.setExtent(outcome->comparison.days, outcome->comparison.runs.size());
    for (std::size_t ramp = 0; ramp < outcome->comparison.runs.size(); ++ramp) {
        selection.setRamp(ramp);
        for (int night = 1; night <= outcome->comparison.days; ++night) {
            SCOPED_TRACE("ramp " + std::to_string(ramp) + ", night " + std::to_string(night));
            selection.setNight(night);
            expectApart(nightSheet(outcome, selection, false));
        }
        selection.setMode(Selection::Mode::AllNights);
        SCOPED_TRACE("all nights of ramp " + std::to_string(ramp));
        expectApart(nightSheet(outcome, selection, false));
        selection.setMode(Selection::Mode::AllRamps);
    }
    selection.setRamp(chosenRamp(outcome->comparison));
    for (const ChartSheet& sheet : allSheets(outcome)) {
        SCOPED_TRACE(plain(sheet.name));
        expectApart(sheet);
    }
    OwnerView owner(outcome, selection.ramp(), 1);
    expectApart(owner.sheet());
}

TEST(TextOverlap, OfTheHeadlinePond) {
    expectAllApart(computed(scenario("grandfathers-pond"), 7));
}

TEST(TextOverlap, OfTheKoiPond) {
    expectAllApart(computed(scenario("courtyard-koi"), 6));
}

TEST(TextOverlap, OfAPondWhoseCurvesLieTogether) {
    expectAllApart(computed(scenario("fee-cats"), 5));
}

TEST(TextOverlap, OfADeepPond) {
    expectAllApart(computed(scenario("old-quarry"), 3));
}

TEST(TextOverlap, OfOneRamp) {
    engine::Pond pond = scenario("new-clay");
    pond.ramps.resize(1);
    pond.chosenRamp = pond.ramps.front().name;
    expectAllApart(computed(pond, 3));
}

TEST(TextOverlap, OfTenRampsWithLongNames) {
    expectAllApart(computed(engine::test::withLongNamedRamps(scenario("new-clay"), 10), 2));
}

TEST(TextOverlap, OfAPondInFeetWithALogger) {
    engine::Pond pond = scenario("new-clay");
    pond.units = engine::UnitSystem::Us;
    for (int half = 0; half < 2 * 24 * 3; ++half) {
        for (const double depth : {0.5, 2.0}) {
            engine::Reading reading;
            reading.at = engine::LocalTime(std::chrono::local_days(*pond.place.firstDay) +
                                           std::chrono::minutes(30 * half));
            reading.depth = engine::Quantity(depth);
            reading.oxygen = engine::Quantity(7.0 - depth + 0.02 * (half % 48));
            pond.readings.push_back(reading);
        }
    }
    expectAllApart(computed(pond, 3));
}

TEST(TextOverlap, TwoTextsOverEachOtherAreSeen) {
    const QByteArray svg =
        "<svg><g transform=\"matrix(1,0,0,1,0,0)\" font-family=\"Lato\" font-size=\"12\" font-weight=\"400\">"
        "<text x=\"10\" y=\"20\">first</text><text x=\"15\" y=\"22\">second</text></g></svg>";
    const auto texts = test::drawingOf(svg).texts;
    ASSERT_EQ(texts.size(), 2U);
    EXPECT_TRUE(texts[0].box.intersects(texts[1].box));
}

}  // namespace
}  // namespace widgets
