// Light and heat of a column, and what its surface exchanges with the air (engine/column/column.h).
#include "engine/base/lane_math.h"
#include "engine/column/column.h"
#include "engine/water/exchange.h"
#include "engine/water/light.h"
#include "engine/water/sky.h"
#include "engine/water/water.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

constexpr double kHeatPerVolume = kWaterDensity.value * kWaterSpecificHeat.value;  // [J/m^3/K]

/// Two exchanges as one.
template <class Real>
AirExchange<Real> joined(const AirExchange<Real>& one, double rate, double target) {
    if (!(rate > 0.0)) {
        return one;
    }
    const Real both = one.rate + rate;
    return {both, (one.rate * one.target + rate * target) / both};
}

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
        density[i] = densityOverOrigin(temperature[i], salinity[i]);
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
    const Real* const shade = m_plants.shade.data();
    const Real rest = m_parameters.light.attenuationRest;
    DAWNLINE_SIDE_BY_SIDE
    for (int i = 0; i < layers; ++i) {
        optical[i] = attenuationOfLayer(rest, chlorophyll[i]) * thickness[i] + shade[i];
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
    return longwaveOut(surface) - longwaveIn(air.temperature, air.cloud) +
           turbulentLoss(surface, air.temperature, air.vapourPressure, Real(air.wind10 * m_windAtTwo));
}

/// Heat and oxygen that the surface exchanges with the air: rates of the step, as the surface is at its
/// start. Rain brings its own warmth and the oxygen that it holds, and takes as much of the surface over the
/// brim.
template <class Real>
void Column<Real>::meetAir(const Air<Real>& air, const InflowingWater& inflow, const State<Real>& state) {
    const Real surface = state.heat[0][0];
    const Real loss = surfaceLoss(air, surface);
    // [W/m^2/K]; longwave alone has more than kLeast, but air wetter than can be takes some off.
    constexpr double kLeast = 1.0;
    const Real slope = max(surfaceLoss(air, surface + 0.5) - surfaceLoss(air, surface - 0.5), Real(kLeast));
    const Real expansion = (densityOverOrigin(surface - 0.5, state.solutes[0][kSalt]) -
                            densityOverOrigin(surface + 0.5, state.solutes[0][kSalt])) /
                           kWaterDensity.value;  // [1/K]
    const double perDegree = m_grid.faceArea[0] / (kHeatPerVolume * m_grid.volume[0]);
    m_mixing.buoyancyFlux = kGravity / kHeatPerVolume * expansion * (loss - m_sun.heating[0] / perDegree);
    m_transport.oxygenExchange = {
        m_parameters.surface.exchangeFactor *
            (pistonVelocityOxygen(surface, air.wind10, m_mixing.buoyancyFlux) +
             pistonVelocityRain(surface, inflow.rain)) *
            m_grid.faceArea[0],
        oxygenSaturationKernel(surface, state.solutes[0][kSalt], m_parameters.site.airPressure)};
    const double falls = inflow.rain * m_grid.faceArea[0];
    if (falls > 0.0) {
        const double holds =
            oxygenSaturationKernel(std::max(inflow.rainTemperature, 0.0), 0.0, m_parameters.site.airPressure);
        m_transport.oxygenExchange = joined(m_transport.oxygenExchange, falls, holds);
    }
    if (!m_switches.heat) {
        std::fill(m_sun.heating.begin(), m_sun.heating.end(), Real(0.0));
        m_sun.air = {};
        return;
    }
    m_sun.air = joined<Real>({slope * (m_grid.faceArea[0] / kHeatPerVolume), surface - loss / slope}, falls,
                             inflow.rainTemperature);
}

template void Column<double>::densities(const State<double>&);
template void Column<double>::sunlight(const Air<double>&, const State<double>&);
template void Column<double>::meetAir(const Air<double>&, const InflowingWater&, const State<double>&);
template void Column<DoubleLanes>::densities(const State<DoubleLanes>&);
template void Column<DoubleLanes>::sunlight(const Air<DoubleLanes>&, const State<DoubleLanes>&);
template void Column<DoubleLanes>::meetAir(const Air<DoubleLanes>&, const InflowingWater&,
                                           const State<DoubleLanes>&);
template void Column<Lanes>::densities(const State<Lanes>&);
template void Column<Lanes>::sunlight(const Air<Lanes>&, const State<Lanes>&);
template void Column<Lanes>::meetAir(const Air<Lanes>&, const InflowingWater&, const State<Lanes>&);

}  // namespace engine
