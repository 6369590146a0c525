// How a planner's search tries roads on its own draws (engine/plan/planner.h).
#include "engine/ensemble/chances.h"
#include "engine/plan/constants_plan.h"
#include "engine/plan/constants_start.h"
#include "engine/plan/plan_sensitivity.h"
#include "engine/plan/planner.h"
#include "engine/plan/start_conditions.h"
#include "engine/run/shares.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace engine {
namespace {

constexpr int kRoadDraws = 256, kRoadDrawsBrief = 64;
constexpr std::size_t kMostTargets = 5;   // schedules, the better first, of those that lift and that keep
constexpr std::size_t kRoadsOnDraws = 4;  // to one schedule; they are sorted by what they cost

/// The largest share of the search's draws below the lethal line that may still pass: by the conditions of a
/// start, and with the upper bound within the first of them. Nothing where no ramp can pass.
std::optional<double> mostLethalShare(const Comparison& nothing, bool hasSurfaceAir) {
    const StartLimits limits = startLimits(nothing.model.pond);
    const double alone = chancesOf(nothing, nothing.runs.front()).belowLethal;
    if (!hasSurfaceAir && 100.0 * alone > limits.lethalAlone_percent + 1e-9) {
        return std::nullopt;
    }
    const double effective = std::floor(nothing.ensemble->effective);
    const auto count = largestCount(static_cast<int>(effective), 0.01 * limits.lethal_percent);
    if (!count) {
        return std::nullopt;
    }
    return std::min({0.01 * limits.lethal_percent, alone + 0.01 * limits.lethalAdded_percent,
                     (*count + 0.5) / effective});
}

}  // namespace

const Comparison& Planner::searchDraws(int nights) {
    auto [at, isNew] = m_searchDraws.try_emplace(nights);
    if (isNew) {
        Pond pond = m_model.pond;
        pond.ramps.clear();
        CompareOptions options;
        options.days = nights;
        options.threads = m_threads;
        options.resolution = m_rough.resolution;
        options.endStates = options.attribution = false;
        options.members =
            m_options.isBrief ? kRoadDrawsBrief : std::max(kRoadDraws, fewestMembers(m_options.chance));
        options.seed = m_options.seed;
        at->second = compare(pond, options, {m_control.stop, {}});
    }
    return at->second;
}

bool Planner::isGoodOnSearchDraws(const Road& road) {
    // Few lengths of run, so that the draws are made a few times only.
    constexpr int kWeek = 7;
    const Comparison& nothing = searchDraws((nightsOf(road.length()) + kWeek - 1) / kWeek * kWeek);
    m_plan.toxicantsFound = false;
    if (!isWhole(nothing) || !nothing.ensemble) {
        return false;
    }
    const auto mostLethal = mostLethalShare(nothing, road.ramp.surfaceAir_kW.has_value());
    if (!mostLethal) {
        return false;
    }
    Pond pond = nothing.model.pond;
    pond.ramps = {road.ramp};
    CompareOptions options;
    options.days = nothing.days;
    options.threads = m_threads;
    options.resolution = nothing.model.resolution;
    options.endStates = options.attribution = false;
    options.members = nothing.ensemble->asked;
    options.seed = nothing.ensemble->seed;
    options.earlier = &nothing;
    options.mostLethal = mostLethal;
    const Comparison tried = compare(pond, options, {m_control.stop, {}});
    if (!isWhole(tried)) {
        return false;
    }
    m_plan.searchedMemberDays += static_cast<double>(tried.ensemble->members) * tried.days;
    const double effective = std::floor(tried.ensemble->effective);
    const CountedChance lethal{
        static_cast<int>(std::lround(effective * chancesOf(tried, tried.runs.back()).belowLethal)),
        static_cast<int>(effective)};
    const std::vector<UnmetCondition> unmet = unmetBy(tried, 1);
    m_plan.toxicantsFound = std::any_of(unmet.begin(), unmet.end(), [](const UnmetCondition& one) {
        return one.condition == StartCondition::Gases;
    });
    if (!unmet.empty() || lethal.upper() > 0.01 * startLimits(pond).lethal_percent ||
        addedBelow(*tried.ensemble, 1, m_plan.line).share() > m_options.chance) {
        return false;
    }
    m_plan.ownHarm = lethal;
    return true;
}

bool Planner::takeRoad(const RoadGround& ground, std::size_t target, double surfaceAir) {
    m_plan.sustainedSchedules[target].isTried = true;
    const std::vector<Road> roads =
        roadsTo(ground, m_plan.sustainedSchedules[target], surfaceAir, m_threads, m_control.stop);
    for (std::size_t i = 0; i < std::min(roads.size(), kRoadsOnDraws) && !isStopped(); ++i) {
        const Road& road = roads[i];
        saySoFar({road.days, road.ramp, {}});
        if (isGoodOnSearchDraws(road)) {
            saySoFar({road.days, road.ramp, m_plan.ownHarm});
            m_plan.days = road.days;
            m_plan.ramp = road.ramp;
            m_plan.chosen = target;
            m_plan.verdict = road.length() == 1 ? PlanVerdict::AtOnce : PlanVerdict::Ramp;
            m_plan.reason = PlanReason::None;
            m_plan.heedsHolds = !heldDays(m_plan.sustainedSchedules[target].action).empty();
            return true;
        }
    }
    return false;
}

void Planner::searchRoads(const std::vector<std::size_t>& order) {
    // What lifts bottom water comes first, if need be with surface air; what keeps the layers leaves the
    // debt.
    std::vector<std::size_t> lifting, keeping;
    for (const std::size_t i : order) {
        const bool lifts =
            !m_model.bottom.exists() || liftsBottomWater(m_model, m_plan.sustainedSchedules[i].action.depth);
        (lifts ? lifting : keeping).push_back(i);
    }
    for (std::vector<std::size_t>* targets : {&lifting, &keeping}) {
        targets->resize(std::min(targets->size(), kMostTargets));
    }
    const std::array sizes{0.0, 1.0, 2.0, kMostSurfaceAir.value};
    const RoadGround ground = roadGround(m_rough, m_control.stop);
    int tried = 0;
    const double all =
        static_cast<double>(sizes.size()) * static_cast<double>(lifting.size() + keeping.size());
    const Comparison& nothing = searchDraws(kShortestPlanRun);
    const bool mayLackAir = nothing.ensemble && mostLethalShare(nothing, false);
    for (const auto& targets : {lifting, keeping}) {
        for (const double surfaceAir : sizes) {
            if (surfaceAir == 0.0 && !mayLackAir) {
                tried += static_cast<int>(targets.size());
                continue;  // what the pond does alone stands against every one of these
            }
            for (const std::size_t target : targets) {
                if (isStopped() || takeRoad(ground, target, surfaceAir)) {
                    return;
                }
                sayProgress(0.1 + 0.5 * ++tried / all);
            }
        }
    }
}

}  // namespace engine
