#pragma once

#include "engine/basin.h"
#include "engine/lane.h"
#include "engine/plume.h"
#include "engine/state.h"

#include <algorithm>
#include <array>
#include <vector>

namespace engine {

/// Water moved between layers, size N, net of what is drawn in again at once.
template <class Real>
struct Flows {
    int segments = 0;  ///< Rises of the plume in use
    std::array<std::vector<Real>, kPlumeSegments> taken;     ///< From each layer [m^3/s]
    std::array<std::vector<Real>, kPlumeSegments> returned;  ///< To each layer [m^3/s]; sums equal
    std::vector<Real> entering;  ///< From outside into each layer [m^3/s] (spring)
    Real overflow = 0.0;         ///< From layer 0 to outside [m^3/s]
    bool moving = false;         ///< Anything above is not zero

    explicit Flows(int layers) : entering(layers, Real(0.0)) {
        for (int k = 0; k < kPlumeSegments; ++k) {
            taken[k].assign(layers, Real(0.0));
            returned[k].assign(layers, Real(0.0));
        }
    }
};

/// One implicit vertical step of diffusion and flow for everything the water carries.
///
/// Low order: backward Euler with upwind return flow; the matrix is tridiagonal plus one dense row per rise of
/// the plume (Sherman, Morrison, Woodbury), an M-matrix, conservative: never negative for any step. High
/// order: central face values, centred in time, added as antidiffusive fluxes that the limiter of Boris and Book (1973)
/// keeps from making or raising extremes, so that positivity and the sums stay.
template <class Real>
class Transport {
public:
    explicit Transport(const Grid& grid);

    /// Sets the matrix for steps of `dt`.
    /// @param diffusivity  At the faces [m^2/s], size N + 1.
    void prepare(double dt, const std::vector<Real>& diffusivity, double molecular, const Flows<Real>& flows);

    /// Advances the fields by the prepared step.
    /// @param entering  What entering water carries; used only where it enters.
    /// @return what overflowing water carried off, the same numbers.
    /// @tparam Used  The first `Used` of the C numbers of a layer are there; the rest stay as they are.
    template <int Used, int C>
    std::array<Real, C> advance(const Flows<Real>& flows, const std::array<Real, C>& entering,
                                Fields<Real, C>& fields);

    /// d/dt of the fields at the limit of small steps: the same fluxes with the same limiter.
    template <int C>
    void rates(const std::vector<Real>& diffusivity, double molecular, const Flows<Real>& flows,
               const std::array<Real, C>& entering, const Fields<Real, C>& fields, Fields<Real, C>& out);

private:
    void faceFlows(const Flows<Real>& flows);
    template <int Used, int C>
    void solve(Fields<Real, C>& fields) const;
    template <int Used, int C>
    void addPlume(const Flows<Real>& flows, Fields<Real, C>& fields);
    template <int Used, int C>
    void sharpen(Fields<Real, C>& fields);

    template <int C>
    struct Scratch {
        Fields<Real, C> before, amount, rise;
    };
    template <int C>
    Scratch<C>& scratch() {
        if constexpr (C == 1) {
            return m_one;
        } else {
            return m_many;
        }
    }

    const Grid& m_grid;
    int m_layers;
    double m_dt = 0.0;
    std::vector<Real> m_down;        // Flow through each face, positive downwards [m^3/s], N + 1
    std::vector<Real> m_fromAbove;   // Coupling of layer i to i - 1, positive [m^3/s]
    std::vector<Real> m_fromBelow;   // Coupling of layer i to i + 1, positive [m^3/s]
    std::vector<Real> m_inverse;     // One over the eliminated diagonal
    std::vector<Real> m_back;        // Back substitution factor
    std::array<std::vector<Real>, kPlumeSegments> m_answer;  // Tridiagonal solve of each returned flow
    std::array<std::vector<Real>, kPlumeSegments> m_share;   // Of each rise's water, by layer taken from
    std::array<std::array<Real, kPlumeSegments>, kPlumeSegments> m_small{};
    Scratch<1> m_one;
    Scratch<kSolutes> m_many;
};

template <class Real>
Transport<Real>::Transport(const Grid& grid)
    : m_grid(grid),
      m_layers(grid.layers()),
      m_down(m_layers + 1, Real(0.0)),
      m_fromAbove(m_layers, Real(0.0)),
      m_fromBelow(m_layers, Real(0.0)),
      m_inverse(m_layers, Real(0.0)),
      m_back(m_layers, Real(0.0)) {
    for (int k = 0; k < kPlumeSegments; ++k) {
        m_answer[k].assign(m_layers, Real(0.0));
        m_share[k].assign(m_layers, Real(0.0));
    }
}

template <class Real>
void Transport<Real>::faceFlows(const Flows<Real>& flows) {
    // What a layer does not keep goes on downwards.
    Real down = 0.0;
    for (int i = 0; i < m_layers; ++i) {
        m_down[i] = down;
        Real kept = flows.entering[i] - (i == 0 ? flows.overflow : Real(0.0));
        for (int k = 0; k < flows.segments; ++k) {
            kept += flows.returned[k][i] - flows.taken[k][i];
        }
        down += kept;
    }
    m_down[0] = 0.0;
    m_down[m_layers] = 0.0;  // zero up to rounding, since the sums agree
}

template <class Real>
void Transport<Real>::prepare(double dt, const std::vector<Real>& diffusivity, double molecular,
                              const Flows<Real>& flows) {
    m_dt = dt;
    const Real zero = 0.0;
    if (flows.moving) {
        faceFlows(flows);
    }
    for (int i = 1; i < m_layers; ++i) {
        const Real conductance = (diffusivity[i] + molecular) * (m_grid.faceArea[i] / m_grid.distance[i]);
        const Real down = flows.moving ? m_down[i] : zero;
        m_fromAbove[i] = conductance + max(down, zero);
        m_fromBelow[i - 1] = conductance + max(-down, zero);
    }
    m_fromAbove[0] = zero;
    m_fromBelow[m_layers - 1] = zero;
    for (int i = 0; i < m_layers; ++i) {
        // What leaves a layer: to its neighbours, into the plume, over the brim.
        Real leaving = (i > 0 ? m_fromBelow[i - 1] : zero) + (i + 1 < m_layers ? m_fromAbove[i + 1] : zero);
        if (flows.moving) {
            for (int k = 0; k < flows.segments; ++k) {
                leaving += flows.taken[k][i];
            }
            leaving += i == 0 ? flows.overflow : zero;
        }
        Real diagonal = m_grid.volume[i] / dt + leaving;
        if (i > 0) {
            diagonal -= m_fromAbove[i] * m_back[i - 1];
        }
        m_inverse[i] = 1.0 / diagonal;
        m_back[i] = m_fromBelow[i] * m_inverse[i];
    }
    if (!flows.moving) {
        return;
    }
    for (int k = 0; k < flows.segments; ++k) {
        Real total = 0.0;
        for (int i = 0; i < m_layers; ++i) {
            total += flows.taken[k][i];
        }
        const Real inverse = wherePositive(total, 1.0 / max(total, Real(1e-300)), zero);
        std::vector<Real>& x = m_answer[k];
        for (int i = 0; i < m_layers; ++i) {
            m_share[k][i] = flows.taken[k][i] * inverse;
            x[i] = (flows.returned[k][i] + (i > 0 ? m_fromAbove[i] * x[i - 1] : zero)) * m_inverse[i];
        }
        for (int i = m_layers - 2; i >= 0; --i) {
            x[i] += m_back[i] * x[i + 1];
        }
    }
    for (int k = 0; k < flows.segments; ++k) {
        for (int l = 0; l < flows.segments; ++l) {
            Real sum = 0.0;
            for (int i = 0; i < m_layers; ++i) {
                sum += m_share[k][i] * m_answer[l][i];
            }
            m_small[k][l] = sum;
        }
    }
}

template <class Real>
template <int Used, int C>
void Transport<Real>::solve(Fields<Real, C>& fields) const {
    for (int i = 0; i < m_layers; ++i) {
        for (int c = 0; c < Used; ++c) {
            const Real above = i > 0 ? m_fromAbove[i] * fields[i - 1][c] : Real(0.0);
            fields[i][c] = (fields[i][c] + above) * m_inverse[i];
        }
    }
    for (int i = m_layers - 2; i >= 0; --i) {
        for (int c = 0; c < Used; ++c) {
            fields[i][c] += m_back[i] * fields[i + 1][c];
        }
    }
}

template <class Real>
template <int Used, int C>
void Transport<Real>::addPlume(const Flows<Real>& flows, Fields<Real, C>& fields) {
    // (I - S) a = g, where a is what each rise carries at the end of the step.
    std::array<std::array<Real, C>, kPlumeSegments> carried{};
    for (int k = 0; k < flows.segments; ++k) {
        carried[k].fill(Real(0.0));
        for (int i = 0; i < m_layers; ++i) {
            for (int c = 0; c < Used; ++c) {
                carried[k][c] += m_share[k][i] * fields[i][c];
            }
        }
    }
    auto matrix = m_small;
    for (int k = 0; k < flows.segments; ++k) {
        const Real pivot = 1.0 / (1.0 - matrix[k][k]);
        for (int c = 0; c < Used; ++c) {
            carried[k][c] = carried[k][c] * pivot;
        }
        for (int l = k + 1; l < flows.segments; ++l) {
            matrix[k][l] = matrix[k][l] * pivot;
        }
        for (int m = 0; m < flows.segments; ++m) {
            if (m == k) {
                continue;
            }
            const Real factor = matrix[m][k];
            for (int l = k + 1; l < flows.segments; ++l) {
                matrix[m][l] += factor * matrix[k][l];
            }
            for (int c = 0; c < Used; ++c) {
                carried[m][c] += factor * carried[k][c];
            }
        }
    }
    for (int k = 0; k < flows.segments; ++k) {
        for (int i = 0; i < m_layers; ++i) {
            for (int c = 0; c < Used; ++c) {
                fields[i][c] += m_answer[k][i] * carried[k][c];
            }
        }
    }
}

template <class Real>
template <int Used, int C>
void Transport<Real>::sharpen(Fields<Real, C>& fields) {
    // Antidiffusive amounts through the faces, positive downwards. An amount goes from the lower value to the higher
    // one and stops where its giver would pass the layer behind it, or its taker the layer before it; so no layer
    // gives to both sides, and none falls below its neighbours.
    auto& [before, amount, rise] = scratch<C>();
    amount.resize(m_layers + 1);
    rise.resize(m_layers + 1);
    const Real zero = 0.0;
    rise[0].fill(zero);
    rise[m_layers].fill(zero);
    for (int i = 1; i < m_layers; ++i) {
        for (int c = 0; c < Used; ++c) {
            rise[i][c] = fields[i][c] - fields[i - 1][c];
        }
    }
    constexpr double kHair = 1.0 - 1e-9;  // keeps rounding from crossing the bounds
    for (int i = 1; i < m_layers; ++i) {
        const double upper = m_grid.thickness[i] / (m_grid.thickness[i - 1] + m_grid.thickness[i]);
        const double roomAbove = kHair * m_grid.volume[i - 1], roomBelow = kHair * m_grid.volume[i];
        const Real flow = m_dt * m_down[i];
        const Real fromUpper = max(flow, zero), fromLower = min(flow, zero);
        for (int c = 0; c < Used; ++c) {
            const Real a = fields[i - 1][c], b = fields[i][c];
            const Real central = 0.5 * (upper * (a + before[i - 1][c]) + (1.0 - upper) * (b + before[i][c]));
            const Real wanted = flow * central - fromUpper * a - fromLower * b;
            const Real behind = roomAbove * rise[i - 1][c], ahead = roomBelow * rise[i + 1][c];
            const Real down = min(min(wanted, rise[i][c] * roomAbove), min(behind, ahead));
            const Real up = max(max(wanted, rise[i][c] * roomAbove), max(behind, ahead));
            amount[i][c] = max(down, zero) + min(up, zero);
        }
    }
    for (int i = 1; i < m_layers; ++i) {
        const double above = 1.0 / m_grid.volume[i - 1], below = 1.0 / m_grid.volume[i];
        for (int c = 0; c < Used; ++c) {
            fields[i - 1][c] -= amount[i][c] * above;
            fields[i][c] += amount[i][c] * below;
        }
    }
}

template <class Real>
template <int Used, int C>
std::array<Real, C> Transport<Real>::advance(const Flows<Real>& flows, const std::array<Real, C>& entering,
                                             Fields<Real, C>& fields) {
    if (flows.moving) {
        scratch<C>().before.assign(fields.begin(), fields.end());
    }
    for (int i = 0; i < m_layers; ++i) {
        const double perStep = m_grid.volume[i] / m_dt;
        for (int c = 0; c < Used; ++c) {
            fields[i][c] = perStep * fields[i][c];
            if (flows.moving) {
                fields[i][c] += flows.entering[i] * entering[c];
            }
        }
    }
    solve<Used, C>(fields);
    if (!flows.moving) {
        return fields[0];
    }
    addPlume<Used, C>(flows, fields);
    const std::array<Real, C> overflowing = fields[0];
    sharpen<Used, C>(fields);
    return overflowing;
}

template <class Real>
template <int C>
void Transport<Real>::rates(const std::vector<Real>& diffusivity, double molecular, const Flows<Real>& flows,
                            const std::array<Real, C>& entering, const Fields<Real, C>& fields,
                            Fields<Real, C>& out) {
    if (flows.moving) {
        faceFlows(flows);
    }
    for (int i = 0; i < m_layers; ++i) {
        out[i].fill(Real(0.0));
    }
    for (int i = 1; i < m_layers; ++i) {
        const double upper = m_grid.thickness[i] / (m_grid.thickness[i - 1] + m_grid.thickness[i]);
        const Real conductance = (diffusivity[i] + molecular) * (m_grid.faceArea[i] / m_grid.distance[i]);
        const Real down = flows.moving ? m_down[i] : Real(0.0);
        const int aa = std::max(i - 2, 0), bb = std::min(i + 1, m_layers - 1);
        for (int c = 0; c < C; ++c) {
            const Real a = fields[i - 1][c], b = fields[i][c];
            const Real upwind = max(down, Real(0.0)) * a + min(down, Real(0.0)) * b;
            Real extra = down * (upper * a + (1.0 - upper) * b) - upwind;
            // The limiter's small-step limit: all of it where the values rise or fall through four layers, else none.
            const Real behind = a - fields[aa][c], rise = b - a, ahead = fields[bb][c] - b;
            const Real rising = min(min(behind, ahead), min(rise, extra));
            const Real falling = max(max(behind, ahead), max(rise, extra));
            extra = wherePositive(max(rising, -falling), extra, Real(0.0));
            const Real flux = conductance * (a - b) + upwind + extra;
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
        const Real inverse = wherePositive(total, 1.0 / max(total, Real(1e-300)), Real(0.0));
        for (int i = 0; i < m_layers; ++i) {
            for (int c = 0; c < C; ++c) {
                out[i][c] += (flows.returned[k][i] * inverse * carried[c] - flows.taken[k][i] * fields[i][c]) /
                             m_grid.volume[i];
            }
        }
    }
    for (int i = 0; i < m_layers; ++i) {
        for (int c = 0; c < C; ++c) {
            out[i][c] += flows.entering[i] * entering[c] / m_grid.volume[i];
        }
    }
    for (int c = 0; c < C; ++c) {
        out[0][c] -= flows.overflow * fields[0][c] / m_grid.volume[0];
    }
}

}  // namespace engine
