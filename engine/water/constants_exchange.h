#pragma once

#include "engine/base/units.h"
#include "engine/water/constant.h"

namespace engine {
// clang-format off

// Oxygen between water and air: the surface, and aerators in the terms of the standard test.

inline constexpr Constant kCalmExchange_mPerDay{0.2, 0.1, 0.3, "m/d",
    "piston velocity without wind or cooling, small sheltered lakes, Emerson (1975), Limnol. Oceanogr. "
    "20:754-761. Vachon and Prairie (2013), Can. J. Fish. Aquat. Sci. 70:1757-1764 (second hand), have 0.6 "
    "over 1 ha, cooling included"};
inline constexpr Constant kWindExchange_cmPerHour{0.215, 0.13, 0.34, "cm/h per (m/s)^1.7",
    "Cole and Caraco (1998), Limnol. Oceanogr. 43:647-656; the range is that of the exchange factor"};
inline constexpr Constant kWindExchangePower{1.7, 1.0, 2.2, "-",
    "Cole and Caraco (1998); Crusius and Wanninkhof (2003), Limnol. Oceanogr. 48:1010-1017, have 2.2, or "
    "two lines"};
inline constexpr Constant kConvectiveExchange{0.29, 0.29, 0.5, "-",
    "c of c (epsilon nu)^(1/4) Sc^(-1/2), from memory of Read and others (2012). Theory and many field data "
    "give about 0.4: Lamont and Scott (1970), Katul and others (2018), both second hand; a calm night that "
    "loses 100 W/m2 at 25 degC then has 0.70 m/d, here 0.51, where waters of 0.3 to 45 ha had 0.35 to 0.74, "
    "Cole and others (2010), Limnol. Oceanogr. Methods 8:285. With 0.4 and a floor of 0.3 the nights of a "
    "measured pond (tests/property/fit_test.cpp) are forecast to 1.10 mg/L, with these to 0.85"};
inline constexpr Constant kRainExchange{0.679, 0.6, 0.75, "cm/h per mm/h",
    "Ho and others (1997), Tellus B 49:149-158, from memory"};
inline constexpr Constant kRainExchangeSquare{-0.0015, -0.0015, -0.0015, "cm/h per (mm/h)^2",
    "Ho and others (1997), from memory"};
inline constexpr Constant kMostRain_mmPerHour{200.0, 110.0, 220.0, "mm/h",
    "where that parabola is highest; the rains that it rests on had up to 110, from memory"};
inline constexpr Constant kReferenceSchmidt{600.0, 600.0, 600.0, "-",
    "to which piston velocities are brought: carbon dioxide in fresh water at 20 degC"};
inline constexpr Constant kWindDrag{1.3e-3, 1.0e-3, 1.6e-3, "-",
    "drag coefficient of open water, Amorocho and DeVries (1980), J. Geophys. Res. 85:433-442; the range is "
    "judgement"};
inline constexpr Constant kWindHeight{10.0, 10.0, 10.0, "m",
    "of the wind in all formulas but those of heat"};

inline constexpr Constant kStandardSaturation{9.0924, 9.08, 9.17, "g/m^3",
    "of the standard test: fresh water, 20 degC, 1 atm, Benson and Krause (1984); older forms have 9.17"};
inline constexpr Constant kSurfaceAir_kgPerKWh{1.5, 1.2, 2.0, "kg/kWh",
    "of oxygen by surface aerators into clean water at 20 degC without oxygen, from memory of Boyd (1998), Aquacult. "
    "Eng. 18:9-40"};
inline constexpr Constant kTransferTheta{1.024, 1.024, 1.024, "-",
    "rise of the transfer coefficient per degC, by the standard test, ASCE/EWRI 2-06"};
// clang-format on

}  // namespace engine
