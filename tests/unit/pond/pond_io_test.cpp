#include "engine/pond/pond_io.h"

#include "tests/epw_text.h"
#include "tests/pond_texts.h"
#include "tests/temporary_folder.h"

#include <gtest/gtest.h>

#include <chrono>

namespace engine {
namespace {

using test::kFullPond;
using test::kPlainPond;
using test::with;

/// All diagnostics, one a line, for failure messages and comparisons.
std::string said(const PondReading& reading) {
    std::string text;
    for (const auto& diagnostic : reading.diagnostics) {
        text += format(diagnostic) + '\n';
    }
    return text;
}

TEST(PondIo, ReadsThePlainPond) {
    const auto reading = readPondText(kPlainPond, "plain.toml");
    ASSERT_TRUE(reading.pond) << said(reading);
    EXPECT_TRUE(reading.diagnostics.empty()) << said(reading);
    const Pond& pond = *reading.pond;
    EXPECT_EQ(pond.title, "Test pond");
    EXPECT_EQ(pond.place.longitude_deg, Quantity(-90.0));
    EXPECT_EQ(pond.bottom.oxygenDebt->low, 6.0);
    EXPECT_EQ(pond.bottom.oxygenDebt->high, 30.0);
    EXPECT_EQ(pond.bottom.oxygenDebt->confidence, Confidence::Estimated);
    EXPECT_EQ(pond.bottom.oxygenDebt->source, "age and smell");
    EXPECT_EQ(pond.bottom.smell, Smell::Strong);
    EXPECT_FALSE(pond.bottom.muck);
    ASSERT_TRUE(pond.profile);
    EXPECT_EQ(pond.profile->oxygen, (std::vector<double>{8.5, 6.8, 0.3, 0.0}));
    const auto midnight = std::chrono::local_days(*pond.place.firstDay);
    EXPECT_EQ(midnight - *pond.profile->at, std::chrono::minutes(390));
    ASSERT_EQ(pond.weather.days.size(), 2U);
    EXPECT_EQ(pond.weather.days[1].dewPoint, Quantity(19.0));
    EXPECT_FALSE(pond.weather.days[1].humidity_percent);
    ASSERT_EQ(pond.ramps.size(), 3U);
    EXPECT_EQ(pond.ramps[2].kind, RampKind::Capped);
    EXPECT_EQ(pond.ramps[2].dose_percent, Quantity(10.0));
    EXPECT_FALSE(pond.ramps[2].startTime);
    EXPECT_EQ(pond.limits.speciesGroup, SpeciesGroup::Sport);
    EXPECT_FALSE(pond.spring);
}

TEST(PondIo, OurOwnFormIsWrittenByteForByte) {
    const auto reading = readPondText(kPlainPond, "plain.toml");
    ASSERT_TRUE(reading.pond) << said(reading);
    EXPECT_EQ(writePond(*reading.pond), kPlainPond);
}

TEST(PondIo, EveryKeyIsReadAndWritten) {
    const test::TemporaryFolder folder;
    const std::string logger =
        "at,depth_m,temperature_c,oxygen_mg_per_l\r\n2026-06-13 "
        "05:30,0.5,26,4.5\r\n2026-06-13T06:00:00,0.5,,4.25\r\n";
    folder.write("logger.csv", logger);
    folder.write("year.epw", test::epwText());
    const auto path = folder.write("pond.toml", kFullPond);
    const auto reading = readPondText(kFullPond, path);
    ASSERT_TRUE(reading.pond) << said(reading);
    EXPECT_TRUE(reading.diagnostics.empty()) << said(reading);
    EXPECT_EQ(writePond(*reading.pond), kFullPond);

    const Pond& pond = *reading.pond;
    EXPECT_EQ(pond.place.windShelter->source, "trees\non three sides");
    EXPECT_EQ(pond.basin.contours[1].area.high, 4500.0);
    EXPECT_EQ(pond.water.changes[1].chlorophyll_ugPerL, Quantity(40.0));
    EXPECT_EQ(pond.spring->flow_lPerS, Quantity(3.0));
    EXPECT_EQ(pond.feed_kgPerDay, Quantity(2.5));
    EXPECT_EQ(pond.profile->salinity.size(), 3U);
    EXPECT_TRUE(pond.weather.observed);
    ASSERT_EQ(pond.weather.holdDays.size(), 2U);
    EXPECT_EQ(pond.weather.holdDays[1], Date(std::chrono::year(2026) / 6 / 18));
    EXPECT_EQ(pond.surfaceAerator->startTime, ClockTime{1200});
    EXPECT_FALSE(pond.surfaceAerator->existing);
    EXPECT_TRUE(pond.ramps[0].weatherHold);
    EXPECT_EQ(pond.ramps[1].startTime, ClockTime{570});
    EXPECT_EQ(pond.ramps[1].window, (ClockWindow{{600}, {960}}));
    EXPECT_EQ(pond.ramps[1].pulses, (ByDay{{3.0}, false}));
    EXPECT_EQ(pond.ramps[2].pulses, (ByDay{{1.0, 2.0, 3.0}, true}));
    EXPECT_EQ(pond.ramps[4].depth, (ByDay{{1.5, 3.0}, true}));
    ASSERT_EQ(pond.fileReadings.size(), 2U);
    EXPECT_FALSE(pond.fileReadings[1].temperature);
    EXPECT_EQ(pond.fileReadings[1].oxygen, Quantity(4.25));
    EXPECT_EQ(pond.events[0].kind, "started");
    EXPECT_EQ(pond.place.sea_km, Quantity(650.0));
    EXPECT_EQ(pond.climate.months.size(), 2U);
    ASSERT_EQ(pond.climate.fileMonths.size(), 12U);
    EXPECT_NEAR(*pond.climate.fileMonths[5].airMax, 11.0, 1e-9);
}

TEST(PondIo, TheSameThroughAnyFormOfToml) {
    std::string other(kPlainPond);
    other = with(other,
                 "oxygen_debt_mg_per_l = { value = 14, low = 6, high = 30, sure = \"estimated\", source = "
                 "\"age and smell\" }\nsmell = \"strong\"",
                 "smell = 'strong' # comment\n[bottom.oxygen_debt_mg_per_l]\nvalue = 14.0\nlow = 0x6\nhigh = "
                 "3e1\nsure = \"estimated\"\nsource = \"\"\"age \\\n   and smell\"\"\"");
    other = with(other, "area_m2 = 8000", "area_m2 = 8_000.0");
    other = with(other, "[profile]\nat = 2026-06-13T17:30:00", "[profile]\r\nat = 2026-06-13 17:30:00.000");
    other = with(other, "[aerator]\nfree_air_l_per_min = 45\ndiffusers = 2\ndepth_m = 3\n", "");
    other = with(other, "chosen_ramp = \"gentle\"\n",
                 "chosen_ramp = \"gentle\"\naerator = { depth_m = 3.0, \"diffusers\" = 2, free_air_l_per_min "
                 "= +45 }\n");
    other = "\xEF\xBB\xBF" + other;
    const auto reading = readPondText(other, "other.toml");
    ASSERT_TRUE(reading.pond) << said(reading);
    EXPECT_EQ(writePond(*reading.pond), kPlainPond);
}

TEST(PondIo, ReadsANormalFileQuickly) {
    // Aim: well under 5 ms; the bound is loose because machines that run tests are busy.
    const auto start = std::chrono::steady_clock::now();
    constexpr int kTimes = 20;
    for (int i = 0; i < kTimes; ++i) {
        ASSERT_TRUE(readPondText(kPlainPond, "plain.toml").pond);
    }
    const std::chrono::duration<double, std::milli> taken = std::chrono::steady_clock::now() - start;
    RecordProperty("ms_per_file", std::to_string(taken.count() / kTimes));
    EXPECT_LT(taken.count() / kTimes, 25.0);
}

}  // namespace
}  // namespace engine
