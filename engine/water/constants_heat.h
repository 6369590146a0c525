#pragma once

#include "engine/base/units.h"
#include "engine/water/constant.h"

namespace engine {
// clang-format off

// Sun, sky and the heat of the surface. FAO-56 is FAO Irrigation and Drainage Paper 56 (Allen et al. 1998),
// chapter 3.

inline constexpr Constant kSolarConstant{0.0820e6 / kMinute, 1361.0, 1367.0, "W/m^2",
    "0.0820 MJ/m^2/min, FAO-56; satellites have 1361"};
inline constexpr Constant kOvercastLight{0.25, 0.20, 0.30, "-",
    "of the light above the air that reaches the ground under full cloud, FAO-56 eq 35; the range is "
    "judgement"};
inline constexpr Constant kSunnyLight{0.50, 0.45, 0.55, "-",
    "that comes on top of it under no cloud, FAO-56 eq 35; the range is judgement"};
inline constexpr Constant kLeastSunForCloud{0.2, 0.1, 0.3, "-",
    "sine of the sun's height below which light says nothing of the clouds; judgement"};
inline constexpr Constant kSunriseHeight_deg{-0.833, -0.833, -0.833, "deg",
    "of the sun's centre at sunrise and sunset: refraction and half the disc; the almanacs' convention"};

// Longwave and the heat that leaves the water; the measured waters of tests/property decided between laws
// (DEVELOPERS.md has the table).
inline constexpr Constant kStefanBoltzmann{5.670374e-8, 5.670374e-8, 5.670374e-8, "W/m^2/K^4", "CODATA"};
inline constexpr Constant kWaterEmissivity{0.97, 0.96, 0.98, "-",
    "textbook value, from memory; the range is judgement"};
inline constexpr Constant kSkyAbsorbed{0.97, 0.95, 0.98, "-",
    "of the sky's longwave, 3 % reflected, from memory; the range is judgement"};
inline constexpr Constant kClearSky_perK2{9.36e-6, 9.2e-6, 9.4e-6, "1/K^2",
    "emissivity of a clear sky over the square of the air's temperature, Swinbank (1963), Q. J. R. Meteorol. "
    "Soc. 89:339-348, from memory, as usual in heat budgets of lakes. Brutsaert (1975) and Prata (1996) have "
    "0.03 to 0.05 more in humid air; Brunt's form as in older texts on water quality 0.1 less"};
inline constexpr Constant kCloudLongwave{0.17, 0.10, 0.25, "-",
    "rise of the sky's longwave with the square of cloud, from memory; the range is judgement"};
inline constexpr Constant kFreeEvaporation{2.7, 2.0, 3.0, "W/m^2/mbar/K^(1/3)",
    "wind function, with the cube root of the difference in virtual temperature, Ryan, Harleman and "
    "Stolzenbach (1974), Water Resour. Res. 10:930-938, from memory; the range is judgement"};
inline constexpr Constant kWindyEvaporation{3.2, 2.6, 3.8, "W/m^2/mbar per m/s",
    "wind function, wind at 2 m, the same source; the range is judgement"};
inline constexpr Constant kHeatWindHeight{2.0, 2.0, 2.0, "m", "of the wind in the wind function"};
inline constexpr Constant kBowen{61.0, 60.0, 66.0, "Pa/K", "conduction over evaporation, Bowen (1926)"};
inline constexpr Constant kVapourLightness{0.378, 0.378, 0.378, "-",
    "1 - 0.622, in the virtual temperature of moist air"};
// clang-format on

}  // namespace engine
