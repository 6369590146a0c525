#include "engine/run/run_bounds.h"

#include "engine/ensemble/compare.h"
#include "tests/scenario.h"

#include <gtest/gtest.h>

namespace engine::test {
namespace {

TEST(RunBounds, WhatOneAsksForIsBegunAndWhatNoLaptopHoldsIsNot) {
    EXPECT_EQ(sizeFault({6, 365, 1000, {}}), std::nullopt);
    EXPECT_EQ(sizeFault({6, 21, 10000, {}}), std::nullopt);
    EXPECT_EQ(sizeFault({6, 21, 1, {400, 600.0}}), std::nullopt);
    EXPECT_EQ(
        sizeFault({6, 365, 1, {400, 600.0}}),
        "6 runs of 365 days in 400 layers come to 876000 layer-days, but at most 200000 fit into memory. "
        "Ask for fewer days, layers or ramps.");
    EXPECT_EQ(
        sizeFault({6, 21, 10000, {40, 1.0}}),
        "6 runs of 21 days in 40 layers for 10000 members in steps of 1 s would take 30.2 times as long as "
        "the longest computation that is begun, which takes a night. Ask for fewer members, days, layers "
        "or ramps, or for longer steps.");
}

TEST(RunBounds, ARampThatTakesYearsIsRunForItsLongestAndAWeek) {
    Pond pond = scenario("grandfathers-pond");
    pond.ramps.front().kind = RampKind::Linear;
    pond.ramps.front().first_min = Quantity(1.0);
    pond.ramps.front().add_minPerDay = Quantity(0.1);
    EXPECT_EQ(defaultDays(pond), kLongestRamp + 7);
    EXPECT_LT(defaultDays(pond), kMostDays);
}

}  // namespace
}  // namespace engine::test
