#pragma once

#include "engine/plan/plan.h"

#include <stop_token>
#include <vector>

namespace engine {

/// End states of the central run under what a pond may run once its ramp is over: continuous, raised (deepest
/// first), by day, by night, part-time (longest first). Each is held from day 1.
/// @param nothingEnd  End state of do-nothing [g/m^3].
[[nodiscard]] std::vector<SustainedSchedule> sustainedSchedules(const PondModel& model, double nothingEnd,
                                                                int threads, const std::stop_token& stop);

/// How an end state stands to a line.
[[nodiscard]] EndVerdict endVerdict(double endState, double nothingEnd, double line);

/// Rows of the table in the order in which a plan tries them: those that keep the line before those that are
/// better; within them the longest daily run first, and the deepest.
[[nodiscard]] std::vector<std::size_t> inOrderOfChoice(const std::vector<SustainedSchedule>& table);

}  // namespace engine
