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
// Bartlein's of 1990); the equations as the technical note of CLM repeats them. The friction velocity and the
// background diffusion at N^2 of 1 /s^2 are priors (engine/water/priors.h).
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
inline constexpr Constant kBackgroundPower{-0.43, -0.43, -0.43, "-", "of N^2, Fang and Stefan (1996)"};
inline constexpr Constant kLeastStability{7.5e-5, 7.5e-5, 7.5e-5, "1/s^2",
    "smallest N^2, Fang and Stefan (1996)"};
inline constexpr Constant kStabilityDensity{1000.0, 992.0, 1000.0, "kg/m^3",
    "by which density gradients are divided"};

// Convection.
inline constexpr Constant kFreeConvection{0.9, 0.16, 1.3, "-",
    "c of K = c z^2 sqrt(-N^2), Priestley (1954), Aust. J. Phys. 7:176-201, from memory, for air over warm "
    "ground; a mixing length of 0.4 z has 0.16. Over the measured days of tests/property no depth's error "
    "moves by more than 0.05 K between the two"};

inline constexpr Constant kEasedConvection{1e-8, 1e-9, 1e-7, "1/s^2",
    "-N^2 under which convection eases off, a thousandth of what 100 W/m2 need in a metre; of the numerics"};

// Two stages of a step, each implicit over the same share of it (SDIRK), of second order and L-stable:
// Alexander (1977), SIAM J. Numer. Anal. 14:1006-1021.
inline constexpr double kStageShare = 0.29289321881345248;  ///< 1 - sqrt(1/2)
// clang-format on

}  // namespace engine
