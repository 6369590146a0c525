// What readings before the start lead the balance to: a dawn, or the usual day of a logger.
#include "engine/base/units.h"
#include "engine/ramps/weather.h"
#include "engine/run/balance.h"
#include "engine/run/constants_balance.h"
#include "tests/scenario.h"

#include <gtest/gtest.h>

#include <cmath>

namespace engine::test {
namespace {

/// The headline pond, whose profile is of 17:30 on the day before day 1.
Pond pondWith(double from_d, double until_d, double step_h, double (*oxygen)(double clock_h)) {
    Pond pond = scenario("grandfathers-pond");
    for (double time = from_d * kDay; time <= until_d * kDay; time += step_h * kHour) {
        Reading reading;
        reading.at = LocalTime(std::chrono::local_days(*pond.place.firstDay)) +
                     std::chrono::seconds(std::lround(time));
        reading.depth = Quantity(0.5);
        reading.oxygen = Quantity(oxygen(time / kHour - 24.0 * std::floor(time / kDay)));
        pond.readings.push_back(reading);
    }
    return pond;
}

/// Highest at 17:00, lowest at 5:00, 3 mg/L either way.
double swing(double clock_h) {
    return 8.0 + 3.0 * std::cos((clock_h - 17.0) / 12.0 * kPi);
}

TEST(BalanceTarget, IsTheChangeThatALoggerMostlyShowed) {
    const PondModel model = prepareUnbalanced(pondWith(-7.0, -0.3, 0.5, swing));
    const BalanceTarget target = balanceTarget(model);
    for (const BalanceReading& one : target) {
        ASSERT_TRUE(one.oxygen);
        EXPECT_TRUE(one.isChange);
        EXPECT_EQ(one.depth, 0.5);
        EXPECT_GT(one.time, model.startTime);
        EXPECT_LE(one.time, model.startTime + kDay + kHour);
        const double clock_h = (one.time - std::floor(one.time / kDay) * kDay) / kHour;
        // Readings are half an hour apart: a quarter of an hour off on the steepest slope.
        EXPECT_NEAR(*one.oxygen, swing(clock_h) - swing(17.5), 3.0 * kPi / 12.0 * 0.25);
    }
    EXPECT_LT(*target[kOfDawn].oxygen, -5.0);
    // Days that are all alike leave a meter's error.
    EXPECT_NEAR(*target[kOfDawn].oxygen->high - *target[kOfDawn].oxygen->low, 2.0 * 1.6449 * kDawnError.value,
                0.02);
}

TEST(BalanceTarget, TwoNightsOfALoggerAreADawnReading) {
    const PondModel model = prepareUnbalanced(pondWith(-2.2, -0.3, 0.5, swing));
    const BalanceTarget target = balanceTarget(model);
    ASSERT_TRUE(target[kOfDawn].oxygen);
    EXPECT_FALSE(target[kOfDawn].isChange);
    EXPECT_NEAR(*target[kOfDawn].oxygen, 5.0, 0.1);
    EXPECT_FALSE(target[kOfEvening].oxygen);
}

TEST(BalanceTarget, DawnsAloneAreNoLogger) {
    const PondModel model = prepareUnbalanced(pondWith(-7.0 + 5.0 / 24.0, -0.3, 24.0, swing));
    EXPECT_FALSE(balanceTarget(model)[kOfDawn].isChange);
    EXPECT_TRUE(balanceTarget(model)[kOfDawn].oxygen);
}

TEST(BalanceTarget, ALoggerThatIsOffAsAWholeChangesNothing) {
    const auto factorsWith = [](double (*oxygen)(double)) {
        const PondModel model = prepare(pondWith(-7.0, -0.3, 0.5, oxygen), {16, 1200.0});
        EXPECT_EQ(model.balance.loggerDepth, 0.5);
        return std::pair(model.balance.photosynthesis, model.balance.respiration);
    };
    const auto sound = factorsWith(swing),
               off = factorsWith([](double clock_h) { return swing(clock_h) + 2.0; });
    EXPECT_NEAR(sound.first, off.first, 1e-9);
    EXPECT_NEAR(sound.second, off.second, 1e-9);
    const auto calm = factorsWith([](double clock_h) { return 8.0 + (swing(clock_h) - 8.0) / 3.0; });
    EXPECT_LT(calm.first, sound.first) << "water that swings less makes less";
}

}  // namespace
}  // namespace engine::test
