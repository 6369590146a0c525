#include "engine/intake/pasted_weather.h"

#include <gtest/gtest.h>

#include <random>

namespace engine {
namespace {

const Date kFirst{std::chrono::year(2026), std::chrono::June, std::chrono::day(14)};  // a Sunday

PastedWeather read(std::string_view text, UnitSystem units = UnitSystem::Metric) {
    PastedWeather weather = readPastedWeather(text, kFirst, units);
    EXPECT_EQ(weather.fault, "");
    return weather;
}

std::string allSaid(const PastedWeather& weather) {
    std::string all;
    for (const std::string& sentence : weather.said) {
        all += sentence + '\n';
    }
    return all;
}

Date june(unsigned day) {
    return Date{std::chrono::year(2026), std::chrono::June, std::chrono::day(day)};
}

TEST(PastedWeather, ASpreadsheet) {
    const PastedWeather weather = read(
        "Day\tHigh (F)\tLow (F)\tWind (mph)\tSky\n"
        "Sun 6/14\t91\t70\tSW 5 to 10\tMostly sunny\n"
        "Mon 6/15\t93\t71\t8\tIsolated T-storms\n");
    ASSERT_EQ(weather.days.size(), 2U);
    EXPECT_EQ(weather.days[0].date, june(14));
    EXPECT_NEAR(*weather.days[0].airMax, 32.78, 1e-9);
    EXPECT_NEAR(*weather.days[0].airMin, 21.11, 1e-9);
    EXPECT_NEAR(*weather.days[0].wind, 3.35, 1e-9);  // 7.5 mph
    EXPECT_EQ(weather.days[0].cloud_percent->value, 25.0);
    EXPECT_EQ(weather.days[1].cloud_percent->value, 50.0);
    EXPECT_NE(allSaid(weather).find("Humidity is missing on 2 days: 65 % is taken"), std::string::npos);
}

TEST(PastedWeather, CommasAndDecimalCommas) {
    const PastedWeather comma =
        read("date,max,min,wind m/s,cloud %,humidity %\n2026-06-14,33,21,2.5,10,60\n");
    ASSERT_EQ(comma.days.size(), 1U);
    EXPECT_EQ(comma.days[0].wind->value, 2.5);
    EXPECT_EQ(comma.days[0].humidity_percent->value, 60.0);
    const PastedWeather semicolon =
        read("Date;Max;Min;Wind (km/h);Sky\n14.06.2026;31,5;19,5;18;partly cloudy\n");
    ASSERT_EQ(semicolon.days.size(), 1U);
    EXPECT_EQ(semicolon.days[0].airMax->value, 31.5);
    EXPECT_EQ(semicolon.days[0].wind->value, 5.0);
}

TEST(PastedWeather, AWebPageWithANumberOnEachLine) {
    const PastedWeather weather = read(
        "Sunday\nSunny\n91\u00b0F\n70\u00b0F\n10%\nSW 8 mph\n"
        "Monday\nMostly cloudy\n88\u00b0F\n69\u00b0F\n40%\nW 12 mph\n");
    ASSERT_EQ(weather.days.size(), 2U);
    EXPECT_NEAR(*weather.days[0].airMax, 32.78, 1e-9);
    EXPECT_EQ(weather.days[0].cloud_percent->value, 10.0);
    EXPECT_EQ(weather.days[1].cloud_percent->value, 80.0);
    EXPECT_NEAR(*weather.days[1].wind, 5.36, 1e-9);
    EXPECT_NE(allSaid(weather).find("Chances of rain"), std::string::npos);
}

TEST(PastedWeather, DaysAndNights) {
    const PastedWeather weather = read(
        "Saturday Night: Clear, low around 68.\n"
        "Sunday: Sunny, with a high near 91. Southwest wind 5 to 10 mph, with gusts as high as 20 mph.\n"
        "Sunday Night: Partly cloudy, low around 70. South wind 5 mph.\n"
        "Monday: Mostly sunny, high near 93. Calm wind.\n",
        UnitSystem::Us);
    ASSERT_EQ(weather.days.size(), 2U);
    EXPECT_EQ(weather.days[0].date, june(14));
    EXPECT_NEAR(*weather.days[0].airMin, 20.0, 1e-9);  // the night before
    EXPECT_NEAR(*weather.days[1].airMin, 21.11, 1e-9);
    EXPECT_NEAR(*weather.days[0].wind, 3.35, 1e-9);
    EXPECT_EQ(weather.days[1].wind->value, 0.8);
}

TEST(PastedWeather, PlainNumbersAndNoUnits) {
    const PastedWeather weather = read("91/70 sunny\n88/69 cloudy\n");
    ASSERT_EQ(weather.days.size(), 2U);
    EXPECT_NEAR(*weather.days[0].airMax, 32.78, 1e-9);  // can only be degF
    EXPECT_EQ(weather.days[0].date, june(14));
    EXPECT_EQ(weather.days[0].wind->value, 2.0);
    EXPECT_NE(allSaid(weather).find("Wind is missing on 2 days"), std::string::npos);
}

TEST(PastedWeather, GapsAreFilledAndSaidAndBadLinesLeft) {
    const PastedWeather weather =
        read("2026-06-14 33 21 2 sunny\nadvertisement\n2026-06-16 30 20 3 cloudy\n");
    ASSERT_EQ(weather.days.size(), 3U);
    EXPECT_EQ(weather.days[1].date, june(15));
    EXPECT_EQ(weather.days[1].airMax->value, 33.0);
    EXPECT_NE(allSaid(weather).find("All weather is missing on 1 day"), std::string::npos);
    const PastedWeather footer = read("Day;High;Low;Wind m/s\n14.06.2026;33;21;2\nsource: a web page;;;\n");
    EXPECT_NE(allSaid(footer).find("Not taken, since no temperature stands there: line 3"),
              std::string::npos);
}

TEST(PastedWeather, DatesWithoutTheirYearGoOverNewYear) {
    const Date first{std::chrono::year(2026), std::chrono::December, std::chrono::day(30)};
    const PastedWeather weather =
        readPastedWeather("12/30 8/1 cloudy\n12/31 7/0 cloudy\nJan 1 6/-1 sunny\nJan 2, 2027 5/-2 sunny\n",
                          first, UnitSystem::Metric);
    ASSERT_EQ(weather.fault, "");
    ASSERT_EQ(weather.days.size(), 4U);
    EXPECT_EQ(static_cast<int>(weather.days[3].date.year()), 2027);
    EXPECT_EQ(weather.days[3].airMax->value, 5.0) << "the year is no temperature";
}

TEST(PastedWeather, WhatIsSaidIsInTheUnitsAskedFor) {
    const std::string us = allSaid(read("Sun 91 F\n", UnitSystem::Us));
    EXPECT_NE(us.find("; the first: 71.2 to 91 \u00b0F, wind 4.5 mph, cloud"), std::string::npos) << us;
    EXPECT_NE(us.find("19.8 \u00b0F under the high is taken"), std::string::npos) << us;
    const std::string metric = allSaid(read("Sun 91 F\n", UnitSystem::Metric));
    EXPECT_NE(metric.find("; the first: 21.8 to 32.8 \u00b0C, wind 2 m/s, cloud"), std::string::npos)
        << metric;
    EXPECT_NE(metric.find("11 \u00b0C under the high is taken"), std::string::npos) << metric;
}

/// What is filled can be told from what was read.
TEST(PastedWeather, FilledValuesAreGuessed) {
    const PastedWeather weather = read("2026-06-14 91 F wind 8 mph\n2026-06-16 90/70 F wind 6 mph\n");
    ASSERT_EQ(weather.days.size(), 3U);
    EXPECT_EQ(weather.days[0].airMin->confidence, Confidence::Guessed);
    EXPECT_FALSE(weather.days[0].airMax->confidence);
    EXPECT_FALSE(weather.days[0].wind->confidence);
    EXPECT_EQ(weather.days[1].airMax->confidence, Confidence::Guessed) << "of a day in a gap";
    EXPECT_EQ(weather.days[1].airMax->source, "the day before");
    EXPECT_FALSE(weather.days[2].airMin->confidence);
}

TEST(PastedWeather, WhatHoldsNoWeatherIsRefusedInWords) {
    EXPECT_NE(readPastedWeather("", kFirst, UnitSystem::Us).fault, "");
    EXPECT_NE(readPastedWeather("hello\nworld\n", kFirst, UnitSystem::Us).fault.find("No line with the high"),
              std::string::npos);
    EXPECT_NE(readPastedWeather("2026-06-14 33 21\n2026-07-14 33 21\n", kFirst, UnitSystem::Metric)
                  .fault.find("missing"),
              std::string::npos);
}

/// Whatever is pasted, the days that come out are ones that a pond file may hold, in order and without gaps.
TEST(PastedWeather, AnyTextGivesWholeDaysOrASentence) {
    const std::string pieces[] = {
        "Sun ",  "14 Jun ", "2026-06-15 ", "91",     "/", "70",       "\n",     "\t", ";",  ",",  "%", "mph ",
        "wind ", "high ",   "low ",        "sunny ", "-", "\u00b0F ", "night ", "0",  ".5", "\"", "|"};
    std::mt19937 dice(26);
    int taken = 0;
    for (int i = 0; i < 3000; ++i) {
        std::string text;
        for (auto n = dice() % 60; n > 0; --n) {
            text += pieces[dice() % std::size(pieces)];
        }
        const PastedWeather weather = readPastedWeather(text, kFirst, UnitSystem::Us);
        ASSERT_NE(weather.days.empty(), weather.fault.empty()) << text;
        taken += weather.days.empty() ? 0 : 1;
        for (std::size_t day = 1; day < weather.days.size(); ++day) {
            ASSERT_EQ(std::chrono::sys_days(weather.days[day].date) -
                          std::chrono::sys_days(weather.days[day - 1].date),
                      std::chrono::days(1));
        }
        for (const WeatherDay& day : weather.days) {
            ASSERT_LE(day.airMin->value, day.airMax->value);
        }
    }
    EXPECT_GT(taken, 300);
}

}  // namespace
}  // namespace engine
