#include "engine/column/mixing.h"

namespace engine {

void Convection::diffusivity(const std::vector<double>& density, double buoyancyFlux,
                             std::vector<double>& out) {
    const int layers = m_grid.layers();
    int count = 0;
    for (int i = 0; i < layers; ++i) {
        MixedBlock block{i, i + 1, m_grid.volume[i], m_grid.volume[i] * density[i]};
        // mass / volume above greater than below, without the divisions
        while (count > 0 &&
               m_blocks[count - 1].mass * block.volume > block.mass * m_blocks[count - 1].volume) {
            const MixedBlock& above = m_blocks[--count];
            block = {above.first, block.end, above.volume + block.volume, above.mass + block.mass};
        }
        m_blocks[count++] = block;
    }
    std::fill(out.begin(), out.end(), 0.0);
    for (int k = 0; k < count; ++k) {
        const MixedBlock& block = m_blocks[k];
        if (block.end - block.first < 2) {
            continue;
        }
        const double height = m_grid.face[block.end] - m_grid.face[block.first];
        const double driven = block.first == 0 ? std::cbrt(std::max(buoyancyFlux, 0.0) * height) : 0.0;
        const double value = kKarman.value * height * std::max(driven, kLeastOverturn.value);
        double volume = 0.0, mass = 0.0;  // of the mixed block above a face
        for (int face = block.first + 1; face < block.end; ++face) {
            volume += m_grid.volume[face - 1];
            mass += m_grid.volume[face - 1] * density[face - 1];
            const double excess = mass / volume - (block.mass - mass) / (block.volume - volume);
            out[face] = value * std::clamp(excess / kFullOverturn.value, 0.0, 1.0);
        }
    }
}

}  // namespace engine
