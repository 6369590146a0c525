#pragma once

#include "engine/plan/plan.h"

#include <span>

namespace engine {

/// Whether the days of a run, from the first on, heed the caps on what a day may lift of the bottom water:
/// each that of the debt-to-pool ratio and of the mixing that its own morning has in that run.
/// @param days  So many are looked at.
[[nodiscard]] bool heedsCaps(const PondModel& model, const RampRun& run, int days, const DawnLimits& limits);

/// Whether days that a search thinks of are such as the mornings leave them: the first as the verdict has
/// them, the next within its most, all of them within the caps in the central run.
/// @param standsUntil  The last day to look at where the last action stands; nothing: it does not.
[[nodiscard]] bool isLeftByMornings(const PondModel& model, const PlanMornings& mornings,
                                    std::span<const DayAction> days, ClockTime start,
                                    std::optional<int> standsUntil, const std::stop_token& stop);

}  // namespace engine
