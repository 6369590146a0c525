#pragma once

#include "engine/water/constant.h"

namespace engine {
// clang-format off

// The balance of a pond against its profile (engine/run/balance.h). One sigma each; the ranges are judgement.

inline constexpr Constant kMeanOxygenError{0.3, 0.2, 0.5, "g/m^3",
    "of the mean above z_b a usual day later: a meter's, and that no day is quite usual; judgement"};
inline constexpr Constant kOxygenAtDepthError{0.7, 0.5, 1.0, "g/m^3",
    "of one depth, where patches and a shift of a layer come on top; judgement"};
inline constexpr Constant kTemperatureAtDepthError{0.5, 0.3, 1.0, "K", "likewise; judgement"};
inline constexpr Constant kDawnError{0.2, 0.2, 0.4, "g/m^3", "of a dawn reading: an optical handheld in the field"};
// A logger.
inline constexpr Constant kNightsOfLogger{3.0, 3.0, 5.0, "nights",
    "before the profile from which on a logger tells of usual days, as of the weather (kPastDays); judgement"};
inline constexpr Constant kDaysOfLogger{10.0, 5.0, 14.0, "days", "before the profile that count; judgement"};
inline constexpr Constant kHourOfLogger_h{1.0, 0.5, 1.0, "h", "within which a reading is that of a time; judgement"};

inline constexpr Constant kGrowthSpread{0.6, 0.4, 0.8, "-",
    "of the logarithm of photosynthesis over that by its chlorophyll; judgement"};
inline constexpr Constant kRespirationSpread{0.15, 0.1, 0.3, "-",
    "of the logarithm of respiration where no dawn was read: what an evening's profile may not move; judgement"};
inline constexpr Constant kReadRespirationSpread{0.42, 0.3, 0.6, "-",
    "the same with a dawn reading: a factor of two either way; judgement"};
inline constexpr Constant kWindSpread{0.1, 0.05, 0.3, "-",
    "of the logarithm of the wind on the pond; its shelter is drawn besides; judgement"};

inline constexpr Constant kFarOff{2.0, 1.5, 3.0, "-",
    "of these errors, from which on a row counts less: Huber (1964), Ann. Math. Stat. 35:73-101, has 1.5; "
    "judgement"};

// From which on profile and weather contradict each other.
inline constexpr Constant kContraryOxygen{1.5, 1.0, 2.0, "g/m^3", "off after a usual day; judgement"};
inline constexpr Constant kContraryTemperature{1.0, 1.0, 2.0, "K", "off after a usual day; judgement"};
// clang-format on

}  // namespace engine
