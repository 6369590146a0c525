#include "engine/water/exchange.h"

#include "engine/base/error.h"
#include "engine/base/units.h"

#include <gtest/gtest.h>

namespace {

using namespace engine;

TEST(Exchange, WarmingAddsNothingAndCoolingAddsInSquares) {
    const double still = pistonVelocity600(0.0, 0.0);
    EXPECT_EQ(pistonVelocity600(0.0, -1e-7), still);
    const double cooled = pistonVelocity600(0.0, 1e-7);
    const double windy = pistonVelocity600(3.0, 0.0);
    const double both = pistonVelocity600(3.0, 1e-7);
    EXPECT_NEAR(both * both - windy * windy, cooled * cooled - still * still, 1e-24);
    EXPECT_GT(cooled, still);
}

TEST(Exchange, ConvectionGrowsWithTheFourthRoot) {
    const auto convection = [](double flux) {
        const double still = pistonVelocity600(0.0, 0.0);
        const double k = pistonVelocity600(0.0, flux);
        return k * k - still * still;
    };
    EXPECT_NEAR(convection(16e-8) / convection(1e-8), 4.0, 1e-9);
}

TEST(Exchange, OxygenCrossesAsSchmidt600WhereTheSchmidtNumberIs600) {
    double low = 10.0;
    double high = 20.0;
    while (high - low > 1e-12) {
        const double middle = 0.5 * (low + high);
        (schmidtOxygen(middle) > 600.0 ? low : high) = middle;
    }
    EXPECT_NEAR(pistonVelocityOxygen(low, 2.0, 0.0) / pistonVelocity600(2.0, 0.0), 1.0, 1e-9);
    EXPECT_GT(pistonVelocityOxygen(30.0, 2.0, 0.0), pistonVelocityOxygen(10.0, 2.0, 0.0));
}

TEST(Exchange, WindConversionsGoBackAndRefuseNonsense) {
    EXPECT_NEAR(windAt(windAt(4.0, 2.0, 10.0), 10.0, 2.0), 4.0, 1e-12);
    EXPECT_THROW((void)windAt(4.0, 0.0, 10.0), ArgumentError);
    EXPECT_THROW((void)windAtTen(-1.0, 2.0), ArgumentError);
}

}  // namespace
