#include "engine/water/light.h"

#include "engine/base/error.h"

#include <gtest/gtest.h>

#include <cmath>

namespace {

using namespace engine;

TEST(Light, MeanLightOfThinAndThickLayers) {
    for (const double x : {1e-7, 1e-5, 1e-3, 0.1, 1.0, 30.0}) {
        const double exact = -std::expm1(-x) / x;
        EXPECT_NEAR(meanLightShare(std::exp(-x), x), exact, 1e-6) << x;
    }
}

TEST(Light, ChlorophyllShades) {
    EXPECT_EQ(attenuationOfChlorophyll(0.0), 0.0);
    EXPECT_EQ(attenuationOfChlorophyll(-1e-12), 0.0);
    // Riley by hand: 27^(2/3) = 9, so 0.2376 + 0.486; 1000^(2/3) = 100, so 8.8 + 5.4.
    EXPECT_NEAR(attenuationOfChlorophyll(27.0), 0.7236, 1e-12);
    EXPECT_NEAR(attenuationOfChlorophyll(1000.0), 14.2, 1e-12);
    EXPECT_NEAR(attenuationOfLayer(0.0, 27.0), 0.7236, 1e-12);
    EXPECT_NEAR(attenuationOfLayer(0.3, 1000.0), 14.5, 1e-12);
}

TEST(Light, LayersShadeAsTheBalanceSays) {
    for (double chlorophyll = -1.0; chlorophyll < 400.0; chlorophyll += 0.5) {
        EXPECT_NEAR(attenuationOfLayer(0.2, chlorophyll), 0.2 + attenuationOfChlorophyll(chlorophyll), 1e-13)
            << chlorophyll;
    }
}

TEST(Light, SecchiGoesToAttenuationAndBack) {
    for (const double secchi : {0.1, 0.35, 1.0, 7.0}) {
        EXPECT_NEAR(secchiFromAttenuation(attenuationFromSecchi(secchi)), secchi, 1e-15 * secchi * 4)
            << secchi;
    }
}

TEST(Light, SecchiMustBeADepth) {
    EXPECT_THROW((void)attenuationFromSecchi(0.0), ArgumentError);
    EXPECT_THROW((void)attenuationFromSecchi(-1.0), ArgumentError);
}

}  // namespace
