#pragma once

#include <algorithm>
#include <cmath>

namespace engine {

// Light in the water. Shortwave in W/m^2; photosynthetic photons in umol/m^2/s where the name says so.

/// Share of shortwave that plants can use (0.42 to 0.50; Baker & Frouin 1987).
inline constexpr double kParShare = 0.45;
/// Photons of that light [umol/J] (McCree 1972).
inline constexpr double kPhotonsPerJoule_umol = 4.57;

/// Photosynthetic photons [umol/m^2/s] of shortwave light [W/m^2].
template <class Real>
[[nodiscard]] Real parFromShortwave_umol(Real shortwave) {
    return (kParShare * kPhotonsPerJoule_umol) * shortwave;
}

/// Shortwave light [W/m^2] of photosynthetic photons [umol/m^2/s].
template <class Real>
[[nodiscard]] Real shortwaveFromPar(Real par_umolPerM2S) {
    return par_umolPerM2S / (kParShare * kPhotonsPerJoule_umol);
}

/// Attenuation of light [1/m] of a Secchi depth [m]: 1.7 / depth, Poole & Atkins (1929), clear water.
/// (Turbid water has been given 1.44, Holmes 1970.)
/// @throws ArgumentError unless 0.01 <= secchi <= 100.
[[nodiscard]] double attenuationFromSecchi(double secchi);

/// What chlorophyll adds to the attenuation [1/m], Riley (1956): 0.0088 C + 0.054 C^(2/3).
/// @param chlorophyll_ugPerL  [ug/L], the same number as mg/m^3; below 0 counts as 0.
template <class Real>
[[nodiscard]] Real attenuationOfChlorophyll(Real chlorophyll_ugPerL) {
    using std::max;
    using std::pow;
    const Real c = max(chlorophyll_ugPerL, Real(0.0));
    return 0.0088 * c + 0.054 * pow(c, 2.0 / 3.0);
}

/// Mean light in a layer, in the unit of `topLight`: topLight (1 - exp(-x)) / x.
/// @param optical  x, attenuation times thickness [-], >= 0. Below 1e-6 it counts as 1e-6, which is
///                 off by less than 1e-6 of the light.
template <class Real>
[[nodiscard]] Real meanLight(Real topLight, Real optical) {
    using std::exp;
    using std::max;
    const Real x = max(optical, Real(1e-6));
    return topLight * (1.0 - exp(-x)) / x;
}

/// Share of the highest photosynthesis that a light allows [-], tanh(light / saturation), Jassby & Platt
/// (1976), Limnol. Oceanogr. 21:540-547. Reaches tanh(1) = 0.76 where both are equal.
/// @param light, saturationLight  In one unit, usually umol/m^2/s; saturationLight > 0.
template <class Real>
[[nodiscard]] Real saturatingLight(Real light, Real saturationLight) {
    using std::tanh;
    return tanh(light / saturationLight);
}

}  // namespace engine
