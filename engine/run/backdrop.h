#pragma once

#include "engine/run/run.h"

#include <optional>
#include <vector>

namespace engine {

/// When it gets dark and light in one night [s after local midnight of day 1]; empty where the sun does not
/// pass that height on that day.
struct NightSky {
    int night = 0;
    std::optional<double> sunset, civilDusk, nauticalDusk;   ///< Sun at -0.833, -6 and -12 deg, evening
    std::optional<double> nauticalDawn, civilDawn, sunrise;  ///< The same heights, morning after
};

/// The air over the pond in the hour that follows `time`, as the runs saw it.
struct AirHour {
    double time = 0.0;       ///< [s after local midnight of day 1]
    double air = 0.0;        ///< [degC]
    double wind = 0.0;       ///< On the pond [m/s]
    double cloud = 0.0;      ///< Share of sky, 0 to 1
    double shortwave = 0.0;  ///< [W/m^2]
};

/// What stands behind the curves of a comparison: sun and weather.
struct Backdrop {
    std::vector<NightSky> nights;  ///< Nights 1 to N
    std::vector<AirHour> hours;    ///< Whole hours from the start of the run to its end
    int lastWeatherDay = 0;        ///< Last day of 1 to N that the weather table or file covers; 0: none
};

/// @param days  N; the run ends at noon after day N.
[[nodiscard]] Backdrop backdropOf(const PondModel& model, int days);

}  // namespace engine
