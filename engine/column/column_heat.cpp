// Light, heat and mixing of a column (engine/column/column.h).
#include "engine/base/lane_math.h"
#include "engine/column/column.h"
#include "engine/column/mixing.h"
#include "engine/water/exchange.h"
#include "engine/water/light.h"
#include "engine/water/sky.h"
#include "engine/water/water.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

constexpr double kHeatPerVolume = kWaterDensity.value * kWaterSpecificHeat.value;  // [J/m^3/K]

}  // namespace

template <class Real>
void Column<Real>::densities(const State<Real>& state) {
    const int layers = m_layers;
    Real* const temperature = m_water.temperature.data();
    Real* const salinity = m_water.salinity.data();
    Real* const density = m_water.density.data();
    for (int i = 0; i < layers; ++i) {
        temperature[i] = state.heat[i][0];
        salinity[i] = state.solutes[i][kSalt];
    }
    DAWNLINE_SIDE_BY_SIDE
    for (int i = 0; i < layers; ++i) {
        density[i] = waterDensity(temperature[i], salinity[i]);
    }
}

template <class Real>
void Column<Real>::sunlight(const Air<Real>& air, const State<Real>& state) {
    const Real zero = 0.0;
    const bool dark = !(largestLane(air.shortwave) > 0.0);
    Real visible = (1.0 - kNearInfraredShare.value) * (1.0 - m_parameters.light.albedo) * air.shortwave;
    const Real infrared = kNearInfraredShare.value * (1.0 - m_parameters.light.albedo) * air.shortwave;
    if (dark) {
        std::fill(m_sun.light.begin(), m_sun.light.end(), zero);
        std::fill(m_sun.heating.begin(), m_sun.heating.end(), zero);
        return;
    }
    Real* const left = m_sun.left.data();
    Real* const optical = m_sun.optical.data();
    const int layers = m_layers;
    Real* const chlorophyll = m_water.chlorophyll.data();
    for (int i = 0; i < layers; ++i) {
        chlorophyll[i] = state.solutes[i][kChlorophyll];
    }
    const double* const thickness = m_grid.thickness.data();
    const Real* const weedShare = m_plants.weedPerArea.data();
    const Real rest = m_parameters.light.attenuationRest,
               weedMass = m_parameters.weeds.shading * m_parameters.weeds.mass;
    DAWNLINE_SIDE_BY_SIDE
    for (int i = 0; i < layers; ++i) {
        const Real attenuation = attenuationOfLayer(rest, chlorophyll[i]) + weedMass * weedShare[i];
        optical[i] = attenuation * thickness[i];
        left[i] = layerExp(-optical[i]);
    }
    // The visible share of shortwave as photons, so that the surface gets kParShare of it.
    constexpr double kPhotons = kPhotonsOfShortwave_umol / (1.0 - kNearInfraredShare.value);
    Real* const light = m_sun.light.data();
    DAWNLINE_SIDE_BY_SIDE
    for (int i = 0; i < layers; ++i) {
        light[i] = meanLightShare(left[i], optical[i]) * kPhotons;
    }
    for (int i = 0; i < layers; ++i) {
        light[i] = visible * light[i];
        // Light that falls on the sediment warms the layer over it.
        const double lower = i + 1 < m_layers ? m_grid.faceArea[i + 1] : 0.0;
        m_sun.heating[i] =
            (visible * (m_grid.faceArea[i] - left[i] * lower) +
             infrared * (m_sun.nearInfrared[i] * m_grid.faceArea[i] - m_sun.nearInfrared[i + 1] * lower)) *
            (m_perVolume[i] / kHeatPerVolume);
        visible = visible * left[i];
    }
}

template <class Real>
Real Column<Real>::surfaceLoss(const Air<Real>& air, const Real& surface) const {
    const Real wind7 = air.wind10 * m_windAtSeven;
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
                           kWaterDensity.value;  // [1/K]
    const double perDegree = m_grid.faceArea[0] / (kHeatPerVolume * m_grid.volume[0]);
    m_mixing.buoyancyFlux = kGravity / kHeatPerVolume * expansion * (loss - m_sun.heating[0] / perDegree);
    if (!m_switches.heat) {
        std::fill(m_sun.heating.begin(), m_sun.heating.end(), Real(0.0));
        return;
    }
    m_sun.heating[0] -= loss * perDegree;
    // A thin layer under a gale follows the air within a step: damped there as by a linearised implicit step,
    // and left alone where the step is a small part of that time.
    const Real stiffness =
        dt * perDegree * (surfaceLoss(air, surface + 0.5) - surfaceLoss(air, surface - 0.5));
    m_sun.heating[0] = m_sun.heating[0] / (1.0 + max(stiffness - kExplicitPart, Real(0.0)));
}

template <class Real>
void Column<Real>::diffusivities(const Air<Real>& air) {
    if (m_switches.fixedDiffusivity >= 0.0) {
        std::fill(m_mixing.diffusivity.begin(), m_mixing.diffusivity.end(),
                  Real(m_switches.fixedDiffusivity));
    } else if (m_switches.mixing) {
        for (int member = 0; member < kLanes<Real>; ++member) {
            for (int i = 0; i < m_layers; ++i) {
                m_mixing.memberDensity[i] = lane(m_water.density[i], member);
            }
            m_mixing.convection.diffusivity(m_mixing.memberDensity, lane(m_mixing.buoyancyFlux, member),
                                            m_mixing.memberFaces);
            for (int i = 1; i < m_layers; ++i) {
                setLane(m_mixing.overturning[i], member, m_mixing.memberFaces[i]);
            }
        }
        turbulentDiffusivity(m_grid, m_water.density, m_mixing.overturning, air.wind10,
                             m_parameters.site.latitude_deg, m_mixing.diffusivity);
    } else {
        std::fill(m_mixing.diffusivity.begin(), m_mixing.diffusivity.end(), Real(0.0));
    }
}

template void Column<double>::densities(const State<double>&);
template void Column<double>::sunlight(const Air<double>&, const State<double>&);
template void Column<double>::heatRates(const Air<double>&, const State<double>&, double);
template void Column<double>::diffusivities(const Air<double>&);
template void Column<Pack<4>>::densities(const State<Pack<4>>&);
template void Column<Pack<4>>::sunlight(const Air<Pack<4>>&, const State<Pack<4>>&);
template void Column<Pack<4>>::heatRates(const Air<Pack<4>>&, const State<Pack<4>>&, double);
template void Column<Pack<4>>::diffusivities(const Air<Pack<4>>&);

}  // namespace engine
