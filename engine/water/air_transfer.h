#pragma once

#include "engine/base/units.h"
#include "engine/water/constants_exchange.h"
#include "engine/water/water.h"

namespace engine {

// From the oxygen an aerator gives in the standard test (clean water without oxygen, 20 degC, 1 atm) to
// what it gives in a pond: transferRate() (transferTarget() - oxygen of the water), positive into the water,
// the form of the aquaculture literature (Boyd 1998, Aquacult. Eng. 18:9-40). Above its target the air takes
// oxygen away.

/// First-order rate at which an aerator drives water to its target, in the unit of `standard` a g/m^3:
/// alpha theta^(T-20) over the saturation of the test.
/// @param standard        Transfer in the standard test; over the volume that it works on, [g/m^3/s] make
/// [1/s].
/// @param temperature     Of the water [degC].
/// @param alpha           Transfer in this water over clean water [-].
/// @param testSaturation  That the test worked towards [g/m^3]: of splashing aerators that at the surface, of
///                        diffusers that of their depth.
template <class Real>
[[nodiscard]] Real transferRate(const Real& standard, const Real& temperature, double alpha,
                                double testSaturation) {
    return standard * alpha / testSaturation * temperatureFactor(kTransferTheta.value, temperature);
}

/// What an aerator drives water to [g/m^3].
/// @param saturation  At the pond's temperature, salinity and air pressure [g/m^3].
/// @param beta        Saturation of this water over water of its salinity [-].
template <class Real>
[[nodiscard]] Real transferTarget(const Real& saturation, double beta) {
    return beta * saturation;
}

}  // namespace engine
