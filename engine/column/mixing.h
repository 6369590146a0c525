#pragma once

#include "engine/base/lane_math.h"
#include "engine/base/units.h"
#include "engine/column/constants_mixing.h"
#include "engine/water/basin.h"
#include "engine/water/constants_water.h"
#include "engine/water/parameters.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace engine {

// Turbulent diffusivity at a face as a smooth function of the density difference across that face alone, so
// that the mixing at the end of a step can be found by Newton's method. The flux never falls where the
// difference grows, so that there is one answer for any step.
//
// Wind: Henderson-Sellers (1985), K = kappa w* z / P0 exp(-k* z) / (1 + 37 Ri^2), with the 10-m wind and P0
// 1. Beyond the gradient at which its flux is greatest the flux stays as it is: the published form lets it
// fall by 8 % from there on, and water that mixes less the more it is layered parts into steps.
// A plume that surfaces spreads in a jet, which stirs as a wind would that brings as much energy; stresses of
// both add.
// Convection: where water is denser than the water below, K = c z^2 sqrt(-N^2), free convection after
// Priestley (1954), z from the surface.
// Background diffusion: Fang and Stefan (1996), 1.04e-8 (N^2)^-0.43.
// Molecular diffusion is added by the caller, since it differs between heat and solutes.

/// What mixes at the faces whatever the water's gradients, size N + 1; the ends are 0.
template <class Real>
struct FaceStirring {
    std::vector<Real> neutral;       ///< Diffusivity by wind where nothing is layered [m^2/s]
    std::vector<Real> resistance;    ///< 40 kappa^2 z^2 / shear^2: by it, N^2 resists the wind [s^2]
    std::vector<Real> background;    ///< Background diffusivity [m^2/s]
    std::vector<double> convective;  ///< c z^2 [m^2]
    std::vector<double> stability;   ///< N^2 of a density difference [m^3/kg/s^2]

    explicit FaceStirring(const Grid& grid)
        : neutral(grid.face.size(), Real(0.0)),
          resistance(neutral),
          background(neutral),
          convective(grid.face.size(), 0.0),
          stability(convective) {
        for (int i = 1; i < grid.layers(); ++i) {
            convective[i] = kFreeConvection.value * grid.face[i] * grid.face[i];
            stability[i] = kGravity / kStabilityDensity.value / grid.distance[i];
        }
    }
};

/// Differences of density up to this are rounding, of which water must not overturn [kg/m^3]: four roundings
/// of what single precision holds of warm water beside kDensityOrigin. A night's convection has a hundred
/// times as much between two layers. Doubles round to 1e-15, far below kEasedConvection.
template <class Real>
inline constexpr double kRoundedDensity = kIsSingle<Real> ? 1e-6 : 0.0;

/// The jets in which surfacing plumes spread, as a mean over the pond.
template <class Real>
struct SurfaceJet {
    Real friction = 0.0;   ///< Friction velocity of a wind that brings as much energy [m/s]
    Real thickness = 1.0;  ///< Depth over which its shear fades [m]
};

/// The stirring by wind, for a wind at 10 m [m/s], and by surfacing plumes, and the background under these
/// densities [kg/m^3, size N], which is small and hardly moves within a step.
template <class Real>
void setStirring(const Grid& grid, const std::vector<Real>& density, Real wind10, const SurfaceJet<Real>& jet,
                 double latitude_deg, const MixingParameters<Real>& mixing, FaceStirring<Real>& out) {
    const int layers = grid.layers();
    constexpr double kappa = kKarman.value;
    const double sine = std::sqrt(std::fabs(std::sin(latitude_deg * kPi / 180.0)));
    const Real wind = max(wind10, Real(kLeastWind.value));
    const Real friction = mixing.friction * wind;
    const bool isJet = largestLane(jet.friction) > 0.0;
    const Real perThickness = 1.0 / jet.thickness;
    const Real decay =
        kEkmanDecay.value * std::max(sine, kLeastSine.value) * pow(wind, kEkmanPower.value);  // k* [1/m]
    const double* const face = grid.face.data();
    const double* const perDifference = out.stability.data();
    const Real* const rho = density.data();
    Real *const neutral = out.neutral.data(), *const resistance = out.resistance.data(),
                *const background = out.background.data();
    DAWNLINE_SIDE_BY_SIDE
    for (int i = 1; i < layers; ++i) {
        const double z = face[i];
        const Real ofWind = friction * layerExp(-min(decay * z, Real(40.0)));
        Real shear = ofWind;
        if (isJet) {
            const Real ofJet = jet.friction * layerExp(-min(perThickness * z, Real(40.0)));
            shear = sqrt(ofWind * ofWind + ofJet * ofJet);
        }
        shear = max(shear, Real(1e-15));  // whose square single precision still holds
        neutral[i] = kappa * z * shear;
        resistance[i] = kRichardsonFactor.value * kappa * kappa * z * z / (shear * shear);
        const Real stable = max(perDifference[i] * (rho[i] - rho[i - 1]), Real(kLeastStability.value));
        background[i] = mixing.background * layerExp(kBackgroundPower.value * layerLog(stable));
    }
}

/// Diffusivity at the faces [m^2/s], and the slope of the flux with the gradient [m^2/s], which is never
/// negative; size N + 1, the ends are 0.
/// @param density  Of the layers [kg/m^3], over kDensityOrigin or another, size N.
template <class Real>
void turbulentDiffusivity(const FaceStirring<Real>& stirring, const std::vector<Real>& density,
                          std::vector<Real>& diffusivity, std::vector<Real>& slope) {
    const int layers = static_cast<int>(density.size());
    constexpr double kDamping =
        kRichardsonDamping.value / (kRichardsonHalf.value * kRichardsonHalf.value);  // Of (20 Ri)^2
    // Where the flux is greatest: 20 Ri is the root of d x^2 - x - 1, and the ratio x^2 + 2 x.
    const double widest = (1.0 + std::sqrt(1.0 + 4.0 * kDamping)) / (2.0 * kDamping);
    const double greatest = widest * (widest + 2.0);
    const double* const perDifference = stirring.stability.data();
    const double* const convective = stirring.convective.data();
    const Real* const rho = density.data();
    const Real *const neutral = stirring.neutral.data(), *const resistance = stirring.resistance.data(),
                      *const background = stirring.background.data();
    Real *const outDiffusivity = diffusivity.data(), *const outSlope = slope.data();
    DAWNLINE_SIDE_BY_SIDE
    for (int i = 1; i < layers; ++i) {
        const Real frequency2 = perDifference[i] * (rho[i] - rho[i - 1]);  // N^2 [1/s^2]
        const Real asked = resistance[i] * max(frequency2, Real(0.0));
        const Real ratio = min(asked, Real(greatest)), over = max(asked, Real(greatest));
        const Real x = sqrt(1.0 + ratio) - 1.0;  // 20 Ri
        const Real damped = 1.0 + kDamping * x * x;
        // Smooth through neutral water, where the root alone would make mixing of rounding.
        const Real unstable =
            max(perDifference[i] * (rho[i - 1] - rho[i] - kRoundedDensity<Real>), Real(0.0));
        const Real eased = sqrt(unstable + kEasedConvection.value);
        // One over each from one division.
        const Real first = damped * over, second = (x + 1.0) * eased, all = 1.0 / (first * second);
        const Real ofFirst = second * all, ofSecond = first * all;
        const Real perDamped = over * ofFirst, perOver = damped * ofFirst, perRoot = eased * ofSecond,
                   perEased = (x + 1.0) * ofSecond;
        // Where it is asked for more, the flux stays at its greatest.
        const Real neutralDamped = neutral[i] * perDamped;
        const Real wind = neutralDamped * (greatest * perOver);
        const Real windSlope = neutralDamped * (1.0 - kDamping * x * ratio * (perRoot * perDamped));
        const Real share = unstable * perEased;
        const Real overturning = convective[i] * share;
        outDiffusivity[i] = wind + overturning + background[i];
        outSlope[i] = wherePositive(Real(greatest) - asked, windSlope, Real(0.0)) +
                      (2.0 - 0.5 * share * perEased) * overturning + background[i];
    }
}

}  // namespace engine
