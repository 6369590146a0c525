#pragma once

#include "engine/follow_up/today.h"
#include "engine/plan/plan.h"

namespace engine {

/// Members and size of the water of a new schedule, so that it is there in seconds.
inline constexpr int kReplanMembers = 128;

/// Days from today on that a morning's verdict speaks for: none after go, today after hold and back, the days
/// of a stop.
[[nodiscard]] int daysOfVerdict(const DawnDecision& decision);

/// What this morning leaves a plan: the minutes of the days of its verdict, after back and stop no more on
/// the next day than half and a quarter of what ran last, and on no day more than the cap.
/// @param today  Decided.
[[nodiscard]] PlanMornings morningsOf(const Today& today);

/// The schedule planned anew from today on (engine/plan/plan.h): the pond as this morning's readings have it,
/// with what its ramp so far has left of the debt; day 1 of the plan is today. It never says other than the
/// verdict (morningsOf()), and has no air on the other days of the hold calendar.
/// @param today  Decided.
/// @return A plan that has not run, with a sentence, where the readings make no profile or there is no
///         aerator.
[[nodiscard]] Plan replanned(const Today& today, const TodayOptions& options, const RunControl& control = {});

}  // namespace engine
