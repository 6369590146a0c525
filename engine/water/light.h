#pragma once

#include "engine/base/lane_math.h"
#include "engine/water/constants_light.h"

#include <algorithm>
#include <cmath>

namespace engine {

// Light in the water. Shortwave in W/m^2; photosynthetic photons in umol/m^2/s where the name says so.

/// Photosynthetic photons of shortwave light [umol/J].
inline constexpr double kPhotonsOfShortwave_umol = kParShare.value * kPhotonsPerJoule_umol.value;

/// Shortwave light [W/m^2] of photosynthetic photons [umol/m^2/s].
template <class Real>
[[nodiscard]] Real shortwaveFromPar(Real par_umolPerM2S) {
    return par_umolPerM2S / kPhotonsOfShortwave_umol;
}

/// Attenuation of light [1/m] of a Secchi depth [m]: kSecchiAttenuation / depth.
/// @throws ArgumentError unless 0.01 <= secchi <= 100.
[[nodiscard]] double attenuationFromSecchi(double secchi);

/// The Secchi depth [m] of an attenuation [1/m], the same relation backwards, without checks.
[[nodiscard]] inline double secchiFromAttenuation(double attenuation) {
    return kSecchiAttenuation.value / attenuation;
}

/// What chlorophyll adds to the attenuation [1/m], Riley (1956): 0.0088 C + 0.054 C^(2/3).
/// @param chlorophyll_ugPerL  [ug/L], the same number as mg/m^3; below 0 counts as 0.
template <class Real>
[[nodiscard]] Real attenuationOfChlorophyll(Real chlorophyll_ugPerL) {
    using std::max;
    using std::pow;
    const Real c = max(chlorophyll_ugPerL, Real(0.0));
    return kChlorophyllShading.value * c + kChlorophyllPowerShading.value * pow(c, 2.0 / 3.0);
}

/// Attenuation [1/m] of water that has `rest` [1/m] and chlorophyll [ug/L], for layers side by side: Riley's
/// power by way of the logarithm.
template <class Real>
[[nodiscard]] Real attenuationOfLayer(const Real& rest, const Real& chlorophyll_ugPerL) {
    const Real c = max(chlorophyll_ugPerL, Real(1e-30));
    return rest + kChlorophyllShading.value * c +
           kChlorophyllPowerShading.value * layerExp((2.0 / 3.0) * layerLog(c));
}

/// Mean light in a layer over that at its top [-]: (1 - exp(-x)) / x.
/// @param left     exp(-x), the share of light that passes the layer.
/// @param optical  x, attenuation times thickness [-], > 0.
template <class Real>
[[nodiscard]] Real meanLightShare(const Real& left, const Real& optical) {
    return (1.0 - left) / optical;
}

/// Share of the highest photosynthesis that a light allows [-], tanh(light / saturation), Jassby & Platt
/// (1976), Limnol. Oceanogr. 21:540-547. Reaches tanh(1) = 0.76 where both are equal.
/// @param light  Over the light of saturation [-].
template <class Real>
[[nodiscard]] Real saturatingLight(const Real& light) {
    return layerTanh(light);
}

}  // namespace engine
