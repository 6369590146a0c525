#include "engine/run/nights.h"

#include "engine/base/units.h"

#include <gtest/gtest.h>

namespace engine {
namespace {

/// A run of some nights with a low each, and hours of fish water from midnight of day 1.
RampRun runOf(const std::vector<double>& lows, const std::vector<double>& fishWater = {}) {
    RampRun run;
    run.end = RunEnd::Completed;
    for (std::size_t i = 0; i < lows.size(); ++i) {
        DayRow row;
        row.day = static_cast<int>(i) + 1;
        row.lowest = lows[i];
        row.lowestTime = noonOf(row.day) + 17.5 * kHour;
        run.days.push_back(row);
    }
    for (std::size_t i = 0; i < fishWater.size(); ++i) {
        HourRow row;
        row.time = static_cast<double>(i) * kHour;
        row.fishWater = fishWater[i];
        run.hours.push_back(row);
    }
    return run;
}

TEST(Nights, ANightStartsAtTheNoonOfItsDay) {
    EXPECT_EQ(noonOf(1), 12.0 * kHour);
    EXPECT_EQ(noonOf(3), 60.0 * kHour);
    EXPECT_EQ(nightAt(12.0 * kHour), 1);
    EXPECT_EQ(nightAt(12.0 * kHour - 1.0), 0);
    EXPECT_EQ(nightAt(36.0 * kHour - 1.0), 1);
    EXPECT_EQ(nightAt(36.0 * kHour), 2);
    EXPECT_EQ(nightAt(-6.5 * kHour), 0);
}

TEST(Nights, ACurveHasTheHoursFromNoonToNoonAndTheLowBetweenThem) {
    std::vector<double> hours(61);
    for (std::size_t i = 0; i < hours.size(); ++i) {
        hours[i] = static_cast<double>(i);
    }
    const NightCurve curve = nightCurve(runOf({2.5, 3.5}, hours), 2);
    ASSERT_EQ(curve.hour.size(), 26U) << "25 whole hours and the low";
    EXPECT_EQ(curve.hour.front(), 0.0);
    EXPECT_EQ(curve.oxygen.front(), 36.0);
    EXPECT_EQ(curve.hour[18], 17.5);
    EXPECT_EQ(curve.oxygen[18], 3.5);
    EXPECT_EQ(curve.hour[19], 18.0);
    EXPECT_EQ(curve.hour.back(), 24.0);
    EXPECT_EQ(curve.oxygen.back(), 60.0);
    EXPECT_EQ(curve.low, 3.5);
    EXPECT_EQ(curve.lowHour, 17.5);
    EXPECT_EQ(curve.lowTime, 53.5 * kHour);
}

TEST(Nights, ANightAtALineIsNotBelowIt) {
    const RampRun run = runOf({4.0, 3.999, 1.0, 6.0});
    EXPECT_EQ(nightsBelow(run, 4.0), 2);
    EXPECT_EQ(nightsBelow(run, 1.0), 0);
    EXPECT_EQ(nightsBelow(run, 10.0), 4);
}

TEST(Nights, HoursBelowALineCountByTheClockFromTheFirstNightOn) {
    std::vector<double> hours(85, 6.0);
    hours[12] = hours[84] = 3.0;  // noons at which the first night begins and the last one ends
    hours[5] = 1.0;               // before night 1
    hours[28] = hours[29] = 3.0;  // 04:00 and 05:00 of day 2
    hours[53] = 3.0;              // 05:00 of day 3
    hours[54] = 4.0;              // at the line
    const HoursBelow below = hoursBelow(runOf({3.0, 3.0, 6.0}, hours), 4.0);
    EXPECT_EQ(below.hours, 4);
    EXPECT_EQ(below.nightsAt[12], 1) << "a clock's hour stands in a night once";
    EXPECT_EQ(below.nightsAt[4], 1);
    EXPECT_EQ(below.nightsAt[5], 2);
    EXPECT_EQ(below.nightsAt[6], 0);
    EXPECT_EQ(below.worstHour(), 5);
    EXPECT_EQ(hoursBelow(runOf({6.0}, {6.0, 6.0}), 4.0).hours, 0);
}

TEST(Nights, OfEquallyLowRunsTheFirstIsTheLowest) {
    const std::vector<RampRun> runs{runOf({5.0, 2.0}), runOf({3.0, 4.0}), runOf({3.0, 1.0})};
    EXPECT_EQ(lowestRun(runs, {0, 1, 2}, 1), 1U);
    EXPECT_EQ(lowestRun(runs, {0, 1, 2}, 2), 2U);
    EXPECT_EQ(lowestRun(runs, {0, 1}, 2), 0U);
    EXPECT_EQ(lowestRun(runs, {}, 2), std::nullopt);
}

}  // namespace
}  // namespace engine
