// Sources and demands of oxygen in a column (engine/column/column.h).
#include "engine/base/lane_math.h"
#include "engine/base/units.h"
#include "engine/column/column.h"
#include "engine/water/air_transfer.h"
#include "engine/water/light.h"
#include "engine/water/sediment.h"
#include "engine/water/water.h"

#include <algorithm>
#include <cmath>

namespace engine {
template <class Real>
void Column<Real>::placeFish(const State<Real>& state) {
    const OxygenThresholds& thresholds = m_parameters.thresholds;
    for (int i = 0; i < m_layers; ++i) {
        m_fish.oxygen[i] = state.solutes[i][kOxygen];
        m_fish.temperature[i] = state.heat[i][0];
    }
    m_fish.best =
        m_fish.water.oxygen(m_fish.oxygen, m_fish.temperature, thresholds.fishShare, thresholds.fishMax);
    m_fish.water.places(m_fish.best, thresholds.stress, m_fish.places);
}

template <class Real>
void Column<Real>::reactionsOf(const Aeration& aeration, const State<Real>& state, double dt) {
    for (int i = 0; i < m_layers; ++i) {
        m_water.temperature[i] = state.heat[i][0];
        m_water.chlorophyll[i] = state.solutes[i][kChlorophyll];
    }
    ratesByTemperature(state);
    const Real stirs = reaches(aeration);
    stirSediment(aeration, stirs, state);
    limitByLight();
    organicSources();
    limitBubbles(state);
    takeBubbles(aeration, state, dt);
    splash(aeration, state);
    releaseMuck(aeration, stirs, state, dt);
}

/// What grows, respires and decays, in ample light and oxygen.
template <class Real>
void Column<Real>::ratesByTemperature(const State<Real>& state) {
    const Parameters<Real>& p = m_parameters;
    const Real fishAt20 = p.fish.stock * fishRespiration(p.fish.mass_g, 20.0);
    Real* const sediment = m_reacting.rates.sediment.data();
    Real* const growth = m_reacting.rates.photosynthesis.data();
    Real* const fish = m_reacting.rates.fish.data();
    Real* const fast = m_reacting.rates.fast.data();
    Real* const medium = m_reacting.rates.medium.data();
    Real* const slow = m_reacting.rates.slow.data();
    const int layers = m_layers;
    const Real* const temperatures = m_water.temperature.data();
    const Real* const algae = m_water.chlorophyll.data();
    const Real* const places = m_fish.places.data();
    const Real* const weedShare = m_plants.weedPerArea.data();
    const double* const perLayerVolume = m_perVolume.data();
    const double* const sedimentArea = m_grid.bottomArea.data();
    Real *const weedGrowth = m_organic.ofWeeds.data(), *const weedsBreathe = m_organic.weedsBreathe.data(),
                *const burns = m_organic.burns.data(), *const benthic = m_organic.benthic.data(),
                *const labileRate = m_reacting.rates.labile.data();
    const Real* const mud = state.mud.data();
    const Real* const labile = m_reacting.water.labile.data();
    const Real growthPerAlgae = p.growth.factor * p.growth.rate,
               growthPerWeed = p.growth.factor * p.weeds.photosynthesis * p.weeds.mass,
               growthPerBed = p.growth.factor * p.organic.benthic,
               decay = p.respiration.factor * p.organic.decay,
               maintenance = p.respiration.factor * p.organic.maintenance, perAlgae = p.organic.ofChlorophyll,
               respirationPerWeed = p.respiration.factor * p.weeds.respiration * p.weeds.mass,
               demand = m_organic.oldDemand, mudRate = p.organic.mudDecay, fastRate = p.debt.fastRate,
               mediumRate = p.debt.mediumRate, slowRate = p.debt.slowRate;
    const Real logGrowth = log(p.growth.theta), logRespiration = log(p.respiration.theta),
               logSediment = log(p.sediment.theta), logDebt = log(p.debt.theta),
               logSlow = log(p.debt.slowTheta);
    const double logMud = std::log(kMudTheta.value);
    DAWNLINE_SIDE_BY_SIDE
    for (int i = 0; i < layers; ++i) {
        const Real temperature = temperatures[i];
        const Real warm = temperature - 20.0;
        const double perVolume = perLayerVolume[i];
        const Real grows = rateExp(logGrowth * warm), breathes = rateExp(logRespiration * warm);
        growth[i] = growthPerAlgae * algae[i] * grows;
        weedGrowth[i] = growthPerWeed * weedShare[i] * grows;
        benthic[i] = growthPerBed * grows;
        weedsBreathe[i] = respirationPerWeed * weedShare[i] * breathes;
        // Of labile matter the algae are no more than there is of it.
        const Real living = min(perAlgae * algae[i], labile[i]) / max(labile[i], Real(1e-30));
        labileRate[i] = (decay + maintenance * living) * breathes;
        burns[i] = mudRate * rateExp(logMud * warm);
        fish[i] = fishAt20 * fishTemperatureFactor(temperature) * places[i] * perVolume;
        sediment[i] =
            sedimentArea[i] * perVolume *
            (demand * rateExp(logSediment * warm) * coldSedimentFactor(temperature) + burns[i] * mud[i]);
        const Real debtWarm = rateExp(logDebt * warm);
        fast[i] = fastRate * debtWarm;
        medium[i] = mediumRate * debtWarm;
        slow[i] = slowRate * rateExp(logSlow * warm);
    }
}

/// The sediment under the diffusers demands more while they stir it.
template <class Real>
void Column<Real>::stirSediment(const Aeration& aeration, const Real& stirs, const State<Real>& state) {
    if (aeration.open <= 0) {
        return;
    }
    const Parameters<Real>& p = m_parameters;
    const int stirred = m_grid.layerAt(aeration.depth);
    const Real area =
        min(p.muck.stirredArea * static_cast<double>(aeration.open), Real(m_grid.faceArea[stirred]));
    const Real& temperature = m_water.temperature[stirred];
    const Real atRest = m_organic.oldDemand * rateExp(log(p.sediment.theta) * (temperature - 20.0)) *
                            coldSedimentFactor(temperature) +
                        m_organic.burns[stirred] * state.mud[stirred];
    m_reacting.rates.sediment[stirred] +=
        stirs * atRest * (area * (p.muck.stirredDemand - 1.0)) / m_grid.volume[stirred];
}

template <class Real>
void Column<Real>::limitByLight() {
    Real* const growth = m_reacting.rates.photosynthesis.data();
    const Real* const light = m_sun.light.data();
    const Real perSaturation = 1.0 / m_parameters.growth.saturationLight;
    const int layers = m_layers;
    Real *const ofWeeds = m_organic.ofWeeds.data(), *const benthic = m_organic.benthic.data();
    DAWNLINE_SIDE_BY_SIDE
    for (int i = 0; i < layers; ++i) {
        const Real share = saturatingLight(Real(light[i] * perSaturation));
        growth[i] = growth[i] * share;
        benthic[i] = benthic[i] * share;
    }
    if (!m_plants.hasWeeds) {
        return;  // and they make nothing
    }
    const Real* const amongWeeds = m_plants.amongWeeds.data();
    DAWNLINE_SIDE_BY_SIDE
    for (int i = 0; i < layers; ++i) {
        ofWeeds[i] = ofWeeds[i] * saturatingLight(Real(light[i] * amongWeeds[i] * perSaturation));
    }
}

/// Where what grows goes: into labile matter, what algae breathe at once and what weeds keep taken off; on
/// the bed into that of the sediment. Leaves, feed and inflow come on top, above z_b.
template <class Real>
void Column<Real>::organicSources() {
    const OrganicParameters<Real>& p = m_parameters.organic;
    Reactions<Real>& rates = m_reacting.rates;
    const Real perVolume = p.feedNitrogen / m_organic.openVolume;
    for (int i = 0; i < m_layers; ++i) {
        const Real atOnce = p.breathedAtOnce * rates.photosynthesis[i];
        m_organic.made[i] = rates.photosynthesis[i] - atOnce + p.weedsGive * m_organic.ofWeeds[i];
        m_organic.loaded[i] = m_organic.open[i] * p.load;
        rates.organic[i] = m_organic.made[i] + m_organic.loaded[i];
        rates.respiration[i] = m_organic.weedsBreathe[i] + m_parameters.respiration.factor * atOnce;
        rates.photosynthesis[i] +=
            m_organic.ofWeeds[i] + m_organic.benthic[i] * (m_grid.bottomArea[i] * m_perVolume[i]);
        rates.nitrogen[i] = m_organic.open[i] * perVolume;
    }
}

/// Oxygen above which the gases of the water, nitrogen as in the air, pass its pressure by enough to form
/// bubbles. Looked at only where there is far more of it than air gives.
template <class Real>
void Column<Real>::limitBubbles(const State<Real>& state) {
    constexpr double kFarMore =
        14.0;  // [g/m^3]; less than twice saturation at 45 degC and at any height of a pond
    Real highest = 0.0;
    for (int i = 0; i < m_layers; ++i) {
        highest = max(highest, state.solutes[i][kOxygen]);
    }
    if (!(largestLane(highest) > kFarMore)) {
        std::fill(m_reacting.rates.mostOxygen.begin(), m_reacting.rates.mostOxygen.end(),
                  Real(Reactions<Real>::kNoLimit));
        return;
    }
    for (int i = 0; i < m_layers; ++i) {
        Real& most = m_reacting.rates.mostOxygen[i];
        const double water =
            kWaterDensity.value * kGravity * m_grid.middle[i] / m_parameters.site.airPressure;
        most =
            oxygenSaturationKernel(state.heat[i][0], state.solutes[i][kSalt], m_parameters.site.airPressure) *
            (1.0 + (kBubblingPressure.value + water) / kOxygenOfAir.value);
    }
}

/// Labile matter sinks, layer by layer into the next and onto the sediment of each; some leaves the pond.
/// Backward Euler from the surface down, upwind: positive for any step.
template <class Real>
void Column<Real>::settle(double dt) {
    const OrganicParameters<Real>& p = m_parameters.organic;
    auto& organic = m_ledger.organic;
    Real fromAbove = 0.0;  // [g]
    for (int i = 0; i < m_layers; ++i) {
        Real& labile = m_transport.reacted[i][kLabile];
        const Real sinks = dt * p.settling * (m_grid.faceArea[i] * m_perVolume[i]), leaves = dt * p.loss;
        labile = (labile + fromAbove * m_perVolume[i]) / (1.0 + sinks + leaves);
        const Real settled = dt * p.settling * labile;  // [g/m^2]
        const Real onto = settled * m_grid.bottomArea[i];
        fromAbove = settled * m_grid.faceArea[i] - onto;
        Real& mud = m_state.mud[i];
        const Real grown = dt * m_organic.benthic[i];
        const Real before = mud + settled + grown;
        mud = before / (1.0 + dt * m_organic.burns[i]);
        if constexpr (!kKeepsBooks<Real>) {
            continue;
        }
        organic[kMade] += m_grid.volume[i] * dt * m_organic.made[i] + m_grid.bottomArea[i] * grown;
        organic[kLoaded] += m_grid.volume[i] * dt * m_organic.loaded[i];
        organic[kRespired] += m_grid.volume[i] * m_reacting.amounts.labile[i];
        organic[kSettled] += onto;
        organic[kLost] += m_grid.volume[i] * (leaves * labile);
        organic[kBurnt] += m_grid.bottomArea[i] * (before - mud);
    }
}

/// Oxygen from bubbles, and what they strip from water that holds more than they. The plume was integrated in
/// the water as it stood; where it turns over in a step more water than there is, a gain that lasts would
/// carry the water past what the bubbles hold, so that a step ends at saturation at the diffuser at most.
/// What was taken up below and let go in water above that saturation still comes in, at kSlowestRefill at
/// most.
template <class Real>
void Column<Real>::takeBubbles(const Aeration& aeration, const State<Real>& state, double dt) {
    Real* const gained = m_reacting.rates.bubbles.data();
    Real* const stripped = m_reacting.rates.stripped.data();
    const Real* const net = m_bubbles.net.data();
    const Real* const reference = m_bubbles.reference.data();
    const double bubbling = aeration.open > 0 ? 1.0 : 0.0;
    const double perStep = dt > 0.0 ? 1.0 / dt : 0.0;
    const Real full = m_bubbles.saturation;
    const Real always = dt > 0.0 ? Real(full / (kSlowestRefill_h.value * kHour)) : Real(1e30);
    const int layers = m_layers;
    DAWNLINE_SIDE_BY_SIDE
    for (int i = 0; i < layers; ++i) {
        const Real bubbles = bubbling * net[i];
        gained[i] = min(max(bubbles, Real(0.0)), max((full - state.solutes[i][kOxygen]) * perStep, always));
        stripped[i] = max(-bubbles, Real(0.0)) / reference[i];
    }
}

/// Standard transfer brought to the pond's temperature and water (engine/water/air_transfer.h), spread over
/// what a splashing aerator turns over.
template <class Real>
void Column<Real>::splash(const Aeration& aeration, const State<Real>& state) {
    const Parameters<Real>& p = m_parameters;
    const Real surface = state.heat[0][0];
    if (aeration.surface || aeration.surfaceTransfer > 0.0) {
        m_reacting.rates.aeratorSaturation = transferTarget(
            oxygenSaturationKernel(surface, state.solutes[0][kSalt], p.site.airPressure), kAeratorBeta.value);
    }
    const bool runs = aeration.surface || aeration.surfaceTransfer > 0.0;
    const Real transfer =
        aeration.surfaceTransfer + (aeration.surface ? p.surface.aeratorTransfer : Real(0.0));
    const Real perVolume = runs ? transferRate(Real(transfer / m_surfaceAerator.reach), surface,
                                               kAeratorAlpha.value, kStandardSaturation.value)
                                : Real(0.0);
    for (int i = 0; i < m_layers && (runs || m_surfaceAerator.isInRates); ++i) {
        m_reacting.rates.aerator[i] =
            perVolume * std::clamp((kAeratorReach.value - m_grid.face[i]) / m_grid.thickness[i], 0.0, 1.0);
    }
    m_surfaceAerator.isInRates = runs;
}

/// Muck leaves its store first order while the diffuser runs; over a step exactly so.
template <class Real>
void Column<Real>::releaseMuck(const Aeration& aeration, const Real& stirs, const State<Real>& state,
                               double dt) {
    Reactions<Real>& rates = m_reacting.rates;
    std::fill(rates.stirredFast.begin(), rates.stirredFast.end(), Real(0.0));
    std::fill(rates.stirredMedium.begin(), rates.stirredMedium.end(), Real(0.0));
    if (aeration.open <= 0) {
        return;
    }
    const int stirred = m_grid.layerAt(aeration.depth);
    prepareMuck(dt);
    const double perSecond = dt > 0.0 ? m_muck.released / dt : 1.0 / (kMuckReleaseTime_h.value * kHour);
    Real released = 0.0;
    for (int d = 0; d < std::min(aeration.open, static_cast<int>(state.muck.size())); ++d) {
        released += state.muck[d] * perSecond;
    }
    released = stirs * released / m_grid.volume[stirred];
    rates.stirredFast[stirred] = m_parameters.muck.fastShare * released;
    rates.stirredMedium[stirred] = (1.0 - m_parameters.muck.fastShare) * released;
}

/// Share of the muck's stirring that a diffuser brings about where it hangs: all up to the reach, fading to
/// none at kMuckFade times as high.
template <class Real>
Real Column<Real>::reaches(const Aeration& aeration) const {
    const double height = m_grid.face[m_layers] - aeration.depth;
    const Real left = (kMuckFade.value - height / m_parameters.muck.reach) / (kMuckFade.value - 1.0);
    return min(max(left, Real(0.0)), Real(1.0));
}

template <class Real>
void Column<Real>::prepareMuck(double dt) {
    if (dt != m_muck.step) {
        m_muck.step = dt;
        m_muck.released = -std::expm1(-dt / (kMuckReleaseTime_h.value * kHour));
        m_muck.rebuilt = -std::expm1(-dt / (kMuckRebuildTime_d.value * kDay));
    }
}

template <class Real>
void Column<Real>::stirMuck(const Aeration& aeration, double dt) {
    const Real stirs = reaches(aeration);
    prepareMuck(dt);
    for (int d = 0; d < static_cast<int>(m_state.muck.size()); ++d) {
        const Real releases = d < aeration.open ? stirs : Real(0.0);
        m_state.muck[d] += (1.0 - releases) * (m_parameters.muck.store - m_state.muck[d]) * m_muck.rebuilt -
                           releases * m_state.muck[d] * m_muck.released;
    }
}

/// The dated table scales the pond's algae and weeds; what dies is labile matter where it stood, as algae
/// were while they lived.
template <class Real>
void Column<Real>::applyPlantTable(const Air<Real>& air) {
    if (largestLane(abs(air.chlorophyllScale - m_plants.chlorophyllScale)) == 0.0 &&
        largestLane(abs(air.weedScale - m_plants.weedScale)) == 0.0) {
        return;
    }
    const Real grown = air.chlorophyllScale / max(m_plants.chlorophyllScale, Real(1e-9));
    const Real deadWeeds = max(m_plants.weedScale - air.weedScale, Real(0.0)) * m_plants.weedMassAtStart;
    for (int i = 0; i < m_layers; ++i) {
        auto& s = m_state.solutes[i];
        s[kChlorophyll] *= grown;
        const Real dead = m_parameters.organic.ofWeeds * deadWeeds * m_plants.weedPerArea[i];
        s[kLabile] += dead;
        m_ledger.organic[kLoaded] += m_grid.volume[i] * dead;
    }
    m_plants.chlorophyllScale = air.chlorophyllScale;
    placeWeeds(air.weedScale);
}

template <class Real>
void Column<Real>::record(double dt) {
    const ReactionAmounts<Real>& a = m_reacting.amounts;
    auto& term = m_ledger.oxygen;
    for (int i = 0; i < m_layers; ++i) {
        const double volume = m_grid.volume[i];
        m_ledger.weedsMade += volume * dt * m_organic.ofWeeds[i];
        m_ledger.weedsRespired += volume * dt * m_organic.weedsBreathe[i];
        if constexpr (!kKeepsBooks<Real>) {
            continue;
        }
        term[kPhotosynthesis] += volume * dt * m_reacting.rates.photosynthesis[i];
        term[kRespiration] -= volume * (a.respiration[i] + a.labile[i]);
        term[kBubblingOut] -= volume * a.bubbled[i];
        term[kFishTerm] -= volume * a.fish[i];
        term[kSediment] -= volume * a.sediment[i];
        term[kDebtTerm] -= volume * (a.fast[i] + a.medium[i] + a.slow[i]);
        term[kBubbles] += volume * (dt * m_reacting.rates.bubbles[i] - a.stripped[i]);
        term[kSurfaceAerator] += volume * (a.aerated[i] - a.spilled[i]);
        m_ledger.debtRegenerated += volume * a.regenerated[i];
        m_ledger.debtStirred +=
            volume * dt * (m_reacting.rates.stirredFast[i] + m_reacting.rates.stirredMedium[i]);
        m_ledger.debtOxidised += volume * (a.fast[i] + a.medium[i]);
    }
}

template <class Real>
void Column<Real>::gather(const State<Real>& state) {
    for (int i = 0; i < m_layers; ++i) {
        m_reacting.water.oxygen[i] = state.solutes[i][kOxygen];
        m_reacting.water.fast[i] = state.solutes[i][kFast];
        m_reacting.water.medium[i] = state.solutes[i][kMedium];
        m_reacting.water.slow[i] = state.solutes[i][kSlow];
        m_reacting.water.labile[i] = state.solutes[i][kLabile];
    }
}

template void Column<double>::placeFish(const State<double>&);
template void Column<double>::reactionsOf(const Aeration&, const State<double>&, double);
template double Column<double>::reaches(const Aeration&) const;
template void Column<double>::stirMuck(const Aeration&, double);
template void Column<double>::applyPlantTable(const Air<double>&);
template void Column<double>::record(double);
template void Column<double>::gather(const State<double>&);
template void Column<double>::settle(double);
template void Column<DoubleLanes>::placeFish(const State<DoubleLanes>&);
template void Column<DoubleLanes>::reactionsOf(const Aeration&, const State<DoubleLanes>&, double);
template DoubleLanes Column<DoubleLanes>::reaches(const Aeration&) const;
template void Column<DoubleLanes>::stirMuck(const Aeration&, double);
template void Column<DoubleLanes>::applyPlantTable(const Air<DoubleLanes>&);
template void Column<DoubleLanes>::record(double);
template void Column<DoubleLanes>::gather(const State<DoubleLanes>&);
template void Column<DoubleLanes>::settle(double);
template void Column<Lanes>::placeFish(const State<Lanes>&);
template void Column<Lanes>::reactionsOf(const Aeration&, const State<Lanes>&, double);
template Lanes Column<Lanes>::reaches(const Aeration&) const;
template void Column<Lanes>::stirMuck(const Aeration&, double);
template void Column<Lanes>::applyPlantTable(const Air<Lanes>&);
template void Column<Lanes>::record(double);
template void Column<Lanes>::gather(const State<Lanes>&);
template void Column<Lanes>::settle(double);

}  // namespace engine
