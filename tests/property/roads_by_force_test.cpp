// The plan's road beside 150 others to the same schedule that no search chose: first day, growth and length
// are gone through by force. Takes minutes.
#include "engine/ensemble/chances.h"
#include "engine/plan/constants_start.h"
#include "engine/plan/plan_road.h"
#include "engine/plan/plan_search.h"
#include "engine/plan/plan_sensitivity.h"
#include "engine/plan/plan_sustained.h"
#include "engine/plan/start_conditions.h"
#include "engine/plan/surface_air_ramp.h"
#include "engine/run/shares.h"
#include "tests/scenario.h"
#include "tests/scenario_names.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <cstdlib>
#include <iomanip>
#include <iostream>

namespace engine {
namespace {

using test::scenario;

constexpr int kMembers = 64;

/// From a first day's minutes by a factor a day, at most to where a road's runs end, to the schedule on a
/// day.
std::vector<DayAction> daysOf(double first, double factor, int length, int most, int diffusers,
                              const SustainedSchedule& to) {
    std::vector<DayAction> days;
    double minutes = first;
    for (int day = 1; day < length; ++day) {
        DayAction action = to.action;
        action.minutes = static_cast<int>(std::lround(std::min(minutes, static_cast<double>(most))));
        action.diffusers = diffusers;
        days.push_back(action);
        minutes *= factor;
    }
    days.push_back(to.action);
    return days;
}

/// 150 ways to a schedule, on one of six days at most `longest`.
std::vector<std::vector<DayAction>> allWays(const SustainedSchedule& to, int longest, int most) {
    std::vector<std::vector<DayAction>> out;
    for (int k = 1; k <= 6; ++k) {
        const int length = std::max(1, longest * k / 6);
        for (const double first : {10.0, 20.0, 40.0, 80.0, 160.0}) {
            for (const double factor : {1.0, 1.25, 1.5, 2.0, 3.0}) {
                const int diffusers = k % 2 == 0 ? 1 : to.action.diffusers;
                out.push_back(daysOf(first, factor, length, most, diffusers, to));
            }
        }
    }
    return out;
}

struct Ground {
    Pond pond;
    Comparison nothing;  ///< With members
    int most = 0;        ///< Minutes of a day on the way
};

Ground groundOf(const Pond& pond, ClockTime start) {
    Ground out{pond, {}, 0};
    out.pond.ramps.clear();
    CompareOptions options;
    options.days = nightsOf(kLongestRoad);
    options.resolution = {24, 600.0};
    options.endStates = options.attribution = false;
    options.members = kMembers;
    options.seed = 4711;
    out.nothing = compare(out.pond, options);
    const RoadGround road = roadGround(out.nothing.model);
    out.most = static_cast<int>(road.latestEnd / 60.0) - start.minutes;
    return out;
}

/// Days of air and hold days of the calendar go as for any road; members only where the central run passes.
std::optional<Comparison> ifItMayStart(const Ground& ground, Ramp ramp, int members) {
    Pond pond = ground.pond;
    ramp.weatherHold = true;
    pond.ramps = {ramp};
    CompareOptions options;
    options.days = ground.nothing.days;
    options.resolution = ground.nothing.model.resolution;
    options.endStates = options.attribution = false;
    options.seed = 4711;
    for (const int count : {1, members}) {
        options.members = count;
        options.earlier = &ground.nothing;
        Comparison tried = compare(pond, options);
        for (const UnmetCondition& unmet : unmetBy(tried, 1)) {
            // A central run alone has no chances.
            const bool isChance = unmet.condition == StartCondition::LethalWith ||
                                  unmet.condition == StartCondition::LethalAlone ||
                                  unmet.condition == StartCondition::LethalAdded;
            if (count == members || !isChance) {
                return std::nullopt;
            }
        }
        if (count == members) {
            return tried;
        }
    }
    return std::nullopt;
}

double lethalOf(const Comparison& tried) {
    return chancesOf(tried, tried.runs.back()).belowLethal;
}

/// The fewest days of ways by force that may start, take no more ponds below the lethal line than the plan
/// does and few enough below its stress line; 0 if none does.
int fewestByForce(const Ground& ground, const SustainedSchedule& to, int longest, const Ramp& surfaceAir,
                  double lethal, double chance) {
    int fewest = 0;
    for (const std::vector<DayAction>& days : allWays(to, longest, ground.most)) {
        const int length = static_cast<int>(days.size());
        if (fewest > 0 && length >= fewest) {
            continue;
        }
        Ramp ramp = rampOf(days, to.start);
        ramp.name = "by force";
        ramp.surfaceAir_kW = surfaceAir.surfaceAir_kW;
        ramp.surfaceAirWindow = surfaceAir.surfaceAirWindow;
        const auto tried = ifItMayStart(ground, ramp, kMembers);
        if (tried && lethalOf(*tried) <= lethal + 1e-9 &&
            addedBelow(*tried->ensemble, 1, tried->model.parameters.thresholds.stress).share() <= chance) {
            fewest = length;
        }
    }
    return fewest;
}

TEST(RoadsByForce, NoneIsShorterByMoreThanADayThanThePlanAtEqualHarm) {
    if (std::getenv("DAWNLINE_SLOW") == nullptr) {
        GTEST_SKIP() << "takes minutes: set DAWNLINE_SLOW";
    }
    for (const char* name : test::kScenarioNames) {
        SCOPED_TRACE(name);
        const Pond pond = scenario(name);
        PlanOptions options;
        options.members = 128;
        options.isBrief = true;
        const Plan plan = makePlan(pond, options);
        ASSERT_EQ(plan.end, PlanEnd::Completed) << plan.message;
        std::cout << std::left << std::setw(20) << name << std::right;
        if (plan.ramp) {
            const SustainedSchedule& to = plan.sustainedSchedules[*plan.chosen];
            const int length = static_cast<int>(plan.days.size());
            const Ground ground = groundOf(pond, to.start);
            const auto own = ifItMayStart(ground, *plan.ramp, kMembers);
            const int fewest =
                fewestByForce(ground, to, std::max(length - 1, 1), *plan.ramp,
                              own ? lethalOf(*own) : kLethalWith_percent.value / 100.0, options.chance);
            std::cout << " plan " << length << " days, by force " << fewest
                      << (own ? "" : " (the plan itself does not pass these draws)") << std::endl;
            EXPECT_TRUE(fewest == 0 || fewest >= length - 1);
            continue;
        }
        const auto order = inOrderOfChoice(plan.sustainedSchedules);
        if (order.empty()) {
            std::cout << " no schedule to go to" << std::endl;
            continue;
        }
        const SustainedSchedule& to = plan.sustainedSchedules[order.front()];
        const Ground ground = groundOf(pond, to.start);
        const double refuge = refugeAir_kW(ground.nothing.model, ground.nothing.runs.front());
        for (const double times : {0.0, kMostSurfaceAir.value}) {
            Ramp air;
            if (times > 0.0) {
                air = withSurfaceAirOf(ground.nothing.model, air, times * refuge);
            }
            const int fewest = fewestByForce(ground, to, kLongestRoad, air, kLethalWith_percent.value / 100.0,
                                             options.chance);
            std::cout << " no plan, by force " << fewest << " days with " << times << " times surface air;";
            EXPECT_EQ(fewest, 0) << times;
        }
        std::cout << std::endl;
    }
}

}  // namespace
}  // namespace engine
