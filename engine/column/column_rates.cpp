// d/dt of a column (engine/column/column.h).
#include "engine/base/units.h"
#include "engine/column/column.h"

#include <algorithm>

namespace engine {

template <class Real>
void Column<Real>::rates(const Air<Real>& air, const Aeration& aeration, const State<Real>& state,
                         State<Real>& out) {
    sunlight(air, state);
    heatRates(air, state, 0.0);
    densities(state);
    diffusivities(air);
    plume(aeration, state);
    m_transportHeat.template rates<1>(m_diffusivity, kMolecularHeat, m_flows,
                                      {m_parameters.springTemperature}, state.heat, out.heat);
    m_transportSolutes.template rates<kSolutes>(m_diffusivity, kMolecularSolute, m_flows, m_springWater,
                                                state.solutes, out.solutes);
    placeFish(state);
    reactionsOf(aeration, state, 0.0);
    exchangeOf(air, state);
    gather(state);
    reactionRates(m_reactions, m_work, m_amounts);
    const ReactionAmounts<Real>& a = m_amounts;
    for (int i = 0; i < m_layers; ++i) {
        out.heat[i][0] += m_heating[i];
        auto& d = out.solutes[i];
        d[kOxygen] += m_reactions.photosynthesis[i] + m_reactions.bubbles[i] + a.aerated[i] - a.spilled[i] +
                      a.surfaceIn[i] - a.surfaceOut[i] - a.stripped[i] - a.respiration[i] - a.fish[i] -
                      a.sediment[i] - a.fast[i] - a.medium[i] - a.slow[i];
        d[kFast] += m_reactions.fastShare * a.regenerated[i] + m_reactions.stirredFast[i] - a.fast[i];
        d[kMedium] +=
            (1.0 - m_reactions.fastShare) * a.regenerated[i] + m_reactions.stirredMedium[i] - a.medium[i];
        d[kSlow] -= a.slow[i];
        if (m_hasToxicants) {
            const auto& s = state.solutes[i];
            d[kSulfide] += m_parameters.sulfideOfFast *
                               (m_reactions.fastShare * a.regenerated[i] + m_reactions.stirredFast[i]) -
                           s[kSulfide] * a.fast[i] / max(s[kFast], Real(1e-30));
            d[kAmmonia] -= s[kAmmonia] * a.slow[i] / max(s[kSlow], Real(1e-30));
        }
    }
    const Real stirs = reaches(aeration);
    for (int k = 0; k < static_cast<int>(state.muck.size()); ++k) {
        const Real releases = k < aeration.open ? stirs : Real(0.0);
        out.muck[k] =
            (1.0 - releases) * (m_parameters.muckStore - state.muck[k]) / (kMuckRebuildTime_d.value * kDay) -
            releases * state.muck[k] / (kMuckReleaseTime_h.value * kHour);
    }
}

template void Column<double>::rates(const Air<double>&, const Aeration&, const State<double>&,
                                    State<double>&);
template void Column<Pack<4>>::rates(const Air<Pack<4>>&, const Aeration&, const State<Pack<4>>&,
                                     State<Pack<4>>&);

}  // namespace engine
