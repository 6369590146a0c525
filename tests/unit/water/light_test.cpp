#include "engine/water/light.h"

#include "engine/base/error.h"

#include <gtest/gtest.h>

#include <cmath>

namespace {

using namespace engine;

TEST(Light, MeanLightOfThinAndThickLayers) {
    EXPECT_NEAR(meanLight(100.0, 0.0), 100.0, 1e-4);
    for (const double x : {1e-9, 1e-7, 1e-5, 1e-3, 0.1, 1.0, 30.0}) {
        const double exact = -100.0 * std::expm1(-x) / x;
        EXPECT_NEAR(meanLight(100.0, x), exact, 1e-4) << x;
    }
}

TEST(Light, ChlorophyllShades) {
    EXPECT_EQ(attenuationOfChlorophyll(0.0), 0.0);
    EXPECT_EQ(attenuationOfChlorophyll(-1e-12), 0.0);
    // Riley by hand: 27^(2/3) = 9, so 0.2376 + 0.486; 1000^(2/3) = 100, so 8.8 + 5.4.
    EXPECT_NEAR(attenuationOfChlorophyll(27.0), 0.7236, 1e-12);
    EXPECT_NEAR(attenuationOfChlorophyll(1000.0), 14.2, 1e-12);
}

TEST(Light, SecchiMustBeADepth) {
    EXPECT_THROW((void)attenuationFromSecchi(0.0), ArgumentError);
    EXPECT_THROW((void)attenuationFromSecchi(-1.0), ArgumentError);
}

}  // namespace
