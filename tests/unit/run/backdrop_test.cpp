#include "engine/run/backdrop.h"

#include "engine/base/units.h"
#include "engine/ramps/weather.h"
#include "engine/water/sky.h"
#include "tests/made_up_comparison.h"

#include <gtest/gtest.h>

#include <cmath>

namespace engine {
namespace {

using test::madeUpComparison;

TEST(Backdrop, TheSunPassesEachHeightInItsOrderFromNoonToNoon) {
    const Comparison comparison = madeUpComparison();
    const Backdrop backdrop = backdropOf(comparison.model, 5);
    ASSERT_EQ(backdrop.nights.size(), 5U);
    for (const NightSky& sky : backdrop.nights) {
        const double noon = (sky.night - 0.5) * kDay;
        EXPECT_LT(noon, *sky.sunset);
        EXPECT_LT(*sky.sunset, *sky.civilDusk);
        EXPECT_LT(*sky.civilDusk, *sky.nauticalDusk);
        EXPECT_LT(*sky.nauticalDusk, *sky.nauticalDawn);
        EXPECT_LT(*sky.nauticalDawn, *sky.civilDawn);
        EXPECT_LT(*sky.civilDawn, *sky.sunrise);
        EXPECT_LT(*sky.sunrise, noon + kDay);
    }
}

TEST(Backdrop, ATwilightTimeIsWhenTheSunStandsAtItsHeight) {
    const Comparison comparison = madeUpComparison();  // 36 N, 90 W, utc -6, 14 June
    const NightSky sky = backdropOf(comparison.model, 1).nights.front();
    // sinElevation follows FAO's declination, which in June is within 0.2 deg of the one of the crossing.
    const SunPath path = sunPath(36, -90, -6, 165);
    EXPECT_NEAR(sinElevation(path, *sky.civilDusk / kHour), std::sin(-6.0 * kPi / 180.0), 0.006);
    EXPECT_NEAR(sinElevation(path, *sky.nauticalDusk / kHour), std::sin(-12.0 * kPi / 180.0), 0.006);
}

TEST(Backdrop, SunriseIsTheOneThatTheRunsKnow) {
    const Comparison comparison = madeUpComparison();
    const Backdrop backdrop = backdropOf(comparison.model, 2);
    const WeatherSeries weather(comparison.model.pond, {}, 0, 3);
    EXPECT_DOUBLE_EQ(*backdrop.nights[1].sunrise, weather.sunrise(3));
}

TEST(Backdrop, WhereTheSunStaysUpTwilightHasNoNight) {
    const Comparison comparison =
        madeUpComparison(test::with(test::kPlainPond, "latitude_deg = 36", "latitude_deg = 60"));
    const NightSky sky = backdropOf(comparison.model, 1).nights.front();
    EXPECT_TRUE(sky.sunset && sky.sunrise);
    EXPECT_FALSE(sky.nauticalDusk || sky.nauticalDawn);
}

TEST(Backdrop, HoursReachFromTheStartToTheEndAndKnowWhereTheTableEnds) {
    const Comparison comparison = madeUpComparison();
    const Backdrop backdrop = backdropOf(comparison.model, 4);
    EXPECT_EQ(backdrop.lastWeatherDay, 2);                        // 15 June
    EXPECT_DOUBLE_EQ(backdrop.hours.front().time, -7.0 * kHour);  // 17:00, the profile is of 17:30
    EXPECT_DOUBLE_EQ(backdrop.hours.back().time, 4 * kDay + 11 * kHour);
    double warmest = -99.0;
    for (const AirHour& hour : backdrop.hours) {
        if (hour.time >= 0.0 && hour.time < kDay) {
            warmest = std::max(warmest, hour.air);
            EXPECT_DOUBLE_EQ(hour.cloud, 0.1);
        }
    }
    EXPECT_NEAR(warmest, 33.0, 0.3);  // the table's maximum, in the middle of its hour
}

}  // namespace
}  // namespace engine
