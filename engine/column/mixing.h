#pragma once

#include "engine/base/lane_math.h"
#include "engine/base/units.h"
#include "engine/column/constants_mixing.h"
#include "engine/water/basin.h"
#include "engine/water/constants_water.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace engine {

/// Finds where water would overturn: neighbouring layers form mixed blocks, at their mean density, as long as
/// the water above is denser than the water below, so that convection reaches exactly as deep as the heat
/// lost allows, whatever the layers and the step.
class Convection {
public:
    explicit Convection(const Grid& grid) : m_grid(grid), m_blocks(grid.volume.size()) {}

    /// Diffusivity of convection at each face [m^2/s], size N + 1; 0 where nothing overturns. In a mixed
    /// block of thickness h it is 0.4 h w, with Deardorff's velocity w = (B h)^(1/3), at least
    /// kLeastOverturn; less at faces that hardly overturn (kFullOverturn), so that it is a continuous
    /// function of the densities.
    /// @param density  Of one member [kg/m^3], size N.
    /// @param buoyancyFlux  B lost at the surface [m^2/s^3]; matters only to mixed blocks that touch it.
    void diffusivity(const std::vector<double>& density, double buoyancyFlux, std::vector<double>& out);

private:
    struct MixedBlock {
        int first = 0, end = 0;
        double volume = 0.0, mass = 0.0;
    };
    const Grid& m_grid;
    std::vector<MixedBlock> m_blocks;
};

/// Vertical turbulent diffusivity at the faces [m^2/s], size N + 1; the ends are 0.
///
/// Wind: Henderson-Sellers (1985), K = kappa w* z / P0 exp(-k* z) / (1 + 37 Ri^2), with the 10-m wind and
/// P0 1. Background diffusion: Fang and Stefan (1996), 1.04e-8 (N^2)^-0.43. Convection (class above) is added
/// where it is not zero. Molecular diffusion is added by the caller, since it differs between heat and
/// solutes.
///
/// @param density  Of the layers [kg/m^3], size N.
/// @param convection  At the faces [m^2/s], size N + 1.
template <class Real>
void turbulentDiffusivity(const Grid& grid, const std::vector<Real>& density,
                          const std::vector<Real>& convection, Real wind10, double latitude_deg,
                          std::vector<Real>& out) {
    const int layers = grid.layers();
    constexpr double kappa = kKarman.value;
    const double sine = std::sqrt(std::fabs(std::sin(latitude_deg * kPi / 180.0)));
    const Real wind = max(wind10, Real(kLeastWind.value));
    const Real friction = kSurfaceFriction.value * wind;
    const Real decay =
        kEkmanDecay.value * std::max(sine, kLeastSine.value) * pow(wind, kEkmanPower.value);  // k* [1/m]
    out[0] = 0.0;
    out[layers] = 0.0;
    const double* const face = grid.face.data();
    const double* const distance = grid.distance.data();
    const Real* const rho = density.data();
    const Real* const overturning = convection.data();
    Real* const result = out.data();
    DAWNLINE_SIDE_BY_SIDE
    for (int i = 1; i < layers; ++i) {
        const double z = face[i];
        const Real frequency2 =
            (kGravity / kStabilityDensity.value) / distance[i] * (rho[i] - rho[i - 1]);  // N^2 [1/s^2]
        const Real stable = max(frequency2, Real(0.0));
        const Real damping = layerExp(-min(decay * z, Real(40.0)));
        const Real shear = friction * damping;
        const Real ratio = kRichardsonFactor.value * kappa * kappa * z * z * stable / (shear * shear + 1e-30);
        const Real richardson = (sqrt(1.0 + ratio) - 1.0) / kRichardsonHalf.value;
        const Real windy = kappa * z * shear / (1.0 + kRichardsonDamping.value * richardson * richardson);
        const Real background =
            kBackgroundDiffusion.value *
            layerExp(kBackgroundPower.value * layerLog(max(stable, Real(kLeastStability.value))));
        result[i] = windy + background + overturning[i];
    }
}

}  // namespace engine
