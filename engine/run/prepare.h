#pragma once

#include "engine/run/run.h"

namespace engine {

/// What the balance leads a pond to, and when.
struct BalanceTarget {
    MaybeQuantity dawnOxygen;   ///< Of the dawn reading, if there is one [g/m^3]
    double readingTime = 0.0;   ///< Its clock hour in the night after the profile [s after midnight of day 1]
    double readingDepth = 0.0;  ///< [m]
};

[[nodiscard]] BalanceTarget balanceTarget(const PondModel& model);

inline constexpr double kLeastBalance = 0.1;      ///< Factors are searched from here ...
inline constexpr double kGreatestBalance = 10.0;  ///< ... to here

}  // namespace engine
