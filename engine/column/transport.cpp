#include "engine/column/transport.h"

#include "engine/base/row.h"

namespace engine {

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
    m_upperShare.assign(m_layers + 1, 0.0);
    m_lowerShare = m_upperShare;
    m_central.assign(m_layers + 1, Real(0.0));
    for (const double volume : grid.volume) {
        m_perVolume.push_back(1.0 / volume);
    }
    for (int i = 1; i < m_layers; ++i) {
        m_shape[i] = grid.faceArea[i] / grid.distance[i];
        m_upperShare[i] = grid.thickness[i] / (grid.thickness[i - 1] + grid.thickness[i]);
        m_lowerShare[i] = 1.0 - m_upperShare[i];
    }
    m_surface.resize(m_layers);
    m_one.resize(m_layers + 1);
    m_many.resize(m_layers + 1);
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
    m_air = {};
    faces(dt, diffusivity, molecular, flows);
    eliminate<1>({this});
    answerPlume<1>({this}, flows);
}

template <class Real>
void Transport<Real>::prepareBoth(double dt, const std::vector<Real>& diffusivity, const Flows<Real>& flows,
                                  Transport& a, double molecularA, const AirExchange<Real>& airOfA,
                                  Transport& b, double molecularB) {
    a.m_air = airOfA;
    b.m_air = {};
    a.faces(dt, diffusivity, molecularA, flows);
    b.faces(dt, diffusivity, molecularB, flows);
    eliminate<2>({&a, &b});
    answerPlume<2>({&a, &b}, flows);
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
    Real* const central = m_central.data();
    const double* const shape = m_shape.data();
    const double* const volume = m_grid.volume.data();
    if (flows.moving) {
        faceFlows(flows);
        const Real* const down = m_down.data();
        for (int i = 1; i < m_layers; ++i) {
            const Real conductance = (mixing[i] + molecular) * shape[i];
            central[i] = centralPart(i, down[i], conductance);
            fromAbove[i] = conductance + max(down[i], zero) - central[i];
            fromBelow[i - 1] = conductance + max(-down[i], zero) - central[i];
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
    diagonal[0] += m_air.rate;
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
void Transport<Real>::eliminate(const std::array<Transport*, M>& all) {
    const int layers = all[0]->m_layers;
    // The matrices' chains of divisions go along side by side, since each waits for its own last one only.
    // Half of what one unit a second into the surface makes of the water fits in between.
    std::array<Real, M> back{}, surface{};
    for (int i = 0; i < layers; ++i) {
        for (std::size_t m = 0; m < M; ++m) {
            Transport& t = *all[m];
            const Real inverse = 1.0 / (t.m_inverse[i] - t.m_fromAbove[i] * back[m]);
            surface[m] = i == 0 ? inverse : t.m_fromAbove[i] * inverse * surface[m];
            back[m] = t.m_fromBelow[i] * inverse;
            t.m_inverse[i] = inverse;
            t.m_back[i] = back[m];
            t.m_surface[i][0] = surface[m];
        }
    }
}

template <class Real>
template <std::size_t M>
void Transport<Real>::answerPlume(const std::array<Transport*, M>& all, const Flows<Real>& flows) {
    const int layers = all[0]->m_layers;
    const Real zero = 0.0;
    for (int k = 0; flows.moving && k < flows.segments; ++k) {
        Real total = 0.0;
        for (int i = 0; i < layers; ++i) {
            total += flows.taken[k][i];
        }
        const Real perTaken = wherePositive(total, 1.0 / max(total, Real(kTiny<Real>)), zero);
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
void Transport<Real>::solve(bool enters, const Fields<Real, C>& brought, Fields<Real, C>& fields) const {
    std::array<Real, C>* const layer = fields.data();
    const Real* const fromAbove = m_fromAbove.data();
    const Real* const inverse = m_inverse.data();
    const Real* const back = m_back.data();
    const double perStep = 1.0 / m_dt;
    using Carried = Row<Real, Used, C>;
    Carried carry;
    for (int i = 0; i < m_layers; ++i) {
        const Real held = m_grid.volume[i] * perStep;
        Carried sum = held * Carried(layer[i]) + fromAbove[i] * carry;
        if (enters) {
            sum = sum + Carried(brought[i]);
        }
        carry = inverse[i] * sum;
        carry.put(layer[i]);
    }
    for (int i = m_layers - 2; i >= 0; --i) {
        carry = Carried(layer[i]) + back[i] * carry;
        carry.put(layer[i]);
    }
}

template <class Real>
template <int Used, int C>
void Transport<Real>::addPlume(const Flows<Real>& flows, Fields<Real, C>& fields) const {
    // (I - S) a = g, where a is what each rise carries at the end of the step.
    std::array<std::array<Real, C>, kPlumeSegments> carried{};
    for (int k = 0; k < flows.segments; ++k) {
        Row<Real, Used, C> sum;
        for (int i = 0; i < m_layers; ++i) {
            sum = sum + m_share[k][i] * Row<Real, Used, C>(fields[i]);
        }
        sum.put(carried[k]);
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
        const Row<Real, Used, C> ofRise(carried[k]);
        for (int i = 0; i < m_layers; ++i) {
            (Row<Real, Used, C>(fields[i]) + m_answer[k][i] * ofRise).put(fields[i]);
        }
    }
}

template <class Real>
template <int C>
void Transport<Real>::meetAir(const Flows<Real>& flows, const AirExchange<Real>& air,
                              Fields<Real, C>& fields) {
    // One more entry on the diagonal, by Sherman and Morrison.
    Real value = m_surface[m_layers - 1][0];
    for (int i = m_layers - 2; i >= 0; --i) {
        value = m_surface[i][0] + m_back[i] * value;
        m_surface[i][0] = value;
    }
    if (flows.moving) {
        addPlume<1, 1>(flows, m_surface);
    }
    const Real gained = air.rate * (air.target - fields[0][0]) / (1.0 + air.rate * m_surface[0][0]);
    for (int i = 0; i < m_layers; ++i) {
        fields[i][0] += gained * m_surface[i][0];
    }
}

template <class Real>
void Transport<Real>::advanceAlone(double dt, const std::vector<Real>& diffusivity, double molecular,
                                   const Flows<Real>& flows, const std::vector<Real>& returned,
                                   Fields<Real, 1>& field) {
    m_air = {};
    faces(dt, diffusivity, molecular, flows);
    // Elimination and solution in one, since either waits for its own last layer only.
    const double perStep = 1.0 / dt;
    Real back = 0.0, value = 0.0;
    for (int i = 0; i < m_layers; ++i) {
        const Real inverse = 1.0 / (m_inverse[i] - m_fromAbove[i] * back);
        value = (m_grid.volume[i] * (perStep * field[i][0] + returned[i]) + m_fromAbove[i] * value) * inverse;
        back = m_fromBelow[i] * inverse;
        m_back[i] = back;
        field[i][0] = value;
    }
    for (int i = m_layers - 2; i >= 0; --i) {
        value = field[i][0] + m_back[i] * value;
        field[i][0] = value;
    }
}

template <class Real>
template <int Used, int C>
std::array<Real, C> Transport<Real>::advance(const Flows<Real>& flows, const Fields<Real, C>& brought,
                                             const AirExchange<Real>& air, Fields<Real, C>& fields) {
    fields[0][0] += (m_dt * m_perVolume[0]) * m_air.rate * m_air.target;
    solve<Used, C>(flows.enters, brought, fields);
    if (flows.moving) {
        addPlume<Used, C>(flows, fields);
    }
    if (largestLane(air.rate) > 0.0) {
        meetAir<C>(flows, air, fields);
    }
    const std::array<Real, C> surface = fields[0];
    if (flows.moving) {
        sharpen<Used, C>(fields);
    }
    return surface;
}

template class Transport<double>;
template std::array<double, 1> Transport<double>::advance<1, 1>(const Flows<double>&,
                                                                const Fields<double, 1>&,
                                                                const AirExchange<double>&,
                                                                Fields<double, 1>&);
template std::array<double, kSolutes> Transport<double>::advance<kAlwaysCarried, kSolutes>(
    const Flows<double>&, const Fields<double, kSolutes>&, const AirExchange<double>&,
    Fields<double, kSolutes>&);
template std::array<double, kSolutes> Transport<double>::advance<kSolutes, kSolutes>(
    const Flows<double>&, const Fields<double, kSolutes>&, const AirExchange<double>&,
    Fields<double, kSolutes>&);
template class Transport<DoubleLanes>;
template std::array<DoubleLanes, 1> Transport<DoubleLanes>::advance<1, 1>(const Flows<DoubleLanes>&,
                                                                          const Fields<DoubleLanes, 1>&,
                                                                          const AirExchange<DoubleLanes>&,
                                                                          Fields<DoubleLanes, 1>&);
template std::array<DoubleLanes, kSolutes> Transport<DoubleLanes>::advance<kAlwaysCarried, kSolutes>(
    const Flows<DoubleLanes>&, const Fields<DoubleLanes, kSolutes>&, const AirExchange<DoubleLanes>&,
    Fields<DoubleLanes, kSolutes>&);
template std::array<DoubleLanes, kSolutes> Transport<DoubleLanes>::advance<kSolutes, kSolutes>(
    const Flows<DoubleLanes>&, const Fields<DoubleLanes, kSolutes>&, const AirExchange<DoubleLanes>&,
    Fields<DoubleLanes, kSolutes>&);
template class Transport<Lanes>;
template std::array<Lanes, 1> Transport<Lanes>::advance<1, 1>(const Flows<Lanes>&, const Fields<Lanes, 1>&,
                                                              const AirExchange<Lanes>&, Fields<Lanes, 1>&);
template std::array<Lanes, kSolutes> Transport<Lanes>::advance<kAlwaysCarried, kSolutes>(
    const Flows<Lanes>&, const Fields<Lanes, kSolutes>&, const AirExchange<Lanes>&, Fields<Lanes, kSolutes>&);
template std::array<Lanes, kSolutes> Transport<Lanes>::advance<kSolutes, kSolutes>(
    const Flows<Lanes>&, const Fields<Lanes, kSolutes>&, const AirExchange<Lanes>&, Fields<Lanes, kSolutes>&);

}  // namespace engine
