#pragma once

#include "engine/water/constant.h"

#include <cmath>

namespace engine {
// clang-format off

// When a pond counts as mixed. Whether a profile has bottom water at all is bottomWater()'s to say
// (engine/water/parameters.h); here are readings of surface and bottom.

inline constexpr Constant kMixedTemperature{1.0, 0.5, 2.0, "K",
    "from top to bottom, under which the temperature is one; common practice, no source"};
inline constexpr Constant kMixedOxygen{1.5, 1.0, 2.0, "g/m^3",
    "from top to bottom, under which oxygen is one; common practice, no source"};
inline constexpr Constant kMixedSalinity{0.5, 0.3, 1.0, "-",
    "from bottom to top, under which no salt layer is said; common practice, no source"};
inline constexpr Constant kMixedBottom{2.0, 1.0, 3.0, "g/m^3",
    "oxygen at the bottom, above which air has reached it; common practice, no source"};
// clang-format on

/// Temperature alone says mixed. It does not do for the rest: in Danish lakes the bottom was often short of
/// oxygen under differences of 0.5 to 1 degC.
/// @param difference  Top minus bottom [K], of either sign.
[[nodiscard]] inline bool hasOneTemperature(double difference) {
    return std::fabs(difference) < kMixedTemperature.value;
}

/// Temperature and oxygen [g/m^3] say mixed; differences of either sign.
[[nodiscard]] inline bool isMixedThrough(double temperatureDifference, double oxygenDifference) {
    return hasOneTemperature(temperatureDifference) && std::fabs(oxygenDifference) < kMixedOxygen.value;
}

/// A dawn's readings are those of a mixed pond whose bottom has air, so that doses need no cap.
/// @param difference  Top minus bottom [K], of either sign. @param bottom  Oxygen there [g/m^3].
[[nodiscard]] inline bool isMixedAtDawn(double difference, double bottom) {
    return hasOneTemperature(difference) && bottom > kMixedBottom.value;
}

}  // namespace engine
