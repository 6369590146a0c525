#include "engine/output/results_io.h"

#include "engine/base/text.h"
#include "tests/made_up_comparison.h"

#include <gtest/gtest.h>

#include <limits>

namespace engine {
namespace {

using test::kPlainPond;
using test::madeUpComparison;

/// Records of a CSV text, checked on the way: CRLF ends each, quotes as RFC 4180 has them.
std::vector<std::vector<std::string>> records(const std::string& text) {
    std::vector<std::vector<std::string>> rows(1, std::vector<std::string>(1));
    bool isQuoted = false;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        if (isQuoted && c == '"' && i + 1 < text.size() && text[i + 1] == '"') {
            rows.back().back() += c;
            ++i;
        } else if (c == '"') {
            isQuoted = !isQuoted;
        } else if (isQuoted) {
            rows.back().back() += c;
        } else if (c == ',') {
            rows.back().emplace_back();
        } else if (c == '\r') {
            EXPECT_LT(i + 1, text.size());
            EXPECT_EQ(text[++i], '\n');
            rows.emplace_back(1);
        } else {
            EXPECT_NE(c, '\n') << "a line feed without its carriage return";
            rows.back().back() += c;
        }
    }
    EXPECT_FALSE(isQuoted);
    EXPECT_EQ(rows.back(), std::vector<std::string>(1)) << "the last line ends too";
    rows.pop_back();
    for (const auto& row : rows) {
        EXPECT_EQ(row.size(), rows.front().size());
    }
    return rows;
}

using Row = std::vector<std::string>;

TEST(ResultsIo, HeadersAreTheContract) {
    const Comparison comparison = madeUpComparison();
    const auto header = [](const std::string& text) { return text.substr(0, text.find('\r')); };
    // Other programs read these columns: a change here is one of the format.
    EXPECT_EQ(header(summaryCsv(comparison)),
              "ramp,days_to_continuous,worst_mg_per_l,worst_time_h,worst_day,hours_below_stress,"
              "hours_below_lethal,end_state_mg_per_l,largest_dose_percent,largest_dose_day,energy_kwh,"
              "chance_below_stress,chance_below_lethal,chance_added");
    EXPECT_EQ(header(dailyCsv(comparison)),
              "ramp,day,date,run_minutes,dose_percent,lowest_mg_per_l,lowest_time_h,dawn_surface_mg_per_l,"
              "dawn_bottom_mg_per_l,dawn_top_minus_bottom_c,debt_left_percent");
    EXPECT_EQ(header(hourlyCsv(comparison)),
              "ramp,time_h,surface_mg_per_l,fish_water_mg_per_l,bottom_mg_per_l,mean_mg_per_l,surface_c,"
              "bottom_c,running,fish_water_p05,fish_water_p25,fish_water_p50,fish_water_p75,fish_water_p95");
    EXPECT_EQ(header(layersCsv(comparison)),
              "ramp,time_h,depth_m,temperature_c,oxygen_mg_per_l,debt_mg_per_l");
    EXPECT_EQ(header(budgetCsv(comparison)),
              "ramp,day,photosynthesis_kg,respiration_kg,fish_kg,sediment_kg,debt_kg,surface_kg,bubbles_kg,"
              "surface_aerator_kg,inflow_kg,stored_change_kg,closing_error_kg,bubbling_out_kg");
}

TEST(ResultsIo, TheFilesAreThoseOfTheContractAndTheGases) {
    const Comparison comparison = madeUpComparison();
    const std::vector<TextFile> files = comparisonFiles(comparison);
    ASSERT_EQ(files.size(), 7U);
    EXPECT_EQ(files[0].name, "summary.csv");
    EXPECT_EQ(files[1].name, "daily.csv");
    EXPECT_EQ(files[2].name, "hourly.csv");
    EXPECT_EQ(files[3].name, "layers.csv");
    EXPECT_EQ(files[4].name, "budget.csv");
    EXPECT_EQ(files[4].text, budgetCsv(comparison));
    EXPECT_EQ(files[6].name, "organic.csv");
    EXPECT_TRUE(
        files[6].text.starts_with("ramp,day,made_kg,loaded_kg,respired_kg,settled_kg,lost_kg,burnt_kg,stored_"
                                  "change_kg,closing_error_kg\r\n"));
    EXPECT_EQ(files[5].name, "gases.csv");
    EXPECT_TRUE(
        files[5].text.starts_with("ramp,time_h,unionised_ammonia_mg_per_l,hydrogen_sulfide_mg_per_l,ph\r\n"));
}

TEST(ResultsIo, FieldsAreQuotedWhereTheyMustBe) {
    EXPECT_EQ(csvField("gentle"), "gentle");
    EXPECT_EQ(csvField(""), "");
    EXPECT_EQ(csvField("gentle, twelve days"), "\"gentle, twelve days\"");
    EXPECT_EQ(csvField("the \"safe\" one"), "\"the \"\"safe\"\" one\"");
    EXPECT_EQ(csvField("two\r\nlines"), "\"two\r\nlines\"");
    EXPECT_EQ(csvField("sanft: äöü 池"), "sanft: äöü 池");
}

TEST(ResultsIo, ARampsNameComesBackWhole) {
    Comparison comparison = madeUpComparison();
    const std::string name = "sanft, \"池\" äöü;\tlangsam";
    comparison.runs[1].name = name;
    for (const TextFile& file : comparisonFiles(comparison)) {
        int found = 0;
        for (const Row& row : records(file.text)) {
            found += row.front() == name ? 1 : 0;
        }
        EXPECT_GT(found, 0) << file.name;
    }
}

TEST(ResultsIo, SummaryHasDoNothingFirstAndItsEmptyFields) {
    Comparison comparison = madeUpComparison();
    comparison.runs[0].endState = 5.5;
    comparison.runs[1].daysToContinuous = 1;
    comparison.runs[1].endState = 2.5;
    const auto rows = records(summaryCsv(comparison));
    ASSERT_EQ(rows.size(), 5U);
    EXPECT_EQ(rows[1], (Row{"do-nothing", "", "5.25", shortest(193180.0 / 3600.0), "2", "0", "0", "5.5", "0",
                            "", "0", "0", "0", "0"}));
    // The lines of the test pond are 5 and 2 mg/L; it gives no power, so that there is no energy.
    const std::string dose = shortest(100.0 * 800.0 / comparison.model.bottom.volume);
    EXPECT_EQ(rows[2], (Row{"at once", "1", "3.25", shortest(193180.0 / 3600.0), "2", "4.5", "0", "2.5", dose,
                            "2", "", "1", "0", "1"}));
    EXPECT_EQ(rows[3][1], "");
    EXPECT_EQ(rows[3][7], "") << "an end state that was not computed";
}

TEST(ResultsIo, EnergyIsThereWithAPower) {
    const Comparison comparison =
        madeUpComparison(test::with(kPlainPond, "diffusers = 2", "diffusers = 2\npower_kw = 0.4"));
    const auto rows = records(summaryCsv(comparison));
    EXPECT_EQ(rows[1][10], "0");
    EXPECT_EQ(rows[2][10], "0.6");
}

TEST(ResultsIo, AddedIsWithTheRampMinusLeftAlone) {
    Comparison comparison = madeUpComparison();
    comparison.runs[0].days[1].lowest = 1.5;  // below both lines by itself
    const auto rows = records(summaryCsv(comparison));
    EXPECT_EQ(Row(rows[1].begin() + 11, rows[1].end()), (Row{"1", "1", "0"}));
    EXPECT_EQ(Row(rows[2].begin() + 11, rows[2].end()), (Row{"1", "0", "0"}));
}

TEST(ResultsIo, AMixedPondHasNoDoses) {
    Comparison comparison = madeUpComparison();
    comparison.model.bottom = BottomWater{};
    comparison.model.debt_kg = 0.0;
    const auto summary = records(summaryCsv(comparison));
    EXPECT_EQ(summary[1][8], "0") << "do-nothing's dose is 0 in the contract";
    EXPECT_EQ(summary[2][8], "");
    EXPECT_EQ(summary[2][9], "");
    const auto daily = records(dailyCsv(comparison));
    EXPECT_EQ(daily[1][4], "0");
    EXPECT_EQ(daily[3][4], "");
    EXPECT_EQ(daily[3][10], "") << "there was no debt to be left of";
}

TEST(ResultsIo, ARunThatLiftsNothingHasADoseOfZeroAndNoDay) {
    Comparison comparison = madeUpComparison();
    for (DayRow& day : comparison.runs[1].days) {
        day.liftedVolume = 0.0;
    }
    const auto rows = records(summaryCsv(comparison));
    EXPECT_EQ(rows[2][8], "0");
    EXPECT_EQ(rows[2][9], "");
}

TEST(ResultsIo, ARunThatEndedEarlyHasNoWorstNight) {
    Comparison comparison = madeUpComparison();
    comparison.runs[1].end = RunEnd::NotFinite;
    comparison.runs[1].days[1].lowest = std::numeric_limits<double>::infinity();
    EXPECT_EQ(records(summaryCsv(comparison))[2],
              (Row{"at once", "", "", "", "", "", "", "", "", "", "", "", "", ""}));
    const auto daily = records(dailyCsv(comparison));
    EXPECT_EQ(daily[4][5], "");
    EXPECT_EQ(daily[4][6], "");
    comparison.runs[0].end = RunEnd::NotFinite;
    EXPECT_EQ(records(summaryCsv(comparison))[3][13], "") << "nothing to be added to";
}

TEST(ResultsIo, DailyHasDatesMinutesAndDoses) {
    const Comparison comparison = madeUpComparison();
    const auto rows = records(dailyCsv(comparison));
    ASSERT_EQ(rows.size(), 1U + 2U * 4U);
    EXPECT_EQ(rows[1],
              (Row{"do-nothing", "1", "2026-06-14", "0", "0", "5.5", "29", "5.75", "0.5", "7.5", "75"}));
    EXPECT_EQ(rows[4][2], "2026-06-15");
    EXPECT_EQ(rows[4][3], "60");
    EXPECT_EQ(toNumber(rows[4][4]), 100.0 * 800.0 / comparison.model.bottom.volume);
    EXPECT_EQ(rows[4][10], "125");
}

TEST(ResultsIo, HourlyRepeatsTheCentralRunInItsPercentiles) {
    const auto rows = records(hourlyCsv(madeUpComparison()));
    ASSERT_EQ(rows.size(), 1U + 2U * 4U);
    EXPECT_EQ(rows[1], (Row{"do-nothing", "-6.5", "8.5", "8.25", "0", "5", "28.5", "20", "0", "8.25", "8.25",
                            "8.25", "8.25", "8.25"}));
    EXPECT_EQ(rows[2][1], "10");
    EXPECT_EQ(rows[2][8], "0.5");
}

TEST(ResultsIo, MembersFillThePercentilesAndTheChances) {
    const Comparison comparison = test::withMembers(madeUpComparison());
    const auto hourly = records(hourlyCsv(comparison));
    const auto central = records(hourlyCsv(madeUpComparison()));
    ASSERT_EQ(hourly.size(), central.size());
    EXPECT_EQ(Row(hourly[1].end() - 5, hourly[1].end()), (Row{"1", "2", "3", "4", "5"}));
    EXPECT_EQ(Row(hourly[2].end() - 5, hourly[2].end()), (Row{"2", "3", "4", "5", "6"}));
    for (std::size_t row = 0; row < hourly.size(); ++row) {
        EXPECT_EQ(Row(hourly[row].begin(), hourly[row].end() - 5),
                  Row(central[row].begin(), central[row].end() - 5))
            << "every other column is the central run's";
    }
    const auto summary = records(summaryCsv(comparison));
    EXPECT_EQ(Row(summary[1].end() - 3, summary[1].end()), (Row{"0.3", "0", "0"}));
    EXPECT_EQ(Row(summary[2].end() - 3, summary[2].end()), (Row{"0.46", "0.015", shortest(0.46 - 0.3)}));
}

TEST(ResultsIo, LayersHaveTheMiddlesOfTheGrid) {
    Comparison comparison = madeUpComparison();
    const auto rows = records(layersCsv(comparison));
    ASSERT_EQ(rows.size(), 1U + 4U * 2U * 12U);
    EXPECT_EQ(rows[12],
              (Row{"do-nothing", "-6.5", shortest(comparison.model.grid.middle[11]), "21.5", "6.25", "14"}));
    comparison.runs[0].layers.clear();  // not kept
    EXPECT_EQ(records(layersCsv(comparison)).size(), 1U + 3U * 2U * 12U);
}

TEST(ResultsIo, BudgetIsInKilogramsAndKnowsNoMinusZero) {
    const auto rows = records(budgetCsv(madeUpComparison()));
    ASSERT_EQ(rows.size(), 1U + 4U * 4U);
    EXPECT_EQ(rows[1], (Row{"do-nothing", "0", "9", "-5", "-1", "-1.5", "-0.5", "0.25", "0.125", "0", "0",
                            "1.375", "0", "0"}));
    EXPECT_EQ(rows[4][1], "3");
}

TEST(ResultsIo, NumbersKeepTheirFullPrecision) {
    Comparison comparison = madeUpComparison();
    comparison.runs[1].days[1].lowest = 1.0 / 3.0;
    EXPECT_EQ(toNumber(records(summaryCsv(comparison))[2][2]), 1.0 / 3.0);
}

}  // namespace
}  // namespace engine
