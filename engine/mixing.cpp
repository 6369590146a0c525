#include "engine/mixing.h"

namespace engine {
namespace {

constexpr double kLeastOverturn = 2e-3;  // [m/s], for pools that the surface does not drive

}  // namespace

void Convection::diffusivity(const std::vector<double>& density, double buoyancyFlux,
                             std::vector<double>& out) {
    const int layers = m_grid.layers();
    int count = 0;
    for (int i = 0; i < layers; ++i) {
        Block block{i, i + 1, m_grid.volume[i], m_grid.volume[i] * density[i]};
        // mass / volume above greater than below, without the divisions
        while (count > 0 && m_blocks[count - 1].mass * block.volume > block.mass * m_blocks[count - 1].volume) {
            const Block& above = m_blocks[--count];
            block = {above.first, block.end, above.volume + block.volume, above.mass + block.mass};
        }
        m_blocks[count++] = block;
    }
    std::fill(out.begin(), out.end(), 0.0);
    for (int k = 0; k < count; ++k) {
        const Block& block = m_blocks[k];
        if (block.end - block.first < 2) {
            continue;
        }
        const double height = m_grid.face[block.end] - m_grid.face[block.first];
        const double driven = block.first == 0 ? std::cbrt(std::max(buoyancyFlux, 0.0) * height) : 0.0;
        const double value = 0.4 * height * std::max(driven, kLeastOverturn);
        for (int face = block.first + 1; face < block.end; ++face) {
            out[face] = value;
        }
    }
}

}  // namespace engine
