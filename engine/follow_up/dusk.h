#pragma once

#include "engine/follow_up/known_pond.h"

#include <optional>

namespace engine {

/// Tonight by two readings of one evening: fish water about 17:30 and about 21:00, and the straight line
/// through both (Francis-Floyd, Dissolved Oxygen for Fish Production, University of Florida; known at second
/// hand). It knows of no mixing and no weather.
struct DuskLine {
    double firstTime = 0.0, secondTime = 0.0;  ///< [s after midnight of day 1]
    double first = 0.0, second = 0.0;          ///< Fish water [g/m^3]
    double dawn = 0.0;                         ///< Where the line is at 07:00, at least 0 [g/m^3]
    double low = 0.0, high = 0.0;              ///< 5 and 95 % by the meter's error alone [g/m^3]
};

/// The line of a day's evening: of the readings from 16:00 to 19:00 those nearest to 17:30, of those from
/// 19:30 to 23:00 those nearest to 21:00. Nothing without both, or where they are less than 2 h apart.
/// @param log  Of the model's pond.
/// @param day  1 is the first day.
[[nodiscard]] std::optional<DuskLine> duskLine(const PondModel& model, const JudgedLog& log, int day);

}  // namespace engine
