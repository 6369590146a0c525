#include "engine/column/mixing.h"

#include "engine/water/basin.h"
#include "tests/support/columns.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace {

using namespace engine;

/// Face 5 of ten layers of 0.3 m, under a density difference across it.
struct OneFace {
    Grid grid = test::evenTank(10, 3.0, 1000.0);
    FaceStirring<double> stirring{grid};
    std::vector<double> diffusivity = std::vector<double>(11, 0.0), slope = diffusivity;

    explicit OneFace(double wind) {
        setStirring(grid, std::vector<double>(10, 998.0), wind, {}, 40.0, {}, stirring);
    }
    /// Diffusivity [m^2/s].
    double at(double difference) {
        std::vector<double> density(10, 998.0);
        for (std::size_t i = 5; i < 10; ++i) {
            density[i] += difference;
        }
        turbulentDiffusivity(stirring, density, diffusivity, slope);
        return diffusivity[5];
    }
    /// Flux of density over the face's distance [kg/m^2/s m].
    double flux(double difference) { return at(difference) * difference; }
};

// Of two stresses that add: a jet alone stirs as a wind of its friction velocity that fades over its
// thickness, and a wind beside it leaves no less.
TEST(Mixing, SurfacingPlumeStirsAsAWindWould) {
    const Grid grid = test::evenTank(10, 3.0, 1000.0);
    const std::vector<double> density(10, 998.0);
    FaceStirring<double> wind{grid}, jet{grid}, both{grid};
    setStirring(grid, density, 5.0, {}, 40.0, {}, wind);
    setStirring(grid, density, 0.0, SurfaceJet<double>{0.02, 0.6}, 40.0, {}, jet);
    setStirring(grid, density, 5.0, SurfaceJet<double>{0.02, 0.6}, 40.0, {}, both);
    for (int i = 1; i < 10; ++i) {
        const double z = 0.3 * i, alone = kKarman.value * z * 0.02 * std::exp(-z / 0.6);
        EXPECT_NEAR(jet.neutral[i], alone, 1e-5 * alone + 1e-4 * kKarman.value * z) << z;
        EXPECT_NEAR(both.neutral[i], std::hypot(wind.neutral[i], jet.neutral[i]), 1e-4 * both.neutral[i])
            << z;
    }
}

// The slope is the derivative of the flux, on both sides of neutral water and of the greatest wind flux, to
// what a central difference of 1e-3 of the argument shows.
TEST(Mixing, SlopeIsThatOfTheFlux) {
    for (const double wind : {0.5, 2.0, 4.0, 8.0}) {
        OneFace face(wind);
        for (const double difference : {-0.2, -0.01, -1e-4, 1e-5, 1e-3, 0.02, 0.1, 0.5, 2.0}) {
            const double step = 1e-3 * std::fabs(difference);
            const double slope = (face.flux(difference + step) - face.flux(difference - step)) / (2.0 * step);
            static_cast<void>(face.at(difference));
            EXPECT_NEAR(face.slope[5], slope, 2e-3 * std::fabs(slope) + 1e-12) << wind << " " << difference;
        }
    }
}

// Mixing that fell while layers part would part them on: the flux never falls with the difference.
TEST(Mixing, FluxNeverFallsWithTheGradient) {
    for (const double wind : {0.0, 0.5, 2.0, 4.0, 5.0, 6.0, 12.0}) {
        OneFace face(wind);
        double last = face.flux(-1.0);
        for (double difference = -1.0; difference <= 5.0; difference += 0.002) {
            const double flux = face.flux(difference);
            EXPECT_GE(flux, last - 1e-12 * std::fabs(last)) << wind << " " << difference;
            EXPECT_GE(face.slope[5], 0.0);
            last = flux;
        }
    }
}

// Free convection alone: K = c z^2 sqrt(-N^2), to the 1 % that easing it off in neutral water takes here.
TEST(Mixing, WaterOverLighterWaterOverturns) {
    OneFace face(0.0);
    const double z = 1.5, frequency2 = kGravity / kStabilityDensity.value / 0.3 * 1e-4;
    const double wanted = kFreeConvection.value * z * z * std::sqrt(frequency2);
    EXPECT_NEAR(face.at(-1e-4) - face.at(0.0), wanted, 0.01 * wanted);
    EXPECT_GT(face.at(-1e-4), 100.0 * face.at(1e-4));
}

// A gale over mixed water: kappa w* z exp(-k* z), Henderson-Sellers (1985), worked by hand for 10 m/s at 40
// degrees: w* 0.012, k* 6.6 sqrt(sin 40) 10^-1.84 = 0.0765, K 0.4 x 0.012 x 1.5 x 0.8916 = 6.42e-3 m^2/s.
TEST(Mixing, WindOverMixedWater) {
    OneFace face(10.0);
    EXPECT_NEAR(face.at(0.0), 6.42e-3, 2e-5);
    EXPECT_LT(face.at(1.0), 0.01 * face.at(0.0));
}

}  // namespace
