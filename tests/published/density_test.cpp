#include "engine/base/units.h"
#include "engine/water/water.h"

#include <gtest/gtest.h>

namespace {

using engine::waterDensity;

// Published temperatures of EOS-80 are of IPTS-68; meters (and we) read ITS-90.
double densityAt68(double temperature68, double salinity) {
    return waterDensity(temperature68 / engine::kIpts68PerIts90.value, salinity);
}

// Tanaka et al. (2001), Metrologia 38:301-309: pure water, 0 to 40 degC of ITS-90.
double tanaka(double t) {
    const double d = t - 3.983035;
    return 999.974950 * (1.0 - d * d * (t + 301.797) / (522528.9 * (t + 69.34881)));
}

// UNESCO technical papers in marine science 44 (1983), p. 19. Tolerance 1e-4, as printed 1e-5.
TEST(Density, UnescoCheckValues) {
    EXPECT_NEAR(densityAt68(5.0, 0.0), 999.96675, 1e-4);
    EXPECT_NEAR(densityAt68(25.0, 0.0), 997.04796, 1e-4);
    EXPECT_NEAR(densityAt68(5.0, 35.0), 1027.67547, 1e-4);
    EXPECT_NEAR(densityAt68(25.0, 35.0), 1023.34306, 1e-4);
    EXPECT_NEAR(densityAt68(20.0, 0.0), 998.2063193824, 1e-6);
}

// Tanaka's printed 998.2067 at 20 degC and 997.0470 at 25 degC (tolerance 1e-4) hold his equation as
// written above; that equation then holds ours in fresh water to 0.005 kg/m^3, what 0.02 degC do at
// 25 degC: meters read to 0.1 degC.
TEST(Density, FreshWaterAgreesWithTanaka) {
    EXPECT_NEAR(tanaka(20.0), 998.2067, 1e-4);
    EXPECT_NEAR(tanaka(25.0), 997.0470, 1e-4);
    for (double t = 0.0; t <= 40.0; t += 1.0) {
        EXPECT_NEAR(waterDensity(t, 0.0), tanaka(t), 0.005) << t << " degC";
    }
}

// Fresh water is heaviest at 3.983 degC (Tanaka et al. 2001). Tolerance 0.01 degC, a tenth of a meter's
// last digit.
TEST(Density, MaximumOfFreshWater) {
    double best = 0.0;
    double heaviest = 0.0;
    for (int i = 3000; i <= 5000; ++i) {
        const double t = 0.001 * i;
        if (waterDensity(t, 0.0) > heaviest) {
            heaviest = waterDensity(t, 0.0);
            best = t;
        }
    }
    EXPECT_NEAR(best, 3.983, 0.01);
}

}  // namespace
