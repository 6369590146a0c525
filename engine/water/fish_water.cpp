#include "engine/water/fish_water.h"

#include "engine/water/constants_fish.h"

#include <algorithm>
#include <numeric>

namespace engine {

template <class Real>
FishWater<Real>::FishWater(const Grid& grid)
    : m_layer(grid.volume),
      m_volume(std::accumulate(grid.volume.begin(), grid.volume.end(), 0.0)),
      m_habitat(grid.volume.size(), Real(0.0)),
      m_better(m_habitat) {}

/// Of layers that are alike the upper one is the better.
template <class Real>
void FishWater<Real>::sumBetter() {
    const int layers = static_cast<int>(m_layer.size());
    const Real* const habitat = m_habitat.data();
    Real* const better = m_better.data();
    std::fill(m_better.begin(), m_better.end(), Real(0.0));
    const Real none = 0.0;
    for (int j = 0; j < layers; ++j) {
        const Real of = habitat[j], volume = m_layer[j];
        DAWNLINE_SIDE_BY_SIDE
        for (int i = 0; i < j; ++i) {
            better[i] += whereMore(of, habitat[i], volume, none);
        }
        DAWNLINE_SIDE_BY_SIDE
        for (int i = j + 1; i < layers; ++i) {
            better[i] += whereMore(habitat[i], of, none, volume);
        }
    }
}

template <class Real>
Real FishWater<Real>::oxygen(const std::vector<Real>& oxygen, const std::vector<Real>& temperature,
                             double share, double fishMax) {
    const int layers = static_cast<int>(m_layer.size());
    Real best = 0.0;
    for (int i = 0; i < layers; ++i) {
        m_habitat[i] = whereMore(temperature[i], Real(fishMax), Real(0.0), oxygen[i]);
        best = i == 0 ? m_habitat[i] : max(best, m_habitat[i]);
    }
    sumBetter();
    // The layers whose mid-volumes lie next to what is wanted, on either side. Before the best there is more
    // of the best, after the worst more of the worst.
    constexpr double kNone = 1e30;
    const Real wanted = share * m_volume;
    Real before = 0.0, value = best, after = kNone, next = best;
    for (int i = 0; i < layers; ++i) {
        const Real middle = m_better[i] + 0.5 * m_layer[i], habitat = m_habitat[i];
        const Real comesBefore = whereMore(wanted, middle, middle, Real(0.0)),
                   comesAfter = whereMore(wanted, middle, Real(kNone), middle);
        value = whereMore(comesBefore, before, habitat, value);
        before = max(before, comesBefore);
        next = whereMore(after, comesAfter, habitat, next);
        after = min(after, comesAfter);
    }
    const Real between = value + (next - value) * (wanted - before) / (after - before);
    return whereMore(Real(0.5 * kNone), after, between, value);
}

template <class Real>
void FishWater<Real>::places(const Real& best, double stress, std::vector<Real>& out) const {
    const int layers = static_cast<int>(m_layer.size());
    const Real line = min(Real(stress), best);
    Real total = 0.0;
    for (int i = 0; i < layers; ++i) {
        out[i] = m_layer[i] *
                 min(max((m_habitat[i] - line) * (1.0 / kFishEdge.value) + 0.5, Real(0.0)), Real(1.0));
        total += out[i];
    }
    const Real perTotal = 1.0 / max(total, Real(kTiny<Real>));
    for (int i = 0; i < layers; ++i) {
        out[i] = wherePositive(total, Real(out[i] * perTotal), Real(m_layer[i] / m_volume));
    }
}

template class FishWater<double>;
template class FishWater<DoubleLanes>;
template class FishWater<Lanes>;

}  // namespace engine
