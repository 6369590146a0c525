#include "engine/plan/plan.h"

#include "engine/base/error.h"
#include "engine/base/parallel.h"
#include "engine/base/text.h"
#include "engine/base/units.h"
#include "engine/ensemble/ensemble.h"
#include "engine/plan/plan_mornings.h"
#include "engine/plan/plan_search.h"
#include "engine/plan/plan_season.h"
#include "engine/plan/plan_sensitivity.h"
#include "engine/plan/plan_sustained.h"
#include "engine/plan/plan_weather.h"
#include "engine/water/water.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <memory>

namespace engine {
namespace {

constexpr int kShortestRun = 14, kAfterRamp = 7;  // [d], as of a comparison
constexpr int kLongSearch = 28;                   // [d], where a ramp of a week is not found
constexpr int kScouts = 64, kSearchDraws = 256,
              kOwnDraws = 256;  // at least; more where the wanted share is small
// A search looks at many candidates, roughly; the one it finds is checked at the resolution asked for.
constexpr int kSearchLayers = 24;
constexpr double kSearchStep = 600.0;  // [s]
// Members times days of each length, with which a search ends without a candidate; half a minute of one core.
constexpr double kMostScouted = 40000.0, kMostSearched = 100000.0;
constexpr double kBriefSearch = 1.0 / 3.0;
constexpr int kTries = 3;           // budgets that a candidate is looked for with
constexpr int kClimbs = 2;          // sustained schedules to which ramps are looked for
constexpr int kLateNights = 4;      // nights that tell whether a sustained schedule can ever be good
constexpr double kHopeless = 0.25;  // of the members harmed in them: it cannot
constexpr std::uint64_t kFresh = 1000000007;  // beyond the seeds that anyone may give

int powerOfTwo(int least) {
    int power = 1;
    while (power < least) {
        power *= 2;
    }
    return power;
}

/// The work of makePlan, in the order of its functions.
class Planner {
public:
    Planner(const Pond& pond, const PlanOptions& options, const RunControl& control)
        : m_pond(pond), m_options(options), m_control(control), m_threads(threadsFor(options.threads)) {}

    Plan go();

private:
    void prepareModels();
    void findEndStates();
    [[nodiscard]] std::vector<int> heldDays(const DayAction& sustainedAction) const;
    [[nodiscard]] std::vector<Ladder> laddersTo(const SustainedSchedule& target) const;
    [[nodiscard]] std::vector<DayAction> firstDays() const;
    [[nodiscard]] bool isAllowed(const std::vector<DayAction>& days, ClockTime start, bool stands) const;
    /// The search's members, or the scouts among them.
    [[nodiscard]] const PlanMembers& draws(int days, bool scouts);
    [[nodiscard]] std::optional<Candidate> atOnce(const PlanMembers& members, const SustainedSchedule& target,
                                                  int budget, bool& isHopeless) const;
    [[nodiscard]] std::optional<Candidate> bestClimb(const SustainedSchedule& target, int days, int budget);
    [[nodiscard]] std::optional<Candidate> candidateFor(const SustainedSchedule& target, bool mayClimb,
                                                        int budget);
    [[nodiscard]] bool isGoodOnOwnDraws(const Candidate& candidate, ClockTime start);
    void search();
    void report();
    void sayProgress(double share) const {
        if (m_control.progress) {
            m_control.progress(share);
        }
    }
    [[nodiscard]] bool isStopped() const { return m_control.stop.stop_requested(); }

    const Pond& m_pond;
    const PlanOptions& m_options;
    const RunControl& m_control;
    int m_threads = 1;
    PondModel m_model, m_rough;
    RampRun m_nothing;
    std::array<std::unique_ptr<PlanMembers>, 4> m_draws;  // Of two and four weeks; scouts of the same
    std::unique_ptr<PlanMembers> m_own;
    bool m_isFirstSaid = false;
    Plan m_plan;
};

void Planner::prepareModels() {
    Pond pond = m_pond;
    if (m_options.line) {
        pond.limits.stress = Quantity(*m_options.line);
    }
    m_model = prepare(pond, m_options.resolution);
    m_rough = prepare(pond, {std::min(m_options.resolution.layers, kSearchLayers),
                             std::max(m_options.resolution.largestStep, kSearchStep)});
    m_plan.line = m_model.parameters.thresholds.stress;
    m_plan.isUnderWay = m_options.mornings && m_options.mornings->isUnderWay;
    m_plan.chance = m_options.chance;
    m_plan.holds = holdCalendar(m_pond, m_options.holds);
}

void Planner::findEndStates() {
    RunRequest request;
    request.days = kShortestRun;
    request.endState = true;
    request.keepLayers = false;
    m_nothing = runRamp(m_model, nullptr, request, {m_control.stop, {}});
    m_plan.nothingEndState = m_nothing.endState.value_or(0.0);
    m_plan.sustainedSchedules =
        sustainedSchedules(m_model, m_plan.nothingEndState, m_threads, m_control.stop);
}

std::vector<int> Planner::heldDays(const DayAction& sustainedAction) const {
    // The calendar is about lifting bottom water on top of a natural turnover.
    std::vector<int> days;
    if (m_model.bottom.exists() && sustainedAction.depth > m_model.bottom.depth) {
        for (const HoldDay& held : m_plan.holds) {
            days.push_back(held.day);
        }
    }
    return days;
}

std::vector<Ladder> Planner::laddersTo(const SustainedSchedule& target) const {
    constexpr std::array kMinutes{2, 4, 8, 15, 30, 45, 60, 90, 120, 180, 240, 360, 480, 720, 960};
    const DayAction& sustainedAction = target.action;
    const auto ladder = [&](int diffusers, int pulses) {
        Ladder out{{}, sustainedAction, target.start};
        for (const int minutes : kMinutes) {
            if (minutes < sustainedAction.minutes && minutes % pulses == 0) {
                out.levels.push_back({minutes, diffusers, sustainedAction.depth, pulses, false});
            }
        }
        return out;
    };
    std::vector<Ladder> ladders{ladder(sustainedAction.diffusers, 1)};
    if (sustainedAction.minutes == kMinutesPerDay) {
        // Around the clock, the diffusers lowered step by step.
        Ladder lowered{{}, sustainedAction, target.start};
        for (std::size_t i = m_plan.sustainedSchedules.size(); i-- > 0;) {
            const SustainedSchedule& one = m_plan.sustainedSchedules[i];
            if (one.kind == SustainedKind::Raised && one.action.depth < sustainedAction.depth) {
                lowered.levels.push_back(one.action);
            }
        }
        ladders.push_back(lowered);
    }
    if (sustainedAction.diffusers > 1) {
        ladders.push_back(ladder(1, 1));
    }
    ladders.push_back(ladder(sustainedAction.diffusers, 4));
    std::erase_if(ladders, [](const Ladder& one) { return one.levels.empty(); });
    if (m_options.mornings) {
        for (Ladder& one : ladders) {
            one.first = firstDays();
            one.allows = [this, start = target.start](const std::vector<DayAction>& days, bool stands) {
                return isAllowed(days, start, stands);
            };
        }
    }
    return ladders;
}

std::vector<DayAction> Planner::firstDays() const {
    std::vector<DayAction> days;
    if (m_options.mornings) {
        for (const int minutes : m_options.mornings->firstDays) {
            days.push_back(
                m_plan.sustainedSchedules.front().action);  // at the file's depth, as the ramp is that runs
            days.back().minutes = minutes;
        }
    }
    return days;
}

bool Planner::isAllowed(const std::vector<DayAction>& days, ClockTime start, bool stands) const {
    return !m_options.mornings ||
           isLeftByMornings(
               m_rough, *m_options.mornings, days, start,
               stands ? std::optional(std::max(kShortestRun, static_cast<int>(days.size()))) : std::nullopt,
               m_control.stop);
}

const PlanMembers& Planner::draws(int days, bool scouts) {
    const std::size_t which = (days > kShortestRun ? 1U : 0U) + (scouts ? 2U : 0U);
    auto& members = m_draws[which];
    if (!members) {
        const int count = scouts ? kScouts
                                 : std::max(std::min(kSearchDraws, m_options.members),
                                            powerOfTwo(fewestMembers(m_options.chance)));
        members =
            std::make_unique<PlanMembers>(m_rough, count, days, m_options.seed, m_threads, m_control.stop);
        members->allow((scouts ? kMostScouted : kMostSearched) * (m_options.isBrief ? kBriefSearch : 1.0));
    }
    return *members;
}

std::optional<Candidate> Planner::atOnce(const PlanMembers& members, const SustainedSchedule& target,
                                         int budget, bool& isHopeless) const {
    const int days = members.days();
    const Schedule schedule = engine::scheduleOf({target.action}, target.start, *m_model.pond.aerator, days);
    const MembersRunState at = members.run(members.start(), schedule, PlanMembers::endOfNight(days));
    const HarmCount harm = members.harm(at, 1, days);
    const int late = members.harm(at, days - kLateNights + 1, days).any;
    isHopeless = late > budget + kHopeless * members.members();
    return harm.any <= budget ? std::optional(Candidate{{target.action}, harm}) : std::nullopt;
}

std::optional<Candidate> Planner::bestClimb(const SustainedSchedule& target, int days, int budget) {
    const std::vector<int> held = heldDays(target.action);
    std::optional<Candidate> best;
    for (const Ladder& ladder : laddersTo(target)) {
        const int lastDay = best ? best->length() - 1 : days - kAfterRamp;
        // The scouts are the first of the draws: what harms too many of them harms too many of all.
        if (!climb(draws(days, true), ladder, held, budget, lastDay, m_control.stop)) {
            continue;
        }
        const PlanMembers& members = draws(days, false);
        const auto candidate = climb(members, ladder, held, budget, lastDay, m_control.stop);
        if (candidate && m_options.first && !m_isFirstSaid) {
            m_isFirstSaid = true;
            m_options.first(candidate->days, target.start);
        }
        if (candidate) {
            best = polished(members, *candidate, ladder, held, budget, m_control.stop);
        }
    }
    return best;
}

std::optional<Candidate> Planner::candidateFor(const SustainedSchedule& target, bool mayClimb, int budget) {
    bool isHopeless = false;
    const bool canBeAtOnce =
        heldDays(target.action).empty() && isAllowed({target.action}, target.start, true);
    if (atOnce(draws(kShortestRun, true), target, budget, isHopeless) && canBeAtOnce) {
        if (const auto candidate = atOnce(draws(kShortestRun, false), target, budget, isHopeless)) {
            return candidate;
        }
    }
    if (!mayClimb || isHopeless || isStopped()) {
        return std::nullopt;
    }
    if (const auto candidate = bestClimb(target, kShortestRun, budget)) {
        return candidate;
    }
    // Where the end is no good either, weeks of work are no answer.
    return target.verdict == EndVerdict::Keeps && !isStopped() ? bestClimb(target, kLongSearch, budget)
                                                               : std::nullopt;
}

bool Planner::isGoodOnOwnDraws(const Candidate& candidate, ClockTime start) {
    const int days = std::max(kShortestRun, candidate.length() + kAfterRamp);
    if (!m_own || m_own->days() < days) {
        const int draws =
            std::max(std::min(kOwnDraws, m_options.members), powerOfTwo(fewestMembers(m_options.chance)));
        m_own =
            std::make_unique<PlanMembers>(m_model, draws, days, m_options.seed, m_threads, m_control.stop);
    }
    if (!m_own->isReady()) {
        return false;
    }
    const HarmCount harm = harmOf(*m_own, candidate.days, start, m_own->members());
    m_plan.ownHarm = {harm.any, harm.members};
    if (m_plan.ownHarm.upper() > m_options.chance) {
        return false;
    }
    const Ramp ramp = rampOf(candidate.days, start);
    RunRequest request;
    request.days = days;
    request.keepLayers = false;
    const RampRun nothing = runRamp(m_model, nullptr, request, {m_control.stop, {}});
    m_plan.toxicantsFound =
        addsToxicants(m_model, runRamp(m_model, &ramp, request, {m_control.stop, {}}), nothing);
    return !m_plan.toxicantsFound;
}

void Planner::search() {
    const OxygenThresholds& thresholds = m_model.parameters.thresholds;
    if (m_nothing.worst().lowest < thresholds.lethal) {
        // Fish may want cool water where there is no want of oxygen.
        const auto worst =
            std::min_element(m_nothing.hours.begin(), m_nothing.hours.end(),
                             [](const HourRow& a, const HourRow& b) { return a.fishWater < b.fishWater; });
        m_plan.reason = thresholds.fishMax < 100.0 && worst->mean > thresholds.lethal
                            ? PlanReason::NothingTooWarm
                            : PlanReason::NothingBelowLethal;
        return;
    }
    const std::vector<std::size_t> order = inOrderOfChoice(m_plan.sustainedSchedules);
    m_plan.reason = order.empty() ? PlanReason::NoEndState
                    : m_plan.sustainedSchedules[order.front()].verdict == EndVerdict::Keeps
                        ? PlanReason::NoSafeWay
                        : PlanReason::BetterHarms;
    int climbs = 0;
    for (std::size_t k = 0; k < order.size() && !isStopped(); ++k) {
        SustainedSchedule& target = m_plan.sustainedSchedules[order[k]];
        target.isTried = true;
        const int count = draws(kShortestRun, false).members();
        int budget = largestCount(count, m_options.chance).value_or(0);
        const bool mayClimb = climbs < kClimbs;
        for (int attempt = 0; attempt < kTries && !isStopped(); ++attempt) {
            const auto candidate = candidateFor(target, mayClimb, budget);
            if (!candidate) {
                break;
            }
            if (m_options.first && !m_isFirstSaid) {
                m_isFirstSaid = true;
                m_options.first(candidate->days, target.start);
            }
            if (isGoodOnOwnDraws(*candidate, target.start)) {
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

void Planner::report() {
    Pond pond = m_model.pond;
    if (m_plan.chosen) {
        Ramp ramp = rampOf(m_plan.days, m_plan.sustainedSchedules[*m_plan.chosen].start);
        const auto isTaken = [&](const std::string& name) {
            return std::any_of(pond.ramps.begin(), pond.ramps.end(),
                               [&](const Ramp& one) { return one.name == name; });
        };
        for (int number = 2; isTaken(ramp.name); ++number) {
            ramp.name = std::string(kPlannedRamp) + " " + std::to_string(number);
        }
        m_plan.ramp = ramp;
        pond.ramps.push_back(ramp);
    }
    CompareOptions asked;
    asked.days = std::max(kShortestRun, static_cast<int>(m_plan.days.size()) + kAfterRamp);
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
        m_plan.stress =
            stressTest(fresh.model, fresh.runs.back().schedule, fresh.days, m_threads, m_control.stop);
    }
    m_plan.tradeOff = fileTradeOff(m_plan);
    if (m_options.isBrief) {
        return;
    }
    if (m_draws.front()) {
        const SustainedSchedule& to = m_plan.sustainedSchedules[m_plan.chosen.value_or(0)];
        const std::vector<TradeOffPoint> searched =
            searchTradeOff(*m_draws.front(), to.action, to.start, m_control.stop);
        m_plan.tradeOff.insert(m_plan.tradeOff.end(), searched.begin(), searched.end());
    }
    m_plan.months = harmlessMonths(m_rough, m_threads, m_control.stop);
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
    m_plan.searchedMemberDays = m_own ? m_own->memberDays() : 0.0;
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

}  // namespace

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
