#include "engine/pond/weather_csv.h"

#include "engine/pond/local_time.h"

#include <gtest/gtest.h>

#include <ostream>

namespace engine {
namespace {

constexpr std::string_view kHeader = "at,air_c,humidity_percent,wind_m_per_s,shortwave_w_per_m2\n";

/// Hours of one day from 00:00, one row each: `tail` is what stands after the air temperature.
std::string day(const std::string& tail, int hours = 24) {
    std::string rows;
    for (int hour = 0; hour < hours; ++hour) {
        rows += "2020-05-24 " + formatClock({60 * hour}) + "," + std::to_string(hour) + tail + "\n";
    }
    return rows;
}

struct Outcome {
    std::vector<WeatherHour> hours;
    std::string said;
    bool isGood = false;
};

Outcome read(const std::string& text, HourStamp stamp = HourStamp::Start) {
    Diagnostics diagnostics;
    Outcome outcome;
    outcome.hours = readWeatherCsv(text, "w.csv", stamp, diagnostics);
    outcome.isGood = !hasErrors(diagnostics);
    for (const auto& diagnostic : diagnostics) {
        outcome.said += format(diagnostic) + '\n';
    }
    return outcome;
}

std::string good() {
    return std::string(kHeader) + day(",65,2.5,100");
}

TEST(WeatherCsv, ReadsHours) {
    const Outcome outcome = read(good());
    ASSERT_EQ(outcome.said, "");
    ASSERT_EQ(outcome.hours.size(), 24U);
    EXPECT_EQ(outcome.hours[5].start, parseLocalTime("2020-05-24 05:00"));
    EXPECT_EQ(outcome.hours[5].air, 5.0);
    EXPECT_EQ(outcome.hours[5].humidity_percent, 65.0);
    EXPECT_EQ(outcome.hours[5].wind, 2.5);
    EXPECT_EQ(outcome.hours[5].shortwave, 100.0);
    EXPECT_FALSE(outcome.hours[5].dewPoint || outcome.hours[5].par_umolPerM2S ||
                 outcome.hours[5].cloud_percent);
}

TEST(WeatherCsv, AnEndStampIsTheHourBefore) {
    const Outcome outcome = read(good(), HourStamp::End);
    EXPECT_EQ(outcome.hours.front().start, parseLocalTime("2020-05-23 23:00"));
    EXPECT_EQ(outcome.hours.back().start, parseLocalTime("2020-05-24 22:00"));
}

TEST(WeatherCsv, TakesColumnsInAnyOrderAndAnyLightAndEitherHumidity) {
    const Outcome par = read("par_umol_per_m2_s,wind_m_per_s,dew_point_c,air_c,at\r\n" + [] {
        std::string rows;
        for (int hour = 0; hour < 24; ++hour) {
            rows += "800,1,-3.5,\"" + std::to_string(hour) + "\",2020-05-24T" + formatClock({60 * hour}) +
                    ":00\r\n";
        }
        return rows;
    }());
    ASSERT_EQ(par.said, "");
    EXPECT_EQ(par.hours[1].par_umolPerM2S, 800.0);
    EXPECT_EQ(par.hours[1].dewPoint, -3.5);
    EXPECT_FALSE(par.hours[1].humidity_percent || par.hours[1].shortwave);
    const Outcome cloud = read("at,air_c,humidity_percent,wind_m_per_s,cloud_percent\n" + day(",65,2.5,80"));
    ASSERT_EQ(cloud.said, "");
    EXPECT_EQ(cloud.hours[1].cloud_percent, 80.0);
}

TEST(WeatherCsv, SaysWhichOfTwoColumnsItUsesAndWhichItDoesNotKnow) {
    const Outcome outcome =
        read("at,air_c,humidity_percent,dew_point_c,wind_m_per_s,cloud_percent,par_umol_per_m2_s,mist_mm,\n" +
             day(",65,9,2.5,80,700,wet,"));
    EXPECT_EQ(
        outcome.said,
        "w.csv:1: warning: humidity_percent: The dew point is used instead of this column.\n"
        "w.csv:1: warning: cloud_percent: The column par_umol_per_m2_s is used instead of this column.\n"
        "w.csv:1: warning: These columns are not used: \"mist_mm\", \"\".\n");
    ASSERT_TRUE(outcome.isGood);
    EXPECT_EQ(outcome.hours[0].dewPoint, 9.0);
    EXPECT_EQ(outcome.hours[0].par_umolPerM2S, 700.0);
    EXPECT_FALSE(outcome.hours[0].cloud_percent || outcome.hours[0].humidity_percent);
}

struct BadFile {
    const char* name;
    std::string text;
    std::string said;  ///< All that is said.
};

void PrintTo(const BadFile& row, std::ostream* stream) {
    *stream << row.name;
}

std::string with(std::string text, std::string_view from, std::string_view to) {
    const auto at = text.find(from);
    return at == std::string::npos ? "the row is not there" : text.replace(at, from.size(), to);
}

class BadWeatherCsv : public testing::TestWithParam<BadFile> {};

TEST_P(BadWeatherCsv, IsRefusedInWords) {
    const Outcome outcome = read(GetParam().text);
    EXPECT_FALSE(outcome.isGood);
    EXPECT_EQ(outcome.said, GetParam().said);
}

// clang-format off
INSTANTIATE_TEST_SUITE_P(Rows, BadWeatherCsv, testing::ValuesIn(std::vector<BadFile>{
    {"Empty", "", "w.csv:1: The file is empty.\n"},
    {"HeaderOnly", std::string(kHeader), "w.csv:1: The file has 0 hours, but must have at least 24.\n"},
    {"FewHours", std::string(kHeader) + day(",65,2.5,100", 5), "w.csv:6: The file has 5 hours, but must have at least 24.\n"},
    {"Semicolons", "at;air_c;humidity_percent\n2020-05-24 00:00;1,5;3\n", "w.csv:1: The columns are separated by semicolons, but must be separated by commas, with a point in decimal numbers.\n"},
    {"Tabs", "at\tair_c\n", "w.csv:1: The columns are separated by tabs, but must be separated by commas, with a point in decimal numbers.\n"},
    {"NoAt", with(good(), "at,", "time,"), "w.csv:1: at: This column is missing.\nw.csv:1: warning: This column is not used: \"time\".\n"},
    {"NoAir", with(good(), "air_c", "air_C"), "w.csv:1: air_c: This column is missing; is it the one named \"air_C\"?\nw.csv:1: warning: This column is not used: \"air_C\".\n"},
    {"NoHumidity", with(good(), "humidity_percent", "rh"), "w.csv:1: humidity_percent: This column is missing; dew_point_c would do as well.\nw.csv:1: warning: This column is not used: \"rh\".\n"},
    {"NoWind", with(good(), "wind_m_per_s", "wind"), "w.csv:1: wind_m_per_s: This column is missing.\nw.csv:1: warning: This column is not used: \"wind\".\n"},
    {"NoLight", with(good(), "shortwave_w_per_m2", "sun"), "w.csv:1: shortwave_w_per_m2: This column is missing; par_umol_per_m2_s or cloud_percent would do as well.\nw.csv:1: warning: This column is not used: \"sun\".\n"},
    {"ColumnTwice", with(good(), "humidity_percent", "air_c"), "w.csv:1: The column \"air_c\" is there twice.\nw.csv:1: humidity_percent: This column is missing; dew_point_c would do as well.\n"},
    {"Gap", with(good(), "2020-05-24 05:00,5,65,2.5,100\n", ""), "w.csv:7: at: The hour 2020-05-24 05:00 is missing before this row.\n"},
    {"LongGap", with(good(), "2020-05-24 05:00,5,65,2.5,100\n2020-05-24 06:00,6,65,2.5,100\n2020-05-24 07:00,7,65,2.5,100\n", ""), "w.csv:7: at: The 3 hours from 2020-05-24 05:00 to 2020-05-24 07:00 are missing before this row.\n"},
    {"HourTwice", with(good(), "2020-05-24 05:00,5,", "2020-05-24 04:00,5,"), "w.csv:7: at: The hour 2020-05-24 04:00 comes twice.\nw.csv:8: at: The hour 2020-05-24 05:00 is missing before this row.\n"},
    {"Backwards", good() + "2020-05-23 23:00,5,65,2.5,100\n", "w.csv:26: at: The hours must be in order, but 2020-05-23 23:00 follows 2020-05-24 23:00.\n"},
    {"HalfHour", with(good(), " 05:00", " 05:30"), "w.csv:7: at: The time 2020-05-24 05:30 is not a whole hour.\n"},
    {"Seconds", with(good(), " 05:00", " 05:00:01"), "w.csv:7: at: The time 2020-05-24 05:00:01 is not a whole hour.\n"},
    {"AtWords", with(good(), "2020-05-24 05:00", "24.05.2020 05:00"), "w.csv:7: at: This is \"24.05.2020 05:00\", but must be a date and time such as 2026-06-13 17:30.\n"},
    {"AtZone", with(good(), "2020-05-24 05:00", "2020-05-24T05:00:00Z"), "w.csv:7: at: This is \"2020-05-24T05:00:00Z\", but must be a date and time such as 2026-06-13 17:30, on the pond's own clock and without a zone.\n"},
    {"AtEmpty", with(good(), "2020-05-24 05:00", ""), "w.csv:7: at: This is \"\", but must be a date and time such as 2026-06-13 17:30.\n"},
    {"Words", with(good(), "05:00,5,", "05:00,warm,"), "w.csv:7: air_c: This is \"warm\", but must be a number.\n"},
    {"Nan", with(good(), "05:00,5,", "05:00,NaN,"), "w.csv:7: air_c: This is \"NaN\", but must be a number.\n"},
    {"Inf", with(good(), "05:00,5,", "05:00,-inf,"), "w.csv:7: air_c: This is \"-inf\", but must be a number.\n"},
    {"TooFar", with(good(), "05:00,5,", "05:00,1e999,"), "w.csv:7: air_c: This is \"1e999\", but must be a number.\n"},
    {"EmptyCell", with(good(), "05:00,5,", "05:00,,"), "w.csv:7: air_c: The cell is empty.\n"},
    {"DecimalComma", with(good(), "05:00,5,", "05:00,\"5,5\","), "w.csv:7: air_c: The number \"5,5\" must be written with a decimal point.\n"},
    {"BareDecimalComma", with(good(), "05:00,5,", "05:00,5,5,"), "w.csv:7: The row has 6 cells for 5 columns; decimal numbers must have a point, not a comma.\n"},
    {"ShortRow", with(good(), "05:00,5,65,", "05:00,5,"), "w.csv:7: The row has 4 cells for 5 columns.\n"},
    {"Hot", with(good(), "05:00,5,", "05:00,80,"), "w.csv:7: air_c: The value is 80 degC, but must be from -60 to 60 degC.\n"},
    {"Humid", with(good(), "05:00,5,65", "05:00,5,105.1"), "w.csv:7: humidity_percent: The value is 105.1 percent, but must be from 0 to 105 percent.\n"},
    {"HumidityNegative", with(good(), "05:00,5,65", "05:00,5,-1"), "w.csv:7: humidity_percent: The value is -1 percent, but must be from 0 to 105 percent.\n"},
    {"Windy", with(good(), "05:00,5,65,2.5", "05:00,5,65,51"), "w.csv:7: wind_m_per_s: The value is 51 m/s, but must be from 0 to 50 m/s.\n"},
    {"Bright", with(good(), "05:00,5,65,2.5,100", "05:00,5,65,2.5,1600"), "w.csv:7: shortwave_w_per_m2: The value is 1600 W/m2, but must be from -10 to 1500 W/m2.\n"},
    {"Dark", with(good(), "05:00,5,65,2.5,100", "05:00,5,65,2.5,-10.1"), "w.csv:7: shortwave_w_per_m2: The value is -10.1 W/m2, but must be from -10 to 1500 W/m2.\n"},
    {"OpenQuote", with(good(), "05:00,5,", "05:00,\"5,"), "w.csv:7: The quote that is opened in this row is never closed.\n"},
    {"TwoFaultsInARow", with(good(), "05:00,5,65", "05:00,x,y"), "w.csv:7: air_c: This is \"x\", but must be a number.\nw.csv:7: humidity_percent: This is \"y\", but must be a number.\n"},
}), [](const auto& row) { return std::string(row.param.name); });
// clang-format on

TEST(WeatherCsv, TakesWhatSensorsGiveALittleOutsideTheRange) {
    std::string text = with(good(), "00:00,0,65,2.5,100", "00:00,0,105,2.5,-10");
    text = with(text, "01:00,1,65,2.5,100", "01:00,1,100.2,2.5,0");
    const Outcome outcome = read(text);
    ASSERT_TRUE(outcome.isGood) << outcome.said;
    EXPECT_EQ(
        outcome.said,
        "w.csv: warning: humidity_percent: 2 values lie a little outside 0 to 100 percent and are taken as "
        "its nearer end.\n"
        "w.csv: warning: shortwave_w_per_m2: One value lies a little outside 0 to 1500 W/m2 and is taken as "
        "its nearer end.\n");
    EXPECT_EQ(outcome.hours[0].humidity_percent, 100.0);
    EXPECT_EQ(outcome.hours[1].humidity_percent, 100.0);
    EXPECT_EQ(outcome.hours[0].shortwave, 0.0);
    EXPECT_EQ(outcome.hours[2].humidity_percent, 65.0);
}

TEST(WeatherCsv, OtherLightHasNoSuchMargin) {
    const std::string header = "at,air_c,humidity_percent,wind_m_per_s,";
    const Outcome par = read(header + "par_umol_per_m2_s\n" + day(",65,2.5,-1"));
    EXPECT_FALSE(par.isGood);
    const Outcome cloud = read(header + "cloud_percent\n" + day(",65,2.5,101"));
    EXPECT_FALSE(cloud.isGood);
}

TEST(WeatherCsv, ManyFaultsAreCounted) {
    const Outcome outcome = read(std::string(kHeader) + day(",200,2.5,100"));
    EXPECT_TRUE(outcome.said.ends_with(
        "w.csv:21: humidity_percent: The value is 200 percent, but must be from 0 to 105 "
        "percent.\nw.csv: There are 4 more faults.\n"))
        << outcome.said;
}

}  // namespace
}  // namespace engine
