#pragma once

#include "engine/plan/plan.h"

#include <optional>
#include <stop_token>
#include <vector>

namespace engine {

/// The pond with worse weather from one day of a run on, every other day as it was: its table of days goes on
/// to the end of the run first, so that its usual day hardly changes. Overcast and calm: 95 % of cloud, wind
/// of at most 0.8 m/s, the day's greatest air 4 K lower. Cold front: 8 K colder, 80 % of cloud, wind of at
/// least 6 m/s. Dull spell: three days with the cloud and wind of the first and 3 K warmer. All are
/// judgement, modelled on the days that the trade fears.
[[nodiscard]] Pond withWorseWeather(const Pond& pond, StressKind kind, int day, int runDays);

/// A run's schedule and surface air under an overcast and calm day and under a cold front on each day of the
/// run in turn, central run, the worst first.
[[nodiscard]] std::vector<StressCase> stressTest(const PondModel& model, const RampRun& run, int threads,
                                                 const std::stop_token& stop);

/// The same under a dull spell that begins on the day from which it takes the run lowest; nothing if stopped,
/// of a run too short, or where no weather is given.
[[nodiscard]] std::optional<StressCase> weakestMoment(const PondModel& model, const RampRun& run, int threads,
                                                      const std::stop_token& stop);

}  // namespace engine
