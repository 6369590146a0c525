#include "engine/water/basin.h"

#include "engine/water/water.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>
#include <vector>

namespace {

using engine::Basin;
using engine::BasinShape;
using engine::Grid;

BasinShape powerForm() {
    BasinShape shape;
    shape.area = 8000.0;
    shape.maxDepth = 3.4;
    shape.meanDepth = 1.3;
    return shape;
}

BasinShape contours() {
    BasinShape shape;
    shape.contours = {{0.0, 8000.0}, {0.7, 7000.0}, {2.5, 3000.0}, {3.4, 500.0}};
    return shape;
}

/// Water below a depth by the midpoint rule over 200000 slices, good to 1e-6 for these shapes.
double integratedBelow(const Basin& basin, double depth) {
    constexpr int kSlices = 200000;
    const double slice = (basin.maxDepth() - depth) / kSlices;
    double volume = 0.0;
    for (int i = 0; i < kSlices; ++i) {
        volume += basin.area(depth + (i + 0.5) * slice) * slice;
    }
    return volume;
}

TEST(Basin, VolumesAreIntegralsOfTheArea) {
    for (const BasinShape& shape : {powerForm(), contours()}) {
        const Basin basin(shape);
        for (const double depth : {0.0, 0.3, 0.7, 1.9, 2.5, 3.2}) {
            const double wanted = integratedBelow(basin, depth);
            EXPECT_NEAR(basin.volumeBelow(depth), wanted, 1e-6 * wanted) << depth;
        }
        EXPECT_EQ(basin.volumeBelow(3.4), 0.0);
        EXPECT_EQ(basin.volumeBelow(9.0), 0.0);
    }
}

TEST(Basin, PowerFormHasItsMeanDepth) {
    const Basin basin(powerForm());
    EXPECT_NEAR(basin.volume() / basin.area(0.0), 1.3, 1e-12);
    EXPECT_EQ(basin.area(0.0), 8000.0);
    // A(z) = A0 (1 - z / zmax)^p, p = 3.4 / 1.3 - 1: half way down 8000 x 0.5^1.61538 = 2611.1.
    EXPECT_NEAR(basin.area(1.7), 2611.1, 0.1);
}

TEST(Basin, ContoursAreLinearBetween) {
    const Basin basin(contours());
    EXPECT_NEAR(basin.area(0.35), 7500.0, 1e-9);
    EXPECT_NEAR(basin.area(1.6), 5000.0, 1e-9);
    // By hand: (8000 + 7000) / 2 x 0.7 + (7000 + 3000) / 2 x 1.8 + (3000 + 500) / 2 x 0.9.
    EXPECT_NEAR(basin.volume(), 5250.0 + 9000.0 + 1575.0, 1e-9);
}

TEST(Grid, HoldsTheWholePond) {
    for (const BasinShape& shape : {powerForm(), contours()}) {
        const Basin basin(shape);
        for (const int layers : {4, 40, 160}) {
            const Grid grid =
                engine::makeGrid(basin, layers, 3.0, {0.0, 1.4, 1.6, 3.0}, {996, 996, 998, 998});
            ASSERT_EQ(grid.layers(), layers);
            EXPECT_NEAR(std::accumulate(grid.volume.begin(), grid.volume.end(), 0.0), basin.volume(),
                        1e-12 * basin.volume());
            EXPECT_NEAR(std::accumulate(grid.bottomArea.begin(), grid.bottomArea.end(), 0.0), basin.area(0.0),
                        1e-9);
            EXPECT_NEAR(std::accumulate(grid.thickness.begin(), grid.thickness.end(), 0.0), 3.4, 1e-12);
            for (int i = 0; i < layers; ++i) {
                EXPECT_GT(grid.thickness[i], 0.0);
                EXPECT_GT(grid.volume[i], 0.0);
                EXPECT_EQ(grid.layerAt(grid.middle[i]), i);
            }
            EXPECT_EQ(grid.layerAt(0.0), 0);
            EXPECT_EQ(grid.layerAt(50.0), layers - 1);
        }
    }
}

// Twice as fine through the steepest gradient, twice as coarse below the diffuser. Tolerance a tenth: a layer
// may straddle the change.
TEST(Grid, IsFineWhereItMatters) {
    const Grid grid =
        engine::makeGrid(Basin(powerForm()), 160, 2.6, {0.0, 1.0, 2.0, 3.0}, {996, 996, 998, 998});
    const double plain = grid.thickness[grid.layerAt(0.3)];
    EXPECT_NEAR(grid.thickness[grid.layerAt(1.5)] / plain, 0.5, 0.05);
    EXPECT_NEAR(grid.thickness[grid.layerAt(3.2)] / plain, 2.0, 0.2);
    EXPECT_NEAR(grid.thickness[grid.layerAt(2.4)] / plain, 1.0, 0.1);
}

TEST(Grid, IsEvenWithoutGradients) {
    const Grid grid = engine::makeGrid(Basin(powerForm()), 10, 3.4, {}, {});
    for (const double thickness : grid.thickness) {
        EXPECT_NEAR(thickness, 0.34, 1e-9);
    }
}

TEST(Interpolate, IsLinearInsideAndConstantOutside) {
    const std::vector<double> depths = {1.0, 2.0, 4.0}, values = {10.0, 20.0, 0.0};
    EXPECT_EQ(engine::interpolate(depths, values, 0.0), 10.0);
    EXPECT_EQ(engine::interpolate(depths, values, 1.0), 10.0);
    EXPECT_EQ(engine::interpolate(depths, values, 1.25), 12.5);
    EXPECT_EQ(engine::interpolate(depths, values, 3.0), 10.0);
    EXPECT_EQ(engine::interpolate(depths, values, 9.0), 0.0);
    EXPECT_EQ(engine::interpolate({}, {}, 1.0), 0.0);
}

}  // namespace
