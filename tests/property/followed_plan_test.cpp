// The plan followed to the letter in 200 ponds like the file's: each dawn is read with a meter's error, the
// morning rules decide, and the day runs as they say. Takes minutes.
#include "engine/base/parallel.h"
#include "engine/plan/dawn_rules.h"
#include "engine/plan/plan_members.h"
#include "engine/plan/plan_road.h"
#include "engine/plan/plan_search.h"
#include "engine/run/kernel.h"
#include "tests/scenario.h"
#include "tests/scenario_names.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <iomanip>
#include <iostream>
#include <map>
#include <random>

namespace engine {
namespace {

using test::scenario;

constexpr int kPonds = 200;
constexpr double kMeterError = 0.2;  // [g/m^3], of a calibrated meter; common practice, no source
constexpr int kLater = 7;            // [d] that holds may take

/// Minutes of air day by day.
using Minutes = std::vector<int>;

/// One pond on its way.
struct Follower {
    Minutes days;  ///< That have run
    std::size_t step = 0;
    int resume = 0;  ///< Minutes after a day that was skipped; 0: as the plan has it
    int holds = 0;
    bool isStopped = false, isThere = false;
    int dayThere = 0;
    std::optional<double> before, yesterday;
};

/// A plan as it is handed over: its days without those that the calendar holds, which hold any step.
struct Given {
    std::vector<DayAction> steps;
    DayAction sustained;
    ClockTime start;
    SurfaceAir air;
    std::vector<int> holdDays;
    DawnLimits limits;
    double debtRatio = 0.0;
};

/// What a morning makes of the day. @param read  At dawn; nothing on the first day
int minutesToday(Follower& pond, const Given& given, int day, std::optional<double> read) {
    if (pond.isThere) {
        return given.sustained.minutes;
    }
    if (pond.isStopped) {
        return 0;
    }
    const bool isHeld = std::find(given.holdDays.begin(), given.holdDays.end(), day) != given.holdDays.end();
    const int last = pond.step > 0 ? given.steps[pond.step - 1].minutes : 0;
    DawnVerdict verdict = DawnVerdict::Go;
    if (read) {
        Morning morning;
        morning.surface = morning.middle = read;
        morning.beforeStart = pond.before;
        morning.yesterday = pond.yesterday;
        morning.holdsBefore = pond.holds;
        morning.debtRatio = given.debtRatio;
        morning.isStarted = true;
        verdict = decideAtDawn(morning, given.limits).verdict;
        pond.yesterday = read;
    }
    pond.holds = verdict == DawnVerdict::Hold ? pond.holds + 1 : 0;
    if (verdict == DawnVerdict::Stop) {
        pond.isStopped = true;
        return 0;
    }
    if (isHeld) {
        return 0;
    }
    if (verdict == DawnVerdict::Back) {
        pond.resume = std::max(last / 2, 1);
        return 0;
    }
    if (verdict == DawnVerdict::Hold) {
        return pond.resume > 0 ? pond.resume : last;
    }
    if (pond.resume > 0) {
        return std::exchange(pond.resume, 0);
    }
    const DayAction& next = given.steps[pond.step++];
    if (next == given.sustained) {
        pond.isThere = true;
        pond.dayThere = day;
    }
    return next.minutes;
}

Schedule scheduleOf(const Minutes& minutes, const Given& given, const PlanMembers& ponds) {
    std::vector<DayAction> days;
    for (std::size_t i = 0; i < minutes.size(); ++i) {
        DayAction action = i < given.steps.size() ? given.steps[i] : given.sustained;
        action.minutes = minutes[i];
        days.push_back(action);
    }
    return engine::scheduleOf(days, given.start, *ponds.model().pond.aerator, ponds.days());
}

double lowOf(const MembersRunState& at, std::size_t pond, int night) {
    return lane(at.packs[pond / kPack].lows[static_cast<std::size_t>(night - 1)],
                static_cast<int>(pond % kPack));
}

/// When the morning decides: before any run of the day, after the low of the night.
double morningOf(int day) {
    return (day - 1) * kDay + 8.0 * kHour;
}

/// Follows all ponds morning by morning; those that had the same days so far go on together.
/// @return how many come below a line
int followed(const PlanMembers& ponds, const Given& given, std::vector<Follower>& followers, double line) {
    std::map<Minutes, MembersRunState> at{{{}, ponds.run(ponds.start(), {}, morningOf(1), given.air)}};
    std::mt19937_64 dice(42);
    std::normal_distribution<double> error(0.0, kMeterError);
    for (int day = 1; day <= ponds.days(); ++day) {
        std::map<Minutes, MembersRunState> next;
        for (std::size_t i = 0; i < followers.size(); ++i) {
            Follower& pond = followers[i];
            const MembersRunState& now = at.at(pond.days);
            const auto read =
                day == 1 ? std::nullopt : std::optional(std::max(lowOf(now, i, day - 1) + error(dice), 0.0));
            pond.days.push_back(minutesToday(pond, given, day, read));
            if (!next.contains(pond.days)) {
                const double until = day < ponds.days() ? morningOf(day + 1) : PlanMembers::endOfNight(day);
                next[pond.days] = ponds.run(now, scheduleOf(pond.days, given, ponds), until, given.air);
            }
        }
        at = std::move(next);
    }
    int below = 0;
    for (std::size_t i = 0; i < followers.size(); ++i) {
        double lowest = line;
        for (int night = 1; night <= ponds.days(); ++night) {
            lowest = std::min(lowest, lowOf(at.at(followers[i].days), i, night));
        }
        below += lowest < line ? 1 : 0;
    }
    return below;
}

/// How many come below a line under one schedule for all.
int below(const PlanMembers& ponds, const Schedule& schedule, const SurfaceAir& air, double line) {
    const MembersRunState end =
        ponds.run(ponds.start(), schedule, PlanMembers::endOfNight(ponds.days()), air);
    int count = 0;
    for (std::size_t i = 0; i < static_cast<std::size_t>(ponds.members()); ++i) {
        double lowest = line;
        for (int night = 1; night <= ponds.days(); ++night) {
            lowest = std::min(lowest, lowOf(end, i, night));
        }
        count += lowest < line ? 1 : 0;
    }
    return count;
}

TEST(FollowedPlan, TakesNoMorePondsBelowTheLethalLineThanThePlanSaid) {
    if (std::getenv("DAWNLINE_SLOW") == nullptr) {
        GTEST_SKIP() << "takes minutes: set DAWNLINE_SLOW";
    }
    int plans = 0;
    for (const char* name : test::kScenarioNames) {
        SCOPED_TRACE(name);
        PlanOptions options;
        options.members = 256;
        options.isBrief = true;
        const Plan plan = makePlan(scenario(name), options);
        ASSERT_EQ(plan.end, PlanEnd::Completed) << plan.message;
        std::cout << std::left << std::setw(20) << name << std::right;
        if (!plan.ramp) {
            std::cout << " no plan" << std::endl;
            continue;
        }
        ++plans;
        const PondModel& model = plan.comparison.model;
        Given given;
        given.sustained = plan.days.back();
        for (const DayAction& day : plan.days) {
            if (!day.isHold) {
                given.steps.push_back(day);
            }
        }
        given.start = plan.sustainedSchedules[*plan.chosen].start;
        given.air = plan.comparison.runs.back().surfaceAir;
        for (const HoldDay& held : plan.heedsHolds ? plan.holds : std::vector<HoldDay>()) {
            given.holdDays.push_back(held.day);
        }
        given.limits = dawnLimits(model, model.profile.temperature.front());
        const int length = static_cast<int>(plan.days.size());
        const PlanMembers ponds(model, kPonds, nightsOf(length) + kLater, 271828, threadsFor(0), {});
        std::vector<Follower> followers(kPonds);
        const double lethal = model.parameters.thresholds.lethal;
        const int withRules = followed(ponds, given, followers, lethal);
        const int withPlan =
            below(ponds, engine::scheduleOf(plan.days, given.start, *model.pond.aerator, ponds.days()),
                  given.air, lethal);
        const int alone = below(ponds, {}, {}, lethal);
        std::vector<double> lost;
        int stopped = 0, under = 0;
        for (const Follower& one : followers) {
            stopped += one.isStopped ? 1 : 0;
            under += !one.isStopped && !one.isThere ? 1 : 0;
            if (one.isThere) {
                lost.push_back(one.dayThere - length);
            }
        }
        std::sort(lost.begin(), lost.end());
        std::cout << " plan of " << length << " days; of " << kPonds
                  << " ponds below the lethal line: left alone " << alone << ", the plan as it stands "
                  << withPlan << ", by the mornings " << withRules << "; stopped " << stopped
                  << ", not there yet " << under << "; days lost: median "
                  << (lost.empty() ? 0.0 : lost[lost.size() / 2]) << ", most "
                  << (lost.empty() ? 0.0 : lost.back()) << std::endl;
        // What the plan says is its share of its own draws, and these 200 are others: the sampling errors of
        // both.
        const double said = plan.comparison.ensemble->ramps.back().chanceBelowLethal;
        const auto members = static_cast<int>(plan.comparison.ensemble->effective);
        const CountedChance expected{static_cast<int>(std::lround(said * members)), members};
        EXPECT_LE(1.0 - (CountedChance{kPonds - withRules, kPonds}).upper(), expected.upper());
        EXPECT_LE(withRules, kPonds * (CountedChance{withPlan, kPonds}).upper());
    }
    EXPECT_GT(plans, 0);
}

}  // namespace
}  // namespace engine
