#include "engine/run/step_clock.h"

#include <gtest/gtest.h>

namespace {

using engine::evenSteps;
using engine::kDay;
using engine::kHour;

constexpr double kLongAgo = 1e9;

TEST(StepClock, LongStepsButInTheEveningAndAfterAirChanged) {
    EXPECT_EQ(evenSteps(3 * kDay + 9 * kHour, 3 * kDay + 10 * kHour, 600.0, kLongAgo).count, 6);
    EXPECT_EQ(evenSteps(3 * kDay + 18 * kHour, 3 * kDay + 19 * kHour, 600.0, kLongAgo).count, 12);
    EXPECT_EQ(evenSteps(3 * kDay + 9 * kHour, 3 * kDay + 10 * kHour, 600.0, 0.0).count, 12);
    EXPECT_EQ(evenSteps(3 * kDay + 10 * kHour, 3 * kDay + 11 * kHour, 600.0, kHour).count, 6);
}

// Evenly, and an even number of them, so that one begins halfway; none longer than asked.
TEST(StepClock, StepsAreEven) {
    for (const double span : {60.0, 599.0, 601.0, 1234.5, 3600.0}) {
        const auto steps = evenSteps(10 * kHour, 10 * kHour + span, 600.0, kLongAgo);
        EXPECT_EQ(steps.count % 2, 0) << span;
        EXPECT_LE(steps.dt, 600.0) << span;
        EXPECT_NEAR(steps.count * steps.dt, span, 1e-9) << span;
    }
}

}  // namespace
