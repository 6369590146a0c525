// Two hundred mistakes that people make in a pond file: typos, slips of the pen, of unit, sign, column and
// year. Each must be refused or warned of at its own place; those that are not are listed.
#include "engine/base/text.h"
#include "engine/pond/key_list.h"
#include "engine/pond/pond_io.h"

#include <gtest/gtest.h>

#include <random>
#include <sstream>
#include <vector>

namespace engine {
namespace {

constexpr std::string_view kGood = R"(format = 1
title = "Mill Pond"

[place]
latitude_deg = 36.2
longitude_deg = -90.4
elevation_m = 120
first_day = 2026-06-14
utc_offset_h = -6

[basin]
area_m2 = 8000
max_depth_m = 3.4
mean_depth_m = 1.7

[bottom]
age_years = 48
muck_m = 0.7
sediment_demand_g_per_m2_d = 2.5
oxygen_debt_mg_per_l = 10.5
stratified_days = 40
smell = "strong"

[water]
secchi_m = 0.45
chlorophyll_ug_per_l = 70
ph = 7.8
alkalinity_mg_per_l = 90

[[fish]]
kind = "largemouth bass"
stock_kg_per_ha = 120
mean_mass_g = 400

[feed]
kg_per_d = 2.5

[profile]
at = 2026-06-13T17:30:00
depth_m = [0, 1, 2, 3]
temperature_c = [30.2, 27.1, 23.2, 20.6]
oxygen_mg_per_l = [9, 4.2, 0.2, 0]

[[weather.day]]
date = 2026-06-13
air_min_c = 21
air_max_c = 33
humidity_percent = 65
wind_m_per_s = 3.5
cloud_percent = 10

[[weather.day]]
date = 2026-06-14
air_min_c = 21
air_max_c = 32
humidity_percent = 70
wind_m_per_s = 3
cloud_percent = 40
rain_mm = 12

[aerator]
free_air_l_per_min = 45
diffusers = 2
depth_m = 3
bubble_mm = 3
power_kw = 0.4

[limits]
stress_mg_per_l = 5
lethal_mg_per_l = 2

[history]
kills = [2019-07-20]

[[ramp]]
name = "doubling"
kind = "doubling"
first_min = 30

[[ramp]]
name = "gentle"
kind = "capped"
dose_percent = 10

[[reading]]
at = 2026-06-14T05:40:00
depth_m = 0.5
oxygen_mg_per_l = 5.1
)";

std::vector<std::string> linesOf(std::string_view text) {
    std::vector<std::string> lines;
    std::istringstream stream{std::string(text)};
    for (std::string line; std::getline(stream, line);) {
        lines.push_back(line);
    }
    return lines;
}

std::string joined(const std::vector<std::string>& lines) {
    std::string text;
    for (const std::string& line : lines) {
        text += line + '\n';
    }
    return text;
}

struct Mistake {
    std::string what;
    std::string text;
    std::vector<int>
        lines;  ///< Where it may be named: its own line, or that of the number that it does not fit
};

/// A word with one letter left out, doubled, changed or swapped with the next.
std::string misspelt(const std::string& word, std::mt19937& dice) {
    while (true) {
        std::string wrong = word;
        const std::size_t at = dice() % word.size();
        switch (dice() % 4) {
            case 0:
                wrong.erase(at, 1);
                break;
            case 1:
                wrong.insert(at, 1, word[at]);
                break;
            case 2:
                wrong[at] = static_cast<char>('a' + dice() % 26);
                break;
            default:
                if (at + 1 < wrong.size()) {
                    std::swap(wrong[at], wrong[at + 1]);
                }
        }
        if (wrong != word && !wrong.empty()) {
            return wrong;
        }
    }
}

/// Typos in keys and headers, and slips of the pen in values, on drawn lines.
void addDrawn(std::vector<Mistake>& mistakes) {
    const std::vector<std::string> good = linesOf(kGood);
    std::mt19937 dice(2026);
    std::vector<std::size_t> keys, headers, decimals, numbers, texts, dates;
    for (std::size_t i = 0; i < good.size(); ++i) {
        const std::string& line = good[i];
        const std::size_t sign = line.find(" = ");
        if (line.starts_with('[')) {
            headers.push_back(i);
        } else if (sign != std::string::npos) {
            keys.push_back(i);
            const std::string value = line.substr(sign + 3);
            if (toNumber(value) && i > 0) {
                numbers.push_back(i);
                if (value.find('.') != std::string::npos) {
                    decimals.push_back(i);
                }
            } else if (value.starts_with('"')) {
                texts.push_back(i);
            } else if (value.starts_with("2026")) {
                dates.push_back(i);
            }
        }
    }
    const auto add = [&](const char* what, std::size_t line, const std::string& wrong) {
        std::vector<std::string> lines = good;
        lines[line] = wrong;
        mistakes.push_back({std::string(what) + ": " + wrong, joined(lines), {static_cast<int>(line) + 1}});
    };
    const auto one = [&](const std::vector<std::size_t>& of) { return of[dice() % of.size()]; };
    const auto keyOf = [&](std::size_t i) { return good[i].substr(0, good[i].find(" = ")); };
    const auto valueOf = [&](std::size_t i) { return good[i].substr(good[i].find(" = ") + 3); };
    for (int i = 0; i < 60; ++i) {
        const std::size_t line = one(keys);
        add("typo in a key", line, misspelt(keyOf(line), dice) + " = " + valueOf(line));
    }
    for (int i = 0; i < 15; ++i) {
        const std::size_t line = one(headers);
        const std::size_t first = good[line].find_first_not_of('[');
        const std::string name = good[line].substr(first, good[line].find(']') - first);
        const std::string brackets(first, '[');
        add("typo in a table", line, brackets + misspelt(name, dice) + std::string(first, ']'));
    }
    for (int i = 0; i < 8; ++i) {
        std::size_t line = one(decimals);
        std::string value = valueOf(line);
        value[value.find('.')] = ',';
        add("decimal comma", line, keyOf(line) + " = " + value);
        line = one(numbers);
        add("unit without quotes", line, keyOf(line) + " = " + valueOf(line) + " ft");
        line = one(numbers);
        add("no such unit", line, keyOf(line) + " = \"" + valueOf(line) + " furlongs\"");
        line = one(keys);
        add("colon", line, keyOf(line) + ": " + valueOf(line));
        line = one(texts);
        add("no quotes", line, keyOf(line) + " = " + valueOf(line).substr(1, valueOf(line).size() - 2));
    }
    for (int i = 0; i < 5; ++i) {
        const std::size_t line = one(dates);
        add("date of another order", line, keyOf(line) + " = 06/14/2026");
    }
}

/// Numbers in the wrong unit, of the wrong sign or year, in the wrong place.
struct Slip {
    const char* what;
    const char* from;
    const char* to;
    const char* alsoAt =
        nullptr;  ///< A line that the wrong number does not fit, where the fault may be named too
};

// clang-format off
constexpr Slip kSlips[] = {
    {"latitude of the other half", "latitude_deg = 36.2", "latitude_deg = -36.2"},
    {"longitude without its sign", "longitude_deg = -90.4", "longitude_deg = 90.4"},
    {"offset without its sign", "utc_offset_h = -6", "utc_offset_h = 6", "longitude_deg"},
    {"latitude and longitude swapped", "latitude_deg = 36.2\nlongitude_deg = -90.4", "latitude_deg = -90.4\nlongitude_deg = 36.2"},
    {"offset in minutes", "utc_offset_h = -6", "utc_offset_h = -360"},
    {"longitude a digit short", "longitude_deg = -90.4", "longitude_deg = -9.04"},
    {"latitude times ten", "latitude_deg = 36.2", "latitude_deg = 362"},
    {"elevation below the sea", "elevation_m = 120", "elevation_m = -120"},
    {"elevation in feet", "elevation_m = 120", "elevation_m = 394"},
    {"elevation in feet, high up", "elevation_m = 120", "elevation_m = 7900"},
    {"year of the first day", "first_day = 2026-06-14", "first_day = 2025-06-14", "at = 2026-06-13T17:30:00"},
    {"year to come", "first_day = 2026-06-14", "first_day = 2027-06-14", "at = 2026-06-13T17:30:00"},
    {"two digits of a year", "first_day = 2026-06-14", "first_day = 0026-06-14"},
    {"month and day swapped", "first_day = 2026-06-14", "first_day = 2026-14-06"},
    {"wrong month", "first_day = 2026-06-14", "first_day = 2026-07-14", "at = 2026-06-13T17:30:00"},
    {"area in acres", "area_m2 = 8000", "area_m2 = 2"},
    {"area in hectares", "area_m2 = 8000", "area_m2 = 0.8"},
    {"area in square feet", "area_m2 = 8000", "area_m2 = 86000"},
    {"area negative", "area_m2 = 8000", "area_m2 = -8000"},
    {"depth in feet", "max_depth_m = 3.4\nmean_depth_m = 1.7", "max_depth_m = 11.2\nmean_depth_m = 5.6"},
    {"deepest in feet alone", "max_depth_m = 3.4", "max_depth_m = 11.2", "mean_depth_m"},
    {"mean depth in feet alone", "mean_depth_m = 1.7", "mean_depth_m = 5.6"},
    {"depths in centimetres", "max_depth_m = 3.4\nmean_depth_m = 1.7", "max_depth_m = 340\nmean_depth_m = 170"},
    {"depths swapped", "max_depth_m = 3.4\nmean_depth_m = 1.7", "max_depth_m = 1.7\nmean_depth_m = 3.4", "mean_depth_m"},
    {"year of digging", "age_years = 48", "age_years = 1978"},
    {"muck in centimetres", "muck_m = 0.7", "muck_m = 70"},
    {"muck in feet", "muck_m = 0.7", "muck_m = 2.3"},
    {"muck in inches", "muck_m = 0.7", "muck_m = 27"},
    {"demand in mg", "sediment_demand_g_per_m2_d = 2.5", "sediment_demand_g_per_m2_d = 2500"},
    {"demand times ten", "sediment_demand_g_per_m2_d = 2.5", "sediment_demand_g_per_m2_d = 25"},
    {"debt in ug", "oxygen_debt_mg_per_l = 10.5", "oxygen_debt_mg_per_l = 10500"},
    {"debt times ten", "oxygen_debt_mg_per_l = 10.5", "oxygen_debt_mg_per_l = 105"},
    {"stratified in hours", "stratified_days = 40", "stratified_days = 960"},
    {"smell in own words", "smell = \"strong\"", "smell = \"bad\""},
    {"Secchi in centimetres", "secchi_m = 0.45", "secchi_m = 45"},
    {"Secchi in feet", "secchi_m = 0.45", "secchi_m = 1.5"},
    {"Secchi in inches", "secchi_m = 0.45", "secchi_m = 18"},
    {"Secchi zero", "secchi_m = 0.45", "secchi_m = 0"},
    {"chlorophyll in mg/L", "chlorophyll_ug_per_l = 70", "chlorophyll_ug_per_l = 0.07"},
    {"chlorophyll in ng/L", "chlorophyll_ug_per_l = 70", "chlorophyll_ug_per_l = 70000"},
    {"pH a digit short", "ph = 7.8", "ph = 78"},
    {"alkalinity in milliequivalents", "alkalinity_mg_per_l = 90", "alkalinity_mg_per_l = 1.8"},
    {"stock of the pond, not of the hectare, in grams", "stock_kg_per_ha = 120", "stock_kg_per_ha = 96000"},
    {"stock in lb/acre", "stock_kg_per_ha = 120", "stock_kg_per_ha = 107"},
    {"fish in kg", "mean_mass_g = 400", "mean_mass_g = 0.4"},
    {"fish in lb", "mean_mass_g = 400", "mean_mass_g = 0.9"},
    {"fish in mg", "mean_mass_g = 400", "mean_mass_g = 400000"},
    {"feed in grams", "kg_per_d = 2.5", "kg_per_d = 2500"},
    {"feed of a week", "kg_per_d = 2.5", "kg_per_d = 17.5"},
    {"profile of last year", "at = 2026-06-13T17:30:00", "at = 2025-06-13T17:30:00"},
    {"profile of the month before", "at = 2026-06-13T17:30:00", "at = 2026-05-13T17:30:00"},
    {"profile in feet", "depth_m = [0, 1, 2, 3]", "depth_m = [0, 3, 6, 9]"},
    {"profile from the bottom up", "depth_m = [0, 1, 2, 3]", "depth_m = [3, 2, 1, 0]"},
    {"profile temperatures in degF", "[30.2, 27.1, 23.2, 20.6]", "[86.4, 80.8, 73.8, 69.1]"},
    {"one temperature in degF", "[30.2, 27.1, 23.2, 20.6]", "[30.2, 27.1, 73.8, 20.6]"},
    {"temperatures upside down", "[30.2, 27.1, 23.2, 20.6]", "[20.6, 23.2, 27.1, 30.2]"},
    {"oxygen upside down", "[9, 4.2, 0.2, 0]", "[0, 0.2, 4.2, 9]"},
    {"oxygen in percent", "[9, 4.2, 0.2, 0]", "[119, 52, 2, 0]"},
    {"oxygen and temperature swapped", "temperature_c = [30.2, 27.1, 23.2, 20.6]\noxygen_mg_per_l = [9, 4.2, 0.2, 0]", "temperature_c = [9, 4.2, 0.2, 0]\noxygen_mg_per_l = [30.2, 27.1, 23.2, 20.6]"},
    {"one oxygen without its point", "[9, 4.2, 0.2, 0]", "[9, 42, 0.2, 0]"},
    {"an oxygen negative", "[9, 4.2, 0.2, 0]", "[9, 4.2, -0.2, 0]"},
    {"a temperature left out", "[30.2, 27.1, 23.2, 20.6]", "[30.2, 27.1, 20.6]"},
    {"decimal commas in a list", "[30.2, 27.1, 23.2, 20.6]", "[30,2, 27,1, 23,2, 20,6]"},
    {"weather of last year", "date = 2026-06-13\n", "date = 2025-06-13\n", "date = 2026-06-14"},
    {"weather of two days swapped", "date = 2026-06-13\n", "date = 2026-06-15\n", "date = 2026-06-14"},
    {"air in degF", "air_min_c = 21\nair_max_c = 33", "air_min_c = 70\nair_max_c = 91"},
    {"highest air in degF", "air_max_c = 33", "air_max_c = 91"},
    {"lowest and highest swapped", "air_min_c = 21\nair_max_c = 33", "air_min_c = 33\nair_max_c = 21"},
    {"lowest a digit short", "air_min_c = 21\nair_max_c = 33", "air_min_c = 2\nair_max_c = 33"},
    {"highest a digit short", "air_max_c = 32", "air_max_c = 3", "air_min_c"},
    {"lowest negative", "air_min_c = 21\nair_max_c = 33", "air_min_c = -21\nair_max_c = 33"},
    {"humidity as a share", "humidity_percent = 65", "humidity_percent = 0.65"},
    {"wind in km/h", "wind_m_per_s = 3.5", "wind_m_per_s = 12.6"},
    {"wind in mph", "wind_m_per_s = 3.5", "wind_m_per_s = 7.8"},
    {"wind without its point", "wind_m_per_s = 3.5", "wind_m_per_s = 35"},
    {"cloud as a share", "cloud_percent = 40", "cloud_percent = 0.4"},
    {"cloud in eighths and over", "cloud_percent = 40", "cloud_percent = 400"},
    {"rain in inches", "rain_mm = 12", "rain_mm = 0.5"},
    {"rain in tenths of mm and more", "rain_mm = 12", "rain_mm = 1200"},
    {"air in cfm", "free_air_l_per_min = 45", "free_air_l_per_min = 1.6"},
    {"air in litres an hour", "free_air_l_per_min = 45", "free_air_l_per_min = 2700"},
    {"air in m3/h", "free_air_l_per_min = 45", "free_air_l_per_min = 2.7"},
    {"diffusers of ten ponds", "diffusers = 2", "diffusers = 22"},
    {"half a diffuser", "diffusers = 2", "diffusers = 2.5"},
    {"diffusers in feet", "depth_m = 3\n", "depth_m = 10\n"},
    {"bubbles in cm", "bubble_mm = 3", "bubble_mm = 0.3"},
    {"bubbles in um", "bubble_mm = 3", "bubble_mm = 3000"},
    {"power in watts", "power_kw = 0.4", "power_kw = 400"},
    {"power in hp", "power_kw = 0.4", "power_kw = 0.54"},
    {"stress line a point off", "stress_mg_per_l = 5", "stress_mg_per_l = 0.5", "lethal_mg_per_l"},
    {"lines swapped", "stress_mg_per_l = 5\nlethal_mg_per_l = 2", "stress_mg_per_l = 2\nlethal_mg_per_l = 5", "lethal_mg_per_l"},
    {"kill in years to come", "kills = [2019-07-20]", "kills = [2029-07-20]"},
    {"first run in hours", "first_min = 30", "first_min = 0.5"},
    {"first run in seconds", "first_min = 30", "first_min = 1800"},
    {"dose as a share", "dose_percent = 10", "dose_percent = 0.1"},
    {"ramp of no kind", "kind = \"capped\"", "kind = \"cap\""},
    {"reading of last year", "at = 2026-06-14T05:40:00", "at = 2024-06-14T05:40:00"},
    {"reading of a year to come", "at = 2026-06-14T05:40:00", "at = 2028-06-14T05:40:00"},
    {"reading in feet", "depth_m = 0.5\n", "depth_m = 5\n"},
    {"reading in percent", "oxygen_mg_per_l = 5.1", "oxygen_mg_per_l = 61"},
};
// clang-format on

/// The lines at which two texts differ, by the numbers of the second.
std::vector<int> changedLines(const std::string& text, const char* alsoAt) {
    const std::vector<std::string> good = linesOf(kGood), wrong = linesOf(text);
    std::vector<int> lines;
    for (std::size_t i = 0; i < wrong.size(); ++i) {
        const bool isOther = i >= good.size() || wrong[i] != good[i];
        if (isOther || (alsoAt != nullptr && wrong[i].starts_with(alsoAt))) {
            lines.push_back(static_cast<int>(i) + 1);
        }
    }
    return lines;
}

void addSlips(std::vector<Mistake>& mistakes) {
    for (const Slip& slip : kSlips) {
        std::string text(kGood);
        const std::size_t at = text.find(slip.from);
        ASSERT_NE(at, std::string::npos) << slip.from;
        text.replace(at, std::string_view(slip.from).size(), slip.to);
        const std::vector<int> lines = changedLines(text, slip.alsoAt);
        mistakes.push_back({slip.what, std::move(text), lines});
    }
}

TEST(Mistakes, TheGoodPondIsReadWithoutAWord) {
    const PondReading reading = readPondText(kGood, "good.toml");
    ASSERT_TRUE(reading.pond);
    for (const Diagnostic& said : reading.diagnostics) {
        ADD_FAILURE() << format(said);
    }
}

TEST(Mistakes, OfTwoHundredAtMostFivePassUnseen) {
    std::vector<Mistake> mistakes;
    addDrawn(mistakes);
    addSlips(mistakes);
    ASSERT_GE(mistakes.size(), 200U);
    int unseen = 0, elsewhere = 0;
    std::string list;
    for (const Mistake& mistake : mistakes) {
        const PondReading reading = readPondText(mistake.text, "wrong.toml");
        const bool isNamed =
            std::any_of(reading.diagnostics.begin(), reading.diagnostics.end(), [&](const Diagnostic& said) {
                return std::find(mistake.lines.begin(), mistake.lines.end(), said.line) !=
                       mistake.lines.end();
            });
        if (!isNamed) {
            (reading.diagnostics.empty() ? unseen : elsewhere) += 1;
            list += (reading.diagnostics.empty() ? "unseen: " : "named elsewhere: ") + mistake.what + '\n';
            for (const Diagnostic& said : reading.diagnostics) {
                list += "    " + format(said) + '\n';
            }
        }
    }
    std::printf("%zu mistakes, %d unseen, %d named elsewhere\n%s", mistakes.size(), unseen, elsewhere,
                list.c_str());
    RecordProperty("mistakes", static_cast<int>(mistakes.size()));
    RecordProperty("unseen", unseen);
    EXPECT_EQ(elsewhere, 0) << list;
    EXPECT_LE(unseen, 5) << list;
}

}  // namespace
}  // namespace engine
