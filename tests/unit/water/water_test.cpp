#include "engine/water/water.h"

#include "engine/base/error.h"
#include "engine/base/units.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <string>

namespace {

using namespace engine;

const double kNaN = std::numeric_limits<double>::quiet_NaN();

TEST(Water, SaturationFallsWithWarmthAndSaltAndRisesWithPressure) {
    double previous = 1e9;
    for (double t = -2.0; t <= 45.0; t += 0.5) {
        const double fresh = oxygenSaturation(t, 0.0, kStandardPressure);
        EXPECT_LT(fresh, previous) << t;
        EXPECT_GT(fresh, oxygenSaturation(t, 5.0, kStandardPressure)) << t;
        EXPECT_GT(fresh, oxygenSaturation(t, 0.0, 90e3)) << t;
        previous = fresh;
    }
}

TEST(Water, SaturationRefusesEachInputOutOfRangeByName) {
    const auto complaint = [](double t, double s, double p) -> std::string {
        try {
            (void)oxygenSaturation(t, s, p);
        } catch (const ArgumentError& error) {
            return error.what();
        }
        return {};
    };
    EXPECT_EQ(complaint(46.0, 0.0, 101325.0), "water temperature is 46, but must be from -2 to 45 degC.");
    EXPECT_EQ(complaint(kNaN, 0.0, 101325.0),
              "water temperature is not a finite number, but must be from -2 to 45 degC.");
    EXPECT_EQ(complaint(20.0, -0.1, 101325.0),
              "salinity is -0.1, but must be from 0 to 42 (practical salinity).");
    EXPECT_EQ(complaint(20.0, 0.0, 101.325), "air pressure is 101.325, but must be from 40000 to 115000 Pa.");
    EXPECT_EQ(complaint(-2.0, 42.0, 40e3), "");
    EXPECT_THROW((void)airPressure(7001.0), ArgumentError);
    EXPECT_THROW((void)vapourPressure(kNaN), ArgumentError);
}

TEST(Water, KernelsPassNotANumberOn) {
    EXPECT_TRUE(std::isnan(oxygenSaturationKernel(kNaN, 0.0, kStandardPressure)));
    EXPECT_TRUE(std::isnan(waterDensity(kNaN, 0.0)));
}

TEST(Water, DensityRisesWithSaltAlsoFromNothing) {
    for (double t = 0.0; t <= 40.0; t += 5.0) {
        EXPECT_GT(waterDensity(t, 0.01), waterDensity(t, 0.0)) << t;
        EXPECT_TRUE(std::isfinite(waterDensity(t, -1e-9))) << t;
    }
}

}  // namespace
