#pragma once

#include "engine/water/constant.h"

namespace engine {
// clang-format off

// What stands at the start: bottom water in a profile, and a profile where none was measured. All judgement
// but for the relation of Carlson.

inline constexpr Constant kContrastSpan{1.0, 0.5, 1.5, "K",
    "at the surface's temperature: what density must differ by from surface to bottom before there is "
    "bottom water"};
inline constexpr Constant kThinOxygen{2.0, 1.0, 3.0, "g/m^3",
    "water with less is bottom water; water with as much holds no debt"};
inline constexpr Constant kCarlsonConstant{2.04, 2.04, 2.04, "-",
    "ln Secchi depth [m] at 1 ug/L of chlorophyll, Carlson (1977), Limnol. Oceanogr. 22:361-369, from "
    "memory"};
inline constexpr Constant kCarlsonSlope{0.68, 0.68, 0.68, "-",
    "its fall with ln chlorophyll, Carlson (1977), from memory"};
inline constexpr Constant kAnoxicShare{0.05, 0.01, 0.10, "-",
    "of the bottom water that must be short of oxygen before the debt lies there alone"};

// The profile that is guessed: as warm as the air from the surface down to the depth that light or wind
// reaches.
inline constexpr Constant kGuessWarmShare{0.65, 0.5, 0.8, "-",
    "of a day's greatest air in the surface's temperature"};
inline constexpr Constant kGuessCoolShare{0.35, 0.2, 0.5, "-", "of its least air"};
inline constexpr Constant kGuessLeastSurface{1.0, 0.0, 4.0, "degC", "its least"};
inline constexpr Constant kGuessMostSurface{34.0, 32.0, 36.0, "degC", "its greatest"};
inline constexpr Constant kGuessMixed{2.0, 1.5, 3.0, "-", "mixed depth over the Secchi depth"};
inline constexpr Constant kGuessLeastMixed{0.8, 0.5, 1.2, "m", "least mixed depth"};
inline constexpr Constant kGuessMostMixed{4.0, 3.0, 5.0, "m", "greatest mixed depth"};
inline constexpr Constant kGuessStratifiedFrom{15.0, 12.0, 18.0, "degC",
    "surface water, above which a pond stratifies"};
inline constexpr Constant kGuessStep{0.5, 0.3, 1.0, "m",
    "below the mixed depth over which oxygen falls, and that there must be for a pond to stratify"};
inline constexpr Constant kGuessGradient{4.0, 2.0, 6.0, "K/m", "below the mixed depth"};
inline constexpr Constant kGuessContrast{9.0, 6.0, 12.0, "K", "at most, from top to bottom"};
inline constexpr Constant kGuessColdest{6.0, 4.0, 8.0, "degC",
    "at the bottom, unless the surface is colder"};
inline constexpr Constant kGuessLowOxygen{0.6, 0.4, 0.8, "-", "of saturation, at the bottom of clean ponds"};
inline constexpr Constant kGuessDeepest{0.95, 0.9, 1.0, "-", "of the pond's depth, where the profile ends"};

// Age, muck and class of a pond of which less is told; the trade's table for unknown ponds, common practice,
// no source.
inline constexpr Constant kUnknownAge_years{15.0, 5.0, 30.0, "years", "of a pond without a stated age"};
inline constexpr Constant kCleanBelow_years{5.0, 3.0, 8.0, "years", "of clean ponds"};
inline constexpr Constant kMuckyFrom_years{30.0, 20.0, 40.0, "years", "of mucky ponds"};
inline constexpr Constant kUnknownMuck{0.25, 0.1, 0.5, "m", "in a pond that is not young"};
inline constexpr Constant kCleanMuck{0.1, 0.05, 0.15, "m", "of clean ponds"};
inline constexpr Constant kMuckyMuck{0.4, 0.3, 0.6, "m", "from which on a pond is mucky"};
// clang-format on

}  // namespace engine
