#pragma once

#include "engine/run/run.h"

namespace engine {

/// What a night's low would be without one thing: the central run again, the same air, that thing removed.
/// @param run   Completed, of `ramp` on `model`.
/// @param night Its low is compared.
/// @return oxygen gained at that night's low [g/m^3]; negative where the thing helped.
[[nodiscard]] double gainWithout(const PondModel& model, const Ramp* ramp, const RampRun& run, CauseKind kind,
                                 int night);

}  // namespace engine
