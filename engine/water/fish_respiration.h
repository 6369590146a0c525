#pragma once

#include "engine/base/lane.h"
#include "engine/base/units.h"
#include "engine/water/constants_fish.h"

#include <algorithm>
#include <cmath>

namespace engine {

/// Oxygen that fish take while oxygen is ample [g O2 per kg of fish per s]; always positive, falls with
/// the mass of a fish, rises with temperature (about 2.1 times in 10 degC).
/// Source and accuracy: kCatfishRespiration.
/// @param meanMass_g   [g], held to the fit's ends.
/// @param temperature  [degC], held to the fit's ends.
/// Tested: tests/published/fish_respiration_test.cpp
template <class Real>
[[nodiscard]] Real fishRespiration(double meanMass_g, Real temperature) {
    using std::exp;
    using std::max;
    using std::min;
    constexpr double kLn10 = 2.302585092994045684;
    constexpr const FishRespirationFit& fit = kCatfishRespiration;
    const double w = std::clamp(meanMass_g, fit.leastMass_g, fit.mostMass_g);
    const Real t = min(max(temperature, Real(fit.coldest)), Real(fit.warmest));
    const Real exponent = fit.constant + w * (fit.mass + fit.massSquare * w) +
                          t * (fit.warmth + t * (fit.warmthSquare + fit.warmthCube * t));
    return exp(kLn10 * exponent) / kHour;  // mg/g/h is g/kg/h
}

/// How much faster fish respire than at 20 degC, the temperature part of the same equation.
template <class Real>
[[nodiscard]] Real fishTemperatureFactor(const Real& temperature) {
    using std::max;
    using std::min;
    constexpr double kLn10 = 2.302585092994045684;
    constexpr const FishRespirationFit& fit = kCatfishRespiration;
    const Real t = min(max(temperature, Real(fit.coldest)), Real(fit.warmest));
    constexpr double kAt20 = 20.0 * (fit.warmth + 20.0 * (fit.warmthSquare + fit.warmthCube * 20.0));
    return rateExp(kLn10 * (t * (fit.warmth + t * (fit.warmthSquare + fit.warmthCube * t)) - kAt20));
}

}  // namespace engine
