#pragma once

#include "engine/base/units.h"
#include "engine/water/constant.h"

namespace engine {
// clang-format off

// The course of a day of which a table of days has the ends and means.

inline constexpr Constant kWarmestHour{15.0, 14.0, 16.0, "h",
    "of the air, and of the wind's greatest; judgement"};
/// (1 + 2a/pi) / (1 - 2a/pi) = 2.
inline constexpr Constant kWindSwing{kPi / 6.0, 0.31, 0.79, "-",
    "amplitude a with which the mean wind of the day half is twice that of the night half, FAO-24's usual "
    "ratio, from memory; 1.5 to 3 times"};
inline constexpr Constant kSunriseWithoutSun_h{6.0, 6.0, 6.0, "h", "where the sun does not rise"};
inline constexpr Constant kMeltingCools{79.7, 79.7, 79.8, "K",
    "by which as much water as there is snow would cool to melt it: 333.6 kJ/kg over 4.186 kJ/kg/K; textbook"};
inline constexpr Constant kUnknownCloud{0.5, 0.0, 1.0, "-", "until an hour's light tells of the clouds"};
inline constexpr Constant kPastDays{3.0, 3.0, 7.0, "days",
    "before the profile, from which on their mean is the balance's usual day and not that of all days; judgement"};
// clang-format on

}  // namespace engine
