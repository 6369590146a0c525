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
    int segments = 0;                                        ///< Rises of the plume in use
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
/// Low order: backward Euler with upwind return flow; the matrix is tridiagonal plus one dense row per rise
/// of the plume (Sherman, Morrison, Woodbury), an M-matrix, conservative: never negative for any step. High
/// order: central face values, centred in time, added as antidiffusive fluxes that the limiter of Boris and
/// Book (1973) keeps from making or raising extremes, so that positivity and the sums stay.
template <class Real>
class Transport {
public:
    explicit Transport(const Grid& grid);

    /// Sets the matrix for steps of `dt`.
    /// @param diffusivity  At the faces [m^2/s], size N + 1.
    void prepare(double dt, const std::vector<Real>& diffusivity, double molecular, const Flows<Real>& flows);

    /// Sets two matrices that differ in the molecular diffusivity only, in little more than the time for one.
    static void prepareBoth(double dt, const std::vector<Real>& diffusivity, const Flows<Real>& flows,
                            Transport& a, double molecularA, Transport& b, double molecularB);

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
    template <int Used, int C>
    std::array<Real, C> advanceOf(const Flows<Real>& flows, const std::array<Real, C>& entering,
                                  Fields<Real, C>& fields);
    void faceFlows(const Flows<Real>& flows);
    void faces(double dt, const std::vector<Real>& diffusivity, double molecular, const Flows<Real>& flows);
    template <std::size_t M>
    static void eliminate(const std::array<Transport*, M>& all, const Flows<Real>& flows);
    template <int Used, int C>
    void solve(const Flows<Real>& flows, const std::array<Real, C>& entering, Fields<Real, C>& fields) const;
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
    std::vector<double> m_shape;    // Area of each face over the distance across it [m], N + 1
    std::vector<Real> m_down;       // Flow through each face, positive downwards [m^3/s], N + 1
    std::vector<Real> m_fromAbove;  // Coupling of layer i to i - 1, positive [m^3/s]
    std::vector<Real> m_fromBelow;  // Coupling of layer i to i + 1, positive [m^3/s]
    std::vector<Real> m_inverse;    // One over the eliminated diagonal
    std::vector<Real> m_back;       // Back substitution factor
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
    m_shape.assign(m_layers + 1, 0.0);
    for (int i = 1; i < m_layers; ++i) {
        m_shape[i] = grid.faceArea[i] / grid.distance[i];
    }
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
    faces(dt, diffusivity, molecular, flows);
    eliminate<1>({this}, flows);
}

template <class Real>
void Transport<Real>::prepareBoth(double dt, const std::vector<Real>& diffusivity, const Flows<Real>& flows,
                                  Transport& a, double molecularA, Transport& b, double molecularB) {
    a.faces(dt, diffusivity, molecularA, flows);
    b.faces(dt, diffusivity, molecularB, flows);
    eliminate<2>({&a, &b}, flows);
}

template <class Real>
void Transport<Real>::faces(double dt, const std::vector<Real>& diffusivity, double molecular,
                            const Flows<Real>& flows) {
    m_dt = dt;
    const Real zero = 0.0;
    Real* const fromAbove = m_fromAbove.data();
    Real* const fromBelow = m_fromBelow.data();
    Real* const diagonal = m_inverse.data();
    const Real* const mixing = diffusivity.data();
    const double* const shape = m_shape.data();
    const double* const volume = m_grid.volume.data();
    if (flows.moving) {
        faceFlows(flows);
        const Real* const down = m_down.data();
        for (int i = 1; i < m_layers; ++i) {
            const Real conductance = (mixing[i] + molecular) * shape[i];
            fromAbove[i] = conductance + max(down[i], zero);
            fromBelow[i - 1] = conductance + max(-down[i], zero);
        }
    } else {
        for (int i = 1; i < m_layers; ++i) {
            const Real conductance = (mixing[i] + molecular) * shape[i];
            fromAbove[i] = conductance;
            fromBelow[i - 1] = conductance;
        }
    }
    fromAbove[0] = zero;
    fromBelow[m_layers - 1] = zero;
    // What leaves a layer: to its neighbours, into the plume, over the brim.
    const double perStep = 1.0 / dt;
    diagonal[0] = volume[0] * perStep + fromAbove[1];
    for (int i = 1; i + 1 < m_layers; ++i) {
        diagonal[i] = volume[i] * perStep + fromBelow[i - 1] + fromAbove[i + 1];
    }
    diagonal[m_layers - 1] = volume[m_layers - 1] * perStep + fromBelow[m_layers - 2];
    if (!flows.moving) {
        return;
    }
    for (int k = 0; k < flows.segments; ++k) {
        const Real* const taken = flows.taken[k].data();
        for (int i = 0; i < m_layers; ++i) {
            diagonal[i] += taken[i];
        }
    }
    diagonal[0] += flows.overflow;
}

template <class Real>
template <std::size_t M>
void Transport<Real>::eliminate(const std::array<Transport*, M>& all, const Flows<Real>& flows) {
    const int layers = all[0]->m_layers;
    const Real zero = 0.0;
    // The matrices' chains of divisions go along side by side, since each waits for its own last one only.
    std::array<Real, M> back{};
    for (int i = 0; i < layers; ++i) {
        for (std::size_t m = 0; m < M; ++m) {
            Transport& t = *all[m];
            const Real inverse = 1.0 / (t.m_inverse[i] - t.m_fromAbove[i] * back[m]);
            back[m] = t.m_fromBelow[i] * inverse;
            t.m_inverse[i] = inverse;
            t.m_back[i] = back[m];
        }
    }
    for (int k = 0; flows.moving && k < flows.segments; ++k) {
        Real total = 0.0;
        for (int i = 0; i < layers; ++i) {
            total += flows.taken[k][i];
        }
        const Real perTaken = wherePositive(total, 1.0 / max(total, Real(1e-300)), zero);
        std::array<Real, M> x{};
        for (int i = 0; i < layers; ++i) {
            for (std::size_t m = 0; m < M; ++m) {
                Transport& t = *all[m];
                x[m] = (flows.returned[k][i] + t.m_fromAbove[i] * x[m]) * t.m_inverse[i];
                t.m_answer[k][i] = x[m];
                t.m_share[k][i] = flows.taken[k][i] * perTaken;
            }
        }
        for (int i = layers - 2; i >= 0; --i) {
            for (std::size_t m = 0; m < M; ++m) {
                Transport& t = *all[m];
                x[m] = t.m_answer[k][i] + t.m_back[i] * x[m];
                t.m_answer[k][i] = x[m];
            }
        }
    }
    for (std::size_t m = 0; flows.moving && m < M; ++m) {
        Transport& t = *all[m];
        for (int k = 0; k < flows.segments; ++k) {
            for (int l = 0; l < flows.segments; ++l) {
                Real sum = 0.0;
                for (int i = 0; i < layers; ++i) {
                    sum += t.m_share[k][i] * t.m_answer[l][i];
                }
                t.m_small[k][l] = sum;
            }
        }
    }
}

template <class Real>
template <int Used, int C>
DAWNLINE_INLINED void Transport<Real>::solve(const Flows<Real>& flows, const std::array<Real, C>& entering,
                                             Fields<Real, C>& fields) const {
    std::array<Real, C>* const layer = fields.data();
    const Real* const fromAbove = m_fromAbove.data();
    const Real* const inverse = m_inverse.data();
    const Real* const back = m_back.data();
    const double perStep = 1.0 / m_dt;
    std::array<Real, Used> carry{};
    for (int i = 0; i < m_layers; ++i) {
        const double held = m_grid.volume[i] * perStep;
        const Real enters = flows.moving ? flows.entering[i] : Real(0.0);
        for (int c = 0; c < Used; ++c) {
            carry[c] = (held * layer[i][c] + enters * entering[c] + fromAbove[i] * carry[c]) * inverse[i];
            layer[i][c] = carry[c];
        }
    }
    for (int i = m_layers - 2; i >= 0; --i) {
        for (int c = 0; c < Used; ++c) {
            carry[c] = layer[i][c] + back[i] * carry[c];
            layer[i][c] = carry[c];
        }
    }
}

template <class Real>
template <int Used, int C>
DAWNLINE_INLINED void Transport<Real>::addPlume(const Flows<Real>& flows, Fields<Real, C>& fields) {
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
DAWNLINE_INLINED void Transport<Real>::sharpen(Fields<Real, C>& fields) {
    // Antidiffusive amounts through the faces, positive downwards. An amount goes from the lower value to the
    // higher one and stops where its giver would pass the layer behind it, or its taker the layer before it;
    // so no layer gives to both sides, and none falls below its neighbours.
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
DAWNLINE_INLINED std::array<Real, C> Transport<Real>::advanceOf(const Flows<Real>& flows,
                                                                const std::array<Real, C>& entering,
                                                                Fields<Real, C>& fields) {
    if (flows.moving) {
        scratch<C>().before.assign(fields.begin(), fields.end());
    }
    solve<Used, C>(flows, entering, fields);
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
            // The limiter's small-step limit: all of it where the values rise or fall through four layers,
            // else none.
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
                out[i][c] +=
                    (flows.returned[k][i] * inverse * carried[c] - flows.taken[k][i] * fields[i][c]) /
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

template <class Real>
template <int Used, int C>
std::array<Real, C> Transport<Real>::advance(const Flows<Real>& flows, const std::array<Real, C>& entering,
                                             Fields<Real, C>& fields) {
    return advanceOf<Used, C>(flows, entering, fields);
}

// Picked by processor for plain numbers (DAWNLINE_CLONES).
template <>
template <>
std::array<double, 1> Transport<double>::advance<1, 1>(const Flows<double>& flows,
                                                       const std::array<double, 1>& entering,
                                                       Fields<double, 1>& fields);
template <>
template <>
std::array<double, kSolutes> Transport<double>::advance<kAlwaysCarried, kSolutes>(
    const Flows<double>& flows, const std::array<double, kSolutes>& entering,
    Fields<double, kSolutes>& fields);
template <>
template <>
std::array<double, kSolutes> Transport<double>::advance<kSolutes, kSolutes>(
    const Flows<double>& flows, const std::array<double, kSolutes>& entering,
    Fields<double, kSolutes>& fields);

}  // namespace engine
