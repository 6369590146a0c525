#pragma once

#include "engine/run/run.h"

#include <optional>

namespace engine {

// What a run's air does from day to day; 1 is the first day of the run.

/// The first day with air from the bottom; nothing without any.
[[nodiscard]] std::optional<int> firstAirDay(const RampRun& run);

/// The first day from which on the air is the same each day; nothing without air, or where it changes to the
/// end.
[[nodiscard]] std::optional<int> firstSustainedDay(const RampRun& run);

/// True if a day has more minutes of air than the one before, or deeper or more diffusers.
[[nodiscard]] bool isStepUp(const RampRun& run, int day);

}  // namespace engine
