#include "engine/water/debt_estimate.h"

#include "engine/ensemble/uncertain_inputs.h"
#include "engine/run/run.h"
#include "tests/scenario.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

using test::scenario;

constexpr double kScore95 = 1.6448536269514722;

BottleTest bottle(double parts, double surface, double bottom) {
    BottleTest test;
    test.surfaceParts = Quantity(parts);
    test.surfaceOxygen = Quantity(surface);
    test.bottomOxygen = Quantity(bottom);
    return test;
}

BottleReading reading(double minutes, double oxygen, double loss = 0.0) {
    return {Quantity(minutes), Quantity(oxygen), Quantity(loss)};
}

DebtRoute way(DebtRouteKind kind, double value, double sigma) {
    return {kind, value, value * std::exp(-kScore95 * sigma), value * std::exp(kScore95 * sigma), sigma};
}

Pond withoutDebt(const std::string& name) {
    Pond pond = scenario(name);
    pond.bottom.oxygenDebt.reset();
    return pond;
}

DebtEstimate estimate(const Pond& pond) {
    const PondModel model = prepareUnbalanced(pond);
    return estimateDebt(pond, model.profile, model.bottom, model.basin).value();
}

TEST(DebtEstimate, SixtyDaysOverAMetreAreElevenMilligrams) {
    EXPECT_NEAR(debtFromDays(0.185, 60.0, 1.0), 11.1, 1e-12);  // as the trade works it out
    EXPECT_NEAR(debtFromDays(0.185, 60.0, 2.0), 5.55, 1e-12);
}

// One law for what gathers before the start and for what a run gives back: mud of 0.90 g/m2/d gives 0.21 of
// it, near half of the 0.37 that leaves the sediment of eleven eutrophic lakes (Mueller and others 2012).
TEST(DebtEstimate, DaysGoByTheMudsOwnDemandAndWarmth) {
    Pond pond = withoutDebt("grandfathers-pond");
    pond.bottom.stratified_days = Quantity(60.0);
    pond.bottom.sedimentDemand_gPerM2Day = Quantity(0.9);
    const auto byDays = [&] { return estimate(pond).routes[1].value; };
    const PondModel model = prepareUnbalanced(pond);
    const double thickness = model.bottom.volume / model.basin.area(model.bottom.depth);
    const double cooler = model.profile.temperature.back() - 20.0;
    EXPECT_NEAR(byDays(), 0.21 * 0.9 * std::pow(1.065, cooler) * 60.0 / thickness, 1e-9);
    const double once = byDays();
    pond.bottom.sedimentDemand_gPerM2Day = Quantity(1.8);
    EXPECT_NEAR(byDays(), 2.0 * once, 1e-9);
    EXPECT_EQ(prepareUnbalanced(pond).parameters.sediment.regenerationShare, 0.21);
}

TEST(DebtEstimate, TheBottleOfOnePartInThree) {
    // 4 x [0.75 x (7.0 - 0.3) + 0.25 x 0 - 2.5] = 10.1 mg/L, give or take 1.1 with a meter of +-0.2.
    const BottleDebt day = bottleDebt(bottle(3.0, 7.0, 0.0), reading(1440.0, 2.5, 0.3));
    EXPECT_FALSE(day.isVoid);
    EXPECT_NEAR(day.taken, 10.1, 1e-12);
    EXPECT_NEAR(day.error, 1.1, 0.05);
    // After a day the fast demand and 1 - 1/e of the medium one are spent.
    EXPECT_NEAR(day.share, 0.55 + 0.45 * (1.0 - std::exp(-1.0)), 1e-9);
    EXPECT_NEAR(day.route.value, 10.1 / day.share, 1e-9);
    // A hand-held meter knows the debt far better than the table of ponds, a factor of 3 either way.
    EXPECT_LT(day.route.high / day.route.value, 1.7);
    // In warmer bottles more is spent in the same time.
    BottleTest warm = bottle(3.0, 7.0, 0.0);
    warm.temperature = Quantity(28.0);
    EXPECT_GT(bottleDebt(warm, reading(1440.0, 2.5, 0.3)).share, day.share);
}

TEST(DebtEstimate, TheBottleOfOnePartInNine) {
    // 10 x [0.9 x (7.0 - 0.3) + 0.1 x 0.2 - 5.0] = 10.5 mg/L; the meter counts for more.
    const BottleDebt day = bottleDebt(bottle(9.0, 7.0, 0.2), reading(1440.0, 5.0, 0.3));
    EXPECT_NEAR(day.taken, 10.5, 1e-12);
    EXPECT_NEAR(day.error, 2.7, 0.1);
}

TEST(DebtEstimate, ABottleThatRanOutIsVoid) {
    BottleTest test = bottle(3.0, 7.0, 0.0);
    test.readings = {reading(120.0, 0.9), reading(1440.0, 0.4)};
    const auto spent = bestBottleDebt(test);
    ASSERT_TRUE(spent);
    EXPECT_TRUE(spent->isVoid);
    EXPECT_NEAR(spent->taken, 3.0 * 7.0 - 4.0 * 0.4, 1e-12);
    // An earlier reading still counts, for what it is worth.
    test.readings.push_back(reading(30.0, 2.0));
    EXPECT_FALSE(bestBottleDebt(test)->isVoid);
    EXPECT_EQ(bestBottleDebt(test)->minutes, 30.0);
    // Void, it takes no part.
    Pond pond = withoutDebt("grandfathers-pond");
    pond.bottleTest = bottle(3.0, 7.0, 0.0);
    pond.bottleTest->readings = {reading(1440.0, 0.4)};
    EXPECT_EQ(estimate(pond).routes.size(), 1U);
}

TEST(DebtEstimate, TheReadingThatTellsMostIsTaken) {
    BottleTest test = bottle(3.0, 7.0, 0.0);
    test.readings = {reading(5.0, 5.0), reading(30.0, 4.3), reading(120.0, 3.6), reading(1440.0, 2.5)};
    EXPECT_EQ(bestBottleDebt(test)->minutes, 1440.0);
    EXPECT_FALSE(bestBottleDebt(bottle(3.0, 7.0, 0.0)));
}

TEST(DebtEstimate, SubstancesNeedWhatTheirReactionsSay) {
    // 3 mg/L of H2S (2.82 as sulfur), 5 of iron, 5 of methane and 3 of ammonium nitrogen.
    Water water;
    water.totalSulfide = Quantity(3.0 * 32.06 / 34.076);
    water.ferrousIron = Quantity(5.0);
    water.methane = Quantity(5.0);
    water.totalAmmonia = Quantity(3.0);
    const SubstanceDebt debt = substanceDebt(water);
    EXPECT_NEAR(debt.sulfide, 5.63, 0.01);
    EXPECT_NEAR(debt.iron, 0.72, 0.01);
    EXPECT_NEAR(debt.methane, 19.95, 0.01);
    EXPECT_NEAR(debt.ammonium, 13.71, 0.01);
    EXPECT_NEAR(debt.fastAndMedium(), 26.30, 0.02) << "ammonium is slow";
    Pond pond = withoutDebt("grandfathers-pond");
    pond.water.totalSulfide = water.totalSulfide;
    pond.water.ferrousIron = water.ferrousIron;
    pond.water.methane = water.methane;
    const DebtEstimate found = estimate(pond);
    ASSERT_EQ(found.routes.size(), 2U);
    // All three are 0.85 of the whole; labile organics are the rest.
    EXPECT_NEAR(found.routes[1].value, debt.fastAndMedium() / 0.85, 1e-9);
    // The fewer were measured, the wider the band.
    pond.water.methane.reset();
    EXPECT_GT(estimate(pond).routes[1].sigma, found.routes[1].sigma);
}

TEST(DebtEstimate, TheTableOfPondsAloneStandsAsItIs) {
    const DebtEstimate found = estimate(withoutDebt("grandfathers-pond"));
    ASSERT_EQ(found.routes.size(), 1U);
    EXPECT_EQ(found.value, 10.0);
    EXPECT_EQ(found.low, 4.0);
    EXPECT_EQ(found.high, 30.0);
    EXPECT_FALSE(estimateDebt(scenario("windy-dugout"), Profile{}, BottomWater{},
                              Basin(scenario("windy-dugout").basin)));
}

TEST(DebtEstimate, WaysAreWeightedByPrecision) {
    using enum DebtRouteKind;
    const DebtEstimate even = combinedDebt({way(AgeAndSmell, 4.0, 0.5), way(BottleTest, 5.0, 0.5)});
    EXPECT_NEAR(even.value, std::sqrt(20.0), 1e-12);
    EXPECT_NEAR(std::log(even.high / even.value), kScore95 * 0.5 / std::sqrt(2.0), 1e-12);
    EXPECT_EQ(even.disagreement, 1.0);
    // Half of the second way's error is the first one's, so that two tell less.
    const DebtEstimate kin = combinedDebt({way(AgeAndSmell, 4.0, 0.5), way(DaysStratified, 5.0, 0.5)});
    EXPECT_NEAR(std::log(kin.high / kin.value), kScore95 * 0.5 * std::sqrt(0.75), 1e-12);
    // A poor way that shares its error with a good one adds nothing.
    const DebtEstimate poor = combinedDebt({way(AgeAndSmell, 20.0, 0.8), way(DaysStratified, 5.0, 0.2)});
    EXPECT_NEAR(poor.value, 5.0, 1e-12);
    EXPECT_NEAR(std::log(poor.high / 5.0), kScore95 * 0.2, 1e-12);
}

TEST(DebtEstimate, WaysThatDisagreeWidenTheBand) {
    using enum DebtRouteKind;
    const DebtEstimate apart = combinedDebt({way(AgeAndSmell, 2.0, 0.3), way(BottleTest, 20.0, 0.3)});
    const double factor = std::log(10.0) / (0.3 * std::sqrt(2.0));  // root of chi-squared over one degree
    EXPECT_NEAR(apart.disagreement, factor, 1e-9);
    EXPECT_NEAR(std::log(apart.high / apart.value), kScore95 * factor * 0.3 / std::sqrt(2.0), 1e-9);
    EXPECT_LT(apart.low, 2.0);
    EXPECT_GT(apart.high, 20.0);
}

TEST(DebtEstimate, IsWhatAPondWithoutAGivenDebtRunsOn) {
    Pond pond = withoutDebt("grandfathers-pond");
    pond.bottom.stratified_days = Quantity(25.0);
    pond.bottleTest = bottle(3.0, 7.0, 0.0);
    pond.bottleTest->readings = {reading(1440.0, 2.5, 0.3)};
    const DebtEstimate found = estimate(pond);
    ASSERT_EQ(found.routes.size(), 3U);
    const PondModel model = prepareUnbalanced(pond);
    EXPECT_EQ(startDebt(pond, model.profile, model.bottom, model.basin), found.value);
    // Layers that z_b cuts are parted by depth, not by volume.
    EXPECT_NEAR(model.debt_kg, found.value * model.bottom.volume / 1000.0, 0.01 * model.debt_kg);
    const auto inputs = uncertainInputs(model);
    const auto debt = std::find_if(inputs.begin(), inputs.end(), [](const UncertainInput& input) {
        return input.name == "oxygen_debt_mg_per_l";
    });
    ASSERT_NE(debt, inputs.end());
    EXPECT_NEAR(debt->spread.quantile(0.05), found.low, 1e-9);
    EXPECT_NEAR(debt->spread.quantile(0.95), found.high, 1e-9);
    // The band is narrower than any way's.
    for (const DebtRoute& route : found.routes) {
        EXPECT_LT(found.high / found.low, route.high / route.low);
    }
}

TEST(DebtEstimate, AGivenDebtStands) {
    Pond pond = scenario("grandfathers-pond");
    pond.bottom.stratified_days = Quantity(60.0);
    pond.water.methane = Quantity(5.0);
    const PondModel model = prepareUnbalanced(pond);
    EXPECT_EQ(startDebt(pond, model.profile, model.bottom, model.basin), 10.5);
    EXPECT_EQ(model.start.fast, prepareUnbalanced(scenario("grandfathers-pond")).start.fast);
}

}  // namespace
}  // namespace engine
