#include "engine/run/day_air.h"

#include "engine/base/units.h"

#include <gtest/gtest.h>

namespace engine {
namespace {

Backdrop hoursFrom(int first, int count) {
    Backdrop backdrop;
    for (int i = 0; i < count; ++i) {
        AirHour hour;
        hour.time = (first + i) * kHour;
        hour.air = 20.0 + i;
        hour.wind = i % 2 == 0 ? 1.0 : 3.0;
        hour.cloud = i % 2 == 0 ? 0.0 : 0.5;
        backdrop.hours.push_back(hour);
    }
    return backdrop;
}

TEST(DayAir, ADayIsFromMidnightToMidnight) {
    const auto days = daysOfAir(hoursFrom(-2, 28));  // 22:00 before day 1 to 01:00 of day 2
    ASSERT_EQ(days.size(), 3U);
    EXPECT_EQ(days.at(0).hours, 2);
    EXPECT_EQ(days.at(1).hours, 24);
    EXPECT_EQ(days.at(1).lowest, 22.0);
    EXPECT_EQ(days.at(1).highest, 45.0);
    EXPECT_EQ(days.at(1).wind, 2.0);
    EXPECT_EQ(days.at(1).cloud, 0.25);
    EXPECT_EQ(days.at(2).hours, 2);
}

TEST(DayAir, TheAirAtATimeIsThatOfItsHour) {
    const Backdrop backdrop = hoursFrom(0, 3);
    EXPECT_EQ(airAt(backdrop, 0.0)->air, 20.0);
    EXPECT_EQ(airAt(backdrop, 1.9 * kHour)->air, 21.0);
    EXPECT_EQ(airAt(backdrop, 2.0 * kHour)->air, 22.0);
    EXPECT_EQ(airAt(backdrop, 9.0 * kHour)->air, 22.0);
    EXPECT_EQ(airAt(backdrop, -2.0), nullptr);
}

}  // namespace
}  // namespace engine
