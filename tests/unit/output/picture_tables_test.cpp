#include "engine/output/picture_tables.h"

#include "tests/made_up_comparison.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace engine {
namespace {

using test::madeUpComparison;
using test::withMembers;

std::ptrdiff_t rowsOf(const std::string& csv) {
    return std::count(csv.begin(), csv.end(), '\n') - 1;
}

bool has(const std::string& csv, const std::string& line) {
    return csv.find("\r\n" + line + "\r\n") != std::string::npos;
}

TEST(PictureTables, NightLowsStandBesideDoNothings) {
    Comparison comparison = madeUpComparison();
    const std::string csv = nightLowsCsv(comparison);
    EXPECT_EQ(csv.substr(0, csv.find('\r')),
              "ramp,night,date,lowest_mg_per_l,lowest_time_h,do_nothing_mg_per_l");
    EXPECT_EQ(rowsOf(csv), 2 * static_cast<std::ptrdiff_t>(comparison.runs.size()));
    EXPECT_TRUE(has(csv, "gentle,2,2026-06-15,3.25,53.66111111111111,5.25")) << csv;
    comparison.runs[0].end = RunEnd::Cancelled;
    EXPECT_TRUE(has(nightLowsCsv(comparison), "gentle,2,2026-06-15,3.25,53.66111111111111,"));
    EXPECT_EQ(nightLowsCsv(comparison).find("do-nothing,"), std::string::npos);
}

TEST(PictureTables, TheWholeRunHasTheAirOfItsHours) {
    const Comparison comparison = madeUpComparison();
    Backdrop backdrop;
    backdrop.hours.push_back({9.0 * 3600.0, 25.0, 1.5, 0.25, 600.0});
    const std::string csv = wholeRunCsv(comparison, backdrop);
    EXPECT_TRUE(has(csv, "do-nothing,10,7.75,0.5,25,1.5,25,600")) << csv;
    EXPECT_TRUE(has(csv, "do-nothing,-6.5,8.25,0,,,,")) << "before the first hour of air";
}

TEST(PictureTables, HoursAreSortedIntoNights) {
    Comparison comparison = madeUpComparison();
    for (RampRun& run : comparison.runs) {
        run.hours[1].time = 30.0 * 3600.0;
    }
    comparison.runs[0].hours[1].fishWater = 6.5;
    const std::string all = nightHoursCsv(comparison, 1);
    EXPECT_EQ(rowsOf(all), 2);
    EXPECT_NE(all.find(",0,-6.5,8.25,0\r\n"), std::string::npos) << all;
    EXPECT_NE(all.find(",1,30,7.75,0.5\r\n"), std::string::npos) << all;
    const std::string beside = nightsBesideNothingCsv(comparison, 1);
    EXPECT_EQ(rowsOf(beside), 1) << "night 0 is none";
    EXPECT_NE(beside.find(",1,30,7.75,6.5\r\n"), std::string::npos) << beside;
}

TEST(PictureTables, CurvesHaveMembersAtWholeHoursAndReadingsAfterThem) {
    Comparison comparison = withMembers(madeUpComparison());
    comparison.runs[1].hours[1].time = 30.0 * 3600.0;
    comparison.ensemble->ramps[1].hours[1] = 30.0 * 3600.0;
    const std::string& name = comparison.runs[1].name;
    const std::string csv = nightCurvesCsv(comparison, {{1, 1}}, 1, std::nullopt);
    EXPECT_TRUE(has(csv, name + ",1,29,5.5,,")) << "the low, between two hours\n" << csv;
    EXPECT_TRUE(has(csv, name + ",1,30,7.75,2,6")) << csv;
    EXPECT_TRUE(has(csv, "reading at 0.5 m,0,5.666666666666667,5.1,,")) << csv;
    EXPECT_EQ(nightCurvesCsv(comparison, {{1, 1}}, 1, 1).find("reading"), std::string::npos);
    EXPECT_NE(nightCurvesCsv(comparison, {}, 1, 0).find("reading"), std::string::npos);
}

TEST(PictureTables, DebtAndDoseGoByTheDay) {
    Comparison comparison = madeUpComparison();
    comparison.model.bottom.cause = BottomWater::Cause::Density;
    comparison.model.bottom.volume = 1600.0;
    EXPECT_TRUE(has(debtCsv(comparison), "gentle,2,125,50,60")) << debtCsv(comparison);
    comparison.model.bottom = {};
    EXPECT_TRUE(has(debtCsv(comparison), "gentle,2,125,,60"));
}

TEST(PictureTables, GasesAreInMicrograms) {
    Comparison comparison = madeUpComparison();
    comparison.runs[0].hours[1].unionisedAmmonia = 0.025;
    comparison.runs[0].hours[1].hydrogenSulfide = 0.002;
    EXPECT_TRUE(has(gasMicrogramsCsv(comparison), "do-nothing,10,25,2")) << gasMicrogramsCsv(comparison);
}

TEST(PictureTables, ProfilesAreOfTheStartAndOfDawn) {
    const Comparison comparison = madeUpComparison();
    Backdrop backdrop;
    backdrop.nights.resize(1);  // without sunrise: six o'clock of day 2, to which 10:00 is nearest
    const std::string csv = profilesCsv(comparison, backdrop, {1}, 1);
    EXPECT_EQ(rowsOf(csv), 24);
    EXPECT_NE(csv.find(",start,-6.5,"), std::string::npos);
    EXPECT_NE(csv.find(",dawn,10,"), std::string::npos);
    EXPECT_NE(csv.find(",21.5,6.25\r\n"), std::string::npos);
    EXPECT_EQ(rowsOf(profilesCsv(comparison, backdrop, {}, 1)), 0);
}

TEST(PictureTables, WhatIsNotKnownOfARiskIsEmpty) {
    const Comparison comparison = madeUpComparison();
    RampRisk known{1, 7, {0.5, 0.25, 0.125, 0.0625}}, unknown{2, std::nullopt, {1.0, 0.0, {}, {}}};
    const std::string csv = riskCsv(comparison, {known, unknown});
    EXPECT_TRUE(has(csv, comparison.runs[1].name + ",7,0.5,0.25,0.125,0.0625")) << csv;
    EXPECT_TRUE(has(csv, comparison.runs[2].name + ",,1,0,,")) << csv;
}

}  // namespace
}  // namespace engine
