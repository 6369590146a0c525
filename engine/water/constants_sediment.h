#pragma once

#include "engine/water/constant.h"

namespace engine {
// clang-format off

// The sediment in cold water; what may differ by pond is in engine/water/priors.h.

inline constexpr Constant kColdSedimentFrom{10.0, 8.0, 12.0, "degC",
    "below which the sediment demands less than the exponential rule says, from memory of Bowie and others "
    "(1985), EPA/600/3-85/040"};
inline constexpr Constant kColdSedimentTo{5.0, 4.0, 6.0, "degC",
    "where it demands least of that rule; judgement"};
inline constexpr Constant kColdSedimentShare{0.5, 0.3, 0.7, "-",
    "of the rule in cold water (halve below 10 degC), from memory of Bowie and others (1985); the range is "
    "judgement"};
// clang-format on

}  // namespace engine
