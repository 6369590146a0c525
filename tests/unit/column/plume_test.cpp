#include "engine/column/plume.h"

#include "engine/water/water.h"
#include "tests/support/columns.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>
#include <vector>

namespace {

using namespace engine;

/// A plume from 2.9 m in water of two temperatures that meet at 1 m.
struct TwoLayers {
    Grid grid = test::evenTank(30, 3.0, 1000.0);
    std::vector<double> temperature, salinity, density, oxygen;
    Plume plume;

    TwoLayers(double above, double below) {
        for (const double z : grid.middle) {
            temperature.push_back(z < 1.0 ? above : below);
            salinity.push_back(0.0);
            density.push_back(densityOverOrigin(temperature.back(), 0.0));
            oxygen.push_back(5.0);
        }
        plume = integratePlume({2.9, 5e-4, 1, 3e-3, 101325.0}, {grid, temperature, salinity, density, oxygen},
                               1.5);
    }
    /// Mean density of what the last rise took.
    [[nodiscard]] double densityTaken() const {
        const PlumeSegment& rise = plume.segments.back();
        return std::inner_product(rise.entrained.begin(), rise.entrained.end(), density.begin(), 0.0) /
               rise.flow;
    }
};

// What surfaces denser than the surface sinks back, brings warm water down with it and comes to rest where
// the two waters meet.
TEST(Plume, WhatSinksBackTakesSurfaceWaterDown) {
    const TwoLayers water(24.0, 14.0);
    ASSERT_FALSE(water.plume.segments.empty());
    const PlumeSegment& rise = water.plume.segments.back();
    ASSERT_EQ(rise.topDepth, 0.0);
    const double risen = std::accumulate(rise.entrained.begin(), rise.entrained.end(), 0.0);
    EXPECT_NEAR(rise.flow, risen, 1e-12 * risen);
    EXPECT_LT(water.densityTaken(), rise.topDensity - 0.01);
    double shares = 0.0;
    for (std::size_t i = 0; i < rise.detrained.size(); ++i) {
        shares += rise.detrained[i];
        EXPECT_TRUE(rise.detrained[i] == 0.0 || std::fabs(water.grid.middle[i] - 1.0) < 0.5) << i;
    }
    EXPECT_NEAR(shares, 1.0, 1e-12);
    EXPECT_GT(water.densityTaken(), water.density.front());
    EXPECT_LT(water.densityTaken(), water.density.back());
}

// In water that is the same all through, nothing sinks and nothing is taken in but by the rise.
TEST(Plume, MixedWaterDoesNotSinkBack) {
    const TwoLayers water(18.0, 18.0);
    const PlumeSegment& rise = water.plume.segments.back();
    EXPECT_EQ(rise.detrained.front(), 1.0);
    const double area = kPi * rise.topRadius * rise.topRadius;
    EXPECT_NEAR(rise.flow, area * rise.topSpeed, 1e-12 * rise.flow);
}

// Bubbles that dissolve on their way leave a rise of nothing, in finite numbers.
TEST(Plume, OfBubblesThatDissolveEndsInNothing) {
    const Grid grid = test::evenTank(60, 30.0, 1000.0);
    std::vector<double> temperature, density;
    const std::vector<double> salinity(60, 0.0), oxygen(60, 0.0);
    for (const double z : grid.middle) {
        temperature.push_back(24.0 - 0.5 * z);
        density.push_back(densityOverOrigin(temperature.back(), 0.0));
    }
    const Plume plume =
        integratePlume({29.0, 1e-8, 1, 2e-4, 101325.0}, {grid, temperature, salinity, density, oxygen}, 15.0);
    for (const PlumeSegment& rise : plume.segments) {
        EXPECT_TRUE(std::isfinite(rise.topSpeed) && std::isfinite(rise.topRadius) &&
                    std::isfinite(rise.flow));
        EXPECT_NEAR(std::accumulate(rise.detrained.begin(), rise.detrained.end(), 0.0), 1.0, 1e-12);
    }
}

}  // namespace
