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

// After Chapra (1997), Surface Water-Quality Modeling, chapter 30, from memory; his calories, centimetres,
// days and mmHg turned into W/m^2 and Pa.
inline constexpr double kWattPerLangleyDay = 4.184e4 / kDay;  ///< 1 cal/cm^2/d [W/m^2]
inline constexpr double kPascalPerMmHg = 133.322;             ///< [Pa]
inline constexpr Constant kStefanBoltzmann{11.7e-8 * kWattPerLangleyDay, 5.66e-8, 5.671e-8, "W/m^2/K^4",
    "Chapra's 11.7e-8 cal/cm^2/d/K^4, 0.1 % under CODATA's 5.670374e-8"};
inline constexpr Constant kHeatKelvin{273.0, 273.0, 273.15, "K",
    "Chapra's offset, 0.15 K below the scale's"};
inline constexpr Constant kWaterEmissivity{0.97, 0.96, 0.98, "-",
    "Chapra (1997), from memory; the range is judgement"};
inline constexpr Constant kSkyAbsorbed{0.97, 0.95, 0.98, "-",
    "of the sky's longwave, 3 % reflected, Chapra (1997), from memory; the range is judgement"};
inline constexpr Constant kBruntConstant{0.6, 0.5, 0.7, "-", "Brunt's A, Chapra (1997), from memory"};
inline constexpr Constant kBruntVapour{0.031, 0.031, 0.031, "1/sqrt(mmHg)",
    "Brunt's form, Chapra (1997), from memory"};
inline constexpr Constant kCloudLongwave{0.17, 0.10, 0.25, "-",
    "rise of the sky's longwave with the square of cloud, from memory; the range is judgement"};
inline constexpr Constant kStillEvaporation{19.0, 15.0, 23.0, "cal/cm^2/d/mmHg",
    "wind function, Chapra (1997), from memory; the range is judgement"};
inline constexpr Constant kWindyEvaporation{0.95, 0.70, 1.20, "cal/cm^2/d/mmHg per (m/s)^2",
    "wind function, wind at 7 m, Chapra (1997), from memory; the range is judgement"};
inline constexpr Constant kHeatWindHeight{7.0, 7.0, 7.0, "m", "of the wind in the wind function"};
inline constexpr Constant kBowen_mmHgPerK{0.47, 0.46, 0.49, "mmHg/K",
    "conduction over evaporation, Chapra (1997), from memory; the range is judgement"};
// clang-format on

}  // namespace engine
