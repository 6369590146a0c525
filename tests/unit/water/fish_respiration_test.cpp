#include "engine/water/fish_respiration.h"

#include <gtest/gtest.h>

namespace {

using engine::fishRespiration;
using engine::fishTemperatureFactor;

TEST(FishRespiration, FallsWithMassAndRisesWithWarmthUpToItsEnds) {
    double previous = 1e9;
    for (double mass_g = 5.0; mass_g <= 795.0; mass_g += 10.0) {
        const double rate = fishRespiration(mass_g, 25.0);
        EXPECT_LT(rate, previous) << mass_g;
        previous = rate;
    }
    for (double t = 0.0; t < 35.0; t += 1.0) {
        EXPECT_LT(fishRespiration(300.0, t), fishRespiration(300.0, t + 1.0)) << t;
    }
    EXPECT_EQ(fishRespiration(3000.0, 25.0), fishRespiration(800.0, 25.0));
    EXPECT_EQ(fishRespiration(1.0, 25.0), fishRespiration(5.0, 25.0));
    EXPECT_EQ(fishRespiration(300.0, 50.0), fishRespiration(300.0, 35.0));
    EXPECT_EQ(fishRespiration(300.0, -3.0), fishRespiration(300.0, 0.0));
}

// The steps take the temperature's part alone, by an exponential that is right to 1e-8.
TEST(FishRespiration, ItsTemperatureFactorIsItsOwnRatio) {
    for (double t = -2.0; t <= 40.0; t += 0.5) {
        const double ratio = fishRespiration(300.0, t) / fishRespiration(300.0, 20.0);
        EXPECT_NEAR(fishTemperatureFactor(t), ratio, 1e-7 * ratio) << t;
    }
}

}  // namespace
