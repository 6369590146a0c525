#include "engine/run/gas_limits.h"

#include "engine/water/toxic.h"
#include "tests/made_up_comparison.h"

#include <gtest/gtest.h>

namespace engine {
namespace {

TEST(GasLimits, AmmoniaIsBorneLessInAlkalineAndInWarmWater) {
    EXPECT_GT(acuteTotalAmmonia(20.0, 7.0, false), acuteTotalAmmonia(20.0, 8.0, false));
    EXPECT_GT(acuteTotalAmmonia(20.0, 8.0, false), acuteTotalAmmonia(28.0, 8.0, false));
    EXPECT_LT(acuteTotalAmmonia(5.0, 7.0, true), acuteTotalAmmonia(5.0, 7.0, false)) << "trout";
    const GasLimits limits = gasLimits(SpeciesGroup::Sport, 25.0, 8.0);
    EXPECT_NEAR(limits.ammonia, acuteTotalAmmonia(25.0, 8.0, false) * unionisedAmmoniaShare(25.0, 8.0),
                1e-15);
}

TEST(GasLimits, SulfideIsTwoMicrogramsOfTheWholeMolecule) {
    EXPECT_NEAR(gasLimits(SpeciesGroup::Koi, 25.0, 7.5).sulfide, 2e-3 * 32.06 / 34.076, 1e-8);
}

TEST(GasLimits, HoursAboveAreCountedAndTheWorstIsNamed) {
    const Comparison comparison = test::madeUpComparison();
    RampRun run = comparison.runs[1];
    EXPECT_FALSE(passesGasLimits(comparison.model, run));
    const double limit = gasLimits(SpeciesGroup::Sport, 29.0, 7.5).ammonia;
    run.hours[1].unionisedAmmonia = 0.99 * limit;
    EXPECT_FALSE(passesGasLimits(comparison.model, run));
    run.hours[1].unionisedAmmonia = 1.5 * limit;
    ASSERT_TRUE(passesGasLimits(comparison.model, run));
    const GasPeaks peaks = gasPeaks(comparison.model, run);
    EXPECT_EQ(peaks.ammonia.hoursAbove, 1.0);
    EXPECT_EQ(peaks.ammonia.time, run.hours[1].time);
    EXPECT_NEAR(peaks.ammonia.peak / peaks.ammonia.limit, 1.5, 1e-12);
    EXPECT_FALSE(peaks.sulfide.isPassed());
    run = comparison.runs[1];
    run.hours[0].hydrogenSulfide = 0.002;
    EXPECT_TRUE(passesGasLimits(comparison.model, run));
}

}  // namespace
}  // namespace engine
