#include "engine/column/weeds.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

namespace engine {
namespace {

constexpr std::size_t kLayers = 20;
const std::vector<double> kThickness(kLayers, 0.1);

struct Shade {
    std::vector<double> shade = std::vector<double>(kLayers, 0.0), among = shade;

    /// @param attenuates  Of weeds that fill two metres of water evenly.
    Shade(double attenuates, double cover) {
        shadeOfWeeds(kThickness, std::vector<double>(kLayers, 0.5), attenuates, cover, shade, among);
    }
    [[nodiscard]] double through() const {
        return std::exp(-std::accumulate(shade.begin(), shade.end(), 0.0));
    }
};

TEST(Weeds, ThatCoverAllShadeAsIfTheyWereDissolved) {
    const Shade all(2.0, 1.0);
    for (std::size_t i = 0; i < kLayers; ++i) {
        EXPECT_NEAR(all.shade[i], 2.0 * 0.5 * 0.1, 1e-12);
        EXPECT_NEAR(all.among[i], 1.0, 1e-12);
    }
}

TEST(Weeds, LetTheLightOfTheGapsThrough) {
    // Beer's law in each of two columns: 1 - c + c exp(-k m / c).
    for (const double cover : {0.2, 0.5, 0.9}) {
        for (const double attenuates : {0.5, 2.0, 8.0}) {
            EXPECT_NEAR(Shade(attenuates, cover).through(),
                        1.0 - cover + cover * std::exp(-attenuates / cover), 1e-12);
        }
    }
    EXPECT_NEAR(Shade(500.0, 0.4).through(), 0.6, 1e-12) << "as black as can be where they stand";
}

TEST(Weeds, HaveLessLightAmongThemThanTheGaps) {
    const Shade half(4.0, 0.5);
    for (std::size_t i = 1; i < kLayers; ++i) {
        EXPECT_LT(half.among[i], half.among[i - 1]);
        // Over one half of the light, the mean of a layer is made of theirs and of the gaps'.
        const double middle = std::exp(-4.0 / 0.5 * 0.5 * 0.1 * (static_cast<double>(i) + 0.5));
        EXPECT_NEAR(half.among[i], middle / (0.5 + 0.5 * middle), 0.01);
    }
}

TEST(Weeds, ThatAreNotThereDoNothing) {
    const Shade none(0.0, 0.0);
    EXPECT_EQ(none.through(), 1.0);
    EXPECT_EQ(none.among.back(), 1.0);
}

}  // namespace
}  // namespace engine
