// Sources and demands of oxygen in a column (engine/column/column.h).
#include "engine/base/lane_math.h"
#include "engine/base/units.h"
#include "engine/column/column.h"
#include "engine/water/air_transfer.h"
#include "engine/water/light.h"
#include "engine/water/water.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

/// Factor on the sediment's demand [-]: in cold water it falls smoothly to a part of the exponential rule.
template <class Real>
Real coldSedimentFactor(const Real& temperature) {
    constexpr double kSpan = kColdSedimentFrom.value - kColdSedimentTo.value;
    constexpr double kLeast = kColdSedimentShare.value;
    const Real x = min(max((temperature - kColdSedimentTo.value) / kSpan, Real(0.0)), Real(1.0));
    return kLeast + (1.0 - kLeast) * x * x * (3.0 - 2.0 * x);
}

}  // namespace

template <class Real>
void Column<Real>::placeFish(const State<Real>& state) {
    const OxygenThresholds& thresholds = m_parameters.thresholds;
    for (int member = 0; member < kLanes<Real>; ++member) {
        for (int i = 0; i < m_layers; ++i) {
            m_fish.memberOxygen[i] = lane(state.solutes[i][kOxygen], member);
            m_fish.memberTemperature[i] = lane(state.heat[i][0], member);
        }
        FishWater& water = m_fish.water[member];
        const double best = water.oxygen(m_fish.memberOxygen, m_fish.memberTemperature, thresholds.fishShare,
                                         thresholds.fishMax);
        water.places(m_fish.memberOxygen, m_fish.memberTemperature, best, thresholds.stress,
                     thresholds.fishMax, m_fish.memberPlaces);
        for (int i = 0; i < m_layers; ++i) {
            setLane(m_fish.places[i], member, m_fish.memberPlaces[i]);
        }
        setLane(m_fish.best, member, best);
    }
}

template <class Real>
void Column<Real>::reactionsOf(const Aeration& aeration, const State<Real>& state, double dt) {
    for (int i = 0; i < m_layers; ++i) {
        m_water.temperature[i] = state.heat[i][0];
        m_water.chlorophyll[i] = state.solutes[i][kChlorophyll];
    }
    ratesByTemperature();
    const Real stirs = reaches(aeration);
    stirSediment(aeration, stirs);
    limitByLight();
    takeBubbles(aeration);
    splash(aeration, state);
    releaseMuck(aeration, stirs, state, dt);
}

/// What grows, respires and decays, in ample light and oxygen.
template <class Real>
void Column<Real>::ratesByTemperature() {
    const Parameters<Real>& p = m_parameters;
    const Real fishAt20 = p.fish.stock * fishRespiration(p.fish.mass_g, 20.0);
    Real* const sediment = m_reacting.rates.sediment.data();
    Real* const growth = m_reacting.rates.photosynthesis.data();
    Real* const respiration = m_reacting.rates.respiration.data();
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
    const Real growthPerAlgae = p.growth.factor * p.growth.rate,
               growthPerWeed = p.growth.factor * p.weeds.photosynthesis * p.weeds.mass,
               respirationBase = p.respiration.factor * p.respiration.base,
               respirationPerAlgae = p.respiration.factor * p.respiration.perChlorophyll,
               respirationPerWeed = p.respiration.factor * p.weeds.respiration * p.weeds.mass,
               demand = p.sediment.demand, fastRate = p.debt.fastRate, mediumRate = p.debt.mediumRate,
               slowRate = p.debt.slowRate;
    const Real logGrowth = log(p.growth.theta), logRespiration = log(p.respiration.theta),
               logSediment = log(p.sediment.theta), logDebt = log(p.debt.theta),
               logSlow = log(p.debt.slowTheta);
    DAWNLINE_SIDE_BY_SIDE
    for (int i = 0; i < layers; ++i) {
        const Real temperature = temperatures[i];
        const Real warm = temperature - 20.0;
        const double perVolume = perLayerVolume[i];
        growth[i] = (growthPerAlgae * algae[i] + growthPerWeed * weedShare[i]) * rateExp(logGrowth * warm);
        respiration[i] =
            (respirationBase + respirationPerAlgae * algae[i] + respirationPerWeed * weedShare[i]) *
            rateExp(logRespiration * warm);
        fish[i] = fishAt20 * fishTemperatureFactor(temperature) * places[i] * perVolume;
        sediment[i] = demand * sedimentArea[i] * perVolume * rateExp(logSediment * warm) *
                      coldSedimentFactor(temperature);
        const Real debtWarm = rateExp(logDebt * warm);
        fast[i] = fastRate * debtWarm;
        medium[i] = mediumRate * debtWarm;
        slow[i] = slowRate * rateExp(logSlow * warm);
    }
}

/// The sediment under the diffusers demands more while they stir it.
template <class Real>
void Column<Real>::stirSediment(const Aeration& aeration, const Real& stirs) {
    if (aeration.open <= 0) {
        return;
    }
    const Parameters<Real>& p = m_parameters;
    const int stirred = m_grid.layerAt(aeration.depth);
    const Real area =
        min(p.muck.stirredArea * static_cast<double>(aeration.open), Real(m_grid.faceArea[stirred]));
    const Real& temperature = m_water.temperature[stirred];
    m_reacting.rates.sediment[stirred] +=
        stirs * p.sediment.demand * (area * (p.muck.stirredDemand - 1.0)) / m_grid.volume[stirred] *
        rateExp(log(p.sediment.theta) * (temperature - 20.0)) * coldSedimentFactor(temperature);
}

template <class Real>
void Column<Real>::limitByLight() {
    Real* const growth = m_reacting.rates.photosynthesis.data();
    const Real* const light = m_sun.light.data();
    const Real perSaturation = 1.0 / m_parameters.growth.saturationLight;
    const int layers = m_layers;
    DAWNLINE_SIDE_BY_SIDE
    for (int i = 0; i < layers; ++i) {
        growth[i] = growth[i] * saturatingLight(Real(light[i] * perSaturation));
    }
}

/// Oxygen from bubbles, and what they strip from water that holds more than they.
template <class Real>
void Column<Real>::takeBubbles(const Aeration& aeration) {
    Real* const gained = m_reacting.rates.bubbles.data();
    Real* const stripped = m_reacting.rates.stripped.data();
    const Real* const net = m_bubbles.net.data();
    const Real* const reference = m_bubbles.reference.data();
    const double bubbling = aeration.open > 0 ? 1.0 : 0.0;
    const int layers = m_layers;
    DAWNLINE_SIDE_BY_SIDE
    for (int i = 0; i < layers; ++i) {
        const Real bubbles = bubbling * net[i];
        gained[i] = max(bubbles, Real(0.0));
        stripped[i] = max(-bubbles, Real(0.0)) / reference[i];
    }
}

/// Standard transfer brought to the pond's temperature and water (engine/water/air_transfer.h), spread over
/// what a splashing aerator turns over.
template <class Real>
void Column<Real>::splash(const Aeration& aeration, const State<Real>& state) {
    const Parameters<Real>& p = m_parameters;
    const Real surface = state.heat[0][0];
    if (aeration.surface) {
        m_reacting.rates.aeratorSaturation = transferTarget(
            oxygenSaturationKernel(surface, state.solutes[0][kSalt], p.site.airPressure), kAeratorBeta.value);
    }
    const Real perVolume = aeration.surface
                               ? transferRate(Real(p.surface.aeratorTransfer / m_surfaceAerator.reach),
                                              surface, kAeratorAlpha.value, kStandardSaturation.value)
                               : Real(0.0);
    for (int i = 0; i < m_layers && (aeration.surface || m_surfaceAerator.isInRates); ++i) {
        m_reacting.rates.aerator[i] =
            perVolume * std::clamp((kAeratorReach.value - m_grid.face[i]) / m_grid.thickness[i], 0.0, 1.0);
    }
    m_surfaceAerator.isInRates = aeration.surface;
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

/// The dated table scales the pond's algae and weeds; what dies becomes medium debt where it stood.
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
        const Real before = s[kChlorophyll];
        s[kChlorophyll] = before * grown;
        const Real dead = m_parameters.debt.ofChlorophyll * max(before - s[kChlorophyll], Real(0.0)) +
                          m_parameters.debt.ofWeeds * deadWeeds * m_plants.weedPerArea[i];
        s[kMedium] += dead;
        m_ledger.debtOfPlants += m_grid.volume[i] * dead;
    }
    m_parameters.weeds.mass = air.weedScale * m_plants.weedMassAtStart;
    m_plants.chlorophyllScale = air.chlorophyllScale;
    m_plants.weedScale = air.weedScale;
}

template <class Real>
void Column<Real>::record(double dt) {
    const ReactionAmounts<Real>& a = m_reacting.amounts;
    auto& term = m_ledger.oxygen;
    for (int i = 0; i < m_layers; ++i) {
        const double volume = m_grid.volume[i];
        term[kPhotosynthesis] += volume * dt * m_reacting.rates.photosynthesis[i];
        term[kRespiration] -= volume * a.respiration[i];
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
    }
}

template void Column<double>::placeFish(const State<double>&);
template void Column<double>::reactionsOf(const Aeration&, const State<double>&, double);
template double Column<double>::reaches(const Aeration&) const;
template void Column<double>::stirMuck(const Aeration&, double);
template void Column<double>::applyPlantTable(const Air<double>&);
template void Column<double>::record(double);
template void Column<double>::gather(const State<double>&);
template void Column<Pack<4>>::placeFish(const State<Pack<4>>&);
template void Column<Pack<4>>::reactionsOf(const Aeration&, const State<Pack<4>>&, double);
template Pack<4> Column<Pack<4>>::reaches(const Aeration&) const;
template void Column<Pack<4>>::stirMuck(const Aeration&, double);
template void Column<Pack<4>>::applyPlantTable(const Air<Pack<4>>&);
template void Column<Pack<4>>::record(double);
template void Column<Pack<4>>::gather(const State<Pack<4>>&);

}  // namespace engine
