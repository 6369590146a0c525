#include "engine/pond/readings_csv.h"

#include "engine/pond/local_time.h"
#include "engine/pond/readings_remarks.h"

#include <gtest/gtest.h>

#include <cmath>
#include <ostream>

namespace engine {
namespace {

constexpr const char* kHeader = "at,depth_m,temperature_c,oxygen_mg_per_l\n";

struct Outcome {
    std::vector<Reading> readings;
    std::string said;
    bool isGood = false;
};

Outcome read(const std::string& text, const ReadingsFile& shape = {}) {
    Diagnostics diagnostics;
    Outcome outcome;
    outcome.readings = readReadingsCsv(text, "r.csv", shape, 2.0, diagnostics);
    outcome.isGood = !hasErrors(diagnostics);
    for (const auto& diagnostic : diagnostics) {
        outcome.said += format(diagnostic) + '\n';
    }
    return outcome;
}

TEST(ReadingsCsv, ReadsRowsOfAnyOrderWithEmptyCells) {
    const Outcome outcome = read(std::string(kHeader) +
                                 "2020-05-24 06:00,0.5,20.25,8.5\r\n"
                                 "2020-05-24T05:00:30,0.5,,7\r\n"
                                 "2020-05-24 06:00,2,-0,\r\n");
    ASSERT_TRUE(outcome.isGood);
    EXPECT_EQ(outcome.said.find("r.csv:3: warning: The clock goes back 1 time"), 0U) << outcome.said;
    ASSERT_EQ(outcome.readings.size(), 3U);
    EXPECT_EQ(outcome.readings[0].at, parseLocalTime("2020-05-24 06:00"));
    EXPECT_EQ(outcome.readings[0].depth, Quantity(0.5));
    EXPECT_EQ(outcome.readings[0].temperature, Quantity(20.25));
    EXPECT_EQ(outcome.readings[0].oxygen, Quantity(8.5));
    EXPECT_FALSE(outcome.readings[1].temperature);
    EXPECT_FALSE(outcome.readings[2].oxygen);
    EXPECT_FALSE(std::signbit(outcome.readings[2].temperature->value));
}

TEST(ReadingsCsv, NoRowsAreNoFault) {
    EXPECT_TRUE(read(kHeader).isGood);
}

TEST(ReadingsCsv, SaysWhichColumnsItDoesNotUse) {
    const Outcome outcome =
        read("depth_m,battery,at,temperature_c,oxygen_mg_per_l\n0.5,99,2020-05-24 06:00,20,8\n");
    EXPECT_TRUE(outcome.isGood);
    EXPECT_EQ(outcome.said, "r.csv:1: warning: This column is not used: \"battery\".\n");
}

struct BadFile {
    const char* name;
    std::string rows;
    std::string said;  ///< All that is said.
};

void PrintTo(const BadFile& row, std::ostream* stream) {
    *stream << row.name;
}

class BadReadingsCsv : public testing::TestWithParam<BadFile> {};

TEST_P(BadReadingsCsv, IsRefusedInWords) {
    const Outcome outcome = read(kHeader + GetParam().rows);
    EXPECT_FALSE(outcome.isGood);
    EXPECT_EQ(outcome.said, GetParam().said);
}

// clang-format off
INSTANTIATE_TEST_SUITE_P(Rows, BadReadingsCsv, testing::ValuesIn(std::vector<BadFile>{
    {"NoDepth", "2020-05-24 06:00,,20,8\n", "r.csv:2: depth_m: The cell is empty.\n"},
    {"NoTime", ",0.5,20,8\n", "r.csv:2: at: This is \"\", but must be a date and time such as 2026-06-13 17:30.\n"},
    {"BelowBottom", "2020-05-24 06:00,2.5,20,8\n", "r.csv:2: depth_m: The depth 2.5 m lies below the bottom, which is at 2 m.\n"},
    {"Above", "2020-05-24 06:00,-0.5,20,8\n", "r.csv:2: depth_m: The value is -0.5 m, but must be from 0 to 60 m.\n"},
    {"Fahrenheit", "2020-05-24 06:00,0.5,68,8\n", "r.csv:2: temperature_c: The value is 68 degC, but must be from -2 to 45 degC.\n"},
    {"Percent", "2020-05-24 06:00,0.5,20,95\n", "r.csv:2: oxygen_mg_per_l: The value is 95 mg/L, but must be from 0 to 40 mg/L.\n"},
    {"Words", "2020-05-24 06:00,0.5,20,low\n", "r.csv:2: oxygen_mg_per_l: This is \"low\", but must be a number.\n"},
}), [](const auto& row) { return std::string(row.param.name); });
// clang-format on

TEST(ReadingsCsv, MissingColumnsAreNamed) {
    EXPECT_EQ(
        read("at,depth_m,secchi_m\n").said,
        "r.csv:1: oxygen_mg_per_l: This column is missing, and so is temperature_c; one of them must be "
        "there.\n");
    EXPECT_EQ(
        read("at,oxygen_mg_per_l\n").said,
        "r.csv:1: depth_m: This column is missing; give the logger's depth as depth_m under [readings].\n");
    EXPECT_FALSE(read("a,b\n1,2\n").isGood);
}

/// Files of other habits that must come to 2020-05-24 18:30, 0.5 m, 20 degC, 8.5 mg/L.
struct GoodFile {
    const char* name;
    std::string text;
};

void PrintTo(const GoodFile& row, std::ostream* stream) {
    *stream << row.name;
}

class OtherReadingsCsv : public testing::TestWithParam<GoodFile> {};

TEST_P(OtherReadingsCsv, IsUnderstood) {
    const Outcome outcome = read(GetParam().text, {"r.csv", Quantity(0.5), std::nullopt});
    ASSERT_TRUE(outcome.isGood) << outcome.said;
    ASSERT_FALSE(outcome.readings.empty());
    const Reading& reading = outcome.readings.back();
    EXPECT_EQ(reading.at, parseLocalTime("2020-05-24 18:30"));
    EXPECT_NEAR(reading.depth->value, 0.5, 1e-9);
    EXPECT_NEAR(reading.temperature->value, 20.0, 1e-9);
    EXPECT_NEAR(reading.oxygen->value, 8.5, 1e-9);
}

// clang-format off
INSTANTIATE_TEST_SUITE_P(Files, OtherReadingsCsv, testing::ValuesIn(std::vector<GoodFile>{
    {"DecimalCommas", "at;depth_m;temperature_c;oxygen_mg_per_l\n2020-05-24 18:30;0,5;20,0;8,5\n"},
    {"QuotedDecimalCommas", "at,depth_m,temperature_c,oxygen_mg_per_l\n2020-05-24 18:30,\"0,5\",\"20,0\",\"8,5\"\n"},
    {"Tabs", "at\tdepth_m\ttemperature_c\toxygen_mg_per_l\n2020-05-24 18:30\t0.5\t20\t8.5\n"},
    {"FahrenheitAndFeet", "Date/Time,Depth (ft),Temp (degF),DO (mg/L)\n2020-05-24 18:30,1.640419947506562,68,8.5\n"},
    {"NoDepthColumn", "Timestamp,Temp [C],ODO mg/L\n2020-05-24 18:30,20,8.5\n"},
    {"DayWithPoints", "Date;Time;Temp (C);DO (ppm)\n24.05.2020;18:30:00;20;8,5\n"},
    {"MonthFirst", "Date Time,Temp (C),DO (mg/L)\n05/24/20 6:30 PM,20,8.5\n"},
    {"YearWithSlashes", "at,temperature_c,oxygen_mg_per_l\n2020/05/24 18:30,20,8.5\n"},
    {"DayFirstByAnother", "at,temperature_c,oxygen_mg_per_l\n04/05/2020 18:30,19,8\n24/05/2020 18:30,20,8.5\n"},
    {"LinesBefore", "Logger 12\nSerial number,99\n\nat,temperature_c,oxygen_mg_per_l\n2020-05-24 18:30,20,8.5\n"},
    {"Blanks", "at,temperature_c,oxygen_mg_per_l\n2020-05-24 18:30,20,8.5\n2020-05-24 19:00,NaN,---\n"},
    {"CentimetresAndMicromoles", "at,depth_cm,temperature_c,oxygen_umol_per_l\n2020-05-24 18:30,50,20,265.6416026001625\n"},
}), [](const auto& row) { return std::string(row.param.name); });
// clang-format on

/// Titles and footers have no separator, and a note may have one.
TEST(ReadingsCsv, TheSeparatorIsThatOfMostLines) {
    const ReadingsFile shape{"r.csv", Quantity(0.5), std::nullopt};
    const Outcome two = read(
        "Logger 12\nDate Time;DO (mg/L)\n24.05.2020 18:00;8,4\n24.05.2020 18:30;8,5\nEnd of data\n", shape);
    ASSERT_TRUE(two.isGood) << two.said;
    ASSERT_EQ(two.readings.size(), 2U) << two.said;
    EXPECT_EQ(two.readings[1].oxygen->value, 8.5);
    const Outcome note = read(
        "at,oxygen_mg_per_l,note\n2020-05-24 18:30,8.5,a; b; c; d; e; f\n2020-05-24 19:30,8.4,\n", shape);
    ASSERT_TRUE(note.isGood) << note.said;
    EXPECT_EQ(note.readings[0].note, "a; b; c; d; e; f");
}

TEST(ReadingsCsv, WhatCannotBeToldIsRefusedInWords) {
    EXPECT_EQ(
        read("at,temperature_c,oxygen_mg_per_l\n04/05/2020 18:30,20,8\n", {"r.csv", Quantity(0.5), {}}).said,
        "r.csv:2: date_order: Whether the day or the month is first in \"04/05/2020 18:30\" cannot be told; "
        "give "
        "date_order = \"day first\" or \"month first\" under [readings].\n");
    const ReadingsFile month{"r.csv", Quantity(0.5), DateOrder::MonthFirst};
    const Outcome told = read("at,temperature_c,oxygen_mg_per_l\n04/05/2020 18:30,20,8\n", month);
    ASSERT_TRUE(told.isGood);
    EXPECT_EQ(told.readings[0].at, parseLocalTime("2020-04-05 18:30"));
    EXPECT_FALSE(read("at,oxygen_mg_per_l\n24/05/2020 18:30,8\n05/24/2020 18:30,8\n", month).isGood);
    EXPECT_FALSE(read("at,DO (% sat)\n2020-05-24 18:30,95\n", month).isGood);
    EXPECT_FALSE(read("at;depth_m;oxygen_mg_per_l\n2020-05-24 18:30;0,5;1.234,5\n").isGood);
    EXPECT_FALSE(read("at,depth_m,temperature_c,oxygen_mg_per_l\n2020-05-24 18:30,0,5,20,8\n").isGood);
}

TEST(ReadingsCsv, NothingIsLostWithoutAWord) {
    const Outcome twice = read(std::string(kHeader) +
                               "2020-05-24 06:00,0.5,20,8\n2020-05-24 06:30,0.5,20,7.9\n"
                               "2020-05-24 06:00,0.5,20,8\n2020-05-24 06:30,0.5,20,5\n"
                               "2020-05-24 07:00,0.5,,\n");
    EXPECT_TRUE(twice.isGood);
    EXPECT_EQ(twice.readings.size(), 3U);  // one repeats, one says something else, one is blank
    EXPECT_NE(twice.said.find("r.csv:6: warning: 1 row holds no value"), std::string::npos) << twice.said;
    EXPECT_NE(twice.said.find("r.csv:4: warning: 1 row says what"), std::string::npos) << twice.said;
    EXPECT_NE(twice.said.find("r.csv:5: warning: 1 row gives another value"), std::string::npos)
        << twice.said;
    const Outcome autumn =
        read(std::string(kHeader) + "2020-10-25 02:30,0.5,20,8\n2020-10-25 02:00,0.5,20,7.9\n");
    EXPECT_EQ(autumn.readings.size(), 2U);
    EXPECT_NE(autumn.said.find("The clock goes back 1 time, here by 30 min, as at the end of daylight"),
              std::string::npos)
        << autumn.said;
}

TEST(ReadingsCsv, UnderALimitIsAnythingUpToIt) {
    const Outcome outcome = read(std::string(kHeader) + "2020-05-24 06:00,0.5,20,<1\n");
    ASSERT_TRUE(outcome.isGood);
    EXPECT_EQ(outcome.readings[0].oxygen->high, 1.0);
    EXPECT_EQ(outcome.readings[0].oxygen->low, 0.0);
}

/// Six good rows with what stands between them.
Outcome among(const std::string& rows, const std::string& heading = kHeader) {
    std::string text = heading;
    for (int hour = 0; hour < 6; ++hour) {
        text += "2020-05-24 0" + std::to_string(hour) + ":00,0.5,20,8\n";
        text += hour == 2 ? rows : "";
    }
    return read(text);
}

TEST(ReadingsCsv, ABadRowIsLeftOutWithAWord) {
    const struct {
        const char* row;
        const char* said;
        std::size_t readings;
    } kRows[] = {
        {"2020-05-24 02:30,0.5,20,-888.88\n",
         "1 value is an error code of the meter and not taken, such as \"-888.88\"", 7},
        {"2020-05-24 02:30,0.5,9999,8\n", "1 value is an error code", 7},
        {"2020-05-24 02:30,0.5,-888.88,-888.88\n", "1 value is an error code", 6},
        {"2020-05-24 02:30,0.5,68,8\n", "left out; the first is this one. The value is 68 degC", 7},
        {"2020-05-24 02:30,0.5,20,low\n", "This is \"low\", but must be a number.", 7},
        {"yesterday,0.5,20,8\n", "This is \"yesterday\"", 6},
        {"2020-05-24 02:30,7,20,8\n", "lies below the bottom", 6},
        {"2020-05-24 02:30,0.5\n", "The row has 2 cells for 4 columns", 6},
        {"End of file\n", "The row has 1 cell for 4 columns", 6},
    };
    for (const auto& one : kRows) {
        SCOPED_TRACE(one.row);
        const Outcome outcome = among(one.row);
        EXPECT_TRUE(outcome.isGood) << outcome.said;
        EXPECT_EQ(outcome.readings.size(), one.readings);
        EXPECT_NE(outcome.said.find("r.csv:5:"), std::string::npos) << outcome.said;
        EXPECT_NE(outcome.said.find(one.said), std::string::npos) << outcome.said;
    }
}

TEST(ReadingsCsv, AFileWhoseMostRowsAreBadIsRefused) {
    EXPECT_FALSE(among("2020-05-24 02:30,0.5,20,95\n2020-05-24 02:31,0.5,20,95\n2020-05-24 02:32,0.5,20,95\n"
                       "2020-05-24 02:33,0.5,20,95\n2020-05-24 02:34,0.5,20,95\n2020-05-24 02:35,0.5,20,95\n"
                       "2020-05-24 02:36,0.5,20,95\n")
                     .isGood);
}

TEST(ReadingsCsv, OfTwoClocksTheSpotsIsTaken) {
    const ReadingsFile shape{"r.csv", Quantity(0.5), std::nullopt};
    const Outcome two =
        read("Date Time (UTC),Date Time (local),DO (mg/L)\n2020-05-24 12:30,2020-05-24 06:30,8.5\n", shape);
    ASSERT_TRUE(two.isGood) << two.said;
    EXPECT_EQ(two.readings[0].at, parseLocalTime("2020-05-24 06:30"));
    EXPECT_NE(two.said.find("\"Date Time (UTC)\" is not used"), std::string::npos) << two.said;
    const Outcome units = read("Date Time,Temp (C),Temp (F),DO (mg/L)\n2020-05-24 06:30,20,68,8.5\n", shape);
    ASSERT_TRUE(units.isGood) << units.said;
    EXPECT_NEAR(units.readings[0].temperature->value, 20.0, 1e-12);
}

TEST(ReadingsCsv, TimesOfAnotherClockAreMoved) {
    const ReadingsFile shape{"r.csv", Quantity(0.5), std::nullopt};
    const auto first = [&](const char* heading, std::optional<double> offset) {
        Diagnostics said;
        const auto readings =
            readReadingsCsv(std::string("\"") + heading + "\",DO (mg/L)\n2020-05-24 12:30,8.5\n", "r.csv",
                            shape, 2.0, said, offset);
        return readings.empty() ? std::nullopt : readings[0].at;
    };
    EXPECT_EQ(first("Date Time (UTC)", -6.0), parseLocalTime("2020-05-24 06:30"));
    EXPECT_EQ(first("Date Time, GMT-05:00", -6.0), parseLocalTime("2020-05-24 11:30"));
    EXPECT_EQ(first("Date Time, UTC+0530", 5.5), parseLocalTime("2020-05-24 12:30"));
    EXPECT_EQ(first("Date Time", -6.0), parseLocalTime("2020-05-24 12:30"));
    EXPECT_EQ(first("Date Time (UTC)", std::nullopt), parseLocalTime("2020-05-24 12:30"));
}

TEST(ReadingsCsv, OneSlipOfADateDoesNotRefuseTheFile) {
    std::string text = "at,temperature_c,oxygen_mg_per_l\n";
    for (int day = 13; day < 29; ++day) {
        text += std::to_string(day) + "/05/2020 06:00,20,8\n";
    }
    const Outcome outcome = read(text + "05/29/2020 06:00,20,8\n", {"r.csv", Quantity(0.5), std::nullopt});
    EXPECT_TRUE(outcome.isGood) << outcome.said;
    EXPECT_EQ(outcome.readings.size(), 16U);
    EXPECT_NE(outcome.said.find("r.csv:18: warning: at: 1 row has"), std::string::npos) << outcome.said;
}

TEST(ReadingsCsv, WhatIsTakenIsOneSentence) {
    EXPECT_EQ(
        readingsTaken(among("").readings),
        "6 readings are taken, from 2020-05-24 00:00 to 2020-05-24 05:00, at 0.50 m, temperature 20.0 degC, "
        "oxygen 8.00 mg/L.");
    EXPECT_EQ(readingsTaken(among("").readings, UnitSystem::Us),
              "6 readings are taken, from 2020-05-24 00:00 to 2020-05-24 05:00, at 1.64 ft, temperature 68.0 "
              "\u00b0F, "
              "oxygen 8.00 mg/L.");
    EXPECT_EQ(readingsTaken({}), "No reading is taken.");
}

}  // namespace
}  // namespace engine
