#include "engine/water/toxic.h"

#include "engine/base/units.h"
#include "engine/water/carbonate.h"
#include "engine/water/priors.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <cstddef>

namespace {

using namespace engine;

const double kLn2 = std::log(2.0);

// Emerson et al. (1975), J. Fish. Res. Board Can. 32:2379-2383, percent NH3 at 25 degC. Tolerance 1.5 %, as
// the printed values have two or three figures.
TEST(Ammonia, EmersonAt25Degrees) {
    constexpr std::array<double, 5> kPercent = {0.18, 0.56, 1.77, 5.37, 15.3};
    for (std::size_t i = 0; i < kPercent.size(); ++i) {
        const double ph = 6.5 + 0.5 * static_cast<double>(i);
        EXPECT_NEAR(100.0 * unionisedAmmoniaShare(25.0, ph), kPercent[i], 0.015 * kPercent[i]) << ph;
    }
}

// The same table at 20 degC, pH 7 to 9 (row from memory). Tolerance 1.5 %.
TEST(Ammonia, EmersonAt20Degrees) {
    constexpr std::array<double, 5> kPercent = {0.396, 1.24, 3.82, 11.2, 28.4};
    for (std::size_t i = 0; i < kPercent.size(); ++i) {
        const double ph = 7.0 + 0.5 * static_cast<double>(i);
        EXPECT_NEAR(100.0 * unionisedAmmoniaShare(20.0, ph), kPercent[i], 0.015 * kPercent[i]) << ph;
    }
}

// Two hobby-science tables at 18 degC: pH 7.0 factor 0.0034; pH 7.7, pKa 9.465, 0.2 mg/L NH4 beside 0.0032
// mg/L NH3. NH3 and NH4 have masses 17.031 and 18.039. Tolerance 1 % and the last printed digit.
TEST(Ammonia, TwoTablesAt18Degrees) {
    EXPECT_NEAR(unionisedAmmoniaShare(18.0, 7.0), 0.0034, 0.01 * 0.0034);
    const double share = unionisedAmmoniaShare(18.0, 7.7);
    EXPECT_NEAR(7.7 + std::log10((1.0 - share) / share), 9.465, 0.01 * 9.465);
    EXPECT_NEAR(0.2 * share / (1.0 - share) * 17.031 / 18.039, 0.0032, 5e-5 + 0.01 * 0.0032);
}

// Hershey, Plese & Millero (1988), Limnol. Oceanogr. 33:269-274: pK1 6.980 at 25 degC; the others and the
// shares by a separate script. Tolerance: the last digit.
TEST(Sulfide, Dissociation) {
    EXPECT_NEAR(sulfideDissociation(25.0), 6.980, 1e-3);
    EXPECT_NEAR(sulfideDissociation(20.0), 7.056, 1e-3);
    EXPECT_NEAR(sulfideDissociation(30.0), 6.912, 1e-3);
    constexpr std::array<double, 5> kShare = {0.751, 0.489, 0.232, 0.0873, 0.0293};
    for (std::size_t i = 0; i < kShare.size(); ++i) {
        const double ph = 6.5 + 0.5 * static_cast<double>(i);
        EXPECT_NEAR(undissociatedSulfideShare(25.0, ph), kShare[i], 6e-4) << ph;
    }
}

// The fast debt is iron and sulfide, and its rate lies between the two. Iron alone is gone sooner: Singer &
// Stumm (1970) as in USGS PHREEQC's example 9, (2.91e-9 + 1.33e12 [OH-]^2 pO2) per s, half of it in 4.063 min
// at pH 7 and pO2 10^-0.67 (recomputed). Sulfide without metals and bacteria stays longer: Millero et al.
// (1987), Environ. Sci. Technol. 21:439-443, 26 +- 9 h in seawater and 50 +- 16 h in water, 25 degC, pH 8,
// saturated with air; the shortest is taken.
TEST(FastDebt, LivesLongerThanIronAndShorterThanSulfideAlone) {
    for (const double rate_perDay : {kFastRate_perDay.low, kFastRate_perDay.value, kFastRate_perDay.high}) {
        const double halfLife = kLn2 / fromPerDay(rate_perDay);
        EXPECT_GT(halfLife, 4.063 * kMinute);
        EXPECT_LT(halfLife, (26.0 - 9.0) * kHour);
    }
}

// Oxygen per mass from whole reactions, by a separate script. Tolerance: the last digit; 4.57 for
// nitrification is the textbook figure.
TEST(Stoichiometry, OxygenPerMass) {
    EXPECT_NEAR(kOxygenPerSulfur, 1.996, 1e-3);
    EXPECT_NEAR(kOxygenPerAmmoniaNitrogen, 4.569, 1e-3);
    EXPECT_NEAR(kOxygenPerAmmoniaNitrogen, 4.57, 5e-3);
    EXPECT_NEAR(kOxygenPerIron, 0.1432, 1e-4);
    EXPECT_NEAR(kOxygenPerMethane, 3.989, 1e-3);
}

// Plummer and Busenberg (1982) at 25 degC: pK1 6.352, pK2 10.329, as textbooks print them. Tolerance: the
// last digit.
TEST(Carbonate, DissociatesAsPrinted) {
    EXPECT_NEAR(carbonicFirst(25.0), 6.352, 1e-3);
    EXPECT_NEAR(carbonicSecond(25.0), 10.329, 1e-3);
}

// What plants take up raises pH and what is breathed lowers it, the less the more alkaline the water; back at
// the same oxygen and warmth it is the same pH.
TEST(Carbonate, PhHasItsDayWithTheOxygen) {
    const KnownPh known{8.2, 2.0, 10.0, 25.0};
    EXPECT_NEAR(phWith(known, 10.0, 25.0), 8.2, 1e-4);
    const double dawn = phWith(known, 4.0, 25.0);
    EXPECT_LT(dawn, 7.9);
    EXPECT_GT(dawn, 7.0);
    const KnownPh hard{8.2, 5.0, 10.0, 25.0};
    EXPECT_GT(phWith(hard, 4.0, 25.0), dawn);
}

}  // namespace
