#pragma once

#include "engine/run/run.h"

#include <optional>

namespace engine {

/// What a machine takes while a ramp runs.
struct PowerUse {
    double power_kW = 0.0, hours = 0.0;
    [[nodiscard]] double energy_kWh() const { return power_kW * hours; }
};

/// Power of surface air by what it brings into clean water [kW].
[[nodiscard]] double powerOf_kW(const SurfaceAir& air);

/// The compressor from the start of a run to its end; nothing where the pond file does not give its power.
[[nodiscard]] std::optional<PowerUse> compressorUse(const PondModel& model, const RampRun& run);

/// The surface air that goes with a run's ramp, every night of it; nothing without any.
[[nodiscard]] std::optional<PowerUse> surfaceAirUse(const RampRun& run);

/// The pond file's own surface aerator over the nights of a run; nothing where there is none, or its power is
/// not given.
[[nodiscard]] std::optional<PowerUse> surfaceAeratorUse(const PondModel& model, const RampRun& run);

}  // namespace engine
