// d/dt of a column (engine/column/column.h).
#include "engine/base/units.h"
#include "engine/column/column.h"

#include <algorithm>

namespace engine {

template <class Real>
void Column<Real>::rates(const Air<Real>& overWater, const Aeration& aeration, const State<Real>& state,
                         State<Real>& out, const InflowingWater& inflow) {
    const Air<Real> air = onPond(overWater);
    sunlight(air, state);
    densities(state);
    meetAir(air, inflow, state);
    enter(inflow);
    plume(aeration, state);
    stirring(air);
    if (mixingChanges()) {
        turbulentDiffusivity(m_mixing.stirring, m_water.density, m_mixing.diffusivity, m_mixing.slope);
    }
    m_transport.heat.template rates<1>(m_mixing.diffusivity, kMolecularHeat.value, m_transport.flows,
                                       m_transport.heatBrought, state.heat, out.heat);
    m_transport.solutes.template rates<kSolutes>(m_mixing.diffusivity, kMolecularSolute.value,
                                                 m_transport.flows, m_transport.brought, state.solutes,
                                                 out.solutes);
    placeFish(state);
    gather(state);
    reactionsOf(aeration, state, 0.0);
    reactionRates(m_reacting.rates, m_reacting.water, m_reacting.amounts);
    const ReactionAmounts<Real>& a = m_reacting.amounts;
    Real fromAbove = 0.0;  // Labile matter [g/s]
    for (int i = 0; i < m_layers; ++i) {
        out.heat[i][0] += m_sun.heating[i];
        auto& d = out.solutes[i];
        d[kOxygen] += m_reacting.rates.photosynthesis[i] + m_reacting.rates.bubbles[i] + a.aerated[i] -
                      a.spilled[i] - a.stripped[i] - a.bubbled[i] - a.labile[i] - a.respiration[i] -
                      a.fish[i] - a.sediment[i] - a.fast[i] - a.medium[i] - a.slow[i];
        d[kFast] +=
            m_reacting.rates.fastShare * a.regenerated[i] + m_reacting.rates.stirredFast[i] - a.fast[i];
        d[kMedium] += (1.0 - m_reacting.rates.fastShare) * a.regenerated[i] +
                      m_reacting.rates.stirredMedium[i] - a.medium[i];
        d[kSlow] += m_reacting.rates.nitrogen[i] - a.slow[i];
        const OrganicParameters<Real>& organic = m_parameters.organic;
        const Real sinks = organic.settling * state.solutes[i][kLabile];  // [g/m^2/s]
        d[kLabile] += m_reacting.rates.organic[i] - a.labile[i] - organic.loss * state.solutes[i][kLabile] +
                      m_perVolume[i] * (fromAbove - sinks * m_grid.faceArea[i]);
        fromAbove = sinks * (m_grid.faceArea[i] - m_grid.bottomArea[i]);
        out.mud[i] = sinks + m_organic.benthic[i] - m_organic.burns[i] * state.mud[i];
        if (m_transport.hasToxicants) {
            const auto& s = state.solutes[i];
            d[kSulfide] +=
                m_parameters.toxicants.sulfideOfFast *
                    (m_reacting.rates.fastShare * a.regenerated[i] + m_reacting.rates.stirredFast[i]) -
                s[kSulfide] * a.fast[i] / max(s[kFast], Real(1e-30));
        }
    }
    out.heat[0][0] += m_sun.air.rate * (m_sun.air.target - state.heat[0][0]) * m_perVolume[0];
    const AirExchange<Real>& exchange = m_transport.oxygenExchange;
    out.solutes[0][kOxygen] += exchange.rate * (exchange.target - state.solutes[0][kOxygen]) * m_perVolume[0];
    for (int c = kOxygen + 1; c < kSolutes; ++c) {
        out.solutes[0][c] -= inflow.rain * m_grid.faceArea[0] * m_perVolume[0] * state.solutes[0][c];
    }
    const Real stirs = reaches(aeration);
    for (int k = 0; k < static_cast<int>(state.muck.size()); ++k) {
        const Real releases = k < aeration.open ? stirs : Real(0.0);
        out.muck[k] =
            (1.0 - releases) * (m_parameters.muck.store - state.muck[k]) / (kMuckRebuildTime_d.value * kDay) -
            releases * state.muck[k] / (kMuckReleaseTime_h.value * kHour);
    }
}

template void Column<double>::rates(const Air<double>&, const Aeration&, const State<double>&, State<double>&,
                                    const InflowingWater&);
template void Column<DoubleLanes>::rates(const Air<DoubleLanes>&, const Aeration&, const State<DoubleLanes>&,
                                         State<DoubleLanes>&, const InflowingWater&);
template void Column<Lanes>::rates(const Air<Lanes>&, const Aeration&, const State<Lanes>&, State<Lanes>&,
                                   const InflowingWater&);

}  // namespace engine
