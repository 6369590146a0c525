#include "engine/column/mixing.h"
#include "tests/support/columns.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

namespace {

using engine::Convection;
using engine::Grid;
using engine::test::evenTank;

std::vector<double> overturning(const Grid& grid, const std::vector<double>& density, double buoyancyFlux) {
    std::vector<double> out(grid.face.size());
    Convection convection(grid);
    convection.diffusivity(density, buoyancyFlux, out);
    return out;
}

TEST(Convection, StableWaterRests) {
    const Grid grid = evenTank(10, 3.0, 1000.0);
    std::vector<double> density(10);
    for (int i = 0; i < 10; ++i) {
        density[i] = 996.0 + 0.1 * i;
    }
    for (const double value : overturning(grid, density, 1e-7)) {
        EXPECT_EQ(value, 0.0);
    }
    std::fill(density.begin(), density.end(), 997.0);
    for (const double value : overturning(grid, density, 1e-7)) {
        EXPECT_EQ(value, 0.0);
    }
}

// Over a density that rises by a per metre, a surface that has become heavier by E per area sinks in until
// the mixed water is as dense as that below it: E = a h^2 / 2. The mixed block ends there within a layer,
// however many there are.
TEST(Convection, ReachesAsDeepAsTheHeatLostAllows) {
    const double gradient = 0.5, excess = 0.36;  // [kg/m^4], [kg/m^2]
    const double depth = std::sqrt(2.0 * excess / gradient);
    for (const int layers : {15, 30, 60, 120, 240}) {
        const Grid grid = evenTank(layers, 3.0, 1000.0);
        std::vector<double> density;
        for (const double z : grid.middle) {
            density.push_back(996.0 + gradient * z);
        }
        density[0] += excess / grid.thickness[0];
        const std::vector<double> out = overturning(grid, density, 1e-7);
        double reached = 0.0;
        for (int i = 1; i < layers; ++i) {
            if (out[i] > 0.0) {
                reached = grid.face[i + 1];
            }
        }
        EXPECT_NEAR(reached, depth, grid.thickness[0] + 1e-9) << layers << " layers";
    }
}

// 0.4 h w with w = (B h)^(1/3), or 2 mm/s if that is more; below the surface B has no say.
TEST(Convection, StrengthOfAMixedBlock) {
    const Grid grid = evenTank(6, 3.0, 1000.0);
    const std::vector<double> atSurface = {997.5, 997.0, 997.0, 998.0, 998.0, 998.0};
    EXPECT_NEAR(overturning(grid, atSurface, 1e-6)[1], 0.4 * 1.5 * std::cbrt(1.5e-6), 1e-12);
    EXPECT_NEAR(overturning(grid, atSurface, 1e-6)[2], 0.4 * 1.5 * std::cbrt(1.5e-6), 1e-12);
    EXPECT_EQ(overturning(grid, atSurface, 1e-6)[3], 0.0);
    EXPECT_NEAR(overturning(grid, atSurface, -1e-6)[1], 0.4 * 1.5 * 2e-3, 1e-12);
    const std::vector<double> deep = {996.0, 996.5, 998.0, 997.5, 999.0, 999.0};
    const std::vector<double> out = overturning(grid, deep, 1e-3);
    EXPECT_EQ(out[1], 0.0);
    EXPECT_EQ(out[2], 0.0);
    EXPECT_NEAR(out[3], 0.4 * 1.0 * 2e-3, 1e-12);
    EXPECT_EQ(out[4], 0.0);
}

}  // namespace
