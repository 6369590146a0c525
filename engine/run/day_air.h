#pragma once

#include "engine/run/backdrop.h"

#include <map>

namespace engine {

/// The air of one calendar day, over the hours that a run saw of it.
struct DayAir {
    double lowest = 1e9, highest = -1e9;  ///< [degC]
    double wind = 0.0, cloud = 0.0;       ///< Means [m/s], [share]
    int hours = 0;
};
/// By day number; the first and the last day may have few hours.
[[nodiscard]] std::map<int, DayAir> daysOfAir(const Backdrop& backdrop);

/// The air of the hour in which a time falls; of the last hour after its end, null before the first.
/// @param time  [s after midnight of day 1]
[[nodiscard]] const AirHour* airAt(const Backdrop& backdrop, double time);

}  // namespace engine
