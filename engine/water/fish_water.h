#pragma once

#include "engine/water/basin.h"

#include <vector>

namespace engine {

/// Finds the fish water of one member: oxygen exceeded by the best share of the volume. Keeps the last order
/// of the layers, since it hardly changes from step to step.
class FishWater {
public:
    explicit FishWater(const Grid& grid);

    /// Oxygen exceeded by the best `share` of the volume [g/m^3], interpolated between layer mid-volumes. Water
    /// warmer than `fishMax` counts as having none.
    [[nodiscard]] double oxygen(const std::vector<double>& oxygen, const std::vector<double>& temperature,
                                double share, double fishMax);

    /// Where the fish are: shares by layer that sum to 1. They spread over the water above the stress line,
    /// never over less than the best `share` (`best` is what oxygen() gave).
    void places(const std::vector<double>& oxygen, const std::vector<double>& temperature, double best,
                double stress, double fishMax, std::vector<double>& out) const;

private:
    const Grid& m_grid;
    double m_volume = 0.0;
    std::vector<int> m_order;       // Layers from the best oxygen down
    std::vector<double> m_habitat;  // Oxygen, or 0 where it is too warm
};

}  // namespace engine
