#include "engine/plan/plan.h"

#include "engine/base/error.h"
#include "engine/base/text.h"
#include "engine/base/units.h"
#include "engine/ensemble/ensemble.h"
#include "engine/plan/plan_sensitivity.h"
#include "engine/plan/plan_sustained.h"
#include "engine/plan/plan_weather.h"
#include "engine/plan/planner.h"
#include "engine/pond/pond_keys.h"
#include "engine/ramps/ramp_names.h"
#include "engine/run/end_state.h"
#include "engine/run/run_bounds.h"
#include "engine/water/water.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

// A search looks at many candidates, roughly; the one it finds is checked at the resolution asked for.
constexpr int kSearchLayers = 24;
constexpr double kSearchStep = 600.0;         // [s]
constexpr int kTries = 3;                     // budgets that a candidate is looked for with
constexpr int kClimbs = 2;                    // sustained schedules to which ramps are looked for
constexpr std::uint64_t kFresh = 1000000007;  // beyond the seeds that anyone may give

constexpr std::size_t kRampsAdded = 4;  // to those of the file, at most
constexpr int kUsualDays = 30;          // of what is reported, to tell its size before

}  // namespace

void Planner::prepareModels() {
    Pond pond = m_pond;
    if (m_options.line) {
        pond.limits.stress = Quantity(*m_options.line);
    }
    m_model = prepare(pond, m_options.resolution);
    m_rough = prepare(pond, {std::min(m_options.resolution.layers, kSearchLayers),
                             std::max(m_options.resolution.largestStep, kSearchStep)});
    m_plan.line = m_model.parameters.thresholds.stress;
    m_plan.isClimb = m_options.mornings.has_value();
    m_plan.isUnderWay = m_options.mornings && m_options.mornings->isUnderWay;
    m_plan.chance = m_options.chance;
    m_plan.holds = holdCalendar(m_pond, m_options.holds);
}

void Planner::findEndStates() {
    RunRequest request;
    request.days = kShortestPlanRun;
    request.keepLayers = false;
    m_nothing = runRamp(m_model, nullptr, request, {m_control.stop, {}});
    m_plan.nothingEndState = endStateOf(m_model, nullptr, m_control.stop).value_or(EndState{}).low;
    m_plan.sustainedSchedules =
        sustainedSchedules(m_model, m_plan.nothingEndState, m_threads, m_control.stop);
}

void Planner::climbTo(const std::vector<std::size_t>& order) {
    int climbs = 0;
    for (std::size_t k = 0; k < order.size() && !isStopped(); ++k) {
        SustainedSchedule& target = m_plan.sustainedSchedules[order[k]];
        target.isTried = true;
        const int count = draws(kShortestPlanRun, false).members();
        int budget = largestCount(count, m_options.chance).value_or(0);
        const bool mayClimb = climbs < kClimbs;
        for (int attempt = 0; attempt < kTries && !isStopped(); ++attempt) {
            const auto candidate = candidateFor(target, mayClimb, budget);
            if (!candidate) {
                break;
            }
            saySoFar({candidate->days, rampOf(candidate->days, target.start), {}});
            if (isGoodOnOwnDraws(*candidate, target.start)) {
                saySoFar({candidate->days, rampOf(candidate->days, target.start), m_plan.ownHarm});
                m_plan.days = candidate->days;
                m_plan.chosen = order[k];
                m_plan.verdict = candidate->length() == 1 ? PlanVerdict::AtOnce : PlanVerdict::Ramp;
                m_plan.reason = PlanReason::None;
                m_plan.heedsHolds = !heldDays(target.action).empty();
                return;
            }
            if (budget == 0) {
                break;
            }
            budget /= 2;
        }
        climbs += mayClimb ? 1 : 0;
        sayProgress(0.1 + 0.4 * static_cast<double>(k + 1) / static_cast<double>(order.size()));
    }
}

void Planner::search() {
    const OxygenThresholds& thresholds = m_model.parameters.thresholds;
    const bool failsAlone = m_nothing.worst().lowest < thresholds.lethal;
    if (failsAlone) {
        // Fish may want cool water where there is no want of oxygen.
        const auto worst =
            std::min_element(m_nothing.hours.begin(), m_nothing.hours.end(),
                             [](const HourRow& a, const HourRow& b) { return a.fishWater < b.fishWater; });
        if (thresholds.fishMax < 100.0 && worst->mean > thresholds.lethal) {
            m_plan.reason = PlanReason::NothingTooWarm;
            return;
        }
    }
    const std::vector<std::size_t> order = inOrderOfChoice(m_plan.sustainedSchedules);
    m_plan.reason = failsAlone      ? PlanReason::NothingBelowLethal
                    : order.empty() ? PlanReason::NoEndState
                    : m_plan.sustainedSchedules[order.front()].verdict == EndVerdict::Keeps
                        ? PlanReason::NoSafeWay
                        : PlanReason::BetterHarms;
    if (!m_plan.isClimb) {
        searchRoads(order);
    } else if (!failsAlone) {
        climbTo(order);
    }
}

void Planner::report() {
    Pond pond = m_model.pond;
    if (m_plan.chosen) {
        Ramp ramp =
            m_plan.ramp.value_or(rampOf(m_plan.days, m_plan.sustainedSchedules[*m_plan.chosen].start));
        ramp.name = freeRampName(pond, ramp.name);
        m_plan.ramp = ramp;
        pond.ramps.push_back(ramp);
    }
    CompareOptions asked;
    asked.days = std::max(kShortestPlanRun, static_cast<int>(m_plan.days.size()) + kAfterPlannedRamp);
    asked.threads = m_threads;
    asked.resolution = m_options.resolution;
    asked.attribution = false;
    asked.members = m_options.members;
    asked.seed = m_options.seed + kFresh;
    RunControl rest{m_control.stop, {}};
    if (m_control.progress) {
        rest.progress = [this](double share) { sayProgress(0.6 + 0.35 * share); };
    }
    m_plan.comparison = compare(pond, asked, rest);
    const Comparison& fresh = m_plan.comparison;
    if (isStopped() || !fresh.ensemble || fresh.ensemble->end != EnsembleEnd::Completed) {
        return;
    }
    if (m_plan.chosen) {
        m_plan.added = addedBelow(*fresh.ensemble, fresh.ensemble->ramps.size() - 1, m_plan.line);
        m_plan.addedLethal = addedBelow(*fresh.ensemble, fresh.ensemble->ramps.size() - 1,
                                        fresh.model.parameters.thresholds.lethal);
        m_plan.stress = stressTest(fresh.model, fresh.runs.back(), m_threads, m_control.stop);
    }
    m_plan.tradeOff = fileTradeOff(m_plan);
    if (m_options.isBrief) {
        return;
    }
    if (!isStopped()) {
        const SustainedSchedule& to = m_plan.sustainedSchedules[m_plan.chosen.value_or(0)];
        const std::vector<TradeOffPoint> searched =
            searchTradeOff(draws(kShortestPlanRun, false), to.action, to.start, m_control.stop);
        m_plan.tradeOff.insert(m_plan.tradeOff.end(), searched.begin(), searched.end());
    }
    m_plan.slow = slowSensitivity(m_rough, m_threads, m_control.stop);
}

Plan Planner::go() {
    prepareModels();
    findEndStates();
    sayProgress(0.1);
    if (m_nothing.end == RunEnd::NotFinite) {
        m_plan.end = PlanEnd::NotFinite;
        m_plan.message = m_nothing.message;
        return m_plan;
    }
    if (!isStopped()) {
        search();
    }
    sayProgress(0.6);
    if (!isStopped()) {
        report();
    }
    m_plan.searchedMemberDays += m_own ? m_own->memberDays() : 0.0;
    for (const auto& members : m_draws) {
        m_plan.searchedMemberDays += members ? members->memberDays() : 0.0;
    }
    if (isStopped()) {
        m_plan.end = PlanEnd::Cancelled;
        m_plan.message = "The plan was stopped before it was found.";
        return m_plan;
    }
    for (const RampRun& run : m_plan.comparison.runs) {
        if (run.end != RunEnd::Completed) {
            m_plan.end = PlanEnd::NotFinite;
            m_plan.message = run.message;
            return m_plan;
        }
    }
    if (m_plan.comparison.ensemble && m_plan.comparison.ensemble->end != EnsembleEnd::Completed) {
        m_plan.end = PlanEnd::NotFinite;
        m_plan.message = m_plan.comparison.ensemble->message;
        return m_plan;
    }
    m_plan.end = PlanEnd::Completed;
    sayProgress(1.0);
    return m_plan;
}

std::vector<std::string> planFaults(const Pond& pond, const PlanOptions& options) {
    std::vector<std::string> faults;
    if (!pond.aerator) {
        faults.emplace_back("The pond file has no aerator, so there is nothing to plan for.");
    }
    if (!(options.chance > 0.0 && options.chance <= 1.0)) {
        faults.push_back(
            "The wanted chance is " +
            (std::isfinite(options.chance) ? shortest(options.chance) : "not a number") +
            ", but must be above 0 and at most 1: draws cannot show that something never happens.");
    } else if (const int least = fewestMembers(options.chance);
               options.members < least || least > kMostMembers) {
        faults.push_back("With " + std::to_string(options.members) + " members a chance of " +
                         shortest(options.chance) + " cannot be shown: that takes " + std::to_string(least) +
                         ", of which none may be harmed.");
    }
    if (pond.ramps.size() + kRampsAdded > kMostRamps) {
        faults.push_back("The pond file has " + std::to_string(pond.ramps.size()) +
                         " ramps and may have at most " + std::to_string(kMostRamps) +
                         "; a plan adds up to " + std::to_string(kRampsAdded) + ".");
    }
    if (const auto fault =
            sizeFault({pond.ramps.size() + kRampsAdded, kUsualDays, options.members, options.resolution})) {
        faults.push_back(*fault);
    }
    if (options.line) {
        const Profile profile = startProfile(pond);
        const Parameters<double> parameters = centralParameters(pond, profile);
        const double salinity = profile.salinity.empty() ? 0.0 : profile.salinity.front();
        const double most =
            oxygenSaturation(profile.temperature.front(), salinity, parameters.site.airPressure);
        if (!(*options.line > 0.0)) {
            faults.push_back("The line is " + shortest(*options.line) +
                             " mg/L, but must be above 0: oxygen cannot fall below nothing.");
        } else if (const double lethal = thresholdsOf(pond, profile).lethal; *options.line < lethal) {
            faults.push_back("The line is " + shortest(*options.line) +
                             " mg/L, but this pond's lethal line is " + fixed(lethal, 1) +
                             " mg/L: a plan keeps fish at least above that.");
        } else if (*options.line > most) {
            faults.push_back("The line is " + shortest(*options.line) +
                             " mg/L, but this pond's surface water holds no more than " + fixed(most, 1) +
                             " mg/L at saturation (" + fixed(profile.temperature.front(), 1) +
                             " degC): no plan keeps it above that.");
        }
    }
    return faults;
}

Plan makePlan(const Pond& pond, const PlanOptions& options, const RunControl& control) {
    ensure(planFaults(pond, options).empty(), "a plan's options were checked");
    return Planner(pond, options, control).go();
}

}  // namespace engine
