#include "engine/follow_up/morning.h"

#include "engine/pond/local_time.h"
#include "engine/run/balance.h"
#include "tests/scenario.h"

#include <gtest/gtest.h>

namespace engine {
namespace {

void put(Pond& pond, const char* at, double depth, double oxygen) {
    Reading reading;
    reading.at = parseLocalTime(at);
    reading.depth = Quantity(depth);
    reading.oxygen = Quantity(oxygen);
    reading.temperature = Quantity(26.0);
    pond.readings.push_back(reading);
}

MorningReadings morningOf(const Pond& pond, int day) {
    const PondModel model = prepareUnbalanced(pond, {14, 1800.0});
    const WeatherSeries sun(pond, {true}, day, day);
    return readingsAtDawn(model, judgedLog(logInForce(pond), model), sun.sunrise(day));
}

TEST(Morning, FishWaterIsTheWorstOfTheUpperTwo) {
    // Common practice, no source: 0.5 m, mid-depth, 0.5 m off the bottom; the bottom does not count.
    Pond pond = test::scenario("grandfathers-pond");
    put(pond, "2026-06-15 05:40", 0.5, 6.2);
    put(pond, "2026-06-15 05:42", 1.5, 4.4);
    put(pond, "2026-06-15 05:44", 2.9, 0.1);
    const MorningReadings read = morningOf(pond, 2);
    EXPECT_EQ(read.surface, 6.2);
    EXPECT_EQ(read.middle, 4.4);
    EXPECT_EQ(read.bottom, 0.1);
    EXPECT_EQ(read.fishWater(), 4.4);
}

// Half-way down a pond in layers is bottom water, which the fish have left: it would stop every start.
TEST(Morning, AMiddleReadingOfTheBottomWaterDoesNotCount) {
    for (const double colder : {2.0, 2.1}) {
        Pond pond = test::scenario("grandfathers-pond");
        put(pond, "2026-06-15 05:40", 0.5, 6.2);
        put(pond, "2026-06-15 05:42", 1.7, 0.3);
        pond.readings.back().temperature = Quantity(26.0 - colder);
        put(pond, "2026-06-15 05:44", 2.9, 0.1);
        const MorningReadings read = morningOf(pond, 2);
        EXPECT_EQ(read.middle, 0.3) << "it is shown all the same";
        EXPECT_EQ(read.fishWater(), colder > 2.0 ? 6.2 : 0.3) << colder;
    }
}

TEST(Morning, OnlyReadingsAboutSunriseAreAMorning) {
    Pond pond = test::scenario("grandfathers-pond");
    put(pond, "2026-06-15 01:00", 0.5, 8.0);
    put(pond, "2026-06-15 12:00", 0.5, 9.0);
    EXPECT_FALSE(morningOf(pond, 2).fishWater());
    put(pond, "2026-06-15 05:30", 0.5, 6.0);
    put(pond, "2026-06-15 05:50", 0.5, 5.8);
    EXPECT_EQ(morningOf(pond, 2).fishWater(), 5.8) << "the last of a depth";
    EXPECT_FALSE(morningOf(pond, 3).fishWater());
}

TEST(Morning, AProfileOfThePresentTakesTwoDepthsWithBothValues) {
    Pond pond = test::scenario("grandfathers-pond");
    const LocalTime at = *parseLocalTime("2026-06-15 06:00");
    put(pond, "2026-06-15 05:40", 2.9, 0.1);
    put(pond, "2026-06-15 02:30", 1.5, 4.0);  // too old
    put(pond, "2026-06-15 06:10", 0.2, 7.0);  // later
    EXPECT_FALSE(presentProfile(pond, readingsInForce(pond), at));
    put(pond, "2026-06-15 05:45", 0.5, 6.0);
    const auto profile = presentProfile(pond, readingsInForce(pond), at);
    ASSERT_TRUE(profile);
    EXPECT_EQ(profile->depth, (std::vector<double>{0.5, 2.9}));
    const Pond now = presentPond(pond, *profile);
    EXPECT_EQ(*now.place.firstDay, Date(std::chrono::year(2026) / 6 / 15));
    EXPECT_TRUE(now.ramps.empty());
}

}  // namespace
}  // namespace engine
