#include "engine/water/sky.h"

#include <gtest/gtest.h>

#include <cmath>

namespace {

using namespace engine;

TEST(Sky, SunStandsHighestAtSolarNoonWhereverTheClockIs) {
    for (const double longitude : {-120.0, -7.5, 0.0, 100.0}) {
        const double offset = std::round(longitude / 15.0);
        const double noon = 12.0 - (solarHour(longitude, offset, 150, 12.0) - 12.0);
        const SunPath path = sunPath(40.0, longitude, offset, 150);
        const double highest = sinElevation(path, noon);
        EXPECT_GT(highest, sinElevation(path, noon - 0.5));
        EXPECT_GT(highest, sinElevation(path, noon + 0.5));
        EXPECT_NEAR(highest, std::cos(40.0 * kPi / 180.0 - declination(150)), 1e-12);
    }
}

TEST(Sky, EastSeesTheSunEarlierOnOneClock) {
    const auto west = sunTimes(40.0, -90.0, -6.0, 150);
    const auto east = sunTimes(40.0, -75.0, -6.0, 150);
    EXPECT_NEAR(*west.rise_h - *east.rise_h, 1.0, 1e-12);
    EXPECT_NEAR(*west.set_h - *east.set_h, 1.0, 1e-12);
    const auto laterClock = sunTimes(40.0, -90.0, -5.0, 150);
    EXPECT_NEAR(*laterClock.rise_h - *west.rise_h, 1.0, 1e-12);
}

TEST(Sky, NoSunriseInPolarSummerAndWinter) {
    EXPECT_FALSE(sunTimes(80.0, 0.0, 0.0, 172).rise_h);
    EXPECT_FALSE(sunTimes(80.0, 0.0, 0.0, 355).set_h);
    for (double clock_h = 0.0; clock_h < 24.0; clock_h += 0.5) {
        EXPECT_GT(sinElevation(sunPath(80.0, 0.0, 0.0, 172), clock_h), 0.0) << clock_h;
        EXPECT_LT(sinElevation(sunPath(80.0, 0.0, 0.0, 355), clock_h), 0.0) << clock_h;
    }
}

TEST(Sky, ClockHoursMayPassMidnight) {
    const SunPath path = sunPath(35.0, 10.0, 1.0, 180);
    EXPECT_NEAR(sinElevation(path, -2.0), sinElevation(path, 22.0), 1e-12);
}

TEST(Sky, CloudAndShortwaveAreInverse) {
    for (const double cloud : {0.0, 0.3, 1.0}) {
        const double light = shortwaveFromCloud(0.6, 0.97, cloud);
        EXPECT_NEAR(cloudFromShortwave(0.6, 0.97, light).value(), cloud, 1e-12);
    }
    EXPECT_EQ(cloudFromShortwave(0.6, 0.97, 2000.0), 0.0);
    EXPECT_EQ(cloudFromShortwave(0.6, 0.97, 0.0), 1.0);
    EXPECT_FALSE(cloudFromShortwave(0.2, 0.97, 50.0));
    EXPECT_FALSE(cloudFromShortwave(0.05, 0.97, 50.0));
    EXPECT_EQ(shortwaveFromCloud(-0.2, 0.97, 0.0), 0.0);
}

TEST(Sky, SignsOfTheHeatTerms) {
    const double dry = vapourPressure(5.0);
    const double humid = vapourPressure(30.0);
    EXPECT_GT(turbulentLoss(20.0, 20.0, dry, 2.0), 0.0);
    EXPECT_LT(turbulentLoss(20.0, 25.0, humid, 2.0), 0.0);  // dew
    EXPECT_GT(turbulentLoss(20.0, 10.0, dry, 2.0), turbulentLoss(20.0, 20.0, dry, 2.0));
    EXPECT_GT(turbulentLoss(20.0, 10.0, dry, 3.0), turbulentLoss(20.0, 10.0, dry, 2.0));
    EXPECT_GT(longwaveIn(20.0, 1.0), longwaveIn(20.0, 0.0));
    EXPECT_GT(longwaveIn(25.0, 0.5), longwaveIn(20.0, 0.5));
}

}  // namespace
