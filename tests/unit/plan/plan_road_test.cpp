// Ways to a sustained schedule, and the morning rules that they keep.
#include "engine/plan/plan_road.h"

#include "engine/base/units.h"
#include "engine/plan/plan_sustained.h"
#include "engine/plan/start_conditions.h"
#include "engine/ramps/hold_rules.h"
#include "engine/run/air_days.h"
#include "engine/run/backdrop.h"
#include "engine/run/end_state.h"
#include "engine/run/shares.h"
#include "tests/made_up_comparison.h"
#include "tests/scenario.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace engine::test {
namespace {

constexpr Resolution kCoarse{16, 900.0};

RunBlock block(int day, double minutes, double depth = 3.0) {
    const double start = (day - 1) * kDay + 10.0 * kHour;
    return {start, start + minutes * kMinute, 2, depth, day};
}

TEST(AirDays, AreReadFromTheSchedule) {
    RampRun run;
    run.days.resize(10);
    EXPECT_FALSE(firstAirDay(run));
    EXPECT_FALSE(firstSustainedDay(run));
    run.schedule = {block(3, 30.0), block(4, 30.0), block(5, 60.0)};
    EXPECT_EQ(firstAirDay(run), 3);
    EXPECT_TRUE(isStepUp(run, 3));
    EXPECT_FALSE(isStepUp(run, 4)) << "as long as the day before";
    EXPECT_TRUE(isStepUp(run, 5));
    run.schedule.push_back({5 * kDay, 20 * kDay, 2, 3.0, 6});
    run.daysToContinuous = 6;
    EXPECT_EQ(firstSustainedDay(run), 6);
    EXPECT_FALSE(isStepUp(run, 7));
    run.schedule.back().end = 8 * kDay;
    run.schedule.push_back({8 * kDay, 20 * kDay, 2, 3.5, 9});
    EXPECT_EQ(firstSustainedDay(run), 9) << "deeper is another schedule, though the air never stops";
    EXPECT_TRUE(isStepUp(run, 9));
}

// Sport fish (common practice): go from 5, stop under 3.
TEST(StartConditions, AStepWantsADawnThatSaysGo) {
    const PondModel model = prepareUnbalanced(scenario("grandfathers-pond"), kCoarse);
    RampRun run;
    for (int day = 1; day <= 6; ++day) {
        DayRow row;
        row.day = day;
        row.lowest = 5.5;
        run.days.push_back(row);
    }
    run.schedule = {block(2, 30.0), block(3, 60.0), {3 * kDay, 9 * kDay, 2, 3.0, 4}};
    run.daysToContinuous = 4;
    EXPECT_FALSE(haltedByMornings(model, run));
    run.days[2].lowest = 4.9;
    const auto held = haltedByMornings(model, run);
    ASSERT_TRUE(held);
    EXPECT_EQ(held->condition, StartCondition::MorningHolds);
    EXPECT_EQ(held->night, 3);
    run.days[2].lowest = 5.5;
    run.days[3].lowest = 4.0;
    EXPECT_FALSE(haltedByMornings(model, run)) << "nothing is stepped up after day 4";
    run.days[3].lowest = 2.9;
    EXPECT_EQ(haltedByMornings(model, run)->condition, StartCondition::MorningStops);
    run.days[3].lowest = 5.5;
    run.schedule.erase(run.schedule.begin());
    run.days[0].lowest = 1.0;
    EXPECT_FALSE(haltedByMornings(model, run)) << "the dawn of day 2 is before the start";
}

TEST(PlanRoad, KeepsTheRulesOfTheTrade) {
    const Pond pond = scenario("grandfathers-pond");
    const PondModel model = prepare(pond, kCoarse);
    const double alone = endStateOf(model, nullptr)->low;
    const auto table = sustainedSchedules(model, alone, 1, {});
    const std::vector<int> held = holdDays(pond);
    const RoadGround ground = roadGround(model);
    const double sunset = *backdropOf(model, 1).nights.front().sunset;
    int roads = 0;
    for (const double surfaceAir : {0.0, 2.0}) {
        for (const Road& road : roadsTo(ground, table.front(), surfaceAir, 2, {})) {
            ++roads;
            EXPECT_EQ(road.days.back(), table.front().action);
            EXPECT_LE(road.length(), kLongestRoad);
            EXPECT_EQ(road.ramp.surfaceAir_kW.has_value(), surfaceAir > 0.0);
            RunRequest request;
            request.days = nightsOf(road.length());
            const RampRun run = runRamp(model, &road.ramp, request);
            EXPECT_FALSE(haltedByMornings(model, run));
            EXPECT_EQ(run.worst().lowest, road.worst);
            const int first = *firstAirDay(run);
            EXPECT_LE(doseOf(model, run.days[static_cast<std::size_t>(first - 1)]), 10.5)
                << "of the bottom water on the first day; whole minutes";
            for (int day = 1; day < road.length(); ++day) {
                const DayAction& action = road.days[static_cast<std::size_t>(day - 1)];
                const bool isHeld = std::find(held.begin(), held.end(), day) != held.end();
                EXPECT_TRUE(!isHeld || action.minutes == 0) << "day " << day;
                if (action.depth > model.bottom.depth && action.minutes > 0 && action.minutes < 720) {
                    EXPECT_LE(10.0 * kHour + action.minutes * kMinute, sunset - 4.0 * kHour + kMinute);
                }
            }
        }
    }
    EXPECT_GT(roads, 0) << "no road to look at";
}

TEST(PlanRoad, OfAPondWithoutBottomWaterIsACourtesy) {
    const Pond pond = scenario("new-clay");
    PondModel model = prepare(pond, kCoarse);
    model.bottom = {};
    const auto table = sustainedSchedules(model, endStateOf(model, nullptr)->low, 1, {});
    const std::vector<Road> roads = roadsTo(roadGround(model), table.front(), 0.0, 1, {});
    ASSERT_EQ(roads.size(), 1U);
    EXPECT_EQ(roads.front().length(), 2) << "half a day, and on";
    EXPECT_EQ(roads.front().days.front().minutes, 720);
}

// A hold is for starts and steps: air that runs day and night does not stop for it.
TEST(HoldDays, DoNotStopAirThatRunsDayAndNight) {
    Pond pond = scenario("grandfathers-pond");
    const Date first = *pond.place.firstDay;
    const auto day = [&](int number) { return dateOfDay(pond, number); };
    pond.weather.holdDays = {first, day(3), day(5)};
    Ramp ramp;
    ramp.name = "table";
    ramp.kind = RampKind::Table;
    ramp.minutes = {60.0, 1440.0};
    ramp.weatherHold = true;
    pond.ramps = {ramp};
    pond.chosenRamp.clear();
    RunRequest request;
    request.days = 7;
    const PondModel model = prepareUnbalanced(pond, kCoarse);
    const RampRun run = runRamp(model, &model.pond.ramps.front(), request);
    EXPECT_EQ(firstAirDay(run), 2);
    EXPECT_EQ(run.days[2].runMinutes, 0.0) << "day 3 waits";
    EXPECT_EQ(run.daysToContinuous, 4);
    EXPECT_EQ(run.days[4].runMinutes, 1440.0) << "day 5 goes on";
}

}  // namespace
}  // namespace engine::test
