#include "engine/water/water.h"

#include <gtest/gtest.h>

#include <array>
#include <cstddef>

namespace {

using engine::temperatureFactor;

// Factors theta^(T-20) at 10, 15, 25 and 30 degC, recomputed by a separate script. Tolerance: the last digit.
TEST(Rates, ThetaTable) {
    struct Row {
        double theta;
        std::array<double, 4> factor;
    };
    constexpr std::array<Row, 6> kTable = {{{1.024, {0.789, 0.888, 1.126, 1.268}},
                                            {1.036, {0.702, 0.838, 1.193, 1.424}},
                                            {1.047, {0.632, 0.795, 1.258, 1.583}},
                                            {1.065, {0.533, 0.730, 1.370, 1.877}},
                                            {1.066, {0.528, 0.727, 1.377, 1.895}},
                                            {1.08, {0.463, 0.681, 1.469, 2.159}}}};
    constexpr std::array<double, 4> kTemperatures = {10.0, 15.0, 25.0, 30.0};
    for (const Row& row : kTable) {
        for (std::size_t i = 0; i < kTemperatures.size(); ++i) {
            EXPECT_NEAR(temperatureFactor(row.theta, kTemperatures[i]), row.factor[i], 6e-4)
                << row.theta << " at " << kTemperatures[i] << " degC";
        }
    }
}

// Lin, Water and Wastewater Calculations Manual, p. 79: a sediment demand of 3.86 g/m^2/d at 24 degC is 3.21
// at 20 degC with theta 1.047. Tolerance 0.005.
TEST(Rates, SedimentDemandTo20Degrees) {
    EXPECT_NEAR(3.86 / temperatureFactor(1.047, 24.0), 3.21, 0.005);
}

// A published river example (22 degC, theta 1.047): 0.20 and 0.40 per day become 0.219 and 0.438. Tolerance
// 0.005.
TEST(Rates, RiverExampleAt22Degrees) {
    EXPECT_NEAR(0.20 * temperatureFactor(1.047, 22.0), 0.219, 0.005);
    EXPECT_NEAR(0.40 * temperatureFactor(1.047, 22.0), 0.438, 0.005);
}

// Eppley (1972) as 0.851 x 1.066^T doublings a day; an open model's test prints 1.17, 3.06 and 5.79 at 5, 20
// and 30 degC (tolerance: the last digit), and a separate script the four others. The form 0.851 x 10^(0.0275
// T) is 1 to 2 % lower and is not used.
TEST(Rates, EppleyGrowth) {
    const auto doublings = [](double t) {
        return 0.851 * temperatureFactor(1.066, t) / temperatureFactor(1.066, 0.0);
    };
    EXPECT_NEAR(doublings(5.0), 1.17, 0.005);
    EXPECT_NEAR(doublings(20.0), 3.06, 0.005);
    EXPECT_NEAR(doublings(30.0), 5.79, 0.005);
    EXPECT_NEAR(doublings(10.0), 1.6125, 1e-4);
    EXPECT_NEAR(doublings(20.0), 3.0554, 1e-4);
    EXPECT_NEAR(doublings(25.0), 4.2059, 1e-4);
    EXPECT_NEAR(doublings(30.0), 5.7896, 1e-4);
}

}  // namespace
