#include "engine/water/exchange.h"

#include "engine/base/units.h"
#include "engine/water/water.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>

namespace {

using namespace engine;

// Wanninkhof (2014), Limnol. Oceanogr. Methods 12:351-362, oxygen in fresh water: values of his polynomial
// recomputed by a separate script. Tolerance: the last digit. His fit of 1992 (530 at 20 degC) is 4 % higher.
TEST(Exchange, SchmidtNumber) {
    EXPECT_NEAR(schmidtOxygen(0.0), 1745.1, 0.05);
    EXPECT_NEAR(schmidtOxygen(10.0), 889.8, 0.05);
    EXPECT_NEAR(schmidtOxygen(20.0), 510.25, 0.005);
    EXPECT_NEAR(schmidtOxygen(25.0), 398.8, 0.05);
    EXPECT_NEAR(schmidtOxygen(30.0), 312.2, 0.05);
    for (double t = 0.0; t <= 30.0; t += 1.0) {
        const double of1992 = 1800.6 - 120.10 * t + 3.7818 * t * t - 0.047608 * t * t * t;
        // The two fits of one author differ by 4.7 % at most; 6 % leaves room for the ends.
        EXPECT_NEAR(schmidtOxygen(t) / of1992, 1.0, 0.06) << t << " degC";
    }
}

/// The equation of Cole & Caraco [m/s]: our wind part, with their constant in place of our calm floor.
double coleCaraco(double wind) {
    return pistonVelocityWind600(wind) - kCalmExchange_mPerDay.value / kDay +
           2.07 * kMetrePerSecondOfCmPerHour;
}

// Cole & Caraco (1998), Limnol. Oceanogr. 43:647-656: k600 = 2.07 + 0.215 U^1.7 cm/h; values of the equation
// recomputed by a separate script. Tolerance: the last digit.
TEST(Exchange, ColeCaraco) {
    struct Row {
        double wind, k600_cmPerH;
    };
    constexpr std::array<Row, 8> kTable = {{{0.0, 2.07},
                                            {1.0, 2.285},
                                            {2.0, 2.769},
                                            {3.0, 3.462},
                                            {4.0, 4.340},
                                            {5.0, 5.387},
                                            {7.0, 7.946},
                                            {10.0, 12.846}}};
    for (const Row& row : kTable) {
        EXPECT_NEAR(coleCaraco(row.wind) / kMetrePerSecondOfCmPerHour, row.k600_cmPerH, 1e-3)
            << row.wind << " m/s";
    }
}

// The same turned to oxygen [m/d], exponent -1/2; recomputed by a separate script.
TEST(Exchange, ColeCaracoForOxygen) {
    const auto oxygen = [](double t, double wind) {
        return coleCaraco(wind) * std::sqrt(600.0 / schmidtOxygen(t)) * kDay;
    };
    EXPECT_NEAR(oxygen(20.0, 0.0), 0.5387, 1e-4);
    EXPECT_NEAR(oxygen(20.0, 2.0), 0.7205, 1e-4);
    EXPECT_NEAR(oxygen(25.0, 4.0), 1.2775, 1e-4);
    EXPECT_NEAR(oxygen(30.0, 2.0), 0.9211, 1e-4);
}

// Amorocho & DeVries (1980): factors from 2, 3 and 7 m to 10 m, recomputed by a separate script.
TEST(Exchange, WindHeight) {
    EXPECT_NEAR(windAtTen(1.0, 2.0), 1.145, 5e-4);
    EXPECT_NEAR(windAtTen(1.0, 3.0), 1.109, 5e-4);
    EXPECT_NEAR(windAtTen(1.0, 7.0), 1.032, 5e-4);
    EXPECT_DOUBLE_EQ(windAtTen(3.0, 10.0), 3.0);
}

// Emerson (1975), Limnol. Oceanogr. 20:754-761: small sheltered lakes, 0.2 +- 0.1 m/d. Calm without cooling.
TEST(Exchange, CalmPondStaysInEmersonsRange) {
    const double calm = pistonVelocity600(0.0, 0.0) * kDay;
    EXPECT_GE(calm, 0.1);
    EXPECT_LE(calm, 0.3);
}

// Cole et al. (2010), Limnol. Oceanogr. Methods 8:285-293: lakes of 0.3 to 45 ha under mean winds below 3 m/s
// have k600 0.35 to 0.74 m/d by four methods; ponds elsewhere 0.13 to 0.68. Over winds of 0 to 2.5 m/s and
// buoyancy fluxes of 0 to 1e-7 m^2/s^3 (300 W/m^2 lost at 20 degC gives 1.5e-7) every value must lie in 0.2
// to 0.8 m/d, and the mean of all in Cole's range.
TEST(Exchange, SmallLakesStayInTheMeasuredRange) {
    double sum = 0.0;
    int count = 0;
    for (int i = 0; i <= 10; ++i) {
        for (int j = 0; j <= 10; ++j) {
            const double k = pistonVelocity600(0.25 * i, 1e-8 * j) * kDay;
            EXPECT_GE(k, 0.2 - 1e-12);
            EXPECT_LE(k, 0.8);
            sum += k;
            ++count;
        }
    }
    EXPECT_GE(sum / count, 0.35);
    EXPECT_LE(sum / count, 0.74);
}

}  // namespace
