#include "engine/water/air_transfer.h"

#include <gtest/gtest.h>

namespace {

using namespace engine;

TEST(AirTransfer, StandardConditionsGiveTheStandardTransfer) {
    const double saturation = oxygenSaturation(20.0, 0.0, kStandardPressure);
    EXPECT_NEAR(kStandardSaturation.value, saturation, 5e-5);  // the constant has five figures
    EXPECT_NEAR(transferRate(1.0, 20.0, 1.0, kStandardSaturation.value) * transferTarget(saturation, 1.0),
                1.0, 1e-5);
}

TEST(AirTransfer, AirTakesOxygenFromSupersaturatedWater) {
    EXPECT_LT(transferTarget(8.26, 0.98), 12.0);
    EXPECT_GT(transferRate(1.0, 25.0, 0.95, kStandardSaturation.value), 0.0);
}

}  // namespace
