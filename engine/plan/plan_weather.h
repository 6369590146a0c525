#pragma once

#include "engine/plan/plan.h"

#include <stop_token>
#include <vector>

namespace engine {

/// The pond with worse weather on one day of a run, every other day as it was: its table of days goes on to
/// the end of the run first, so that its usual day hardly changes. Overcast and calm: 95 % of cloud, wind of
/// at most 0.8 m/s, the day's greatest air 4 K lower. Cold front: 8 K colder, 80 % of cloud, wind of at least
/// 6 m/s. Both are judgement, modelled on the days that the trade fears.
[[nodiscard]] Pond withWorseDay(const Pond& pond, StressKind kind, int day, int runDays);

/// A schedule under both kinds of worse weather on each day of a run in turn, central run, the worst first.
[[nodiscard]] std::vector<StressCase> stressTest(const PondModel& model, const Schedule& schedule, int days,
                                                 int threads, const std::stop_token& stop);

}  // namespace engine
