// A ramp that is capped by its dose: when a day ends, and when the cap is let go.
#include "engine/base/units.h"
#include "engine/run/run.h"
#include "tests/scenario.h"

#include <gtest/gtest.h>

#include <cmath>

namespace engine::test {
namespace {

const Resolution kCoarse{20, 900.0};

/// The headline pond; its profile is of 17:30 on the evening before day 1, its air starts at 10:00.
const PondModel& headline() {
    static const PondModel model = prepare(scenario("grandfathers-pond"), kCoarse);
    return model;
}

RunRequest daysOf(int days) {
    RunRequest request;
    request.days = days;
    return request;
}

RampRun ran(const Ramp& ramp, int days = 4, const PondModel& model = headline()) {
    return runRamp(model, &ramp, daysOf(days));
}

TEST(CappedRamp, EndsOnTheLastWholeMinuteWithinItsDose) {
    for (const double percent : {2.0, 10.0, 25.0, 60.0}) {
        const RampRun run = ran(cappedRamp(percent, true), 6);
        ASSERT_EQ(run.schedule.size(), 7U);  // one more on the morning of the day after the last
        const double cap = 0.01 * percent * headline().bottom.volume;
        for (std::size_t d = 0; d < 6; ++d) {
            const RunBlock& block = run.schedule[d];
            const double minutes = (block.end - block.start) / kMinute;
            EXPECT_NEAR(minutes, std::round(minutes), 1e-6) << percent << " %, day " << d + 1;
            EXPECT_EQ(block.start, (static_cast<double>(d) * 24.0 + 10.0) * kHour);
            if (block.end <= (static_cast<double>(d) + 1.0) * kDay) {
                EXPECT_EQ(run.days[d].runMinutes, std::round(minutes));
                const double ofAMinute = run.days[d].liftedVolume / minutes;
                // A run's own end is planned with the plume of its last hour; half a minute's lift is left
                // for that.
                EXPECT_LE(run.days[d].liftedVolume, cap + 0.5 * ofAMinute) << percent << " %, day " << d + 1;
                EXPECT_GE(run.days[d].liftedVolume, cap - 1.5 * ofAMinute) << percent << " %, day " << d + 1;
            }
        }
    }
}

TEST(CappedRamp, RunsAtLeastAMinute) {
    const RampRun run = ran(cappedRamp(0.1, true));
    for (const DayRow& row : run.days) {
        EXPECT_EQ(row.runMinutes, 1.0);
    }
}

TEST(CappedRamp, GoesOnWhenItsDoseIsNotReachedByTheNextStart) {
    // Steps of 75 s: at the default steps the first night under air that never stops hangs on when the plume
    // was last integrated, and the two differ by some tenths.
    const PondModel model = prepare(scenario("grandfathers-pond"), {Resolution{}.layers, 75.0});
    const RampRun run = ran(cappedRamp(1000.0, true), 4, model);
    ASSERT_EQ(run.schedule.size(), 1U);
    EXPECT_EQ(run.schedule[0].start, 10.0 * kHour);
    EXPECT_EQ(run.schedule[0].end, 4.5 * kDay);
    // It brings its plume up to date before each step, so that it agrees with air that never stops to the
    // accuracy that is asked of a run in time only: 0.05 mg/L.
    const RampRun once = ran(continuousRamp(), 4, model);
    for (std::size_t d = 0; d < run.days.size(); ++d) {
        EXPECT_NEAR(run.days[d].lowest, once.days[d].lowest, 0.05) << "night " << d + 1;
    }
}

TEST(CappedRamp, WithoutBottomWaterIsLetGoOnTheFirstDayInTwoSteps) {
    Pond pond = scenario("new-clay");
    pond.profile->temperature.assign(pond.profile->depth.size(), 20.0);
    pond.profile->oxygen.assign(pond.profile->depth.size(), 8.0);
    const PondModel model = prepareUnbalanced(pond, kCoarse);
    ASSERT_FALSE(model.bottom.exists());
    const RampRun run = ran(cappedRamp(10.0, false), 5, model);
    EXPECT_EQ(run.capLiftedDay, 1);
    EXPECT_EQ(run.daysToContinuous, 2);
    ASSERT_EQ(run.schedule.size(), 2U);
    EXPECT_EQ(run.schedule[0].end - run.schedule[0].start, kDay / 2);
    EXPECT_EQ(run.schedule[1].start, 34.0 * kHour);
    EXPECT_EQ(run.schedule[1].end, 5.5 * kDay);
    for (const DayRow& row : run.days) {
        EXPECT_EQ(row.liftedVolume, 0.0);  // there is nothing to lift
    }
}

TEST(CappedRamp, IsLetGoOnTheFirstMorningThatFindsThePondMixed) {
    const PondModel model = prepare(scenario("pea-soup"), kCoarse);
    const RampRun run = ran(cappedRamp(25.0, false), 14, model);
    ASSERT_TRUE(run.capLiftedDay);
    const int lifted = *run.capLiftedDay;
    ASSERT_GE(lifted, 3);
    const auto mixedAfterNight = [&](int night) {
        const DayRow& row = run.days[static_cast<std::size_t>(night - 1)];
        return std::fabs(row.dawnTopMinusBottom) < 1.0 && row.dawnBottom > 2.0;
    };
    for (int night = 1; night < lifted - 1; ++night) {
        EXPECT_FALSE(mixedAfterNight(night)) << "night " << night;
    }
    EXPECT_TRUE(mixedAfterNight(lifted - 1));
    EXPECT_EQ(run.daysToContinuous, lifted + 1);
    for (const RunBlock& block : run.schedule) {
        if (block.day == lifted) {
            EXPECT_EQ(block.end - block.start, kDay / 2);
        }
    }
    EXPECT_FALSE(ran(cappedRamp(10.0, true), 14, model).capLiftedDay);  // hold keeps the cap
}

}  // namespace
}  // namespace engine::test
