#pragma once

#include "engine/advice/advice.h"

#include <optional>
#include <string>

namespace engine {

/// Electric power of surface air that meets the night's demand of the fish's refuge and lifts it to the
/// stress line within kRefuge_h [kW]: at kSurfaceAir_kgPerKWh in clean water, of which the pond's water takes
/// what its warmth and oxygen leave (engine/water/air_transfer.h).
[[nodiscard]] double refugeAir_kW(const PondModel& model, const RampRun& run);

/// The ramp that is advised on with surface air of refugeAir_kW() at night, as the pond file writes it, under
/// a name that the pond does not have yet.
[[nodiscard]] Ramp withSurfaceAir(const Comparison& comparison, const Advice& advice);

/// The name of a ramp of the pond: this one, or the one that it was made of by withSurfaceAir() where the
/// pond has only that.
[[nodiscard]] std::string rampWithoutSurfaceAir(const Pond& pond, const std::string& name);

/// The worst low [g/m^3] of the ramp that is the same but for its surface air; nothing without one.
/// @param run  Place of the ramp in the comparison, above 0.
[[nodiscard]] std::optional<double> worstWithoutAir(const Comparison& comparison, std::size_t run);

}  // namespace engine
