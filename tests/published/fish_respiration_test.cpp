#include "engine/water/fish_respiration.h"

#include "engine/base/units.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <cstddef>

namespace {

using engine::fishRespiration;
using engine::kHour;

// Boyd, Romaire & Johnston (1978) [mg/g/h] at 15, 20, 25 and 30 degC, computed by a separate script from the
// same remembered coefficients: this guards our arithmetic. Tolerance: the last digit.
TEST(FishRespiration, BoydTable) {
    struct Row {
        double mass_g;
        std::array<double, 4> rate;
    };
    constexpr std::array<Row, 6> kTable = {{{10.0, {0.303, 0.441, 0.643, 0.939}},
                                            {50.0, {0.278, 0.405, 0.591, 0.863}},
                                            {100.0, {0.252, 0.367, 0.535, 0.781}},
                                            {200.0, {0.211, 0.307, 0.447, 0.653}},
                                            {454.0, {0.151, 0.220, 0.321, 0.469}},
                                            {700.0, {0.130, 0.190, 0.277, 0.404}}}};
    for (const Row& row : kTable) {
        for (std::size_t i = 0; i < row.rate.size(); ++i) {
            const double t = 15.0 + 5.0 * static_cast<double>(i);
            EXPECT_NEAR(fishRespiration(row.mass_g, t) * kHour, row.rate[i], 6e-4)
                << row.mass_g << " g, " << t << " degC";
        }
    }
}

// Schroeder (1975), Bamidgeh 27:65-74, warm ponds: 0.001 W^0.82 g per fish and hour (from memory). An
// independent equation; tolerance 30 % at 22 and 25 degC.
TEST(FishRespiration, AgreesWithSchroeder) {
    for (const double mass_g : {50.0, 100.0, 200.0, 454.0, 700.0}) {
        const double schroeder = 0.001 * std::pow(mass_g, 0.82) / (mass_g / 1000.0);  // [g/kg/h]
        for (const double t : {22.0, 25.0}) {
            EXPECT_NEAR(fishRespiration(mass_g, t) * kHour, schroeder, 0.3 * schroeder)
                << mass_g << " g, " << t << " degC";
        }
    }
}

}  // namespace
