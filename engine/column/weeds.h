#pragma once

#include "engine/base/lane_math.h"
#include "engine/water/basin.h"

#include <vector>

namespace engine {

// Weeds in the water: where they stand and how they shade.

/// Shares of the weed mass over layer volume, times the pond's area [1/m]: weeds stand on the bottom down to
/// `deepest` [m], where light allows (kWeedDepth), and fill the water above it evenly.
[[nodiscard]] std::vector<double> weedShares(const Grid& grid, double deepest);

/// What weeds do to the light. They stand in patches and shade what grows among and under them; in the gaps
/// light goes down as without them. The layers take in what the two, side by side, take in as a mean.
/// @param perArea     Of each layer, as weedShares() [1/m].
/// @param attenuates  Attenuation times mass over the pond's area [-].
/// @param cover       Share of the area that is patches, 0 to 1.
/// @param shade       By how much each layer is thicker optically [-]; size N.
/// @param among       Light in the patches over the layer's mean [-]; size N.
template <class Real>
void shadeOfWeeds(const std::vector<double>& thickness, const std::vector<Real>& perArea,
                  const Real& attenuates, const Real& cover, std::vector<Real>& shade,
                  std::vector<Real>& among) {
    const Real dense = wherePositive(cover, Real(attenuates / max(cover, Real(1e-9))), Real(0.0));
    Real optical = 0.0;  // of the patches above a layer [-]
    Real left = 1.0;     // of the light, as a mean of patches and gaps
    for (std::size_t i = 0; i < thickness.size(); ++i) {
        // Where it is dark to seventeen places nothing gets darker.
        const Real next = min(Real(optical + dense * perArea[i] * thickness[i]), Real(40.0));
        const Real below = 1.0 - cover + cover * exp(Real(-next));
        shade[i] = log(Real(left / below));
        among[i] = exp(Real(-0.5 * (optical + next))) / sqrt(Real(left * below));
        optical = next;
        left = below;
    }
}

}  // namespace engine
