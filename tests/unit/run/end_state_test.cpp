// Where a pond ends under sustained air: the same on all pages.
#include "engine/run/end_state.h"

#include "engine/base/units.h"
#include "engine/ensemble/compare.h"
#include "tests/scenario.h"

#include <gtest/gtest.h>

namespace engine::test {
namespace {

constexpr Resolution kCoarse{12, 1800.0};

TEST(EndState, RampsThatLeadToTheSameEndTheSameWhateverTheDays) {
    Pond pond = scenario("grandfathers-pond");
    std::erase_if(pond.ramps, [](const Ramp& ramp) {
        return ramp.kind != RampKind::Continuous && ramp.kind != RampKind::Doubling;
    });
    pond.chosenRamp.clear();
    CompareOptions options;
    options.resolution = kCoarse;
    options.attribution = false;
    options.days = 14;
    const Comparison two = compare(pond, options);
    options.days = 20;
    const Comparison longer = compare(pond, options);
    ASSERT_EQ(two.runs.size(), 3U);
    EXPECT_EQ(two.runs[1].endState, two.runs[2].endState) << "both end around the clock";
    for (std::size_t i = 0; i < two.runs.size(); ++i) {
        ASSERT_TRUE(two.runs[i].endState);
        EXPECT_EQ(two.runs[i].endState, longer.runs[i].endState) << i;
    }
    const SustainedAir air = sustainedAirOf(two.runs[1]);
    EXPECT_TRUE(air.isContinuous);
    EXPECT_EQ(endStateOf(two.model, &air)->low, *two.runs[1].endState);
    EXPECT_EQ(endStateOf(two.model, nullptr)->low, *two.runs[0].endState);
}

TEST(EndState, PartOfTheDayGoesOnAsOnTheLastDay) {
    RampRun run;
    run.days.resize(3);
    run.schedule = {{10 * kHour, 11 * kHour, 1, 2.0, 1},
                    {kDay + 10 * kHour, kDay + 12 * kHour, 1, 2.0, 2},
                    {2 * kDay + 22 * kHour, 3 * kDay + 2 * kHour, 2, 3.0, 3}};
    const SustainedAir air = sustainedAirOf(run);
    EXPECT_FALSE(air.isContinuous);
    ASSERT_EQ(air.day.size(), 1U);
    EXPECT_EQ(air.day.front().start, 22 * kHour);
    EXPECT_EQ(air.day.front().end, 26 * kHour);
    EXPECT_EQ(air.day.front().open, 2);
    EXPECT_TRUE(sustainedAirOf(RampRun{}).day.empty());
}

TEST(EndState, SurfaceAirOfARampLiftsItsNights) {
    Pond pond = scenario("grandfathers-pond");
    Ramp ramp = rampOfKind(pond, RampKind::Doubling);
    const PondModel model = prepare(pond, kCoarse);
    RunRequest request;
    const RampRun plain = runRamp(model, &ramp, request);
    ramp.surfaceAir_kW = Quantity(3.0);
    const RampRun aired = runRamp(model, &ramp, request);
    EXPECT_GT(aired.worst().lowest, plain.worst().lowest + 0.2);
    EXPECT_EQ(aired.surfaceAir.from, 22 * kHour);
    EXPECT_EQ(aired.surfaceAir.until, 8 * kHour);
    double surface = 0.0;
    for (const BudgetRow& row : aired.budget) {
        surface += row.terms[kSurfaceAerator];
    }
    EXPECT_GT(surface, 0.0);
    EXPECT_EQ(plain.budget.back().terms[kSurfaceAerator], 0.0);
}

}  // namespace
}  // namespace engine::test
