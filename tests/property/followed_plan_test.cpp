// The plan followed to the letter in 200 ponds like the file's: each dawn is read with a meter's error, the
// morning rules decide, and the day runs as they say. Takes minutes.
#include "engine/base/parallel.h"
#include "engine/base/percentile.h"
#include "engine/ensemble/ensemble.h"
#include "engine/plan/dawn_rules.h"
#include "engine/plan/plan_road.h"
#include "engine/plan/plan_search.h"
#include "engine/run/kernel.h"
#include "engine/run/triage.h"
#include "tests/scenario.h"

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

/// The ponds that the plan meets, each with the same weight.
struct Ponds {
    const PondModel& model;
    std::vector<WeatheredMember> members;
    std::vector<MemberPack<Lanes>> packs;
    int nights = 0;
};

Ponds pondsOf(const PondModel& model, int nights) {
    EnsembleOptions options;
    options.days = nights;
    options.members = kPonds;
    options.seed = 271828;
    Ponds out{model, balancedMembers(model, options), {}, nights};
    for (std::size_t pack = 0; pack < packsOf(out.members.size()); ++pack) {
        out.packs.push_back(packOf<Lanes>(membersOfPack(std::span(out.members), pack)));
    }
    return out;
}

/// Lows of the nights [g/m^3], nights x members, of the packs in which one of these is; the others stay 0.
std::vector<float> lowsOf(const Ponds& ponds, const EnsembleRamp& ramp, const std::vector<std::size_t>& of) {
    const MemberPlan plan = memberPlan(ponds.model, ramp, ponds.nights, false);
    MemberTrace trace(ponds.members.size(), plan);
    static_cast<void>(forEachIndex(ponds.packs.size(), 0, {}, [&](std::size_t pack) {
        const std::size_t first = pack * kPack, end = first + kPack;
        if (std::any_of(of.begin(), of.end(), [&](std::size_t i) { return i >= first && i < end; })) {
            kernel().runPack(ponds.model, plan, ponds.packs[pack], first,
                             std::min(kPack, ponds.members.size() - first), trace, {});
        }
    }));
    return trace.lows;
}

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

EnsembleRamp rampOf(const Minutes& minutes, const Given& given, const Ponds& ponds) {
    std::vector<DayAction> days;
    for (std::size_t i = 0; i < minutes.size(); ++i) {
        DayAction action = i < given.steps.size() ? given.steps[i] : given.sustained;
        action.minutes = minutes[i];
        days.push_back(action);
    }
    return {"followed", scheduleOf(days, given.start, *ponds.model.pond.aerator, ponds.nights), false,
            given.air};
}

/// Follows all ponds night by night; those that had the same days so far are run together.
/// @return lows [g/m^3], nights x ponds
std::vector<float> followed(const Ponds& ponds, const Given& given, std::vector<Follower>& followers) {
    std::vector<float> lows(static_cast<std::size_t>(ponds.nights) * ponds.members.size());
    std::mt19937_64 dice(42);
    std::normal_distribution<double> error(0.0, kMeterError);
    for (int day = 1; day <= ponds.nights; ++day) {
        std::map<Minutes, std::vector<std::size_t>> groups;
        const auto row = static_cast<std::size_t>(day - 1) * ponds.members.size();
        for (std::size_t i = 0; i < followers.size(); ++i) {
            const auto read =
                day == 1 ? std::nullopt
                         : std::optional(std::max(
                               static_cast<double>(lows[row - ponds.members.size() + i]) + error(dice), 0.0));
            followers[i].days.push_back(minutesToday(followers[i], given, day, read));
            groups[followers[i].days].push_back(i);
        }
        for (const auto& [days, members] : groups) {
            const std::vector<float> all = lowsOf(ponds, rampOf(days, given, ponds), members);
            for (const std::size_t i : members) {
                lows[row + i] = all[row + i];
            }
        }
    }
    return lows;
}

int below(const std::vector<float>& lows, std::size_t members, double line) {
    int count = 0;
    for (std::size_t i = 0; i < members; ++i) {
        float lowest = lows[i];
        for (std::size_t at = i; at < lows.size(); at += members) {
            lowest = std::min(lowest, lows[at]);
        }
        count += static_cast<double>(lowest) < line ? 1 : 0;
    }
    return count;
}

TEST(FollowedPlan, TakesNoMorePondsBelowTheLethalLineThanThePlanSaid) {
    if (std::getenv("DAWNLINE_SLOW") == nullptr) {
        GTEST_SKIP() << "takes minutes: set DAWNLINE_SLOW";
    }
    int plans = 0;
    for (const char* name :
         {"courtyard-koi", "fee-cats", "grandfathers-pond", "high-meadow", "new-clay", "old-quarry",
          "pea-soup", "salt-lens", "spring-trout", "weedy-woodland", "windy-dugout"}) {
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
        const Ponds ponds = pondsOf(model, nightsOf(length) + kLater);
        std::vector<Follower> followers(ponds.members.size());
        const std::vector<float> lows = followed(ponds, given, followers);
        std::vector<std::size_t> all(ponds.members.size());
        for (std::size_t i = 0; i < all.size(); ++i) {
            all[i] = i;
        }
        const double lethal = model.parameters.thresholds.lethal;
        const std::vector<float> blind = lowsOf(
            ponds,
            {"plan", scheduleOf(plan.days, given.start, *model.pond.aerator, ponds.nights), false, given.air},
            all);
        const std::vector<float> alone = lowsOf(ponds, {"do-nothing", {}, true}, all);
        const int withPlan = below(blind, all.size(), lethal), withRules = below(lows, all.size(), lethal);
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
                  << " ponds below the lethal line: left alone " << below(alone, all.size(), lethal)
                  << ", the plan as it stands " << withPlan << ", by the mornings " << withRules
                  << "; stopped " << stopped << ", not there yet " << under << "; days lost: median "
                  << (lost.empty() ? 0.0 : lost[lost.size() / 2]) << ", most "
                  << (lost.empty() ? 0.0 : lost.back()) << std::endl;
        // What the plan says is its share of fresh draws; these 200 are others.
        const double said = plan.comparison.ensemble->ramps.back().chanceBelowLethal;
        const CountedChance expected{static_cast<int>(std::lround(said * kPonds)), kPonds};
        EXPECT_LE(static_cast<double>(withRules) / kPonds, expected.upper());
    }
    EXPECT_GT(plans, 0);
}

}  // namespace
}  // namespace engine
