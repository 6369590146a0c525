#pragma once

#include "engine/base/lane.h"
#include "engine/base/units.h"

#include <algorithm>
#include <cmath>

namespace engine {

/// Oxygen that fish take while oxygen is ample [g O2 per kg of fish per s]; always positive, falls with
/// the mass of a fish, rises with temperature (about 2.1 times in 10 degC).
/// log10 of mg/g/h = -0.999 - 0.000957 W + 6e-7 W^2 + 0.0327 T - 8.7e-6 T^2 + 3e-7 T^3, channel catfish.
/// @param meanMass_g   W [g], clamped to 5..800: the square has its turning point at 797 g and would
///                     let large fish respire more.
/// @param temperature  T [degC], clamped to 0..35.
/// Accuracy: the coefficients are from memory; they stay within 30 % of a second, independent equation
///   for 50 to 700 g at 22 and 25 degC.
/// Source: Boyd, Romaire & Johnston (1978), Trans. Am. Fish. Soc. 107:484-492.
/// Tested: tests/published/fish_respiration_test.cpp
template <class Real>
[[nodiscard]] Real fishRespiration(double meanMass_g, Real temperature) {
    using std::exp;
    using std::max;
    using std::min;
    constexpr double kLn10 = 2.302585092994045684;
    const double w = std::clamp(meanMass_g, 5.0, 800.0);
    const Real t = min(max(temperature, Real(0.0)), Real(35.0));
    const Real exponent = -0.999 + w * (-0.000957 + 6e-7 * w) + t * (0.0327 + t * (-8.7e-6 + 3e-7 * t));
    return exp(kLn10 * exponent) / kHour;  // mg/g/h is g/kg/h
}

/// How much faster fish respire than at 20 degC, the temperature part of the same equation.
template <class Real>
[[nodiscard]] Real fishTemperatureFactor(const Real& temperature) {
    using std::max;
    using std::min;
    constexpr double kLn10 = 2.302585092994045684;
    const Real t = min(max(temperature, Real(0.0)), Real(35.0));
    constexpr double kAt20 = 20.0 * (0.0327 + 20.0 * (-8.7e-6 + 3e-7 * 20.0));
    return rateExp(kLn10 * (t * (0.0327 + t * (-8.7e-6 + 3e-7 * t)) - kAt20));
}

}  // namespace engine
