#include "engine/intake/joined_weather.h"

#include <gtest/gtest.h>

namespace engine {
namespace {

/// Days of June, each with its own high.
std::vector<WeatherDay> days(unsigned first, unsigned last, double high) {
    std::vector<WeatherDay> all;
    for (unsigned day = first; day <= last; ++day) {
        WeatherDay one;
        one.date = Date{std::chrono::year(2026), std::chrono::June, std::chrono::day(day)};
        one.airMin = Quantity(20.0);
        one.airMax = Quantity(high);
        all.push_back(one);
    }
    return all;
}

std::string highsOf(const JoinedWeather& joined) {
    std::string all;
    for (const WeatherDay& day : joined.days) {
        all += std::to_string(static_cast<unsigned>(day.date.day())) + ":" +
               std::to_string(static_cast<int>(day.airMax->value)) + " ";
    }
    return all;
}

TEST(JoinedWeather, DaysOfTheSameDatesAreReplacedAndOthersStay) {
    Weather there;
    there.days = days(13, 17, 30.0);
    const JoinedWeather joined = joinWeather(there, days(15, 16, 33.0));
    EXPECT_EQ(highsOf(joined), "13:30 14:30 15:33 16:33 17:30 ");
    EXPECT_EQ(joined.said,
              "Days of the table with the same dates are replaced. The weather before it, 2026-06-13 to "
              "2026-06-14, stays. The weather after it, 2026-06-17, stays.");
    EXPECT_EQ(highsOf(joinWeather(there, days(18, 19, 33.0))), "13:30 14:30 15:30 16:30 17:30 18:33 19:33 ");
}

TEST(JoinedWeather, WhatDoesNotJoinOnGoesOutAndIsSaid) {
    Weather there;
    there.days = days(13, 15, 30.0);
    const JoinedWeather later = joinWeather(there, days(20, 21, 33.0));
    EXPECT_EQ(highsOf(later), "20:33 21:33 ");
    EXPECT_EQ(
        later.said,
        "The weather before it, 2026-06-13 to 2026-06-15, goes out, since days in between are missing.");
    EXPECT_EQ(highsOf(joinWeather(there, days(10, 11, 33.0))), "10:33 11:33 ");
}

TEST(JoinedWeather, AFileOfHoursIsPutAwayAndSaid) {
    Weather there;
    there.file = "station.csv";
    const JoinedWeather joined = joinWeather(there, days(14, 15, 33.0));
    EXPECT_EQ(highsOf(joined), "14:33 15:33 ");
    EXPECT_EQ(joined.said, "The hourly file \"station.csv\" is put away.");
    EXPECT_EQ(joinWeather({}, days(14, 15, 33.0)).said, "");
    there.windHeight = Quantity(2.0);
    EXPECT_NE(joinWeather(there, days(14, 15, 33.0)).said.find("at 10 m (33 ft)"), std::string::npos);
}

TEST(JoinedWeather, AmongMeasuredDaysThePastedOnesAreAForecast) {
    Weather there;
    there.days = days(13, 14, 30.0);
    there.observed = true;
    const JoinedWeather joined = joinWeather(there, days(15, 15, 33.0));
    EXPECT_FALSE(joined.days[1].forecast);
    EXPECT_TRUE(joined.days[2].forecast);
    there.observed = false;
    EXPECT_FALSE(joinWeather(there, days(15, 15, 33.0)).days[2].forecast) << "as the whole table";
}

}  // namespace
}  // namespace engine
