#pragma once

#include "engine/water/constant.h"

namespace engine {
// clang-format off

// The plume over a diffuser and its bubbles.

inline constexpr Constant kPlumeEntrainment{0.11, 0.06, 0.12, "-",
    "top-hat entrainment coefficient, from memory of Wueest, Brooks and Imboden (1992), Water Resour. Res. "
    "28:3235-3250; Cederwall and Ditmars (1970), from memory, have 0.04 to 0.08"};
inline constexpr Constant kBubbleCore{0.8, 0.6, 1.0, "-",
    "radius of the bubble core over that of the plume, from memory of Wueest and others (1992); the range "
    "is judgement"};
inline constexpr Constant kPlumeFroude{1.6, 1.2, 2.0, "-",
    "densimetric Froude number at the diffuser, from memory of Wueest and others (1992), who leave speed "
    "and radius at the start to the user; the range is judgement"};
inline constexpr Constant kDiffuserRadius{0.125, 0.08, 0.2, "m",
    "of the plume at the diffuser, a disc of 0.25 m; the user's by Wueest and others (1992); the range is "
    "judgement"};
inline constexpr Constant kPlumeSpread{1.2, 1.2, 1.2, "-",
    "radius of a plume over entrainment times height, 6/5, Morton, Taylor and Turner (1956)"};
inline constexpr Constant kOxygenOfAir{0.2095, 0.2095, 0.2095, "-", "mole share of dry air"};
inline constexpr Constant kNitrogenOfAir{0.7905, 0.7905, 0.7905, "-",
    "mole share of dry air, argon with it"};
inline constexpr Constant kFreeAirTemperature{20.0, 20.0, 20.0, "degC",
    "at which free air is stated, with 1 atm"};
inline constexpr Constant kLiveSpeed{0.01, 0.005, 0.02, "m/s",
    "slower than this the water no longer rises; judgement"};
inline constexpr Constant kSinkingExcess{0.01, 0.005, 0.02, "kg/m^3",
    "by which water must be heavier to leave the surface; judgement"};

// Slip velocity by radius r [m]: 4474 r^1.357, 0.23 m/s, 4.202 r^0.547, as codes of single bubbles have it.
inline constexpr Constant kSmallBubble{7e-4, 7e-4, 7e-4, "m", "up to which the first of the three holds"};
inline constexpr Constant kLargeBubble{5.1e-3, 5.1e-3, 5.1e-3, "m", "from which on the last holds"};
inline constexpr Constant kMiddleSlip{0.23, 0.20, 0.25, "m/s", "of bubbles between; the range is judgement"};
inline constexpr Constant kBubbleTransfer{4e-4, 3e-4, 5e-4, "m/s",
    "transfer velocity of oxygen of larger bubbles, as codes of single bubbles have it; the range is "
    "judgement"};
inline constexpr Constant kSmallBubbleTransfer{0.6, 0.6, 0.6, "1/s",
    "transfer velocity over radius, small bubbles, from memory of Wueest and others (1992); meets the other "
    "at 0.67 mm"};
inline constexpr Constant kNitrogenTransfer{0.9325, 0.9325, 0.9325, "-",
    "transfer velocity of nitrogen over that of oxygen, root of the ratio of diffusivities: 3.73e-4 over "
    "4e-4 m/s"};
inline constexpr Constant kSlowestRefill_h{8.0, 8.0, 8.0, "h",
    "in which bubbles fill water at the most where that is above their own saturation; ponds that are aerated in "
    "earnest take weeks; judgement"};
// clang-format on

}  // namespace engine
