// What flow carries through the faces of a column's layers (engine/column/transport.h).
#include "engine/base/row.h"
#include "engine/column/transport.h"

#include <algorithm>

namespace engine {

template <class Real>
template <int Used, int C>
void Transport<Real>::sharpen(Fields<Real, C>& fields) {
    // Antidiffusive amounts through the faces, positive downwards. An amount goes from the lower value to the
    // higher one and stops where its giver would pass the layer behind it, or its taker the layer before it;
    // so no layer gives to both sides, and none falls below its neighbours.
    using Carried = Row<Real, Used, C>;
    const Real zero = 0.0;
    const Carried none;
    std::array<Real, C>* const amount = amounts<C>().data();
    std::array<Real, C>* const layer = fields.data();
    for (int i = 1; i < m_layers; ++i) {
        const int first = std::max(i - 2, 0), last = std::min(i + 1, m_layers - 1);
        const Real upper = m_upperShare[i], lower = m_lowerShare[i];
        const Real roomAbove = kJustUnderOne<Real> * m_grid.volume[i - 1],
                   roomBelow = kJustUnderOne<Real> * m_grid.volume[i];
        const Real flow = m_dt * m_down[i];
        const Real fromUpper = max(flow, zero), fromLower = min(flow, zero);
        const Carried a(layer[i - 1]), b(layer[i]);
        const Carried central = flow * (upper * a + lower * b);
        const Carried wanted = central - fromUpper * a - fromLower * b - Real(m_dt * m_central[i]) * (b - a);
        const Carried behind = roomAbove * (a - Carried(layer[first])),
                      ahead = roomBelow * (Carried(layer[last]) - b);
        const Carried rise = roomAbove * (b - a);
        const Carried down = min(min(wanted, rise), min(behind, ahead));
        const Carried up = max(max(wanted, rise), max(behind, ahead));
        (max(down, none) + min(up, none)).put(amount[i]);
    }
    Carried gained;  // By a layer through the face above it
    for (int i = 1; i < m_layers; ++i) {
        const Real perAbove = m_perVolume[i - 1], perBelow = m_perVolume[i];
        const Carried through(amount[i]);
        (Carried(layer[i - 1]) + gained - perAbove * through).put(layer[i - 1]);
        gained = perBelow * through;
    }
    (Carried(layer[m_layers - 1]) + gained).put(layer[m_layers - 1]);
}

template <class Real>
template <int C>
void Transport<Real>::rates(const std::vector<Real>& diffusivity, double molecular, const Flows<Real>& flows,
                            const Fields<Real, C>& brought, const Fields<Real, C>& fields,
                            Fields<Real, C>& out) {
    if (flows.moving) {
        faceFlows(flows);
    }
    for (int i = 0; i < m_layers; ++i) {
        out[i].fill(Real(0.0));
    }
    for (int i = 1; i < m_layers; ++i) {
        const double upper = m_upperShare[i], lower = m_lowerShare[i];
        const Real conductance = (diffusivity[i] + molecular) * m_shape[i];
        const Real down = flows.moving ? m_down[i] : Real(0.0);
        const int aa = std::max(i - 2, 0), bb = std::min(i + 1, m_layers - 1);
        for (int c = 0; c < C; ++c) {
            const Real a = fields[i - 1][c], b = fields[i][c];
            const Real upwind = max(down, Real(0.0)) * a + min(down, Real(0.0)) * b;
            const Real central = centralPart(i, down, conductance) * (b - a);
            Real extra = down * (upper * a + lower * b) - upwind - central;
            // The limiter's small-step limit: all of it where the values rise or fall through four layers,
            // else none.
            const Real behind = a - fields[aa][c], rise = b - a, ahead = fields[bb][c] - b;
            const Real rising = min(min(behind, ahead), min(rise, extra));
            const Real falling = max(max(behind, ahead), max(rise, extra));
            extra = wherePositive(max(rising, -falling), extra, Real(0.0));
            const Real flux = conductance * (a - b) + upwind + central + extra;
            out[i - 1][c] -= flux / m_grid.volume[i - 1];
            out[i][c] += flux / m_grid.volume[i];
        }
    }
    if (!flows.moving) {
        return;
    }
    for (int k = 0; k < flows.segments; ++k) {
        Real total = 0.0;
        std::array<Real, C> carried;
        carried.fill(Real(0.0));
        for (int i = 0; i < m_layers; ++i) {
            total += flows.taken[k][i];
            for (int c = 0; c < C; ++c) {
                carried[c] += flows.taken[k][i] * fields[i][c];
            }
        }
        const Real inverse = wherePositive(total, 1.0 / max(total, Real(kTiny<Real>)), Real(0.0));
        for (int i = 0; i < m_layers; ++i) {
            for (int c = 0; c < C; ++c) {
                out[i][c] +=
                    (flows.returned[k][i] * inverse * carried[c] - flows.taken[k][i] * fields[i][c]) /
                    m_grid.volume[i];
            }
        }
    }
    for (int i = 0; flows.enters && i < m_layers; ++i) {
        for (int c = 0; c < C; ++c) {
            out[i][c] += brought[i][c] / m_grid.volume[i];
        }
    }
    for (int c = 0; c < C; ++c) {
        out[0][c] -= flows.overflow * fields[0][c] / m_grid.volume[0];
    }
}

template void Transport<double>::sharpen<1, 1>(Fields<double, 1>&);
template void Transport<double>::sharpen<kAlwaysCarried, kSolutes>(Fields<double, kSolutes>&);
template void Transport<double>::sharpen<kSolutes, kSolutes>(Fields<double, kSolutes>&);
template void Transport<double>::rates<1>(const std::vector<double>&, double, const Flows<double>&,
                                          const Fields<double, 1>&, const Fields<double, 1>&,
                                          Fields<double, 1>&);
template void Transport<double>::rates<kSolutes>(const std::vector<double>&, double, const Flows<double>&,
                                                 const Fields<double, kSolutes>&,
                                                 const Fields<double, kSolutes>&, Fields<double, kSolutes>&);
template void Transport<DoubleLanes>::sharpen<1, 1>(Fields<DoubleLanes, 1>&);
template void Transport<DoubleLanes>::sharpen<kAlwaysCarried, kSolutes>(Fields<DoubleLanes, kSolutes>&);
template void Transport<DoubleLanes>::sharpen<kSolutes, kSolutes>(Fields<DoubleLanes, kSolutes>&);
template void Transport<DoubleLanes>::rates<1>(const std::vector<DoubleLanes>&, double,
                                               const Flows<DoubleLanes>&, const Fields<DoubleLanes, 1>&,
                                               const Fields<DoubleLanes, 1>&, Fields<DoubleLanes, 1>&);
template void Transport<DoubleLanes>::rates<kSolutes>(const std::vector<DoubleLanes>&, double,
                                                      const Flows<DoubleLanes>&,
                                                      const Fields<DoubleLanes, kSolutes>&,
                                                      const Fields<DoubleLanes, kSolutes>&,
                                                      Fields<DoubleLanes, kSolutes>&);
template void Transport<Lanes>::sharpen<1, 1>(Fields<Lanes, 1>&);
template void Transport<Lanes>::sharpen<kAlwaysCarried, kSolutes>(Fields<Lanes, kSolutes>&);
template void Transport<Lanes>::sharpen<kSolutes, kSolutes>(Fields<Lanes, kSolutes>&);
template void Transport<Lanes>::rates<1>(const std::vector<Lanes>&, double, const Flows<Lanes>&,
                                         const Fields<Lanes, 1>&, const Fields<Lanes, 1>&, Fields<Lanes, 1>&);
template void Transport<Lanes>::rates<kSolutes>(const std::vector<Lanes>&, double, const Flows<Lanes>&,
                                                const Fields<Lanes, kSolutes>&,
                                                const Fields<Lanes, kSolutes>&, Fields<Lanes, kSolutes>&);

}  // namespace engine
