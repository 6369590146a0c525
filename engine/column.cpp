#include "engine/column.h"

#include "engine/air_transfer.h"
#include "engine/error.h"
#include "engine/exchange.h"
#include "engine/light.h"
#include "engine/mixing.h"
#include "engine/sky.h"
#include "engine/toxic.h"
#include "engine/units.h"
#include "engine/water.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

constexpr double kWaterDensity = 998.0;      // [kg/m^3], for heat only
// The plume is integrated again when the water has moved by this much: a tenth of it moves no night's low of the
// first scenarios by more than 0.03 g/m^3.
constexpr double kPlumeTolerance = 0.1;      // [kg/m^3], about 0.4 degC at 25 degC
constexpr double kHeatPerVolume = kWaterDensity * kWaterSpecificHeat;

const double kLogPhotosynthesisTheta = std::log(kPhotosynthesisTheta.value);
const double kLogRespirationTheta = std::log(kRespirationTheta.value);
const double kLogDebtTheta = std::log(kDebtTheta.value);
const double kLogSlowTheta = std::log(kSlowTheta.value);

/// Mud cools less than the water's rule says: from 10 degC down to 5 its demand falls smoothly to half of the
/// exponential rule (published: halve below 10 degC, from memory).
template <class Real>
Real coldMud(const Real& temperature) {
    const Real x = min(max((temperature - 5.0) / 5.0, Real(0.0)), Real(1.0));
    return 0.5 + 0.5 * x * x * (3.0 - 2.0 * x);
}

/// Shares of the weed mass over layer volume, times the pond's area: weeds stand on the bottom down to where
/// light allows (twice the Secchi depth: Chang and Ouyang 1988) and fill the water above it evenly.
std::vector<double> weedShares(const Grid& grid, double deepest) {
    const int layers = grid.layers();
    std::vector<double> share(layers, 0.0);
    double ground = 0.0;
    for (int i = 0; i < layers; ++i) {
        ground += grid.middle[i] <= deepest || i == 0 ? grid.bottomArea[i] : 0.0;
    }
    if (ground <= 0.0) {
        return share;  // upright walls down to where it is dark: no ground for weeds
    }
    for (int i = 0; i < layers; ++i) {
        if (grid.middle[i] > deepest && i > 0) {
            continue;
        }
        for (int j = 0; j <= i; ++j) {
            const double inside = grid.thickness[j] / grid.face[i + 1];
            share[j] += grid.bottomArea[i] / ground * inside * grid.faceArea[0] / grid.volume[j];
        }
    }
    return share;
}

}  // namespace

template <class Real>
Column<Real>::Column(const Grid& grid, const Parameters<Real>& parameters, const AeratorSetup& aerator,
                     const BottomWater& bottom, const StartState<Real>& start,
                     const ColumnSwitches& switches)
    : m_grid(grid),
      m_parameters(parameters),
      m_aerator(aerator),
      m_bottom(bottom),
      m_switches(switches),
      m_layers(grid.layers()),
      m_flows(m_layers),
      m_transportHeat(m_grid),
      m_transportSolutes(m_grid),
      m_reactions(m_layers),
      m_work(m_layers),
      m_amounts(m_layers),
      m_convection(m_grid) {
    const Real zero = 0.0;
    m_state.heat.resize(m_layers);
    m_state.solutes.resize(m_layers);
    for (int i = 0; i < m_layers; ++i) {
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
        s[kAmmonia] = start.ammonia.empty() ? zero : start.ammonia[i];
        m_poisons = m_poisons || largestLane(s[kSulfide]) > 0.0 || largestLane(s[kAmmonia]) > 0.0;
        m_reach += m_grid.volume[i] *
                   std::clamp((kAeratorReach.value - m_grid.face[i]) / m_grid.thickness[i], 0.0, 1.0);
    }
    m_springWater.fill(zero);
    m_springWater[kOxygen] = parameters.springOxygen;
    m_springWater[kSalt] = parameters.springSalinity;
    m_weedMassAtStart = parameters.weedMass;
    m_state.muck.assign(aerator.diffusers, parameters.muckStore);
    for (const double z : m_grid.face) {
        m_nearInfrared.push_back(std::exp(-kNearInfraredAttenuation.value * z));
    }
    const Real attenuation = parameters.attenuationRest + attenuationOfChlorophyll(start.chlorophyll[0]);
    m_weedPerArea.assign(m_layers, zero);
    for (int member = 0; member < kLanes<Real>; ++member) {
        const double secchi = 1.7 / lane(attenuation, member);
        const std::vector<double> shares = weedShares(m_grid, 2.0 * secchi);
        for (int i = 0; i < m_layers; ++i) {
            setLane(m_weedPerArea[i], member, shares[i]);
        }
    }
    for (auto* field : {&m_density, &m_light, &m_heating, &m_photosynthesisT, &m_plumeDensity, &m_bubbleNet,
                        &m_bubbleReference, &m_fishPlace}) {
        field->assign(m_layers, zero);
    }
    m_bubbleReference.assign(m_layers, Real(1.0));
    m_diffusivity.assign(m_layers + 1, zero);
    m_overturning.assign(m_layers + 1, zero);
    m_laneFaces.assign(m_layers + 1, 0.0);
    for (int member = 0; member < kLanes<Real>; ++member) {
        m_fishWater.emplace_back(m_grid);
    }
    for (auto* field : {&m_laneA, &m_laneB, &m_lanePlaces}) {
        field->assign(m_layers, 0.0);
    }
    m_reactions.regeneration = parameters.regenerationShare;
    m_reactions.fastShare = parameters.fastShare;
    placeFish(m_state);
}

template <class Real>
void Column<Real>::densities(const State<Real>& state) {
    for (int i = 0; i < m_layers; ++i) {
        m_density[i] = waterDensity(state.heat[i][0], state.solutes[i][kSalt]);
    }
}

template <class Real>
void Column<Real>::sunlight(const Air<Real>& air, const State<Real>& state) {
    const Real zero = 0.0;
    const bool dark = !(largestLane(air.shortwave) > 0.0);
    Real visible = (1.0 - kNearInfraredShare.value) * (1.0 - kAlbedo.value) * air.shortwave;
    const Real infrared = kNearInfraredShare.value * (1.0 - kAlbedo.value) * air.shortwave;
    for (int i = 0; i < m_layers; ++i) {
        if (dark) {
            m_light[i] = zero;
            m_heating[i] = zero;
            continue;
        }
        const Real weeds = m_parameters.weedMass * m_weedPerArea[i];
        const Real attenuation = m_parameters.attenuationRest +
                                 attenuationOfChlorophyll(state.solutes[i][kChlorophyll]) +
                                 kWeedShading_m2PerG.value * weeds;
        const Real optical = attenuation * m_grid.thickness[i];
        const Real left = exp(-optical);
        // The visible share of shortwave as photons, so that the surface gets kParShare of it.
        m_light[i] = visible * (1.0 - left) / optical *
                     (kParShare * kPhotonsPerJoule_umol / (1.0 - kNearInfraredShare.value));
        // Light that falls on the mud warms the layer over it.
        const double lower = i + 1 < m_layers ? m_grid.faceArea[i + 1] : 0.0;
        m_heating[i] = (visible * (m_grid.faceArea[i] - left * lower) +
                        infrared * (m_nearInfrared[i] * m_grid.faceArea[i] - m_nearInfrared[i + 1] * lower)) /
                       (kHeatPerVolume * m_grid.volume[i]);
        visible = visible * left;
    }
}

template <class Real>
Real Column<Real>::surfaceLoss(const Air<Real>& air, const Real& surface) const {
    const Real wind7 = air.wind10 * windAt(1.0, 10.0, 7.0);
    return longwaveOut(surface) - longwaveIn(air.temperature, air.vapourPressure, air.cloud) +
           evaporativeLoss(surface, air.vapourPressure, wind7) +
           conductiveLoss(surface, air.temperature, wind7);
}

template <class Real>
void Column<Real>::heatRates(const Air<Real>& air, const State<Real>& state, double dt) {
    const Real surface = state.heat[0][0];
    const Real loss = surfaceLoss(air, surface);
    const Real expansion = (waterDensity(surface - 0.5, state.solutes[0][kSalt]) -
                            waterDensity(surface + 0.5, state.solutes[0][kSalt])) /
                           kWaterDensity;  // [1/K]
    const double perDegree = m_grid.faceArea[0] / (kHeatPerVolume * m_grid.volume[0]);
    m_buoyancyFlux = kGravity / kHeatPerVolume * expansion * (loss - m_heating[0] / perDegree);
    if (!m_switches.heat) {
        std::fill(m_heating.begin(), m_heating.end(), Real(0.0));
        return;
    }
    m_heating[0] -= loss * perDegree;
    // A thin layer under a gale follows the air within a step: damped there as by a linearised implicit step, and
    // left alone where the step is a small part of that time.
    constexpr double kSmallPart = 0.2;
    const Real stiffness =
        dt * perDegree * (surfaceLoss(air, surface + 0.5) - surfaceLoss(air, surface - 0.5));
    m_heating[0] = m_heating[0] / (1.0 + max(stiffness - kSmallPart, Real(0.0)));
}

template <class Real>
void Column<Real>::diffusivities(const Air<Real>& air) {
    if (m_switches.fixedDiffusivity >= 0.0) {
        std::fill(m_diffusivity.begin(), m_diffusivity.end(), Real(m_switches.fixedDiffusivity));
    } else if (m_switches.mixing) {
        for (int member = 0; member < kLanes<Real>; ++member) {
            for (int i = 0; i < m_layers; ++i) {
                m_laneA[i] = lane(m_density[i], member);
            }
            m_convection.diffusivity(m_laneA, lane(m_buoyancyFlux, member), m_laneFaces);
            for (int i = 1; i < m_layers; ++i) {
                setLane(m_overturning[i], member, m_laneFaces[i]);
            }
        }
        turbulentDiffusivity(m_grid, m_density, m_overturning, air.wind10, m_parameters.latitude_deg,
                             m_diffusivity);
    } else {
        std::fill(m_diffusivity.begin(), m_diffusivity.end(), Real(0.0));
    }
}

template <class Real>
void Column<Real>::integrateLane(const Aeration& aeration, const State<Real>& state, int member) {
    std::vector<double> temperature(m_layers), salinity(m_layers), density(m_layers), oxygen(m_layers);
    for (int i = 0; i < m_layers; ++i) {
        temperature[i] = lane(state.heat[i][0], member);
        salinity[i] = lane(state.solutes[i][kSalt], member);
        density[i] = lane(m_density[i], member);
        oxygen[i] = lane(state.solutes[i][kOxygen], member);
    }
    const PlumeSource source{aeration.depth, m_aerator.freeAir, aeration.open, m_aerator.bubbleDiameter,
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
        setLane(m_plumeDensity[i], member, density[i]);
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
    for (int member = 0; member < kLanes<Real>; ++member) {
        double moved = 0.0;
        for (int i = 0; i < m_layers; ++i) {
            moved = std::max(moved, std::fabs(lane(m_density[i], member) - lane(m_plumeDensity[i], member)));
        }
        if (changed || m_plumeStale || moved > kPlumeTolerance) {
            integrateLane(aeration, state, member);
        }
    }
    m_flows.moving = true;
    m_last = aeration;
    m_plumeStale = false;
}

/// Spring water enters where the standing water is as dense as itself, parted between two layers; as much runs
/// over at the surface.
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

template <class Real>
void Column<Real>::placeFish(const State<Real>& state) {
    const Lines& lines = m_parameters.lines;
    for (int member = 0; member < kLanes<Real>; ++member) {
        for (int i = 0; i < m_layers; ++i) {
            m_laneA[i] = lane(state.solutes[i][kOxygen], member);
            m_laneB[i] = lane(state.heat[i][0], member);
        }
        FishWater& water = m_fishWater[member];
        const double best = water.oxygen(m_laneA, m_laneB, lines.fishShare, lines.fishMax);
        water.places(m_laneA, m_laneB, best, lines.stress, lines.fishMax, m_lanePlaces);
        for (int i = 0; i < m_layers; ++i) {
            setLane(m_fishPlace[i], member, m_lanePlaces[i]);
        }
        setLane(m_best, member, best);
    }
}

template <class Real>
void Column<Real>::reactionsOf(const Air<Real>& air, const Aeration& aeration, const State<Real>& state,
                               double dt) {
    const Parameters<Real>& p = m_parameters;
    const bool dark = !(largestLane(air.shortwave) > 0.0);
    const bool running = aeration.open > 0;
    const Real logSediment = log(p.sedimentTheta);
    const Real fishAt20 = p.fishStock * fishRespiration(p.fishMass_g, 20.0);
    const int stirred = running ? m_grid.layerAt(aeration.depth) : -1;
    const Real stirs = reaches(aeration);
    Real* const sediment = m_reactions.sediment.data();
    Real* const growth = m_reactions.photosynthesis.data();
    Real* const respiration = m_reactions.respiration.data();
    Real* const fish = m_reactions.fish.data();
    Real* const fast = m_reactions.fast.data();
    Real* const medium = m_reactions.medium.data();
    Real* const slow = m_reactions.slow.data();
    const std::array<Real, 1>* const heat = state.heat.data();
    const std::array<Real, kSolutes>* const solutes = state.solutes.data();
    const Real* const places = m_fishPlace.data();
    const Real* const weedShare = m_weedPerArea.data();
    const double* const volume = m_grid.volume.data();
    const double* const mud = m_grid.bottomArea.data();
    DAWNLINE_SIDE_BY_SIDE
    for (int i = 0; i < m_layers; ++i) {
        const Real temperature = heat[i][0];
        const Real warm = temperature - 20.0;
        const Real chlorophyll = solutes[i][kChlorophyll];
        const Real weeds = p.weedMass * weedShare[i];
        growth[i] = p.photosynthesisFactor * (p.photosynthesis * chlorophyll + p.weedPhotosynthesis * weeds) *
                    rateExp(kLogPhotosynthesisTheta * warm);
        respiration[i] =
            p.respirationFactor *
            (p.respirationBase + p.respirationPerChlorophyll * chlorophyll + p.weedRespiration * weeds) *
            rateExp(kLogRespirationTheta * warm);
        fish[i] = fishAt20 * fishTemperatureFactor(temperature) * places[i] / volume[i];
        sediment[i] = p.sedimentDemand * mud[i] / volume[i] * rateExp(logSediment * warm) * coldMud(temperature);
        const Real debtWarm = rateExp(kLogDebtTheta * warm);
        fast[i] = p.fastRate * debtWarm;
        medium[i] = p.mediumRate * debtWarm;
        slow[i] = p.slowRate * rateExp(kLogSlowTheta * warm);
    }
    if (stirred >= 0) {
        // The mud under the diffusers eats faster while they stir it.
        const double area = std::min(kStirredArea.value * aeration.open, m_grid.faceArea[stirred]);
        const Real& temperature = heat[stirred][0];
        sediment[stirred] += stirs * p.sedimentDemand * (area * (kStirredDemandFactor.value - 1.0)) /
                             volume[stirred] * rateExp(logSediment * (temperature - 20.0)) *
                             coldMud(temperature);
    }
    for (int i = 0; i < m_layers; ++i) {
        growth[i] = dark ? Real(0.0) : growth[i] * tanh(m_light[i] / p.saturationLight);
        const Real bubbles = running ? m_bubbleNet[i] : Real(0.0);
        m_reactions.bubbles[i] = max(bubbles, Real(0.0));
        m_reactions.stripped[i] = max(-bubbles, Real(0.0)) / m_bubbleReference[i];
        m_reactions.stirredFast[i] = 0.0;
        m_reactions.stirredMedium[i] = 0.0;
    }
    const Real surface = state.heat[0][0];
    const Real velocity = pistonVelocityOxygen(surface, air.wind10, m_buoyancyFlux);
    m_reactions.exchange[0] = velocity * (m_grid.faceArea[0] / m_grid.volume[0]);
    m_reactions.saturation = oxygenSaturationKernel(surface, state.solutes[0][kSalt], p.airPressure);

    // Standard transfer brought to the pond's temperature and water (engine/air_transfer.h), spread over what a
    // splashing aerator turns over.
    m_reactions.aeratorSaturation = kAeratorBeta.value * m_reactions.saturation;
    const Real perVolume = aeration.surface ? p.aeratorTransfer / m_reach * kAeratorAlpha.value /
                                                  kStandardSaturation * temperatureFactor(kTransferTheta, surface)
                                            : Real(0.0);
    for (int i = 0; i < m_layers; ++i) {
        m_reactions.aerator[i] =
            perVolume * std::clamp((kAeratorReach.value - m_grid.face[i]) / m_grid.thickness[i], 0.0, 1.0);
    }

    // Muck leaves its store first order while the diffuser runs; over a step exactly so.
    if (stirred >= 0) {
        prepareMuck(dt);
        const double perSecond =
            dt > 0.0 ? m_muckReleased / dt : 1.0 / (kMuckReleaseTime_h.value * kHour);
        Real released = 0.0;
        for (int d = 0; d < std::min(aeration.open, static_cast<int>(state.muck.size())); ++d) {
            released += state.muck[d] * perSecond;
        }
        released = stirs * released / m_grid.volume[stirred];
        m_reactions.stirredFast[stirred] = kMuckFastShare.value * released;
        m_reactions.stirredMedium[stirred] = (1.0 - kMuckFastShare.value) * released;
    }
}

/// 1 for members whose muck a diffuser reaches, else 0.
template <class Real>
Real Column<Real>::reaches(const Aeration& aeration) const {
    return wherePositive(m_parameters.muckReach - aeration.depth, Real(0.0), Real(1.0));
}

template <class Real>
void Column<Real>::prepareMuck(double dt) {
    if (dt != m_muckStep) {
        m_muckStep = dt;
        m_muckReleased = -std::expm1(-dt / (kMuckReleaseTime_h.value * kHour));
        m_muckRebuilt = -std::expm1(-dt / (kMuckRebuildTime_d.value * kDay));
    }
}

template <class Real>
void Column<Real>::stirMuck(const Aeration& aeration, double dt) {
    const Real stirs = reaches(aeration);
    prepareMuck(dt);
    for (int d = 0; d < static_cast<int>(m_state.muck.size()); ++d) {
        const Real releases = d < aeration.open ? stirs : Real(0.0);
        m_state.muck[d] += (1.0 - releases) * (m_parameters.muckStore - m_state.muck[d]) * m_muckRebuilt -
                           releases * m_state.muck[d] * m_muckReleased;
    }
}

/// The dated table scales the pond's algae and weeds; what dies becomes medium debt where it stood.
template <class Real>
void Column<Real>::growPlants(const Air<Real>& air) {
    if (largestLane(abs(air.chlorophyllScale - m_chlorophyllScale)) == 0.0 &&
        largestLane(abs(air.weedScale - m_weedScale)) == 0.0) {
        return;
    }
    const Real grown = air.chlorophyllScale / max(m_chlorophyllScale, Real(1e-9));
    const Real deadWeeds = max(m_weedScale - air.weedScale, Real(0.0)) * m_weedMassAtStart;
    for (int i = 0; i < m_layers; ++i) {
        auto& s = m_state.solutes[i];
        const Real before = s[kChlorophyll];
        s[kChlorophyll] = before * grown;
        const Real dead = kDebtOfChlorophyll.value * max(before - s[kChlorophyll], Real(0.0)) +
                          kDebtOfWeeds.value * deadWeeds * m_weedPerArea[i];
        s[kMedium] += dead;
        m_ledger.debtOfPlants += m_grid.volume[i] * dead;
    }
    m_parameters.weedMass = air.weedScale * m_weedMassAtStart;
    m_chlorophyllScale = air.chlorophyllScale;
    m_weedScale = air.weedScale;
}

template <class Real>
void Column<Real>::record(double dt) {
    const ReactionAmounts<Real>& a = m_amounts;
    auto& term = m_ledger.oxygen;
    for (int i = 0; i < m_layers; ++i) {
        const double volume = m_grid.volume[i];
        term[kPhotosynthesis] += volume * dt * m_reactions.photosynthesis[i];
        term[kRespiration] -= volume * a.respiration[i];
        term[kFishTerm] -= volume * a.fish[i];
        term[kSediment] -= volume * a.sediment[i];
        term[kDebtTerm] -= volume * (a.fast[i] + a.medium[i] + a.slow[i]);
        term[kSurface] += volume * (a.surfaceIn[i] - a.surfaceOut[i]);
        term[kBubbles] += volume * (dt * m_reactions.bubbles[i] - a.stripped[i]);
        term[kSurfaceAerator] += volume * (a.aerated[i] - a.spilled[i]);
        m_ledger.debtRegenerated += volume * a.regenerated[i];
        m_ledger.debtStirred += volume * dt * (m_reactions.stirredFast[i] + m_reactions.stirredMedium[i]);
        m_ledger.debtOxidised += volume * (a.fast[i] + a.medium[i]);
    }
}

template <class Real>
void Column<Real>::gather(const State<Real>& state) {
    for (int i = 0; i < m_layers; ++i) {
        m_work.oxygen[i] = state.solutes[i][kOxygen];
        m_work.fast[i] = state.solutes[i][kFast];
        m_work.medium[i] = state.solutes[i][kMedium];
        m_work.slow[i] = state.solutes[i][kSlow];
    }
}

template <class Real>
void Column<Real>::step(double dt, const Air<Real>& air, const Aeration& aeration) {
    growPlants(air);
    sunlight(air, m_state);
    heatRates(air, m_state, dt);
    for (int i = 0; i < m_layers; ++i) {
        m_state.heat[i][0] += dt * m_heating[i];
    }
    densities(m_state);
    diffusivities(air);
    plume(aeration, m_state);
    m_transportHeat.prepare(dt, m_diffusivity, kMolecularHeat, m_flows);
    m_transportHeat.template advance<1, 1>(m_flows, {m_parameters.springTemperature}, m_state.heat);
    m_transportSolutes.prepare(dt, m_diffusivity, kMolecularSolute, m_flows);
    const std::array<Real, kSolutes> over =
        m_poisons ? m_transportSolutes.template advance<kSolutes, kSolutes>(m_flows, m_springWater, m_state.solutes)
                  : m_transportSolutes.template advance<kAlwaysCarried, kSolutes>(m_flows, m_springWater,
                                                                                  m_state.solutes);
    const Real spring = dt * m_parameters.springFlow;
    m_ledger.oxygen[kInflow] += spring * (m_springWater[kOxygen] - over[kOxygen]);
    m_ledger.debtInflow -= spring * (over[kFast] + over[kMedium]);
    reactionsOf(air, aeration, m_state, dt);
    gather(m_state);
    reactionStep(m_reactions, dt, m_work, m_amounts);
    record(dt);
    for (int i = 0; i < m_layers; ++i) {
        auto& s = m_state.solutes[i];
        if (m_poisons) {
            // The poisons go with the pools that hold them; new fast debt brings its share of sulfide.
            const Real newFast = m_reactions.fastShare * m_amounts.regenerated[i] + dt * m_reactions.stirredFast[i];
            s[kSulfide] = s[kSulfide] * (1.0 - m_amounts.fast[i] / max(s[kFast], Real(1e-30))) +
                          m_parameters.sulfideOfFast * newFast;
            s[kAmmonia] = s[kAmmonia] * (1.0 - m_amounts.slow[i] / max(s[kSlow], Real(1e-30)));
        }
        s[kOxygen] = m_work.oxygen[i];
        s[kFast] = m_work.fast[i];
        s[kMedium] = m_work.medium[i];
        s[kSlow] = m_work.slow[i];
    }
    stirMuck(aeration, dt);
    placeFish(m_state);
    m_ledger.lifted += dt * m_lifting;
}

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
    reactionsOf(air, aeration, state, 0.0);
    gather(state);
    reactionRates(m_reactions, m_work, m_amounts);
    const ReactionAmounts<Real>& a = m_amounts;
    for (int i = 0; i < m_layers; ++i) {
        out.heat[i][0] += m_heating[i];
        auto& d = out.solutes[i];
        d[kOxygen] += m_reactions.photosynthesis[i] + m_reactions.bubbles[i] + a.aerated[i] -
                      a.spilled[i] + a.surfaceIn[i] - a.surfaceOut[i] - a.stripped[i] - a.respiration[i] - a.fish[i] -
                      a.sediment[i] - a.fast[i] - a.medium[i] - a.slow[i];
        d[kFast] += m_reactions.fastShare * a.regenerated[i] + m_reactions.stirredFast[i] - a.fast[i];
        d[kMedium] += (1.0 - m_reactions.fastShare) * a.regenerated[i] + m_reactions.stirredMedium[i] -
                      a.medium[i];
        d[kSlow] -= a.slow[i];
        if (m_poisons) {
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
        out.muck[k] = (1.0 - releases) * (m_parameters.muckStore - state.muck[k]) /
                          (kMuckRebuildTime_d.value * kDay) -
                      releases * state.muck[k] / (kMuckReleaseTime_h.value * kHour);
    }
}

template <class Real>
Real Column<Real>::whereFishAre(Solute which, double (*poisonousShare)(double temperature, double ph)) const {
    Real sum = 0.0;
    for (int member = 0; member < kLanes<Real>; ++member) {
        double total = 0.0;
        for (int i = 0; i < m_layers; ++i) {
            total += lane(m_fishPlace[i], member) * lane(m_state.solutes[i][which], member) *
                     poisonousShare(lane(m_state.heat[i][0], member), m_parameters.ph);
        }
        setLane(sum, member, total);
    }
    return sum;
}

template <class Real>
Real Column<Real>::unionisedAmmonia() const {
    return whereFishAre(kAmmonia, unionisedAmmoniaShare);
}

template <class Real>
Real Column<Real>::hydrogenSulfide() const {
    return whereFishAre(kSulfide, undissociatedSulfideShare);
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

template class Column<double>;
template class Column<Pack<4>>;

}  // namespace engine
