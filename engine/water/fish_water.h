#pragma once

#include "engine/base/lane.h"
#include "engine/water/basin.h"

#include <vector>

namespace engine {

/// Finds the fish water of a member or a pack of members: oxygen exceeded by the best share of the volume.
/// Without a sort, since a sort goes lane by lane: how much water is better than a layer is a sum over all
/// layers.
template <class Real>
class FishWater {
public:
    explicit FishWater(const Grid& grid);

    /// Oxygen exceeded by the best `share` of the volume [g/m^3], interpolated between layer mid-volumes.
    /// Water warmer than `fishMax` counts as having none.
    [[nodiscard]] Real oxygen(const std::vector<Real>& oxygen, const std::vector<Real>& temperature,
                              double share, double fishMax);

    /// Where the fish are: shares by layer that sum to 1. They spread over the water above the stress line,
    /// never over less than the best `share` (`best` is what oxygen() gave, which comes before).
    void places(const Real& best, double stress, std::vector<Real>& out) const;

private:
    void sumBetter();

    std::vector<double> m_layer;  // Volume of each [m^3]
    double m_volume = 0.0;        // Of all
    std::vector<Real> m_habitat;  // Oxygen, or 0 where it is too warm
    std::vector<Real> m_better;   // Volume of the water that is better than a layer's [m^3]
};

}  // namespace engine
