#pragma once

#include "engine/water/constant.h"

namespace engine {
// clang-format off

// Vertical mixing without the aerator.

inline constexpr Constant kMolecularHeat{1.4e-7, 1.34e-7, 1.5e-7, "m^2/s",
    "diffusivity of heat in water; textbook"};
inline constexpr Constant kMolecularSolute{2.0e-9, 1.0e-9, 2.5e-9, "m^2/s",
    "diffusivity of oxygen in water; textbook"};

// Wind: Henderson-Sellers (1985), with the 10-m wind as there (the 2-m wind of later codes is Hostetler and
// Bartlein's of 1990); the equations as the technical note of CLM repeats them.
inline constexpr Constant kSurfaceFriction{1.2e-3, 1.0e-3, 1.4e-3, "-",
    "w* over the wind; the range is judgement"};
inline constexpr Constant kEkmanDecay{6.6, 6.6, 6.6, "1/m per sqrt(sin latitude) (m/s)^-1.84", "k*"};
inline constexpr Constant kEkmanPower{-1.84, -1.84, -1.84, "-", "of the wind in k*"};
inline constexpr Constant kRichardsonDamping{37.0, 37.0, 37.0, "-", "in 1 + 37 Ri^2"};
inline constexpr Constant kRichardsonFactor{40.0, 40.0, 40.0, "-",
    "in Ri = (sqrt(1 + 40 N^2 ...) - 1) / 20"};
inline constexpr Constant kRichardsonHalf{20.0, 20.0, 20.0, "-", "in the same"};
inline constexpr Constant kLeastWind{0.05, 0.01, 0.1, "m/s", "so that the decay is a number; judgement"};
inline constexpr Constant kLeastSine{0.1, 0.05, 0.2, "-",
    "root of the sine of latitude, near the equator; judgement"};

// Background diffusion.
inline constexpr Constant kBackgroundDiffusion{1.04e-8, 0.4e-8, 2.6e-8, "m^2/s",
    "at N^2 of 1 /s^2, Fang and Stefan (1996); the range is judgement. Hondzo and Stefan (1993), from "
    "memory, let it rise with the lake's area and have as much at 2.5 ha"};
inline constexpr Constant kBackgroundPower{-0.43, -0.43, -0.43, "-", "of N^2, Fang and Stefan (1996)"};
inline constexpr Constant kLeastStability{7.5e-5, 7.5e-5, 7.5e-5, "1/s^2",
    "smallest N^2, Fang and Stefan (1996)"};
inline constexpr Constant kStabilityDensity{1000.0, 992.0, 1000.0, "kg/m^3",
    "by which density gradients are divided"};

// Convection.
inline constexpr Constant kLeastOverturn{2e-3, 1e-3, 4e-3, "m/s",
    "velocity in mixed blocks that the surface does not drive; judgement"};
/// Where the water above a face is denser than the mixed block's below it by this, the face overturns in
/// full, and less where by less: at the moment at which a mixed block parts, the difference at its face is
/// zero, so that the diffusivity has no jumps. With jumps the base of the mixed layer flickers, and hours by
/// day do not settle however short the steps: 6 % of the hours of all scenarios then move by more than 0.05
/// g/m^3 from steps of 37.5 s to 18.75, and 1.3 % with this.
inline constexpr Constant kFullOverturn{5e-3, 2e-3, 1e-2, "kg/m^3", "about 0.02 degC; judgement"};
// clang-format on

}  // namespace engine
