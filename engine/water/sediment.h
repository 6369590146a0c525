#pragma once

#include "engine/base/lane.h"
#include "engine/base/units.h"
#include "engine/water/constants_sediment.h"
#include "engine/water/parameters.h"

#include <cmath>

namespace engine {

// What the sediment demands of the water over it, and what it gives back of the demand that oxygen cannot
// meet: one law for a run and for what has gathered before it.

/// Factor on the sediment's demand [-]: in cold water it falls smoothly to a part of the exponential rule.
/// @param temperature  [degC]
template <class Real>
[[nodiscard]] Real coldSedimentFactor(const Real& temperature) {
    constexpr double kSpan = kColdSedimentFrom.value - kColdSedimentTo.value;
    constexpr double kLeast = kColdSedimentShare.value;
    const Real x = min(max((temperature - kColdSedimentTo.value) / kSpan, Real(0.0)), Real(1.0));
    return kLeast + (1.0 - kLeast) * x * x * (3.0 - 2.0 * x);
}

/// Demand of the sediment at ample oxygen [g/m^2/d].
/// @param temperature  Of the water over it [degC].
[[nodiscard]] inline double sedimentDemandAt_gPerM2Day(const SedimentParameters<double>& sediment,
                                                       double temperature) {
    return sediment.demand * kDay * std::pow(sediment.theta, temperature - 20.0) *
           coldSedimentFactor(temperature);
}

/// Debt that comes out of the sediment where there is no oxygen [g/m^2/d].
[[nodiscard]] inline double returnedDebt_gPerM2Day(const SedimentParameters<double>& sediment,
                                                   double temperature) {
    return sediment.regenerationShare * sedimentDemandAt_gPerM2Day(sediment, temperature);
}

}  // namespace engine
