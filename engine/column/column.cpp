#include "engine/column/column.h"

#include "engine/base/units.h"
#include "engine/column/weeds.h"
#include "engine/water/constants_heat.h"
#include "engine/water/exchange.h"
#include "engine/water/light.h"
#include "engine/water/toxic.h"

#include <algorithm>
#include <cmath>

namespace engine {

template <class Real>
Column<Real>::Column(const Grid& grid, const Parameters<Real>& parameters, const AeratorSetup& aerator,
                     const BottomWater& bottom, const StartState<Real>& start, const ColumnSwitches& switches)
    : m_grid(grid),
      m_parameters(parameters),
      m_aerator(aerator),
      m_bottom(bottom),
      m_switches(switches),
      m_layers(grid.layers()),
      m_windAtTwo(windAt(1.0, kWindHeight.value, kHeatWindHeight.value)),
      m_water(m_layers),
      m_sun(m_layers),
      m_plants(m_layers),
      m_mixing(m_grid),
      m_transport(m_grid),
      m_bubbles(m_layers),
      m_fish(m_grid),
      m_organic(m_layers),
      m_reacting(m_layers) {
    const Real zero = 0.0;
    m_state.heat.resize(m_layers);
    m_state.solutes.resize(m_layers);
    m_state.mud.assign(m_layers, zero);
    for (int i = 0; i < m_layers; ++i) {
        m_perVolume.push_back(1.0 / m_grid.volume[i]);
        m_state.heat[i][0] = start.temperature[i];
        auto& s = m_state.solutes[i];
        s.fill(zero);
        s[kOxygen] = start.oxygen[i];
        s[kChlorophyll] = start.chlorophyll[i];
        s[kFast] = start.fast[i];
        s[kMedium] = start.medium[i];
        s[kSlow] = start.slow[i];
        s[kSalt] = start.salinity[i];
        s[kSulfide] = start.sulfide.empty() ? zero : start.sulfide[i];
        m_transport.hasToxicants = m_transport.hasToxicants || largestLane(s[kSulfide]) > 0.0;
        m_surfaceAerator.reach +=
            m_grid.volume[i] *
            std::clamp((kAeratorReach.value - m_grid.face[i]) / m_grid.thickness[i], 0.0, 1.0);
    }
    for (int i = 0; i < m_layers; ++i) {
        m_transport.heatBrought[i][0] = zero;
        m_transport.brought[i].fill(zero);
    }
    m_plants.weedMassAtStart = parameters.weeds.mass;
    m_plants.weedCoverAtStart = parameters.weeds.cover;
    m_state.muck.assign(aerator.diffusers, parameters.muck.store);
    for (const double z : m_grid.face) {
        m_sun.nearInfrared.push_back(std::exp(-kNearInfraredAttenuation.value * z));
    }
    const Real attenuation =
        parameters.light.attenuationRest + attenuationOfChlorophyll(start.chlorophyll[0]);
    for (int member = 0; member < kLanes<Real>; ++member) {
        const double secchi = secchiFromAttenuation(lane(attenuation, member));
        const std::vector<double> shares = weedShares(m_grid, kWeedDepth.value * secchi);
        for (int i = 0; i < m_layers; ++i) {
            setLane(m_plants.weedPerArea[i], member, shares[i]);
        }
    }
    placeWeeds(m_plants.weedScale);
    startOrganic();
    m_reacting.rates.bubblingOut = fromPerHour(kBubblingOut_perHour.value);
    m_reacting.rates.regeneration = parameters.sediment.regenerationShare;
    m_reacting.rates.fastShare = parameters.debt.fastShare;
    placeFish(m_state);
}

/// Weeds at a scale of the dated table.
template <class Real>
void Column<Real>::placeWeeds(const Real& scale) {
    WeedParameters<Real>& weeds = m_parameters.weeds;
    m_plants.weedScale = scale;
    weeds.mass = scale * m_plants.weedMassAtStart;
    weeds.cover = min(Real(scale * m_plants.weedCoverAtStart), Real(1.0));
    m_plants.hasWeeds = largestLane(weeds.mass) > 0.0;
    shadeOfWeeds(m_grid.thickness, m_plants.weedPerArea, weeds.shading * weeds.mass, weeds.cover,
                 m_plants.shade, m_plants.amongWeeds);
}

/// As much labile matter as breathes what the pond is known to breathe in the dark; on the sediment as much
/// as burns what settles, within what the sediment demands.
template <class Real>
void Column<Real>::startOrganic() {
    const OrganicParameters<Real>& p = m_parameters.organic;
    const bool isPart = m_bottom.exists() && m_bottom.depth > 0.0;  // Some ponds are poor from the very top
    const double open = isPart ? m_bottom.depth : m_grid.face[m_layers];
    const Real zero = 0.0, chlorophyll = m_state.solutes[0][kChlorophyll];
    const Real breathes =
        m_parameters.respiration.base + m_parameters.respiration.perChlorophyll * chlorophyll;
    // Algae are no more than all of it, which the second says.
    const Real above = max(Real((breathes - p.maintenance * (p.ofChlorophyll * chlorophyll)) / p.decay),
                           Real(breathes / (p.decay + p.maintenance)));
    m_organic.oldDemand = max(Real(m_parameters.sediment.demand - p.settling * above),
                              Real((1.0 - kMostLabileMud.value) * m_parameters.sediment.demand));
    for (int i = 0; i < m_layers; ++i) {
        const double share = std::clamp((open - m_grid.face[i]) / m_grid.thickness[i], 0.0, 1.0);
        m_organic.open[i] = share;
        m_state.solutes[i][kLabile] = (share + (1.0 - share) * p.below) * above;
        const Real warm = m_state.heat[i][0] - 20.0;
        const Real most = kMostLabileMud.value * m_parameters.sediment.demand *
                          rateExp(Real(log(m_parameters.sediment.theta) * warm));
        const Real burns = p.mudDecay * rateExp(Real(std::log(kMudTheta.value) * warm));
        m_state.mud[i] = wherePositive(
            burns, Real(min(Real(p.settling * m_state.solutes[i][kLabile]), most) / burns), zero);
        m_organic.openVolume += share * m_grid.volume[i];
    }
    // What feed brings to nitrify, goes as fast as it comes.
    const Real fed = p.feedNitrogen / (m_organic.openVolume * m_parameters.debt.slowRate);
    for (int i = 0; i < m_layers; ++i) {
        m_state.solutes[i][kSlow] += m_organic.open[i] * fed;
    }
}

template <class Real>
void Column<Real>::resume(const KeptWater<Real>& water) {
    m_state = water.state;
    m_plants.chlorophyllScale = water.chlorophyllScale;
    placeWeeds(water.weedScale);
    m_bubbles.isStale = true;
    placeFish(m_state);
}

template <class Real>
void Column<Real>::step(double dt, const Air<Real>& overWater, const Aeration& aeration,
                        const InflowingWater& inflow) {
    const Air<Real> air = onPond(overWater);
    applyPlantTable(air);
    sunlight(air, m_state);
    densities(m_state);
    meetAir(air, inflow, m_state);
    enter(inflow);
    plume(aeration, m_state);
    stirring(air);
    react(dt, aeration, inflow);
    move(dt);
    stirMuck(aeration, dt);
    placeFish(m_state);
    m_ledger.liftedVolume += dt * m_bubbles.hypolimneticLift;
}

/// What the reactions of the step make of the water, beside the water as it was.
template <class Real>
void Column<Real>::react(double dt, const Aeration& aeration, const InflowingWater& inflow) {
    gather(m_state);
    reactionsOf(aeration, m_state, dt);
    reactionStep(m_reacting.rates, dt, m_reacting.water, m_reacting.amounts);
    record(dt);
    for (int i = 0; i < m_layers; ++i) {
        m_transport.before[i] = m_state.solutes[i];
        auto& s = m_transport.reacted[i];
        s = m_state.solutes[i];
        if (m_transport.hasToxicants) {
            // Sulfide goes with the fast debt that holds it, and new fast debt brings its share.
            const Real newFast = m_reacting.rates.fastShare * m_reacting.amounts.regenerated[i] +
                                 dt * m_reacting.rates.stirredFast[i];
            s[kSulfide] = s[kSulfide] * (1.0 - m_reacting.amounts.fast[i] / max(s[kFast], Real(1e-30))) +
                          m_parameters.toxicants.sulfideOfFast * newFast;
        }
        s[kOxygen] = m_reacting.water.oxygen[i];
        s[kFast] = m_reacting.water.fast[i];
        s[kMedium] = m_reacting.water.medium[i];
        s[kSlow] = m_reacting.water.slow[i];
        s[kLabile] = m_reacting.water.labile[i];
    }
    dilute(dt, inflow);
    settle(dt);
}

/// Rain thins what the surface holds, which runs over; its heat and oxygen go with those of the air.
template <class Real>
void Column<Real>::dilute(double dt, const InflowingWater& inflow) {
    if (!(inflow.rain > 0.0)) {
        return;
    }
    const double left = 1.0 / (1.0 + dt * inflow.rain * m_grid.faceArea[0] * m_perVolume[0]);
    const double gone = (1.0 - left) * m_grid.volume[0];
    auto& surface = m_transport.reacted[0];
    m_ledger.debtInflow -= gone * (surface[kFast] + surface[kMedium]);
    m_ledger.organic[kLost] += gone * surface[kLabile];
    for (int c = kOxygen + 1; c < kSolutes; ++c) {
        surface[c] *= left;
    }
}

template <class Real>
Real Column<Real>::oxygenAtFish() const {
    Real sum = 0.0;
    for (int i = 0; i < m_layers; ++i) {
        sum += m_fish.places[i] * m_state.solutes[i][kOxygen];
    }
    return sum;
}

template <class Real>
Real Column<Real>::temperatureAtFish() const {
    Real sum = 0.0;
    for (int i = 0; i < m_layers; ++i) {
        sum += m_fish.places[i] * m_state.heat[i][0];
    }
    return sum;
}

template <class Real>
Real Column<Real>::whereFishAre(Solute which, double ph,
                                double (*toxicShare)(double temperature, double ph)) const {
    Real sum = 0.0;
    for (int member = 0; member < kLanes<Real>; ++member) {
        double total = 0.0;
        for (int i = 0; i < m_layers; ++i) {
            total += lane(m_fish.places[i], member) * lane(m_state.solutes[i][which], member) *
                     toxicShare(lane(m_state.heat[i][0], member), ph);
        }
        setLane(sum, member, total);
    }
    return sum;
}

template <class Real>
Real Column<Real>::unionisedAmmonia(double ph) const {
    return m_parameters.toxicants.ammoniaOfSlow * whereFishAre(kSlow, ph, unionisedAmmoniaShare);
}

template <class Real>
Real Column<Real>::hydrogenSulfide(double ph) const {
    return whereFishAre(kSulfide, ph, undissociatedSulfideShare);
}

template <class Real>
Real Column<Real>::oxygenStored() const {
    Real sum = 0.0;
    for (int i = 0; i < m_layers; ++i) {
        sum += m_grid.volume[i] * m_state.solutes[i][kOxygen];
    }
    return sum;
}

template <class Real>
Real Column<Real>::organicStored() const {
    Real sum = 0.0;
    for (int i = 0; i < m_layers; ++i) {
        sum += m_grid.volume[i] * m_state.solutes[i][kLabile] + m_grid.bottomArea[i] * m_state.mud[i];
    }
    return sum;
}

template <class Real>
Real Column<Real>::heldAbove(Solute which) const {
    Real sum = 0.0;
    for (int i = 0; i < m_layers; ++i) {
        sum += m_organic.open[i] * m_grid.volume[i] * m_state.solutes[i][which];
    }
    return sum;
}

template <class Real>
Real Column<Real>::debtStored() const {
    Real sum = 0.0;
    for (int i = 0; i < m_layers; ++i) {
        sum += m_grid.volume[i] * (m_state.solutes[i][kFast] + m_state.solutes[i][kMedium]);
    }
    return sum;
}

template <class Real>
std::vector<double> Column<Real>::temperatures(int member) const {
    std::vector<double> out;
    for (int i = 0; i < m_layers; ++i) {
        out.push_back(lane(m_state.heat[i][0], member));
    }
    return out;
}

template <class Real>
std::vector<double> Column<Real>::solutes(Solute which, int member) const {
    std::vector<double> out;
    for (int i = 0; i < m_layers; ++i) {
        out.push_back(lane(m_state.solutes[i][which], member));
    }
    return out;
}

template Column<double>::Column(const Grid&, const Parameters<double>&, const AeratorSetup&,
                                const BottomWater&, const StartState<double>&, const ColumnSwitches&);
template void Column<double>::step(double, const Air<double>&, const Aeration&, const InflowingWater&);
template void Column<double>::resume(const KeptWater<double>&);
template double Column<double>::unionisedAmmonia(double) const;
template double Column<double>::oxygenAtFish() const;
template double Column<double>::temperatureAtFish() const;
template double Column<double>::hydrogenSulfide(double) const;
template double Column<double>::oxygenStored() const;
template double Column<double>::debtStored() const;
template double Column<double>::organicStored() const;
template double Column<double>::heldAbove(Solute) const;
template std::vector<double> Column<double>::temperatures(int) const;
template std::vector<double> Column<double>::solutes(Solute, int) const;
template Column<DoubleLanes>::Column(const Grid&, const Parameters<DoubleLanes>&, const AeratorSetup&,
                                     const BottomWater&, const StartState<DoubleLanes>&,
                                     const ColumnSwitches&);

template void Column<DoubleLanes>::step(double, const Air<DoubleLanes>&, const Aeration&,
                                        const InflowingWater&);
template void Column<DoubleLanes>::resume(const KeptWater<DoubleLanes>&);
template DoubleLanes Column<DoubleLanes>::unionisedAmmonia(double) const;
template DoubleLanes Column<DoubleLanes>::oxygenAtFish() const;
template DoubleLanes Column<DoubleLanes>::temperatureAtFish() const;
template DoubleLanes Column<DoubleLanes>::hydrogenSulfide(double) const;
template DoubleLanes Column<DoubleLanes>::oxygenStored() const;
template DoubleLanes Column<DoubleLanes>::debtStored() const;
template DoubleLanes Column<DoubleLanes>::organicStored() const;
template DoubleLanes Column<DoubleLanes>::heldAbove(Solute) const;
template std::vector<double> Column<DoubleLanes>::temperatures(int) const;
template std::vector<double> Column<DoubleLanes>::solutes(Solute, int) const;
template Column<Lanes>::Column(const Grid&, const Parameters<Lanes>&, const AeratorSetup&, const BottomWater&,
                               const StartState<Lanes>&, const ColumnSwitches&);

template void Column<Lanes>::step(double, const Air<Lanes>&, const Aeration&, const InflowingWater&);
template void Column<Lanes>::resume(const KeptWater<Lanes>&);
template Lanes Column<Lanes>::unionisedAmmonia(double) const;
template Lanes Column<Lanes>::oxygenAtFish() const;
template Lanes Column<Lanes>::temperatureAtFish() const;
template Lanes Column<Lanes>::hydrogenSulfide(double) const;
template Lanes Column<Lanes>::oxygenStored() const;
template Lanes Column<Lanes>::debtStored() const;
template Lanes Column<Lanes>::organicStored() const;
template Lanes Column<Lanes>::heldAbove(Solute) const;
template std::vector<double> Column<Lanes>::temperatures(int) const;
template std::vector<double> Column<Lanes>::solutes(Solute, int) const;

}  // namespace engine
