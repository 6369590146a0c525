#include "engine/water/fish_water.h"

#include "engine/water/constants_fish.h"

#include <algorithm>
#include <numeric>

namespace engine {

FishWater::FishWater(const Grid& grid)
    : m_grid(grid),
      m_volume(std::accumulate(grid.volume.begin(), grid.volume.end(), 0.0)),
      m_order(grid.volume.size()),
      m_habitat(grid.volume.size()) {
    std::iota(m_order.begin(), m_order.end(), 0);
}

double FishWater::oxygen(const std::vector<double>& oxygen, const std::vector<double>& temperature,
                         double share, double fishMax) {
    for (std::size_t i = 0; i < oxygen.size(); ++i) {
        m_habitat[i] = temperature[i] > fishMax ? 0.0 : oxygen[i];
    }
    // Insertion sort of an order that is nearly right already; ties keep the upper layer first.
    for (std::size_t k = 1; k < m_order.size(); ++k) {
        const int moving = m_order[k];
        std::size_t at = k;
        while (at > 0 && (m_habitat[m_order[at - 1]] < m_habitat[moving] ||
                          (m_habitat[m_order[at - 1]] == m_habitat[moving] && m_order[at - 1] > moving))) {
            m_order[at] = m_order[at - 1];
            --at;
        }
        m_order[at] = moving;
    }
    const double wanted = share * m_volume;
    double before = 0.0, lastMiddle = 0.0, lastValue = m_habitat[m_order.front()];
    for (const int i : m_order) {
        const double middle = before + 0.5 * m_grid.volume[i];
        if (middle >= wanted) {
            return lastValue + (m_habitat[i] - lastValue) * (wanted - lastMiddle) / (middle - lastMiddle);
        }
        before += m_grid.volume[i];
        lastMiddle = middle;
        lastValue = m_habitat[i];
    }
    return lastValue;
}

void FishWater::places(const std::vector<double>& oxygen, const std::vector<double>& temperature, double best,
                       double stress, double fishMax, std::vector<double>& out) const {
    const double line = std::min(stress, best);
    double total = 0.0;
    for (std::size_t i = 0; i < oxygen.size(); ++i) {
        const double habitat = temperature[i] > fishMax ? 0.0 : oxygen[i];
        out[i] = m_grid.volume[i] * std::clamp((habitat - line) / kFishEdge.value + 0.5, 0.0, 1.0);
        total += out[i];
    }
    for (std::size_t i = 0; i < oxygen.size(); ++i) {
        out[i] = total > 0.0 ? out[i] / total : m_grid.volume[i] / m_volume;
    }
}

}  // namespace engine
