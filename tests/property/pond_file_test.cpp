// Laws of the pond file over seeded random ponds and over damaged files.
#include "engine/base/text.h"
#include "engine/pond/epw.h"
#include "engine/pond/local_time.h"
#include "engine/pond/pond_io.h"
#include "engine/pond/readings_csv.h"
#include "engine/pond/weather_csv.h"
#include "tests/epw_text.h"
#include "tests/pond_texts.h"
#include "tests/random_pond.h"
#include "tests/temporary_folder.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <map>

namespace engine::test {
namespace {

constexpr unsigned kSeed = 20260614;

std::string said(const PondReading& reading) {
    std::string text;
    for (const auto& diagnostic : reading.diagnostics) {
        text += format(diagnostic) + '\n';
    }
    return text;
}

/// The keys that come up in a text of our own form, as "table.key".
void countKeys(std::string_view text, std::map<std::string, int>& counts) {
    std::string table;
    while (!text.empty()) {
        const auto line = text.substr(0, text.find('\n'));
        text.remove_prefix(std::min(line.size() + 1, text.size()));
        if (line.starts_with('[')) {
            const auto first = line.find_first_not_of('[');
            table = std::string(line.substr(first, line.find(']') - first)) + '.';
        } else if (const auto end = line.find(" = "); end != std::string_view::npos) {
            ++counts[table + std::string(line.substr(0, end))];
        }
    }
}

TEST(PondFile, WhatIsWrittenReadsAsTheSamePondAndTheSameBytes) {
    std::map<std::string, int> counts;
    for (unsigned draw = 0; draw < 500; ++draw) {
        SCOPED_TRACE("seed " + std::to_string(kSeed + draw));
        Dice dice(kSeed + draw);
        const Pond pond = randomPond(dice);
        const std::string text = writePond(pond);
        const auto reading = readPondText(text, "random.toml");
        ASSERT_TRUE(reading.pond) << said(reading) << text;
        EXPECT_FALSE(hasErrors(reading.diagnostics)) << said(reading);
        ASSERT_TRUE(*reading.pond == pond) << text << writePond(*reading.pond);
        ASSERT_EQ(writePond(*reading.pond), text);
        countKeys(text, counts);
    }
    // The draws reach every key: those of the file in which each is there once.
    std::map<std::string, int> all;
    countKeys(kFullPond, all);
    for (const auto* key : {"basin.area_m2", "basin.max_depth_m", "basin.mean_depth_m"}) {
        all[key] = 1;
    }
    all.erase("readings.file");  // see the next test
    all.erase("climate.file");
    for (const auto& [key, count] : all) {
        EXPECT_GE(counts[key], 10) << key;
    }
}

/// A random hour of weather and the row that says the same.
std::string randomHour(Dice& dice, LocalTime stamped, bool hasDew, std::size_t light, WeatherHour& hour) {
    hour.air = dice.number(kAirTemperatureRule);
    hour.wind = dice.number(kWindRule);
    (hasDew ? hour.dewPoint : hour.humidity_percent) = dice.number(hasDew ? kDewPointRule : kPercentRule);
    auto& sun = light == 0 ? hour.shortwave : light == 1 ? hour.par_umolPerM2S : hour.cloud_percent;
    sun = dice.number(light == 0 ? kShortwaveRule : light == 1 ? kParRule : kPercentRule);
    return formatLocalTime(stamped) + "," + shortest(hour.air) + "," +
           shortest(hasDew ? *hour.dewPoint : *hour.humidity_percent) + "," + shortest(hour.wind) + "," +
           shortest(*sun) + "\n";
}

/// What epwText() says.
std::vector<ClimateMonth> monthsOfYear() {
    Diagnostics none;
    return readEpw(epwText(), "year.epw", {}, none);
}

TEST(PondFile, CompanionFilesBelongToThePond) {
    const TemporaryFolder folder;
    constexpr std::array<const char*, 3> kLights{"shortwave_w_per_m2", "par_umol_per_m2_s", "cloud_percent"};
    for (unsigned draw = 0; draw < 50; ++draw) {
        SCOPED_TRACE("seed " + std::to_string(kSeed + draw));
        Dice dice(kSeed + draw);
        Pond pond = randomPond(dice);
        pond.weather.days.clear();
        pond.weather.file = "hours.csv";
        pond.weather.stamp = dice.coin() ? HourStamp::Start : HourStamp::End;
        const bool hasDew = dice.coin();
        const std::size_t light = dice.below(kLights.size());
        std::string rows = std::string("at,air_c,") + (hasDew ? "dew_point_c" : "humidity_percent") +
                           ",wind_m_per_s," + kLights[light] + "\n";
        for (int i = 0; i < 24 + dice.between(0, 100); ++i) {
            WeatherHour hour;
            hour.start = LocalTime(std::chrono::hours(480000 + i));
            const auto shift = std::chrono::hours(*pond.weather.stamp == HourStamp::End ? 1 : 0);
            rows += randomHour(dice, hour.start + shift, hasDew, light, hour);
            pond.weather.hours.push_back(hour);
        }
        folder.write("hours.csv", rows);

        pond.readingsFile.name = "logger.csv";
        std::string logged = "at,depth_m,temperature_c,oxygen_mg_per_l\n";
        for (int i = 0; i < dice.between(0, 50); ++i) {
            Reading reading;
            reading.line = i + 2;
            reading.at = LocalTime(std::chrono::minutes(28800000 + 30 * i));
            reading.depth = Quantity(dice.number({0.0, 1.0, "m"}));
            reading.oxygen = Quantity(dice.number(kOxygenRule));
            logged += formatLocalTime(*reading.at) + "," + shortest(*reading.depth) + ",," +
                      shortest(*reading.oxygen) + "\n";
            pond.fileReadings.push_back(reading);
        }
        folder.write("logger.csv", logged);

        if (draw % 10 == 0) {  // a year takes its time
            // A station at the pond, so that nothing is warned of.
            pond.climate.file = "year.epw";
            const std::string station = "36.2,-90.1,-6.0,120.0";
            folder.write("year.epw",
                         with(epwText(), station,
                              shortest(*pond.place.latitude_deg) + "," + shortest(*pond.place.longitude_deg) +
                                  ",0," + shortest(*pond.place.elevation)));
            pond.climate.fileMonths = monthsOfYear();
        }

        const std::string text = writePond(pond);
        folder.write("pond.toml", text);
        const auto reading = readPondText(text, folder.path() / "pond.toml");
        ASSERT_TRUE(reading.pond) << said(reading) << text;
        ASSERT_EQ(writePond(*reading.pond), text);
        ASSERT_TRUE(reading.pond->weather.hours == pond.weather.hours);
        ASSERT_TRUE(reading.pond->fileReadings == pond.fileReadings);
        ASSERT_TRUE(*reading.pond == pond);
    }
}

TEST(PondFile, ScenariosComeBackEqual) {
    int count = 0;
    if (std::filesystem::is_directory(DAWNLINE_SCENARIOS)) {
        for (const auto& entry : std::filesystem::directory_iterator(DAWNLINE_SCENARIOS)) {
            if (entry.path().extension() != ".toml") {
                continue;
            }
            ++count;
            const auto reading = readPond(entry.path());
            ASSERT_TRUE(reading.pond) << said(reading);
            const std::string text = writePond(*reading.pond);
            const auto again = readPondText(text, entry.path());
            ASSERT_TRUE(again.pond) << said(again);
            EXPECT_TRUE(*again.pond == *reading.pond) << entry.path();
            EXPECT_EQ(writePond(*again.pond), text) << entry.path();
        }
    }
    if (count == 0) {
        GTEST_SKIP() << "there are no scenarios yet";
    }
}

/// One to eight slips: a byte changed, taken out or put in, a piece doubled or moved, the end cut off.
std::string damaged(std::string_view good, Dice& dice) {
    static constexpr std::string_view kLikely = "\"'[]{}=.,#\\\n\r\t -+_0123456789eEnaif:TZ\x01\x7F\xC3\xFF";
    std::string text(good);
    for (int slips = dice.between(1, 8); slips > 0 && !text.empty(); --slips) {
        const std::size_t at = dice.below(text.size());
        const char byte =
            dice.coin(0.8) ? kLikely[dice.below(kLikely.size())] : static_cast<char>(dice.between(-128, 127));
        const std::size_t length = std::min(dice.below(40), text.size() - at);
        switch (dice.below(6)) {
            case 0:
                text[at] = byte;
                break;
            case 1:
                text.erase(at, 1);
                break;
            case 2:
                text.insert(at, 1, byte);
                break;
            case 3:
                text.insert(dice.below(text.size()), text.substr(at, length));
                break;
            case 4:
                text.erase(at, length);
                break;
            default:
                text.resize(dice.coin(0.1) ? at : text.size());
                break;
        }
    }
    return text;
}

TEST(PondFile, DamagedFilesGiveAPondOrAnError) {
    int ponds = 0;
    int refusedAfterParsing = 0;
    for (unsigned draw = 0; draw < 4000; ++draw) {
        SCOPED_TRACE("seed " + std::to_string(kSeed + draw));
        Dice dice(kSeed + draw);
        const std::string text = damaged(draw % 2 == 0 ? kPlainPond : kFullPond, dice);
        PondReading reading;
        ASSERT_NO_THROW(reading = readPondText(text, "damaged.toml")) << text;
        ASSERT_NE(reading.pond.has_value(), hasErrors(reading.diagnostics)) << text;
        int line = 0;
        for (const auto& diagnostic : reading.diagnostics) {
            EXPECT_FALSE(diagnostic.sentence.empty());
            EXPECT_TRUE(diagnostic.sentence.ends_with('.') || diagnostic.sentence.ends_with('?'));
            EXPECT_GE(diagnostic.line, line) << said(reading);
            line = diagnostic.line;
        }
        refusedAfterParsing += reading.diagnostics.size() > 1 ? 1 : 0;
        if (reading.pond) {
            ++ponds;
            const auto again = readPondText(writePond(*reading.pond), "again.toml");
            ASSERT_TRUE(again.pond) << said(again) << text;
            ASSERT_TRUE(*again.pond == *reading.pond) << text;
        }
    }
    // The damage is neither always fatal nor without effect.
    EXPECT_GE(ponds, 40);
    EXPECT_GE(refusedAfterParsing, 40);
}

TEST(PondFile, ADamagedTypicalYearGivesTwelveMonthsOrAnError) {
    const std::string whole = epwText();
    int good = 0;
    for (unsigned draw = 0; draw < 40; ++draw) {
        SCOPED_TRACE("seed " + std::to_string(kSeed + draw));
        Dice dice(kSeed + draw);
        Diagnostics said;
        std::vector<ClimateMonth> months;
        ASSERT_NO_THROW(months = readEpw(damaged(whole, dice), "y.epw", {}, said));
        good += hasErrors(said) ? 0 : 1;
        ASSERT_TRUE(hasErrors(said) || months.size() == 12U);
        for (const ClimateMonth& one : months) {
            EXPECT_TRUE(hasErrors(said) || (one.airMin && one.airMax && one.wind && one.cloud_percent &&
                                            one.dewPoint.has_value() != one.humidity_percent.has_value()));
        }
    }
    EXPECT_GE(good, 1);  // the damage is neither always fatal nor without effect
    EXPECT_LE(good, 39);
}

TEST(PondFile, DamagedCsvGivesRowsOrAnError) {
    std::string weather = "at,air_c,humidity_percent,wind_m_per_s,cloud_percent\n";
    std::string logger = "at,depth_m,temperature_c,oxygen_mg_per_l\n";
    for (int i = 0; i < 30; ++i) {
        const std::string at = formatLocalTime(LocalTime(std::chrono::hours(480000 + i)));
        weather += at + ",20.5,\"65\",2,50\n";
        logger += at + ",0.5,,8.25\n";
    }
    int good = 0;
    for (unsigned draw = 0; draw < 2000; ++draw) {
        SCOPED_TRACE("seed " + std::to_string(kSeed + draw));
        Dice dice(kSeed + draw);
        Diagnostics ofWeather;
        Diagnostics ofLogger;
        ASSERT_NO_THROW({
            const auto hours = readWeatherCsv(damaged(weather, dice), "w.csv", HourStamp::End, ofWeather);
            EXPECT_TRUE(hasErrors(ofWeather) || hours.size() >= 24U);
            for (const Reading& reading :
                 readReadingsCsv(damaged(logger, dice), "r.csv", {}, 2.0, ofLogger)) {
                EXPECT_TRUE(hasErrors(ofLogger) || (reading.at && reading.depth && reading.oxygen) ||
                            reading.temperature);
            }
        });
        good += (hasErrors(ofWeather) ? 0 : 1) + (hasErrors(ofLogger) ? 0 : 1);
    }
    EXPECT_GE(good, 20);  // the damage is not always fatal
}

}  // namespace
}  // namespace engine::test
