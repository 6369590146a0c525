// The plume and the spring of a column (engine/column.h).
#include "engine/column.h"
#include "engine/water.h"

#include <algorithm>

namespace engine {

template <class Real>
void Column<Real>::integrateLane(const Aeration& aeration, const State<Real>& state, int member) {
    std::vector<double> temperature(m_layers), salinity(m_layers), density(m_layers), oxygen(m_layers);
    for (int i = 0; i < m_layers; ++i) {
        temperature[i] = lane(state.heat[i][0], member);
        salinity[i] = lane(state.solutes[i][kSalt], member);
        density[i] = lane(m_density[i], member);
        oxygen[i] = lane(state.solutes[i][kOxygen], member);
    }
    const PlumeSource source{aeration.depth, m_aerator.freeAir * lane(m_parameters.freeAirFactor, member),
                             aeration.open, m_aerator.bubbleDiameter * lane(m_parameters.bubbleFactor, member),
                             m_parameters.airPressure};
    PlumeCoefficients coefficients;
    coefficients.dissolves = m_switches.dissolution;
    const Plume plume = integratePlume(source, {m_grid, temperature, salinity, density, oxygen},
                                       m_bottom.exists() ? m_bottom.depth : 1e9, coefficients);
    ++m_plumeCount;
    const double net = lane(m_parameters.netShare, member);
    for (int k = 0; k < kPlumeSegments; ++k) {
        const bool used = k < static_cast<int>(plume.segments.size());
        for (int i = 0; i < m_layers; ++i) {
            setLane(m_flows.taken[k][i], member, used ? net * plume.segments[k].entrained[i] : 0.0);
            setLane(m_flows.returned[k][i], member,
                    used ? net * plume.segments[k].flow * plume.segments[k].released[i] : 0.0);
        }
    }
    m_flows.segments = std::max(m_flows.segments, static_cast<int>(plume.segments.size()));
    for (int i = 0; i < m_layers; ++i) {
        double bubbles = 0.0;
        for (const PlumeSegment& segment : plume.segments) {
            bubbles += (segment.oxygenGain - segment.oxygenLoss) * segment.released[i] / m_grid.volume[i];
        }
        setLane(m_bubbleNet[i], member, bubbles);
        setLane(m_bubbleReference[i], member, std::max(oxygen[i], 1e-3));
    }
    setLane(m_lifting, member, m_bottom.exists() ? net * plume.throughBottom : 0.0);
}

template <class Real>
void Column<Real>::plume(const Aeration& aeration, const State<Real>& state) {
    const bool spring = largestLane(m_parameters.springFlow) > 0.0;
    if (spring) {
        springWater();
    }
    if (aeration.open == 0) {
        m_lifting = 0.0;
        m_flows.segments = 0;
        m_flows.moving = spring;
        m_last = aeration;
        m_plumeStale = true;
        return;
    }
    const bool changed = aeration.open != m_last.open || aeration.depth != m_last.depth;
    if (m_switches.freezePlume && !changed) {
        return;
    }
    if (changed || m_plumeStale) {
        m_flows.segments = 0;
    }
    if (changed || m_plumeStale) {
        for (int member = 0; member < kLanes<Real>; ++member) {
            integrateLane(aeration, state, member);
        }
    }
    m_flows.moving = true;
    m_last = aeration;
    m_plumeStale = false;
}

/// Spring water enters where the standing water is as dense as itself, parted between two layers; as much
/// runs over at the surface.
template <class Real>
void Column<Real>::springWater() {
    const Real density = waterDensity(m_parameters.springTemperature, m_parameters.springSalinity);
    m_flows.overflow = m_parameters.springFlow;
    for (int i = 0; i < m_layers; ++i) {
        m_flows.entering[i] = 0.0;
    }
    for (int member = 0; member < kLanes<Real>; ++member) {
        const double wanted = lane(density, member), flow = lane(m_parameters.springFlow, member);
        int i = 0;
        while (i < m_layers && lane(m_density[i], member) < wanted) {
            ++i;
        }
        if (i == 0 || i == m_layers) {
            setLane(m_flows.entering[std::min(i, m_layers - 1)], member, flow);
            continue;
        }
        const double above = lane(m_density[i - 1], member);
        const double part = (wanted - above) / (lane(m_density[i], member) - above);
        setLane(m_flows.entering[i], member, part * flow);
        setLane(m_flows.entering[i - 1], member, (1.0 - part) * flow);
    }
}

template <class Real>
void Column<Real>::preparePlume(const Aeration& aeration) {
    densities(m_state);
    plume(aeration, m_state);
}

template void Column<double>::plume(const Aeration&, const State<double>&);
template void Column<double>::preparePlume(const Aeration&);
template void Column<Pack<4>>::plume(const Aeration&, const State<Pack<4>>&);
template void Column<Pack<4>>::preparePlume(const Aeration&);

}  // namespace engine
