#include "engine/run/shares.h"

#include "tests/made_up_comparison.h"

#include <gtest/gtest.h>

namespace engine {
namespace {

PondModel layered() {
    PondModel model = test::madeUpComparison().model;
    model.bottom.cause = BottomWater::Cause::Density;
    model.bottom.depth = 2.0;
    model.bottom.volume = 1600.0;
    return model;
}

TEST(Shares, ADoseIsAShareOfTheBottomWater) {
    const PondModel model = layered();
    RampRun run = test::madeUpRun("slow", 3.0);  // lifts 400 and 800 m^3
    EXPECT_EQ(dosePercent(model.bottom, 400.0), 25.0);
    EXPECT_EQ(doseOf(model, run.days[1]), 50.0);
    EXPECT_EQ(largestDosePercent(model, run), 50.0);
    EXPECT_EQ(dosePercent(BottomWater{}, 400.0), std::nullopt);
    PondModel mixed = model;
    mixed.bottom = {};
    EXPECT_EQ(doseOf(mixed, run.days[1]), 0.0);
    EXPECT_EQ(largestDosePercent(mixed, run), std::nullopt);
    for (DayRow& row : run.days) {
        row.liftedVolume = 0.0;
    }
    EXPECT_EQ(largestDosePercent(model, run), std::nullopt);
    EXPECT_EQ(debtLeftPercent(run), 125.0) << "it may pass what there was at the start";
}

TEST(Shares, ADebtIsHeldAgainstTheOxygenAboveIt) {
    PondModel model = layered();
    model.debt_kg = 30.0;
    model.oxygenReserve_kg = 40.0;
    EXPECT_EQ(debtToReserve(model), 0.75);
    EXPECT_FALSE(owesMoreThanReserve(model));
    model.debt_kg = 40.5;
    EXPECT_TRUE(owesMoreThanReserve(model));
    model.bottom = {};
    EXPECT_FALSE(owesMoreThanReserve(model)) << "a mixed pond has paid";
    model.oxygenReserve_kg = 0.0;
    EXPECT_EQ(debtToReserve(model), std::nullopt);
}

TEST(Shares, VolumesAreSharesOfThePond) {
    PondModel model = layered();
    model.basin = Basin(BasinShape{{1000.0}, {4.0}, {2.0}, {}});  // 2,000 m^3, sides that narrow to nothing
    EXPECT_DOUBLE_EQ(*bottomPercent(model), 80.0);
    EXPECT_DOUBLE_EQ(percentBelow(model.basin, 2.0), 25.0);
    EXPECT_EQ(percentBelow(model.basin, 4.0), 0.0);
    DayRow row;
    row.liftedVolume = 500.0;
    row.runMinutes = 120.0;
    EXPECT_DOUBLE_EQ(turnoversPerDay(model, row), 3.0);
    model.bottom = {};
    EXPECT_EQ(bottomPercent(model), std::nullopt);
}

TEST(Shares, TenMetresOfWaterPressNearlyAsMuchAsTheAir) {
    EXPECT_DOUBLE_EQ(waterPressure(10.0), 98066.5);
}

TEST(Shares, PeaksOfWhatIsToxicAreOverAllHours) {
    RampRun run;
    EXPECT_FALSE(toxicPeaks(run).isAny());
    run.hours.resize(3);
    run.hours[1].unionisedAmmonia = 0.5;
    run.hours[2].unionisedAmmonia = 0.25;
    run.hours[2].hydrogenSulfide = 0.125;
    const ToxicPeaks peaks = toxicPeaks(run);
    EXPECT_EQ(peaks.ammonia_ugPerL, 500.0);
    EXPECT_EQ(peaks.sulfide_ugPerL, 125.0);
    EXPECT_TRUE(peaks.isAny());
}

}  // namespace
}  // namespace engine
