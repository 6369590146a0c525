#pragma once

#include "engine/plan/plan.h"
#include "engine/plan/plan_members.h"

#include <functional>
#include <optional>
#include <span>
#include <vector>

namespace engine {

/// What a search may choose from on one day, in rising order of what it does to the pond, and what it leads
/// to. One start of the clock for all days.
struct Ladder {
    std::vector<DayAction> levels;
    DayAction sustainedAction;
    ClockTime start;
    std::vector<DayAction> first = {};  ///< Of the first days, on which there is nothing to choose
    /// Whether such days may be, the last of which may stand; empty: all may.
    std::function<bool(const std::vector<DayAction>& days, bool stands)> allows = {};

    [[nodiscard]] bool isAllowed(const std::vector<DayAction>& days, bool stands) const {
        return !allows || allows(days, stands);
    }
};

/// A way up a ladder that a plan may take: the actions of day 1 to the first day of the sustained schedule,
/// which is the last.
struct Candidate {
    std::vector<DayAction> days;
    HarmCount harm;  ///< Over all nights of the search
    [[nodiscard]] int length() const { return static_cast<int>(days.size()); }
};

/// The ramp of a candidate, as the pond file writes it; it keeps the last day's action.
[[nodiscard]] Ramp rampOf(const std::vector<DayAction>& days, ClockTime start);
/// When its air is on, to the end of a run.
[[nodiscard]] Schedule scheduleOf(const std::vector<DayAction>& days, ClockTime start, const Aerator& aerator,
                                  int runDays);

/// Looks day by day for a candidate up a ladder that harms at most `budget` members. Each day that is not
/// held it first tries to stand from then on, to the last night; else it takes the highest level that harms
/// at most half the budget when repeated over the next days, so that the step to the sustained schedule has
/// the rest; if that gives none, a second climb may use all of it.
/// @param heldDays  Days without air, as long as the sustained schedule has not begun.
/// @param lastDay   By which the sustained schedule must have begun.
[[nodiscard]] std::optional<Candidate> climb(const PlanMembers& members, const Ladder& ladder,
                                             std::span<const int> heldDays, int budget, int lastDay,
                                             const std::stop_token& stop);

/// Shortens a candidate day by day as long as the whole of it harms at most `budget` members, and then runs
/// its days shorter by one factor where that harms fewer.
[[nodiscard]] Candidate polished(const PlanMembers& members, const Candidate& candidate, const Ladder& ladder,
                                 std::span<const int> heldDays, int budget, const std::stop_token& stop);

/// Harm of a candidate over all nights; gives up between nights once it is above `budget`.
[[nodiscard]] HarmCount harmOf(const PlanMembers& members, const std::vector<DayAction>& days,
                               ClockTime start, int budget);

}  // namespace engine
