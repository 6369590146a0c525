#pragma once

#include "engine/water/constant.h"

namespace engine {
// clang-format off

// The ways to the oxygen debt of bottom water.

inline constexpr Constant kLeastReading{1.0, 0.5, 1.5, "g/m^3",
    "under which a bottle test is void; common practice, no source"};
inline constexpr Constant kMeterError{0.2, 0.1, 0.3, "g/m^3",
    "1 sigma of an optical handheld in the field; common practice, no source"};
inline constexpr Constant kSurfaceParts{3.0, 1.0, 9.0, "-",
    "parts of surface water to one of bottom water where the test does not say; common practice, no source"};
inline constexpr Constant kPouringError{0.03, 0.01, 0.05, "-",
    "1 sigma, of the parts of surface water; judgement"};
inline constexpr Constant kPlaceError{0.2, 0.1, 0.3, "-",
    "1 sigma of the logarithm between one sample and the mean; judgement"};
inline constexpr Constant kKitError{0.3, 0.2, 0.4, "-",
    "1 sigma of the logarithm of what kits read; judgement"};
inline constexpr Constant kLeastDebt{0.3, 0.1, 0.5, "g/m^3",
    "from which a way that comes to nothing is not told, and a logarithm needs more than 0; judgement"};
inline constexpr Constant kSharedLakes{0.5, 0.3, 0.7, "-",
    "correlation of the ways by days and by class, which rest on the same few lakes; judgement"};

// Parts of fast plus medium debt that substances make up, with 5 and 95 % points. Sulfide and iron together
// are the fast share of engine/water/priors.h; what is left are labile organics, which no kit reads.
inline constexpr Constant kSulfidePart{0.35, 0.15, 0.60, "-", "of fast plus medium debt; judgement"};
inline constexpr Constant kIronPart{0.20, 0.05, 0.40, "-", "of fast plus medium debt; judgement"};
inline constexpr Constant kMethanePart{0.30, 0.12, 0.45, "-", "of fast plus medium debt; judgement"};
// clang-format on

}  // namespace engine
