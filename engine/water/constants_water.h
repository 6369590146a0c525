#pragma once

#include "engine/water/constant.h"

namespace engine {
// clang-format off

// Water itself, and flow near a wall.

inline constexpr Constant kWaterDensity{998.0, 992.0, 1000.0, "kg/m^3",
    "at 20 degC, for stores of heat and the weight of water alone, 40 to 4 degC; UNESCO (1983)"};
inline constexpr Constant kWaterSpecificHeat{4181.0, 4178.0, 4192.0, "J/kg/K",
    "at 25 degC, 5 to 40 degC; textbook"};
inline constexpr Constant kWaterViscosity{1.004e-6, 0.8e-6, 1.5e-6, "m^2/s",
    "kinematic, at 20 degC, 30 to 5 degC; textbook"};
inline constexpr Constant kIpts68PerIts90{1.00024, 1.00024, 1.00024, "-",
    "temperature of the International Practical Scale of 1968 over that of 1990, Saunders (1990)"};
inline constexpr Constant kKarman{0.4, 0.40, 0.41, "-", "von Karman's constant; textbook"};
// clang-format on

}  // namespace engine
