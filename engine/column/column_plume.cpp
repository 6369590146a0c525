// The plume of a column and what runs into it (engine/column/column.h).
#include "engine/column/column.h"
#include "engine/water/water.h"

#include <algorithm>

namespace engine {

template <class Real>
void Column<Real>::integrate(const Aeration& aeration, const State<Real>& state) {
    for (int i = 0; i < m_layers; ++i) {
        m_bubbles.reference[i] = state.solutes[i][kOxygen];
    }
    PlumeSourceOf<Real> source;
    source.depth = aeration.depth;
    source.freeAir = m_aerator.freeAir * m_parameters.bubbles.freeAirFactor;
    source.diffusers = aeration.open;
    source.bubbleDiameter = m_aerator.bubbleDiameter * m_parameters.bubbles.diameterFactor;
    source.airPressure = m_parameters.site.airPressure;
    PlumeCoefficients coefficients;
    coefficients.dissolves = m_switches.dissolution;
    m_bubbles.integrator.integrate(
        source, {m_grid, m_water.temperature, m_water.salinity, m_water.density, m_bubbles.reference},
        m_bottom.exists() ? m_bottom.depth : 1e9, coefficients);
    m_bubbles.count += kLanes<Real>;
    const Real henry = henryConstants(m_water.temperature[m_grid.layerAt(source.depth)]).oxygen;
    m_bubbles.saturation = kOxygenMolarMass * kOxygenOfAir.value * henry *
                           (source.airPressure + kWaterDensity.value * kGravity * source.depth);
    const Real& net = m_parameters.bubbles.nonRecirculatedShare;
    m_transport.flows.segments = m_bubbles.integrator.segments();
    std::fill(m_bubbles.net.begin(), m_bubbles.net.end(), Real(0.0));
    Real power = 0.0;  // Of all that surfaces, over the water's density [m^5/s^3]
    for (int k = 0; k < m_transport.flows.segments; ++k) {
        const PlumeSegmentOf<Real>& segment = m_bubbles.integrator.segment(k);
        const Real netFlow = net * segment.flow, given = segment.oxygenGain - segment.oxygenLoss;
        const Real &speed = segment.topSpeed, &radius = segment.topRadius;
        const Real surfaces = wherePositive(segment.topDepth, Real(0.0), radius);
        power += 0.5 * kPi * aeration.open * surfaces * surfaces * speed * speed * speed;
        m_bubbles.jet.thickness = wherePositive(surfaces, radius, m_bubbles.jet.thickness);
        for (int i = 0; i < m_layers; ++i) {
            m_transport.flows.taken[k][i] = net * segment.entrained[i];
            m_transport.flows.returned[k][i] = netFlow * segment.detrained[i];
            m_bubbles.net[i] += given * segment.detrained[i] * m_perVolume[i];
        }
    }
    m_bubbles.jet.friction = cbrt(power / m_grid.faceArea[0]);
    for (Real& oxygen : m_bubbles.reference) {
        oxygen = max(oxygen, Real(1e-3));
    }
    m_bubbles.hypolimneticLift =
        m_bottom.exists() ? net * m_bubbles.integrator.hypolimneticLift() : Real(0.0);
}

template <class Real>
void Column<Real>::plume(const Aeration& aeration, const State<Real>& state) {
    if (aeration.open == 0) {
        m_bubbles.hypolimneticLift = 0.0;
        m_bubbles.jet = {};
        m_transport.flows.segments = 0;
        m_transport.flows.moving = m_transport.flows.enters;
        m_bubbles.last = aeration;
        m_bubbles.isStale = true;
        return;
    }
    const bool changed = aeration.open != m_bubbles.last.open || aeration.depth != m_bubbles.last.depth;
    if (m_switches.freezePlume && !changed) {
        return;
    }
    if (changed || m_bubbles.isStale) {
        integrate(aeration, state);
    }
    m_transport.flows.moving = true;
    m_bubbles.last = aeration;
    m_bubbles.isStale = false;
}

/// What runs in enters where the standing water is as dense as itself, parted between two layers; as much
/// runs over at the surface.
template <class Real>
void Column<Real>::enter(const InflowingWater& inflow) {
    WaterTransport<Real>& t = m_transport;
    const SpringParameters<Real>& spring = m_parameters.spring;
    const bool before = t.flows.enters;
    t.flows.enters = inflow.flow > 0.0 || largestLane(spring.flow) > 0.0;
    if (t.flows.enters || before) {
        t.flows.overflow = spring.flow + inflow.flow;
        t.inflow.fill(Real(0.0));
        std::fill(t.flows.entering.begin(), t.flows.entering.end(), Real(0.0));
        std::fill(t.densityBrought.begin(), t.densityBrought.end(), Real(0.0));
        for (int i = 0; i < m_layers; ++i) {
            t.heatBrought[i][0] = 0.0;
            t.brought[i].fill(Real(0.0));
        }
    }
    std::array<Real, kSolutes> holds;
    if (largestLane(spring.flow) > 0.0) {
        holds.fill(Real(0.0));
        holds[kOxygen] = spring.oxygen;
        holds[kSalt] = spring.salinity;
        bring(spring.flow, spring.temperature, holds);
    }
    if (inflow.flow > 0.0) {
        holds.fill(Real(0.0));
        holds[kOxygen] = inflow.oxygen;
        holds[kSalt] = inflow.salinity;
        holds[kLabile] = inflow.labile;
        bring(inflow.flow, inflow.temperature, holds);
    }
}

template <class Real>
void Column<Real>::bring(const Real& flow, const Real& temperature, const std::array<Real, kSolutes>& holds) {
    WaterTransport<Real>& t = m_transport;
    const Real density = densityOverOrigin(temperature, holds[kSalt]);
    for (int c = 0; c < kSolutes; ++c) {
        t.inflow[c] += flow * holds[c];
    }
    // Into the first layer that is no lighter, and into the one above by how much that is.
    const Real one = 1.0, none = 0.0;
    Real left = one;  // Of what has found no place yet
    for (int i = 0; i < m_layers; ++i) {
        Real into = left;
        if (i + 1 < m_layers) {
            into = whereMore(density, m_water.density[i], none, left);
        }
        left -= into;
        if (!(largestLane(into) > 0.0)) {
            continue;
        }
        Real part = one;
        if (i > 0) {
            const Real above = m_water.density[i - 1];
            part = (density - above) / (m_water.density[i] - above);
            // Heavier than all, it stays at the bottom.
            part = whereMore(density, m_water.density[i], one, part);
            part = wherePositive(into, part, one);
            bringInto(i - 1, into * (one - part), flow, temperature, density, holds);
        }
        bringInto(i, into * part, flow, temperature, density, holds);
    }
}

template <class Real>
void Column<Real>::bringInto(int i, const Real& share, const Real& flow, const Real& temperature,
                             const Real& density, const std::array<Real, kSolutes>& holds) {
    WaterTransport<Real>& t = m_transport;
    const Real part = share * flow;
    t.flows.entering[i] += part;
    t.heatBrought[i][0] += part * temperature;
    t.densityBrought[i] += part * density;
    for (int c = 0; c < kSolutes; ++c) {
        t.brought[i][c] += part * holds[c];
    }
}

template <class Real>
void Column<Real>::preparePlume(const Aeration& aeration) {
    densities(m_state);
    plume(aeration, m_state);
}

template void Column<double>::enter(const InflowingWater&);
template void Column<double>::plume(const Aeration&, const State<double>&);
template void Column<double>::preparePlume(const Aeration&);
template void Column<DoubleLanes>::enter(const InflowingWater&);
template void Column<DoubleLanes>::plume(const Aeration&, const State<DoubleLanes>&);
template void Column<DoubleLanes>::preparePlume(const Aeration&);
template void Column<Lanes>::enter(const InflowingWater&);
template void Column<Lanes>::plume(const Aeration&, const State<Lanes>&);
template void Column<Lanes>::preparePlume(const Aeration&);

}  // namespace engine
