#include "engine/water/toxic.h"

#include <gtest/gtest.h>

namespace {

using namespace engine;

TEST(Toxic, SharesAreSharesAndMoveTheRightWay) {
    for (double ph = 5.0; ph <= 10.0; ph += 0.5) {
        const double ammonia = unionisedAmmoniaShare(25.0, ph);
        const double sulfide = undissociatedSulfideShare(25.0, ph);
        EXPECT_GT(ammonia, 0.0);
        EXPECT_LT(sulfide, 1.0);
        EXPECT_GT(unionisedAmmoniaShare(25.0, ph + 0.5), ammonia);
        EXPECT_GT(unionisedAmmoniaShare(26.0, ph), ammonia);
        EXPECT_LT(undissociatedSulfideShare(25.0, ph + 0.5), sulfide);
    }
}

TEST(Toxic, HalfOfEachAtItsOwnDissociationConstant) {
    EXPECT_NEAR(undissociatedSulfideShare(18.0, sulfideDissociation(18.0)), 0.5, 1e-12);
    EXPECT_NEAR(unionisedAmmoniaShare(25.0, 0.09018 + 2729.92 / 298.15), 0.5, 1e-12);
}

}  // namespace
