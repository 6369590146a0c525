#include "engine/plan/plan_road.h"

#include "engine/base/parallel.h"
#include "engine/base/units.h"
#include "engine/plan/constants_plan.h"
#include "engine/plan/constants_start.h"
#include "engine/plan/plan_search.h"
#include "engine/plan/plan_sensitivity.h"
#include "engine/plan/start_conditions.h"
#include "engine/plan/surface_air_ramp.h"
#include "engine/ramps/hold_rules.h"
#include "engine/run/backdrop.h"
#include "engine/run/shares.h"

#include <algorithm>
#include <cmath>
#include <span>
#include <tuple>

namespace engine {
namespace {

constexpr int kMostOwnHolds = 6;  // days on which a road waits for a better dawn

/// A capped ramp and how its dose goes.
struct RoadRule {
    Ramp ramp;
    bool isRising = false;
};

/// From above the bottom water down to the sustained depth, two days a step; held days do not count.
ByDay loweredDepths(const PondModel& model, double full, std::span<const int> held) {
    ByDay depth{{}, true};
    const auto add = [&](double at) {
        while (hasDay(held, static_cast<int>(depth.values.size()) + 1)) {
            depth.values.push_back(at);
        }
        depth.values.push_back(at);
    };
    const double first = std::max(model.bottom.depth - kAboveBottomWater.value, kShallowestDiffuser.value);
    for (double at = first; at < full - 0.05; at += kLoweringStep.value) {
        add(std::round(10.0 * at) / 10.0);
        add(std::round(10.0 * at) / 10.0);
    }
    depth.values.push_back(full);
    return depth;
}

std::vector<RoadRule> rulesTo(const RoadGround& ground, const SustainedSchedule& target) {
    const PondModel& model = ground.model;
    Ramp ramp;
    ramp.name = kPlannedRamp;
    ramp.kind = RampKind::Capped;
    ramp.weatherHold = liftsBottomWater(model, target.action.depth);
    ramp.startTime = target.start;
    if (target.action.minutes < kMinutesPerDay) {
        const int end = (target.start.minutes + target.action.minutes) % kMinutesPerDay;
        ramp.window = ClockWindow{target.start, {end}};
    }
    ramp.depth = ByDay{{target.action.depth}, false};
    std::vector<RoadRule> out;
    const auto add = [&](double dose_percent, bool isRising, const std::optional<ByDay>& depth,
                         std::optional<int> diffusers) {
        RoadRule rule{ramp, isRising};
        rule.ramp.dose_percent = Quantity(dose_percent);
        if (depth) {
            rule.ramp.depth = depth;
        }
        if (diffusers) {
            rule.ramp.diffusers = ByDay{{static_cast<double>(*diffusers)}, false};
        }
        out.push_back(rule);
    };
    add(kFirstDose_percent.value, true, {}, {});
    if (!ramp.weatherHold) {
        return out;  // nothing that a dose could be of is lifted
    }
    for (const double dose : {10.0, 5.0, 2.5}) {
        add(dose, false, {}, {});
    }
    if (target.action.diffusers > 1) {
        add(kFirstDose_percent.value, false, {}, 1);
    }
    const ByDay lowered = loweredDepths(model, target.action.depth, ground.held);
    if (lowered.values.size() > 1) {
        add(kFirstDose_percent.value, true, lowered, {});
        add(kFirstDose_percent.value, false, lowered, {});
    }
    return out;
}

/// What a run's air does on each day from the start of the ramp's clock on, as a plan writes it, up to the
/// day from which on it is the sustained schedule; nothing if it does not come to that.
std::optional<std::vector<DayAction>> actionsOf(const RampRun& run, const SustainedSchedule& to,
                                                std::span<const int> held) {
    std::vector<DayAction> days;
    for (int day = 1; day <= static_cast<int>(run.days.size()); ++day) {
        DayAction action = to.action;
        const double from = (day - 1) * kDay + to.start.minutes * kMinute;
        double seconds = 0.0;
        for (const RunBlock& block : run.schedule) {
            const double on = std::min(block.end, from + kDay) - std::max(block.start, from);
            if (on > 0.0) {
                seconds += on;
                action.diffusers = block.open;
                action.depth = block.depth;
            }
        }
        action.minutes = static_cast<int>(std::lround(seconds / kMinute));
        action.isHold = action.minutes == 0 && hasDay(held, day);
        // One diffuser of several may stand for all of them where nothing bounds the dose any more.
        if (action.minutes == to.action.minutes && action.depth == to.action.depth) {
            action.diffusers = to.action.diffusers;
        }
        days.push_back(action);
    }
    if (days.back() != to.action) {
        return std::nullopt;
    }
    while (days.size() > 1 && days[days.size() - 2] == to.action) {
        days.pop_back();
    }
    return days;
}

/// A road and its central run.
struct TriedRoad {
    Road road;
    RampRun run;
};

/// The road of a rule with some days held; nothing where it does not come to the schedule.
/// @param planned  Name and surface air of its ramp.
std::optional<TriedRoad> tried(const RoadGround& ground, const SustainedSchedule& to, const RoadRule& rule,
                               const RoadRules& rules, const Ramp& planned, const std::stop_token& stop) {
    RunRequest request;
    request.days = nightsOf(kLongestRoad);
    request.keepLayers = false;
    request.road = rules;
    const RampRun found = runRamp(ground.model, &rule.ramp, request, {stop, {}});
    std::vector<int> held = rules.held;
    held.insert(held.end(), ground.held.begin(), ground.held.end());
    const auto days = found.end == RunEnd::Completed ? actionsOf(found, to, held) : std::nullopt;
    if (!days || static_cast<int>(days->size()) > kLongestRoad) {
        return std::nullopt;
    }
    TriedRoad out{{rampOf(*days, to.start), *days, 0.0}, {}};
    out.road.ramp.name = planned.name;
    out.road.ramp.surfaceAir_kW = planned.surfaceAir_kW;
    out.road.ramp.surfaceAirWindow = planned.surfaceAirWindow;
    request.days = nightsOf(out.road.length());
    request.road = {};
    out.run = runRamp(ground.model, &out.road.ramp, request, {stop, {}});
    if (out.run.end != RunEnd::Completed) {
        return std::nullopt;
    }
    out.road.worst = out.run.worst().lowest;
    return out;
}

/// The road of a rule; nothing where it does not pass.
std::optional<Road> roadOf(const RoadGround& ground, const SustainedSchedule& to, const RoadRule& rule,
                           const Ramp& planned, const std::stop_token& stop) {
    RoadRules rules;
    rules.risingDose = rule.isRising;
    if (rule.ramp.weatherHold) {
        rules.until = std::max(ground.latestEnd, to.start.minutes * kMinute + kMinute);
    }
    for (int more = 0; more <= kMostOwnHolds && !stop.stop_requested(); ++more) {
        const auto one = tried(ground, to, rule, rules, planned, stop);
        if (!one) {
            return std::nullopt;
        }
        const auto halted = haltedByMornings(ground.model, one->run);
        if (!halted) {
            return addsToxicants(ground.model, one->run, ground.nothing) ? std::nullopt
                                                                         : std::optional(one->road);
        }
        if (halted->condition == StartCondition::MorningStops) {
            return std::nullopt;
        }
        rules.held.push_back(halted->night + 1);  // the step waits for a better dawn
    }
    return std::nullopt;
}

}  // namespace

RoadGround roadGround(const PondModel& model, const std::stop_token& stop) {
    RunRequest request;
    request.days = nightsOf(kLongestRoad);
    request.keepLayers = false;
    // By the trade's rule, hours before the sun goes down on the first day.
    const auto sunset = backdropOf(model, 1).nights.front().sunset;
    return {model, runRamp(model, nullptr, request, {stop, {}}), holdDays(model.pond),
            sunset.value_or(kDay) - kBeforeSunset_h.value * kHour};
}

std::vector<Road> roadsTo(const RoadGround& ground, const SustainedSchedule& target, double surfaceAir,
                          int threads, const std::stop_token& stop) {
    Ramp planned;
    planned.name = kPlannedRamp;
    if (surfaceAir > 0.0) {
        planned =
            withSurfaceAirOf(ground.model, planned, surfaceAir * refugeAir_kW(ground.model, ground.nothing));
    }
    const std::vector<RoadRule> rules = rulesTo(ground, target);
    std::vector<std::optional<Road>> found(rules.size());
    static_cast<void>(forEachIndex(rules.size(), threads, stop, [&](std::size_t i) {
        found[i] = roadOf(ground, target, rules[i], planned, stop);
    }));
    std::vector<Road> roads;
    for (std::optional<Road>& road : found) {
        if (road) {
            roads.push_back(std::move(*road));
        }
    }
    std::stable_sort(roads.begin(), roads.end(), [](const Road& a, const Road& b) {
        return std::tuple(a.length(), -a.worst) < std::tuple(b.length(), -b.worst);
    });
    return roads;
}

}  // namespace engine
