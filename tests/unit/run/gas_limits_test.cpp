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

TEST(GasLimits, SulfideIsTwoMicrogramsOfTheWholeMoleculeOverFourDaysAndTenInAnHour) {
    EXPECT_NEAR(gasLimits(SpeciesGroup::Koi, 25.0, 7.5).sulfideMean, 2e-3 * 32.06 / 34.076, 1e-8);
    EXPECT_NEAR(gasLimits(SpeciesGroup::Koi, 25.0, 7.5).sulfide, 1e-2 * 32.06 / 34.076, 1e-8);
}

TEST(GasLimits, WhatLastsForDaysPassesItsLowerLimit) {
    const Comparison comparison = test::madeUpComparison();
    RampRun run = comparison.runs[1];
    run.hours.assign(96, run.hours.front());
    const GasLimits limits = gasLimits(SpeciesGroup::Sport, 25.0, 7.5);
    for (std::size_t i = 0; i < run.hours.size(); ++i) {
        run.hours[i].time = 3600.0 * static_cast<double>(i);
        run.hours[i].hydrogenSulfide = 1.02 * limits.sulfideMean;
    }
    const GasPeak lasting = gasPeaks(comparison.model, run).sulfide;
    EXPECT_EQ(lasting.limit, limits.sulfideMean);
    EXPECT_EQ(lasting.hoursAbove, 2.0) << "of the mean, which takes four days to get there";
    run.hours.resize(48);
    EXPECT_FALSE(passesGasLimits(comparison.model, run));
}

TEST(GasLimits, HoursAboveAreCountedAndTheWorstIsNamed) {
    const Comparison comparison = test::madeUpComparison();
    RampRun run = comparison.runs[1];
    EXPECT_FALSE(passesGasLimits(comparison.model, run));
    const double limit = gasLimits(SpeciesGroup::Sport, run.hours[1].warmth, run.hours[1].ph).ammonia;
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
    run.hours[0].hydrogenSulfide = 0.010;
    EXPECT_TRUE(passesGasLimits(comparison.model, run));
}

}  // namespace
}  // namespace engine
