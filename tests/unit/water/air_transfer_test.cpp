#include "engine/water/air_transfer.h"

#include <gtest/gtest.h>

namespace {

using namespace engine;

TEST(AirTransfer, StandardConditionsGiveTheStandardTransfer) {
    const double saturation = oxygenSaturation(20.0, 0.0, kStandardPressure);
    EXPECT_NEAR(kStandardSaturation, saturation, 5e-5);  // the constant has five figures
    EXPECT_NEAR(surfaceTransferShare(20.0, 0.0, saturation, 1.0, 1.0), 1.0, 1e-5);
    EXPECT_EQ(diffusedTransferShare({}), 1.0);
    EXPECT_NEAR(pressureRatio(kStandardPressure, 1.2, 25.0), 1.0, 1e-15);
    EXPECT_NEAR(deepSaturation(0.0), kStandardSaturation, 1e-15);
}

TEST(AirTransfer, AirTakesOxygenFromSupersaturatedWater) {
    EXPECT_LT(surfaceTransferShare(25.0, 12.0, 8.26, 0.95, 0.98), 0.0);
    EXPECT_LT(diffusedTransferShare({.temperature = 25.0, .oxygen = 12.0, .saturationRatio = 0.909}), 0.0);
}

TEST(AirTransfer, DiffuserLosesLessToAltitudeTheDeeperItIs) {
    EXPECT_LT(pressureRatio(90e3, 0.5, 20.0), pressureRatio(90e3, 1.5, 20.0));
    EXPECT_LT(pressureRatio(90e3, 1.5, 20.0), 1.0);
}

}  // namespace
