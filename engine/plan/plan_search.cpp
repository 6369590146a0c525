#include "engine/plan/plan_search.h"

#include "engine/base/error.h"
#include "engine/base/units.h"
#include "engine/ramps/hold_rules.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

constexpr int kLookAhead = 3;    // [d]: a constant dose shows what it does within three days
constexpr int kLookBetween = 3;  // [d]: how often a run to the end is asked whether it still can be good

/// Runs on to the last night, in stretches, until too many are harmed.
HarmCount toTheEnd(const PlanMembers& members, MembersRunState at, const Schedule& schedule, int nextNight,
                   int budget) {
    HarmCount harm = members.harm(at, 1, nextNight - 1);
    for (int night = nextNight; night <= members.days() && harm.any <= budget;) {
        const int last = std::min(night + kLookBetween - 1, members.days());
        at = members.run(at, schedule, PlanMembers::endOfNight(last));
        harm = members.harm(at, 1, last);
        night = last + 1;
    }
    return harm;
}

/// Climbing: where the members are at the midnight before the day that is decided next.
class Climber {
public:
    Climber(const PlanMembers& members, const Ladder& ladder, int budget, int onTheWay, int below)
        : m_members(members),
          m_ladder(ladder),
          m_budget(budget),
          m_onTheWay(onTheWay),
          m_below(below),
          m_at(members.run(members.start(), {}, 0.0)) {}

    [[nodiscard]] int day() const { return static_cast<int>(m_days.size()) + 1; }

    /// Stands from this day on, if that is good to the end.
    [[nodiscard]] std::optional<Candidate> stand() const {
        Candidate candidate{m_days, {}};
        candidate.days.push_back(m_ladder.sustainedAction);
        if (!m_ladder.isAllowed(candidate.days, true)) {
            return std::nullopt;
        }
        candidate.harm =
            toTheEnd(m_members, m_at, schedule(candidate.days), std::max(day() - 1, 1), m_budget);
        return candidate.harm.any <= m_budget ? std::optional(candidate) : std::nullopt;
    }

    /// The highest level that can be repeated over the next days, or so many below it; nothing if not even
    /// the lowest can.
    [[nodiscard]] std::optional<DayAction> highestLevel() const {
        int good = -1, bad = static_cast<int>(m_ladder.levels.size());
        while (bad - good > 1) {
            const int middle = (good + bad) / 2;
            (isGood(m_ladder.levels[static_cast<std::size_t>(middle)]) ? good : bad) = middle;
        }
        return good >= 0
                   ? std::optional(m_ladder.levels[static_cast<std::size_t>(std::max(good - m_below, 0))])
                   : std::nullopt;
    }

    void take(const DayAction& action) {
        m_days.push_back(action);
        std::vector<DayAction> so_far = m_days;
        so_far.push_back(without(action));
        m_at = m_members.run(m_at, schedule(so_far), static_cast<double>(m_days.size()) * kDay);
    }

private:
    static DayAction without(DayAction action) {
        action.minutes = 0;
        return action;
    }
    [[nodiscard]] Schedule schedule(const std::vector<DayAction>& days) const {
        return scheduleOf(days, m_ladder.start, *m_members.model().pond.aerator, m_members.days());
    }
    [[nodiscard]] bool isGood(const DayAction& action) const {
        std::vector<DayAction> days = m_days;
        days.push_back(action);
        if (!m_ladder.isAllowed(days, false)) {
            return false;
        }
        const int last = std::min(day() + kLookAhead - 1, m_members.days());
        const MembersRunState after = m_members.run(m_at, schedule(days), PlanMembers::endOfNight(last));
        return m_members.harm(after, 1, last).any <= m_onTheWay;
    }

    const PlanMembers& m_members;
    const Ladder& m_ladder;
    int m_budget;
    int m_onTheWay;  // Of the budget, what the days before the sustained schedule may use
    int m_below;     // Levels below the highest that can be repeated
    std::vector<DayAction> m_days;
    MembersRunState m_at;
};

/// One climb whose days before the sustained schedule may use `onTheWay` of the budget.
std::optional<Candidate> climbOnce(const PlanMembers& members, const Ladder& ladder,
                                   std::span<const int> heldDays, int budget, int onTheWay, int below,
                                   int lastDay, const std::stop_token& stop) {
    Climber climber(members, ladder, budget, onTheWay, below);
    for (const DayAction& given : ladder.first) {
        climber.take(given);
    }
    while (climber.day() <= lastDay && !members.isSpent() && !stop.stop_requested()) {
        DayAction held = ladder.sustainedAction;
        held.minutes = 0;
        held.isHold = hasDay(heldDays, climber.day());
        if (held.isHold) {
            climber.take(held);
            continue;
        }
        if (const auto candidate = climber.stand()) {
            return candidate;
        }
        if (climber.day() == lastDay) {
            break;
        }
        const auto level = climber.highestLevel();
        climber.take(level ? *level : held);
    }
    return std::nullopt;
}

}  // namespace

Ramp rampOf(const std::vector<DayAction>& days, ClockTime start) {
    ensure(!days.empty(), "a ramp has at least a day");
    Ramp ramp;
    ramp.name = kPlannedRamp;
    ramp.kind = RampKind::Table;
    ramp.startTime = start;
    ByDay pulses{{}, true}, diffusers{{}, true}, depth{{}, true};
    for (const DayAction& day : days) {
        ramp.minutes.push_back(day.minutes);
        pulses.values.push_back(day.pulses);
        diffusers.values.push_back(day.diffusers);
        depth.values.push_back(day.depth);
    }
    const auto isOne = [](const ByDay& list) {
        return std::all_of(list.values.begin(), list.values.end(),
                           [&](double value) { return value == list.values.front(); });
    };
    const auto put = [&](std::optional<ByDay>& to, const ByDay& list) {
        to = isOne(list) ? ByDay{{list.values.front()}, false} : list;
    };
    if (!isOne(pulses) || pulses.values.front() != 1.0) {
        put(ramp.pulses, pulses);
    }
    put(ramp.diffusers, diffusers);
    put(ramp.depth, depth);
    return ramp;
}

Schedule scheduleOf(const std::vector<DayAction>& days, ClockTime start, const Aerator& aerator,
                    int runDays) {
    double cut = 0.0;
    return scheduleOf(rampOf(days, start), aerator, runDays + 1, PlanMembers::endOfNight(runDays), {}, cut);
}

HarmCount harmOf(const PlanMembers& members, const std::vector<DayAction>& days, ClockTime start,
                 int budget) {
    const Schedule schedule = scheduleOf(days, start, *members.model().pond.aerator, members.days());
    return toTheEnd(members, members.start(), schedule, 1, budget);
}

std::optional<Candidate> climb(const PlanMembers& members, const Ladder& ladder,
                               std::span<const int> heldDays, int budget, int lastDay,
                               const std::stop_token& stop) {
    // The boldest first: what a bold step uses up can be missed at the end, so that bolder is not always
    // sooner.
    for (const int below : {0, 1, 2}) {
        for (const int onTheWay : {budget / 2, budget}) {
            const auto candidate =
                climbOnce(members, ladder, heldDays, budget, onTheWay, below, lastDay, stop);
            if (candidate || stop.stop_requested()) {
                return candidate;
            }
            if (budget == 0) {
                break;
            }
        }
    }
    return std::nullopt;
}

Candidate polished(const PlanMembers& members, const Candidate& candidate, const Ladder& ladder,
                   std::span<const int> heldDays, int budget, const std::stop_token& stop) {
    Candidate best = candidate;
    // A held day stays where the calendar has it, so that only the air of later days moves up.
    const auto without = [&](std::size_t skipped) {
        std::vector<DayAction> actions;
        for (std::size_t i = 0; i < best.days.size(); ++i) {
            if (i >= ladder.first.size() && i != skipped && !best.days[i].isHold) {
                actions.push_back(best.days[i]);
            }
        }
        std::vector<DayAction> days = ladder.first;
        for (std::size_t next = 0; next < actions.size();) {
            DayAction held = ladder.sustainedAction;
            held.minutes = 0;
            held.isHold = hasDay(heldDays, static_cast<int>(days.size()) + 1);
            days.push_back(held.isHold ? held : actions[next++]);
        }
        return days;
    };
    for (std::size_t i = best.days.size() - 1; i-- > ladder.first.size() && !stop.stop_requested();) {
        if (best.days[i].isHold) {
            continue;
        }
        const std::vector<DayAction> days = without(i);
        if (!ladder.isAllowed(days, true)) {
            continue;
        }
        const HarmCount harm = harmOf(members, days, ladder.start, budget);
        if (harm.any <= budget && days.size() < best.days.size()) {
            best = {days, harm};
            i = std::min(i, best.days.size() - 1);
        }
    }
    for (const double factor : {0.75, 0.5}) {
        Candidate gentler = best;
        for (std::size_t i = ladder.first.size(); i + 1 < gentler.days.size(); ++i) {
            int& minutes = gentler.days[i].minutes;
            minutes = minutes > 0 ? std::max(static_cast<int>(std::lround(factor * minutes)), 1) : 0;
        }
        if (gentler.days == best.days || stop.stop_requested() || !ladder.isAllowed(gentler.days, true)) {
            continue;
        }
        gentler.harm = harmOf(members, gentler.days, ladder.start, best.harm.any);
        if (gentler.harm.any < best.harm.any) {
            best = gentler;
        }
    }
    return best;
}

}  // namespace engine
