#pragma once

#include "engine/ensemble/compare.h"

#include <optional>
#include <stop_token>
#include <string>

namespace engine {

/// Electric power of surface air that meets the night's demand of the fish's refuge and lifts it to the
/// stress line within kRefuge_h [kW]: at kSurfaceAir_kgPerKWh in clean water, of which the pond's water takes
/// what its warmth and oxygen leave (engine/water/air_transfer.h).
[[nodiscard]] double refugeAir_kW(const PondModel& model, const RampRun& run);

/// A ramp with surface air of a power [kW] at night, from kSurfaceAirFrom_h to kAfterSunrise_h after sunrise,
/// as the pond file writes it, under a name that the pond does not have yet.
[[nodiscard]] Ramp withSurfaceAirOf(const PondModel& model, const Ramp& ramp, double power_kW);

/// The same, as the pond file writes it, under a name that the pond does not have
/// yet: of refugeAir_kW(), or as much more, to kMostSurfaceAir times, as the morning rules ask for on the way
/// (haltedByMornings, one run each); of refugeAir_kW() where that does not help.
/// @param days  Of the runs.
[[nodiscard]] Ramp withSurfaceAir(const PondModel& model, const Ramp& ramp, int days,
                                  const std::stop_token& stop = {});

/// True if a ramp would start, or step up, on a day that the hold calendar names, and lifts bottom water.
[[nodiscard]] bool stepsOnHoldDay(const PondModel& model, const RampRun& run);
/// A ramp of a pond with the hold days out, under a name that the pond does not have yet.
[[nodiscard]] Ramp withHoldDaysOut(const Pond& pond, std::size_t ramp);

/// The name of a ramp of the pond: this one, or the one that it was made of by withSurfaceAir() or
/// withHoldDaysOut() where the pond has only that.
[[nodiscard]] std::string rampMadeOf(const Pond& pond, const std::string& name);

/// The worst low [g/m^3] of the ramp that is the same but for its surface air; nothing without one.
/// @param run  Place of the ramp in the comparison, above 0.
[[nodiscard]] std::optional<double> worstWithoutAir(const Comparison& comparison, std::size_t run);

}  // namespace engine
