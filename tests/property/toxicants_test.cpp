#include "engine/run/run.h"
#include "engine/water/toxic.h"
#include "tests/scenario.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace engine::test {
namespace {

/// The headline pond with toxicants in its bottom water.
Pond withToxicants(double ph) {
    Pond pond = scenario("grandfathers-pond");
    pond.water.ph = Quantity(ph);
    pond.water.totalSulfide = Quantity(3.0);
    pond.water.totalAmmonia = Quantity(4.0);
    return pond;
}

RampRun ran(const Pond& pond, bool withAir) {
    const PondModel model = prepareUnbalanced(pond);
    RunRequest request;
    request.days = 3;  // before wind mixes the pond that is left alone
    return runRamp(model, withAir ? &rampOfKind(model.pond, RampKind::Continuous) : nullptr, request);
}

double peak(const RampRun& run, double HourRow::*toxicant) {
    double most = 0.0;
    for (const HourRow& row : run.hours) {
        EXPECT_GE(row.*toxicant, 0.0);
        most = std::max(most, row.*toxicant);
    }
    return most;
}

TEST(Toxicants, ReachTheFishWhenTheBottomIsLiftedAndHardlyOtherwise) {
    const RampRun lifted = ran(withToxicants(7.5), true), still = ran(withToxicants(7.5), false);
    for (const auto toxicant : {&HourRow::unionisedAmmonia, &HourRow::hydrogenSulfide}) {
        EXPECT_GT(peak(lifted, toxicant), 0.0);
        EXPECT_GT(peak(lifted, toxicant), 1.5 * peak(still, toxicant));
    }
    // Mixed through the whole pond at once and without any oxidation it would be the bottom's share of it.
    const PondModel model = prepareUnbalanced(withToxicants(7.5));
    const double share = model.bottom.volume / model.basin.volume();
    EXPECT_LT(peak(lifted, &HourRow::unionisedAmmonia), 4.0 * share * unionisedAmmoniaShare(33.0, 7.5));
}

TEST(Toxicants, FollowThePhInOppositeDirections) {
    const RampRun sour = ran(withToxicants(6.8), true), basic = ran(withToxicants(8.6), true);
    EXPECT_LT(peak(sour, &HourRow::unionisedAmmonia), peak(basic, &HourRow::unionisedAmmonia));
    EXPECT_GT(peak(sour, &HourRow::hydrogenSulfide), peak(basic, &HourRow::hydrogenSulfide));
}

TEST(Toxicants, AreNotChargedTwice) {
    // Sulfide lies inside the fast demand: as long as that holds what it needs, oxygen does not feel it.
    Pond plain = scenario("grandfathers-pond");
    Pond with = plain;
    with.water.totalSulfide = Quantity(1.0);
    const RampRun a = ran(plain, true), b = ran(with, true);
    for (std::size_t night = 0; night < a.days.size(); ++night) {
        EXPECT_DOUBLE_EQ(a.days[night].lowest, b.days[night].lowest) << "night " << night + 1;
    }
    // More than it holds raises it, and the pond is the poorer for it.
    with.water.totalSulfide = Quantity(12.0);
    EXPECT_GT(prepareUnbalanced(with).debt_kg, prepareUnbalanced(plain).debt_kg);
    EXPECT_LT(ran(with, true).worst().lowest, a.worst().lowest);
}

TEST(Toxicants, GoWithTheDemandThatHoldsThem) {
    const PondModel model = prepareUnbalanced(withToxicants(7.5));
    Column<double> column(model.grid, model.parameters, model.aerator, model.bottom, model.start);
    const double before = model.parameters.toxicants.sulfideOfFast;
    ASSERT_GT(before, 0.0);
    constexpr double kRounding = 1e-9;  // of 500 steps: each is good to some 1e-15 of the greatest
    const double most = *std::max_element(model.start.fast.begin(), model.start.fast.end());
    for (int step = 0; step < 500; ++step) {
        column.step(360.0, {200.0, 25.0, 2000.0, 2.0, 0.3}, {step % 3 == 0 ? 2 : 0, 3.0});
        for (int i = 0; i < model.grid.layers(); ++i) {
            // What every part of the demand brought with it, neither more nor less, to rounding.
            const auto& s = column.state().solutes[i];
            ASSERT_NEAR(s[kSulfide], before * s[kFast], kRounding * before * most) << i << ", " << step;
        }
    }
}

}  // namespace
}  // namespace engine::test
