// What a planner's search may take, and how it is tried (engine/plan/planner.h).
#include "engine/plan/constants_plan.h"
#include "engine/plan/plan_mornings.h"
#include "engine/plan/plan_sensitivity.h"
#include "engine/plan/planner.h"
#include "engine/run/shares.h"

#include <algorithm>

namespace engine {
namespace {

constexpr int kLongSearch = 28;  // [d], where a ramp of a week is not found
constexpr int kScouts = 64, kSearchDraws = 256,
              kOwnDraws = 256;  // at least; more where the wanted share is small
// Members times days of each length, with which a search ends without a candidate; half a minute of one core.
constexpr double kMostScouted = 40000.0, kMostSearched = 100000.0;
constexpr double kBriefSearch = 1.0 / 3.0;
constexpr int kLateNights = 4;  // nights that tell whether a sustained schedule can ever be good

int powerOfTwo(int least) {
    int power = 1;
    while (power < least) {
        power *= 2;
    }
    return power;
}

}  // namespace

std::vector<int> Planner::heldDays(const DayAction& sustainedAction) const {
    // The calendar is about lifting bottom water on top of a natural turnover.
    std::vector<int> days;
    if (liftsBottomWater(m_model, sustainedAction.depth)) {
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
           isLeftByMornings(m_rough, *m_options.mornings, days, start,
                            stands ? std::optional(std::max(kShortestPlanRun, static_cast<int>(days.size())))
                                   : std::nullopt,
                            m_control.stop);
}

const PlanMembers& Planner::draws(int days, bool scouts) {
    const std::size_t which = (days > kShortestPlanRun ? 1U : 0U) + (scouts ? 2U : 0U);
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
    isHopeless = late > budget + kHopelessShare.value * members.members();
    return harm.any <= budget ? std::optional(Candidate{{target.action}, harm}) : std::nullopt;
}

std::optional<Candidate> Planner::bestClimb(const SustainedSchedule& target, int days, int budget) {
    const std::vector<int> held = heldDays(target.action);
    std::optional<Candidate> best;
    for (const Ladder& ladder : laddersTo(target)) {
        const int lastDay = best ? best->length() - 1 : days - kAfterPlannedRamp;
        // The scouts are the first of the draws: what harms too many of them harms too many of all.
        if (!climb(draws(days, true), ladder, held, budget, lastDay, m_control.stop)) {
            continue;
        }
        const PlanMembers& members = draws(days, false);
        const auto candidate = climb(members, ladder, held, budget, lastDay, m_control.stop);
        if (candidate) {
            saySoFar({candidate->days, rampOf(candidate->days, target.start), {}});
            best = polished(members, *candidate, ladder, held, budget, m_control.stop);
        }
    }
    return best;
}

std::optional<Candidate> Planner::candidateFor(const SustainedSchedule& target, bool mayClimb, int budget) {
    bool isHopeless = false;
    const bool canBeAtOnce =
        heldDays(target.action).empty() && isAllowed({target.action}, target.start, true);
    if (atOnce(draws(kShortestPlanRun, true), target, budget, isHopeless) && canBeAtOnce) {
        if (const auto candidate = atOnce(draws(kShortestPlanRun, false), target, budget, isHopeless)) {
            return candidate;
        }
    }
    if (!mayClimb || isHopeless || isStopped()) {
        return std::nullopt;
    }
    if (const auto candidate = bestClimb(target, kShortestPlanRun, budget)) {
        return candidate;
    }
    // Where the end is no good either, weeks of work are no answer.
    return target.verdict == EndVerdict::Keeps && !isStopped() ? bestClimb(target, kLongSearch, budget)
                                                               : std::nullopt;
}

bool Planner::isGoodOnOwnDraws(const Candidate& candidate, ClockTime start) {
    const int days = std::max(kShortestPlanRun, candidate.length() + kAfterPlannedRamp);
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

}  // namespace engine
