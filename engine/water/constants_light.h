#pragma once

#include "engine/water/constant.h"

namespace engine {
// clang-format off

// Light in the water.

inline constexpr Constant kParShare{0.45, 0.42, 0.50, "-",
    "share of shortwave that plants can use, Baker and Frouin (1987)"};
inline constexpr Constant kPhotonsPerJoule_umol{4.57, 4.53, 5.11, "umol/J",
    "photons of that light, McCree (1972); Thimijan and Heins (1983) have 2.04 to 2.3 mol a MJ of shortwave"};
inline constexpr Constant kSecchiAttenuation{2.3, 1.44, 2.8, "-",
    "attenuation times Secchi depth: midway between clear (1.9) and stained lakes (2.8), Koenings and Edmundson "
    "(1991), Limnol. Oceanogr. 36:91-105, from memory. 1.7 in the sea, Poole and Atkins (1929), and 1.44 in "
    "turbid water, Holmes (1970), let light too deep into both measured waters of tests/property"};
inline constexpr Constant kChlorophyllShading{0.0088, 0.0088, 0.0088, "1/m per ug/L", "Riley (1956)"};
inline constexpr Constant kChlorophyllPowerShading{0.054, 0.053, 0.054, "1/m per (ug/L)^(2/3)",
    "Riley (1956); rounded to 0.053 elsewhere"};
inline constexpr Constant kLeastRestAttenuation{0.04, 0.02, 0.10, "1/m",
    "water that chlorophyll leaves nothing to explain in; judgement"};
inline constexpr Constant kWeedDepth{2.0, 1.5, 3.0, "-",
    "depth down to which weeds stand over the Secchi depth: so deep light still suffices in fish ponds, "
    "Chang and Ouyang (1988), Aquaculture 74:263-276; the range is judgement"};
// clang-format on

}  // namespace engine
