#pragma once

#include "engine/water/constant.h"

namespace engine {
// clang-format off

// When a start may be advised; a pond file's [start_rules] stand before the first four.

inline constexpr Constant kLethalWith_percent{5.0, 5.0, 5.0, "of 100 ponds",
    "below the lethal line with the ramp, at most; common practice, no source"};
inline constexpr Constant kLethalAlone_percent{10.0, 10.0, 10.0, "of 100 ponds",
    "left alone, at most, without surface air; common practice, no source"};
inline constexpr Constant kLethalAdded_percent{2.0, 2.0, 2.0, "of 100 ponds",
    "with the ramp minus left alone, at most; common practice, no source"};
inline constexpr Constant kDaysAfterAlgaecide{21.0, 14.0, 21.0, "d", "without a start; common practice, no source"};

inline constexpr Constant kRefuge_h{4.0, 2.0, 6.0, "h",
    "in which surface air lifts the refuge from its low to the stress line; judgement"};
inline constexpr Constant kPowerStep_kW{0.25, 0.25, 0.25, "kW", "to which the power of surface air is rounded up"};
inline constexpr Constant kMostSurfaceAir{4.0, 4.0, 4.0, "-",
    "times the size that the refuge needs, to which it is raised where the morning rules ask for more; judgement"};
inline constexpr Constant kSurfaceAirFrom_h{22.0, 20.0, 23.0, "h", "of the night; common practice, no source"};
inline constexpr Constant kAfterSunrise_h{2.0, 2.0, 2.0, "h", "to which it runs; common practice, no source"};
// clang-format on

}  // namespace engine
