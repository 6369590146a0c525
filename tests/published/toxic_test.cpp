#include "engine/water/toxic.h"

#include "engine/base/units.h"

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

// Millero et al. (1987) as an open thermodynamics library tests it: 298.15 K, pH 8, I 0.723 gives
// 123.61753673 kg/mol/h; with 250 umol/kg of oxygen a half-life of 22.4288 h; one standard deviation is a
// factor 1.51356. Tolerance 1e-6 of each.
TEST(Sulfide, OxidationLibraryCase) {
    const double rate_perHour = sulfideOxidation(25.0, 8.0, 0.723) * kHour;
    EXPECT_NEAR(rate_perHour, 123.61753673, 1e-6 * 123.61753673);
    EXPECT_NEAR(kLn2 / (rate_perHour * 250e-6), 22.4288, 1e-4);
    EXPECT_NEAR(std::pow(10.0, kSulfideOxidationSpread_log10), 1.51356, 1e-5);
}

// The paper's own half-lives at 25 degC and pH 8: water 50 +- 16 h, seawater 26 +- 9 h, saturated with air
// (258 and 206 umol/kg).
TEST(Sulfide, OxidationPaperHalfLives) {
    EXPECT_NEAR(kLn2 / (sulfideOxidation(25.0, 8.0, 0.0) * 258e-6) / kHour, 50.0, 16.0);
    EXPECT_NEAR(kLn2 / (sulfideOxidation(25.0, 8.0, 0.7) * 206e-6) / kHour, 26.0, 9.0);
}

// Singer & Stumm (1970) as in USGS PHREEQC's example 9: (2.91e-9 + 1.33e12 [OH-]^2 pO2) per s. At pH 7 and
// pO2 10^-0.67 the half-life is 4.063 min (recomputed); 100 times faster a pH unit up. Tolerance 0.1 %. Stumm
// & Lee (1961) have 8e13 per M^2 atm min: within 0.5 %.
TEST(Iron, Oxidation) {
    const double pressure = std::pow(10.0, -0.67);
    EXPECT_NEAR(kLn2 / ironOxidation(1e-7, pressure) / kMinute, 4.063, 0.001 * 4.063);
    EXPECT_NEAR(ironOxidation(1e-6, pressure) / ironOxidation(1e-7, pressure), 100.0, 0.1);
    const double stummLee = 8e13 * 1e-14 * 0.21 / kMinute;
    EXPECT_NEAR(ironOxidation(1e-7, 0.21), stummLee, 0.005 * stummLee);
}

// Oxygen per mass from whole reactions, by a separate script. Tolerance: the last digit; 4.57 for
// nitrification is the textbook figure.
TEST(Stoichiometry, OxygenPerMass) {
    EXPECT_NEAR(kOxygenPerSulfur, 1.996, 1e-3);
    EXPECT_NEAR(kOxygenPerAmmoniaNitrogen, 4.569, 1e-3);
    EXPECT_NEAR(kOxygenPerAmmoniaNitrogen, 4.57, 5e-3);
    EXPECT_NEAR(kOxygenPerIron, 0.1432, 1e-4);
    EXPECT_NEAR(kOxygenPerManganese, 0.2912, 1e-4);
    EXPECT_NEAR(kOxygenPerMethane, 3.989, 1e-3);
    EXPECT_NEAR(kOxygenPerOrganicCarbon, 2.664, 1e-3);
    EXPECT_NEAR(kOxygenPerIronSulfide, 0.819, 1e-3);
}

}  // namespace
