#include "engine/readings_csv.h"

#include "engine/local_time.h"

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

Outcome read(const std::string& text) {
    Diagnostics diagnostics;
    Outcome outcome;
    outcome.readings = readReadingsCsv(text, "r.csv", 2.0, diagnostics);
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
    ASSERT_EQ(outcome.said, "");
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
    {"Twice", "2020-05-24 06:00,0.5,20,8\n2020-05-24 06:00,1,20,8\n2020-05-24 06:00:00,0.50,21,\n", "r.csv:4: at: The reading of 2020-05-24 06:00 at 0.5 m is there already, in line 2.\n"},
    {"Nothing", "2020-05-24 06:00,0.5,,\n", "r.csv:2: The row has neither a temperature nor an oxygen value.\n"},
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
    EXPECT_EQ(read("at,depth_m,temperature,oxygen_mg_per_l\n").said,
              "r.csv:1: temperature_c: This column is missing; is it the one named \"temperature\"?\n"
              "r.csv:1: warning: This column is not used: \"temperature\".\n");
}

}  // namespace
}  // namespace engine
