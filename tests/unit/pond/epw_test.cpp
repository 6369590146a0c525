#include "engine/pond/epw.h"

#include "tests/epw_text.h"
#include "tests/pond_texts.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace engine {
namespace {

using test::epwText;
using test::with;

struct Outcome {
    std::vector<ClimateMonth> months;
    std::string said;
    bool isGood = false;
};

Place here() {
    Place place;
    place.latitude_deg = Quantity(36.25);
    place.longitude_deg = Quantity(-90.0);
    place.elevation = Quantity(120.0);
    return place;
}

Outcome read(const std::string& text, const Place& place = here()) {
    Diagnostics diagnostics;
    Outcome outcome;
    outcome.months = readEpw(text, "y.epw", place, diagnostics);
    outcome.isGood = !hasErrors(diagnostics);
    for (const auto& diagnostic : diagnostics) {
        outcome.said += format(diagnostic) + '\n';
    }
    return outcome;
}

/// The year with all of one text in its rows replaced.
std::string withAll(std::string_view from, std::string_view to) {
    const std::string& whole = epwText();
    std::string text;
    std::size_t start = 0;
    for (auto at = whole.find(from); at != std::string::npos; at = whole.find(from, start)) {
        text.append(whole, start, at - start).append(to);
        start = at + from.size();
    }
    return text.append(whole, start);
}

/// The year without the rows of a month from its day `from` on.
std::string shortened(int month, int from) {
    std::string text = epwText();
    const auto rowOf = [&](int ofMonth, int day) {
        return text.find("\n" + std::to_string(1990 + ofMonth) + "," + std::to_string(ofMonth) + "," +
                         std::to_string(day) + ",");
    };
    const std::size_t first = rowOf(month, from);
    return text.erase(first + 1, std::min(rowOf(month + 1, 1), text.size() - 1) - first);
}

TEST(Epw, GivesTheMeansOfTwelveMonths) {
    const Outcome outcome = read(epwText());
    ASSERT_EQ(outcome.said, "");
    ASSERT_EQ(outcome.months.size(), 12U);
    for (std::size_t i = 0; i < 12; ++i) {
        const double month = static_cast<double>(i + 1);
        const ClimateMonth& one = outcome.months[i];
        EXPECT_EQ(one.month, Quantity(month));
        EXPECT_NEAR(*one.airMin, month - 5.0, 1e-9);
        EXPECT_NEAR(*one.airMax, month + 5.0, 1e-9);
        EXPECT_NEAR(*one.dewPoint, month - 4.0, 1e-9);
        EXPECT_FALSE(one.humidity_percent);
        EXPECT_NEAR(*one.wind, 2.5, 1e-9);
        EXPECT_NEAR(*one.cloud_percent, 40.0, 1e-9);
    }
}

TEST(Epw, LineEndsAndAByteOrderMarkChangeNothing) {
    const std::vector<ClimateMonth> months = read(epwText()).months;
    const Outcome unix_ends = read(withAll("\r\n", "\n"));
    EXPECT_EQ(unix_ends.said, "");
    EXPECT_EQ(unix_ends.months, months);
    EXPECT_EQ(read("\xEF\xBB\xBF" + epwText()).months, months);
    EXPECT_EQ(read(withAll(",2.5,", ", 2.5 ,")).months, months);
}

TEST(Epw, WhatIsMissingIsLeftOut) {
    const std::vector<ClimateMonth> months = read(epwText()).months;
    // The first day's hottest hour, a dew point, a wind and a sky.
    std::string text = with(epwText(), "?9?9?9?9,6.0,-3", "?9?9?9?9,99.9,99.9");
    text = with(text, ",2.5,4,4,", ",999,99,4,");
    const Outcome outcome = read(text);
    ASSERT_EQ(outcome.said, "");
    EXPECT_NEAR(*outcome.months[0].airMax, 6.0 - (6.0 - 5.8) / 31.0, 1e-9);  // 5.8 at 14:00 and 16:00
    EXPECT_NEAR(*outcome.months[0].dewPoint, -3.0, 1e-9);
    EXPECT_NEAR(*outcome.months[0].wind, 2.5, 1e-9);
    EXPECT_NEAR(*outcome.months[0].cloud_percent, 40.0, 1e-9);
    EXPECT_EQ(outcome.months[1], months[1]);
}

TEST(Epw, HumidityStandsInForDewPointsThatAreMissing) {
    const Outcome outcome = read(withAll(",8,70,", ",99.9,70,"));  // of December
    ASSERT_EQ(outcome.said, "");
    EXPECT_TRUE(outcome.months[10].dewPoint);
    EXPECT_FALSE(outcome.months[11].dewPoint);
    EXPECT_NEAR(*outcome.months[11].humidity_percent, 70.0, 1e-9);
    EXPECT_EQ(
        read(withAll(",8,70,", ",99.9,999,")).said,
        "y.epw:8025: dew_point_c: December has 0 hours with this number, but must have at least 480.\n");
}

TEST(Epw, AStationFarFromThePondIsWarnedOf) {
    Place place = here();
    place.latitude_deg = Quantity(39.0);
    place.longitude_deg = Quantity(-80.0);
    place.elevation = Quantity(700.0);
    const Outcome outcome = read(epwText(), place);
    EXPECT_TRUE(outcome.isGood);
    EXPECT_EQ(
        outcome.said,
        "y.epw:1: warning: latitude_deg: The file's station is at 36.2 degrees north, but the pond is at 39 "
        "degrees north: its weather may be another.\n"
        "y.epw:1: warning: longitude_deg: The file's station is at -90.1 degrees east, but the pond is at "
        "-80 degrees east: its weather may be another.\n"
        "y.epw:1: warning: elevation_m: The file's station is at 120 m, but the pond is at 700 m: its "
        "weather may be another.\n");
    // Across the date line it is not far.
    Place fiji = here();
    fiji.longitude_deg = Quantity(-179.5);
    EXPECT_EQ(read(with(epwText(), "-90.1", "179.5"), fiji).said, "");
    EXPECT_EQ(read(epwText(), Place{}).said, "") << "what is not known of the pond is not compared";
}

TEST(Epw, AMonthOfTooFewHoursIsSaid) {
    EXPECT_EQ(read(shortened(6, 20)).said, "y.epw:3633: June has 19 days, but must have at least 20.\n");
    EXPECT_EQ(read(shortened(6, 21)).said, "");
    EXPECT_EQ(read(shortened(12, 1)).said, "y.epw:8024: December has 0 days, but must have at least 20.\n");
    EXPECT_EQ(read(withAll(",2.5,4,", ",999,4,")).months.size(), 12U);
    EXPECT_TRUE(read(withAll(",2.5,4,", ",999,4,"))
                    .said.starts_with("y.epw:9: wind_m_per_s: January has 0 hours with this number, but must "
                                      "have at least 480.\n"));
    // Of each day of March, six hours have no air.
    std::string text = epwText();
    for (const char* air : {",3.0,-1", ",4.3,-1", ",1.7,-1"}) {
        for (auto at = text.find(air); at != std::string::npos; at = text.find(air)) {
            text.replace(at, 4, ",99.9");
        }
    }
    EXPECT_EQ(read(text).said,
              "y.epw:1425: dry_bulb_c: March has 0 days with 20 hours of it, but must have at least 20.\n");
}

TEST(Epw, FaultsAreSaidWithTheirLines) {
    EXPECT_EQ(read("").said,
              "y.epw:1: Line 1 of a typical year in the EPW form begins with LOCATION, but this one with "
              "\"\".\n");
    EXPECT_EQ(read("at,air_c\n2026-06-14 05:00,20\n").said,
              "y.epw:1: Line 1 of a typical year in the EPW form begins with LOCATION, but this one with "
              "\"at\".\n");
    EXPECT_EQ(read(with(epwText(), "COMMENTS 2,\r\n", "")).said.substr(0, 73),
              "y.epw:8: Line 8 of a typical year in the EPW form begins with DATA PERIOD");
    EXPECT_EQ(
        read(with(epwText(), ",36.2,", ",136.2,")).said,
        "y.epw:1: latitude_deg: This is \"136.2\", but must be a number from -90 to 90 degrees north.\n");
    EXPECT_EQ(read(with(epwText(), ",-6.0,120.0", "")).said,
              "y.epw:1: elevation_m: The line LOCATION has no cell for this number.\n");
    EXPECT_EQ(read(with(epwText(), "1991,1,1,2,", "1991,13,1,2,")).said,
              "y.epw:10: month: The value is 13, but must be from 1 to 12.\n");
    EXPECT_EQ(read(with(epwText(), "1991,1,1,2,", "1991,1,1,2.5,")).said,
              "y.epw:10: hour: The value is 2.5, but must be a whole number.\n");
    EXPECT_EQ(read(with(epwText(), "1992,2,28,24,", "1992,2,30,24,")).said,
              "y.epw:1424: day: There is no day 30 in February.\n");
    EXPECT_EQ(read(with(epwText(), "1991,1,1,2,", "1991,1,1,1,")).said,
              "y.epw:10: hour: The hour 1 of 1991-01-01 comes twice.\n");
    EXPECT_EQ(read(with(epwText(), "1991,1,1,2,0,?9?9?9?9,", "1991,1,1,2,0,?9?9?9?9,7")).said,
              "y.epw:10: dry_bulb_c: This is \"7-3.8\", but must be a number.\n");
    EXPECT_EQ(read(with(epwText(), ",0.0,0.0\r\n1991,1,1,2,", "\r\n1991,1,1,2,")).said.substr(0, 18),
              "y.epw:10: The row ");
    EXPECT_EQ(read(std::string(test::kEpwHeader)).said.substr(0, 60),
              "y.epw:8: January has 0 days, but must have at least 20.\ny.ep");
}

TEST(Epw, MeansThatNoPondFileHoldsAreSaid) {
    std::string text = epwText();
    // All of January at -65 degC, which the form allows.
    for (std::size_t at = text.find("\n1991,1,"); at != std::string::npos;
         at = text.find("\n1991,1,", at + 1)) {
        const std::size_t air = text.find("?9?9?9?9,", at) + 9;
        text.replace(air, text.find(',', air) - air, "-65");
    }
    EXPECT_EQ(read(text).said,
              "y.epw:9: dry_bulb_c: The mean of January is -65.0 degC, but must be from -60 to 60 degC.\n"
              "y.epw:9: dry_bulb_c: The mean of January is -65.0 degC, but must be from -60 to 60 degC.\n");
}

}  // namespace
}  // namespace engine
