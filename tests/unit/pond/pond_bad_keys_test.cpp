// The same as pond_bad_input_test.cpp for the rarer keys, with the refusal of those not built yet off, and
// what is said of several faults at once and of files that are no text.
#include "engine/pond/pond_io.h"
#include "tests/pond_bad_input.h"
#include "tests/pond_texts.h"
#include "tests/temporary_folder.h"

#include <gtest/gtest.h>

#include <ctime>
#include <filesystem>

namespace engine::test {
namespace {

class FullPond : public testing::TestWithParam<BadInput> {};

TEST_P(FullPond, IsRefusedInWords) {
    const BadInput& row = GetParam();
    const std::string text = with(fullPondAlone(), row.from, row.to);
    ASSERT_FALSE(text.empty()) << "the good file does not hold: " << row.from;
    expectOneFault(readPondText(text, "bad.toml"), row.line, row.key, row.fragment);
}

// One row a line.
// clang-format off
constexpr BadInput kBasin[] = {
    {"FirstDepth", "depth_m = 0\n", "depth_m = 0.5\n", 16, "basin.contour[1].depth_m", "must be 0 m"},
    {"FirstArea", "area_m2 = 8000", "area_m2 = 0", 17, "basin.contour[1].area_m2", "at least 10 m2"},
    {"DepthTwice", "depth_m = 2\n", "depth_m = 0\n", 20, "basin.contour[2].depth_m", "below that of the contour before"},
    {"AreaGrows", "area_m2 = 8000", "area_m2 = 3900", 21, "basin.contour[2].area_m2", "not be larger than that of the contour above, 3900 m2"},
    {"AreaNegative", "area_m2 = 0", "area_m2 = -1", 25, "basin.contour[3].area_m2", "-1 m2"},
    {"AreaSpread", "low = 3500", "low = 4200", 21, "basin.contour[2].area_m2", "between its low end"},
    {"NoDepth", "depth_m = 2\n", "", 19, "basin.contour[2].depth_m", "missing"},
    {"NoArea", "area_m2 = 8000\n", "", 15, "basin.contour[1].area_m2", "missing"},
    {"DepthText", "depth_m = 2\n", "depth_m = \"2\"\n", 20, "basin.contour[2].depth_m", "must be a number"},
    {"MeanDepthToo", "[bottom]", "[basin]\nmean_depth_m = 1.7\n[bottom]", 28, "basin.mean_depth_m", "must not be given"},
    {"ContourTable", "[[basin.contour]]\ndepth_m = 0\narea_m2 = 8000\n\n[[basin.contour]]\ndepth_m = 2\narea_m2 = { value = 4000, low = 3500, high = 4500 }\n\n[[basin.contour]]\ndepth_m = 3.4\narea_m2 = 0\n", "[basin.contour]\n", 15, "basin.contour", "written [[basin.contour]]"},
    {"DiffuserAtBottom", "depth_m = 3\n", "depth_m = 3.4\n", 148, "aerator.depth_m", "above the bottom"},
};

constexpr BadInput kWater[] = {
    {"Ph", "ph = 8.1", "ph = 12", 40, "water.ph", "from 4 to 11"},
    {"Ammonia", "ammonia_mg_per_l = 2", "ammonia_mg_per_l = -2", 41, "water.total_ammonia_mg_per_l", "-2 mg/L"},
    {"Sulfide", "sulfide_mg_per_l = 1.5", "sulfide_mg_per_l = 500", 42, "water.total_sulfide_mg_per_l", "500 mg/L"},
    {"Alkalinity", "alkalinity_mg_per_l = 90", "alkalinity_mg_per_l = \"90\"", 45, "water.alkalinity_mg_per_l", "must be a number"},
    {"ChangeNoDate", "[[water.change]]\ndate = 2026-06-14\n", "[[water.change]]\n", 47, "water.change[1].date", "missing"},
    {"ChangeOrder", "date = 2026-06-20", "date = 2026-06-14", 53, "water.change[2].date", "must come after"},
    {"ChangeEmpty", "chlorophyll_ug_per_l = 40\n", "", 52, "water.change[2]", "A change needs"},
    {"ChangeDateText", "date = 2026-06-20", "date = \"2026-06-20\"", 53, "water.change[2].date", "without quotes"},
    {"Iron", "iron_mg_per_l = 5", "iron_mg_per_l = -5", 43, "water.ferrous_iron_mg_per_l", "-5 mg/L"},
    {"Methane", "methane_mg_per_l = 2.5", "methane_mg_per_l = 2500", 44, "water.methane_mg_per_l", "2500 mg/L"},
    {"BottleParts", "surface_parts = 9", "surface_parts = 2.5", 57, "bottle_test.surface_parts", "whole number"},
    {"BottleSurface", "surface_oxygen_mg_per_l = 7.2\n", "", 56, "bottle_test.surface_oxygen_mg_per_l", "missing"},
    {"BottleMinutes", "minutes = 30", "minutes = 0", 64, "bottle_test.reading[1].minutes", "from 1 to 2880 min"},
    {"BottleLoss", "control_loss_mg_per_l = 0.25", "control_loss_mg_per_l = -1", 70, "bottle_test.reading[2].control_loss_mg_per_l", "-1 mg/L"},
    {"BottleEmpty", "[[bottle_test.reading]]\nminutes = 30\noxygen_mg_per_l = 5.5\n\n[[bottle_test.reading]]\nminutes = 1440\noxygen_mg_per_l = 4.5\ncontrol_loss_mg_per_l = 0.25\n", "", 56, "bottle_test", "at least"},
    {"SpringFlow", "flow_l_per_s = 3\n", "", 72, "spring.flow_l_per_s", "missing"},
    {"SpringTemperature", "temperature_c = 10", "temperature_c = 50", 74, "spring.temperature_c", "50 degC"},
    {"SpringOxygen", "oxygen_mg_per_l = 8\n", "oxygen_mg_per_l = 80\n", 75, "spring.oxygen_mg_per_l", "80 mg/L"},
    {"SpringSalt", "salinity = 0.2", "salinity = 200", 76, "spring.salinity", "200, but must be from 0 to 42."},
    {"InflowFlow", "flow_l_per_s = 40\n", "", 78, "inflow[1].flow_l_per_s", "missing"},
    {"InflowOrganic", "organic_mg_per_l = 5", "organic_mg_per_l = -5", 85, "inflow[1].organic_mg_per_l", "-5 mg/L"},
    {"InflowOrder", "until = 2026-06-15T20:00:00", "until = 2026-06-15T13:00:00", 80, "inflow[1].until", "must come after"},
    {"SpringUnknown", "salinity = 0.2", "salt = 0.2", 76, "spring.salt", "no such key"},
    {"Feed", "kg_per_d = 2.5", "kg_per_d = -1", 97, "feed.kg_per_d", "-1 kg/d"},
    {"ProfileSalt", "salinity = [0, 0.1, 3]", "salinity = [0, 0.1]", 104, "profile.salinity", "2 values for 3 depths"},
};

constexpr BadInput kMachines[] = {
    {"Sea", "sea_km = 650", "sea_km = 6500", 9, "place.sea_km", "from 0 to 3000 km"},
    {"ClimateEmpty", "[[climate.month]]\nmonth = 6", "[climate]\nfile = \"\"\n[[climate.month]]\nmonth = 6", 130, "climate.file", "must not be empty"},
    {"ClimateControl", "[[climate.month]]\nmonth = 6", "[climate]\nfile = \"a\\u0007\"\n[[climate.month]]\nmonth = 6", 130, "climate.file", "control characters"},
    {"ClimateNumber", "[[climate.month]]\nmonth = 6", "[climate]\nfile = 3\n[[climate.month]]\nmonth = 6", 130, "climate.file", "a text in quotes"},
    {"ClimateMonth", "month = 10", "month = 13", 138, "climate.month[2].month", "from 1 to 12"},
    {"ClimateTwice", "month = 10", "month = 6", 138, "climate.month[2].month", "comes twice"},
    {"ClimateMoist", "dew_point_c = 9\n", "", 137, "climate.month[2]", "humidity_percent or dew_point_c"},
    {"ClimateOrder", "air_min_c = 8\n", "air_min_c = 28\n", 139, "climate.month[2].air_min_c", "above the highest"},
    {"WindHeight", "wind_height_m = 4", "wind_height_m = 0", 107, "weather.wind_height_m", "from 0.5 to 100 m"},
    {"HoldDayNumber", "hold_days = [2026-06-15, 2026-06-18]", "hold_days = [2026-06-15, 18]", 109, "weather.hold_days[2]", "must be a date"},
    {"Observed", "observed = true", "observed = \"true\"", 108, "weather.observed", "without quotes"},
    {"Power", "power_kw = 0.75\nnet", "power_kw = 750\nnet", 150, "aerator.power_kw", "750 kW"},
    {"NoTransfer", "standard_transfer_kg_per_h = 1.2\n", "", 153, "surface_aerator.standard_transfer_kg_per_h", "missing"},
    {"SurfaceStart", "\"20:00\"", "\"20.00\"", 156, "surface_aerator.start_time", "time of day"},
    {"SurfaceEndGone", "end_time = \"08:00\"\n", "", 153, "surface_aerator", "together"},
    {"Existing", "existing = false", "existing = 0", 158, "surface_aerator.existing", "true or false"},
    {"Rain", "rain_mm = 30", "rain_mm = -3", 126, "weather.day[2].rain_mm", "-3 mm"},
    {"Kills", "kills = [2019-07-20]", "kills = [2019]", 169, "history.kills[1]", "must be a date"},
    {"Years", "years_without_kill = 12", "years_without_kill = -1", 168, "history.years_without_kill", "-1 years"},
    {"StartRule", "lethal_percent = 4", "lethal_percent = 104", 172, "start_rules.lethal_percent", "104 percent"},
    {"TimeZone", "America/Chicago", "Nowhere/City", 13, "place.time_zone", "no time zone"},
    {"FishMax", "fish_max_c = 20", "fish_max_c = 68", 165, "limits.fish_max_c", "68 degC"},
};

constexpr BadInput kRamps[] = {
    {"WindowOne", "[\"10:00\", \"16:00\"]", "[\"10:00\"]", 188, "ramp[2].window", "two times of day"},
    {"WindowText", "[\"10:00\", \"16:00\"]", "\"10:00-16:00\"", 188, "ramp[2].window", "two times of day"},
    {"WindowLate", "[\"10:00\", \"16:00\"]", "[\"10:00\", \"24:00\"]", 188, "ramp[2].window", "23:59"},
    {"WindowEmpty", "[\"10:00\", \"16:00\"]", "[\"10:00\", \"10:00\"]", 188, "ramp[2].window", "must not end when it begins"},
    {"PulsesZero", "pulses = 3", "pulses = 0", 189, "ramp[2].pulses", "from 1 to 48"},
    {"PulsesHalf", "pulses = 3", "pulses = 1.5", 189, "ramp[2].pulses", "whole number"},
    {"PulsesText", "pulses = 3", "pulses = \"3\"", 189, "ramp[2].pulses", "one plain number, or a list"},
    {"PulsesSpread", "pulses = 3", "pulses = { value = 3 }", 189, "ramp[2].pulses", "one plain number, or a list"},
    {"PulsesEmpty", "pulses = [1, 2, 3]", "pulses = []", 196, "ramp[3].pulses", "must not be empty"},
    {"PulsesMany", "pulses = [1, 2, 3]", "pulses = [1, 2, 49]", 196, "ramp[3].pulses[3]", "49 pulses"},
    {"DiffusersMore", "diffusers = [1, 1, 2]", "diffusers = [1, 1, 4]", 209, "ramp[5].diffusers[3]", "opens 4 diffusers, but the aerator has 3"},
    {"DiffusersNone", "diffusers = 1\n", "diffusers = 0\n", 203, "ramp[4].diffusers", "0 diffusers"},
    {"DepthAtBottom", "depth_m = [1.5, 3]", "depth_m = [1.5, 3.4]", 210, "ramp[5].depth_m[2]", "above the bottom, which is at 3.4 m"},
    {"DepthSurface", "depth_m = [1.5, 3]", "depth_m = [0, 3]", 210, "ramp[5].depth_m[1]", "from 0.1 to 60 m"},
    {"WeatherHold", "weather_hold = true", "weather_hold = 1", 180, "ramp[1].weather_hold", "true or false"},
    {"SurfaceAir", "surface_air_kw = 1.5", "surface_air_kw = 150", 211, "ramp[5].surface_air_kw", "150 kW"},
    {"SurfaceAirAlone", "surface_air_kw = 1.5\n", "", 211, "ramp[5].surface_air_window", "surface_air_kw"},
    {"DoseSpread", "source = \"house rule\"", "low = 1", 201, "ramp[4].dose_percent", "together"},
};

constexpr BadInput kLog[] = {
    {"ReadingSmell", "smell = \"none\"", "smell = \"nothing\"", 221, "reading[1].smell", "\"none\", \"faint\" or \"strong\""},
    {"ReadingSecchi", "secchi_m = 0.5", "secchi_m = 0", 220, "reading[1].secchi_m", "from 0.02 to 30 m"},
    {"ReadingNote", "note = \"mist\\ton the water\"", "note = 3", 222, "reading[1].note", "a text in quotes"},
    {"EventTime", "at = 2026-06-14T10:00:00\n", "", 224, "event[1].at", "missing"},
    {"EventKind", "kind = \"started\"\n", "", 224, "event[1].kind", "missing"},
    {"EventKindControl", "kind = \"started\"", "kind = \"start\\u0007\"", 226, "event[1].kind", "control characters"},
    {"EventUnknown", "kind = \"started\"", "kind = \"started\"\nzzzzzzzzzz = 1", 227, "event[1].zzzzzzzzzz", "no such key"},
};
// clang-format on

INSTANTIATE_TEST_SUITE_P(Basin, FullPond, testing::ValuesIn(kBasin), nameOf);
INSTANTIATE_TEST_SUITE_P(Water, FullPond, testing::ValuesIn(kWater), nameOf);
INSTANTIATE_TEST_SUITE_P(Machines, FullPond, testing::ValuesIn(kMachines), nameOf);
INSTANTIATE_TEST_SUITE_P(Ramps, FullPond, testing::ValuesIn(kRamps), nameOf);
INSTANTIATE_TEST_SUITE_P(Log, FullPond, testing::ValuesIn(kLog), nameOf);

TEST(PondFaultsTogether, AreAllSaidInTheOrderOfTheirLines) {
    std::string text = with(kPlainPond, "first_min = 30", "first_min = 3000");
    text = with(text, "latitude_deg = 36", "latitude_deg = \"36\"");
    text = with(text, "secchi_m = 0.45\n", "");
    text = with(text, "[limits]", "[limit]");
    text = with(text, "area_m2 = 8000", "area_m2 = -1");
    const auto reading = readPondText(text, "bad.toml");
    EXPECT_FALSE(reading.pond);
    EXPECT_EQ(
        said(reading),
        "bad.toml:6: place.latitude_deg: This is the text \"36\", but must be a number, or a number with its "
        "spread such as { value = 14, low = 6, high = 30 }.\n"
        "bad.toml:13: basin.area_m2: The value is -1 m2, but must be from 10 to 10000000 m2.\n"
        "bad.toml:22: water.secchi_m: This key is missing.\n"
        "bad.toml:56: limit: A pond file has no key or table of this name; did you mean \"limits\"?\n"
        "bad.toml:66: ramp[2].first_min: The value is 3000 min, but must be from 1 to 1440 min.\n");
}

TEST(PondFaultsTogether, ASyntaxFaultIsSaidAlone) {
    std::string text = with(kPlainPond, "latitude_deg = 36", "latitude_deg = \"36\"");
    text = with(text, "[limits]", "[limits");
    expectOneFault(readPondText(text, "bad.toml"), 57, "", "[limits]");
}

TEST(PondFaultsTogether, AnEmptyFileNamesItsTables) {
    const auto reading = readPondText("", "bad.toml");
    EXPECT_EQ(said(reading),
              "bad.toml:1: format: This key is missing; a pond file begins with format = 1.\n"
              "bad.toml:1: place: The table [place] is missing.\n"
              "bad.toml:1: basin: The table [basin] is missing.\n"
              "bad.toml:1: water: The table [water] is missing.\n"
              "bad.toml:1: weather: The table [weather] is missing.\n");
}

TEST(PondFaultsTogether, AWeatherTableWithoutWeatherIsNamed) {
    std::string text(kPlainPond);
    const auto from = text.find("[[weather.day]]");
    text.replace(from, text.find("[aerator]") - from, "[weather]\nobserved = true\n\n");
    expectOneFault(readPondText(text, "bad.toml"), 36, "weather", "[[weather.day]] tables or an hourly file");
}

#if defined(NDEBUG) && !defined(DAWNLINE_READERS_WATCHED)
constexpr double kMostTime_s = 1.0;
#else
constexpr double kMostTime_s =
    10.0;  // unoptimised, or readers under sanitizers, which are no program of a user's
#endif

/// What must be refused, and within a second of processor time, whatever else the machine does.
void expectRefused(const std::filesystem::path& path, std::string_view fragment) {
    const std::clock_t start = std::clock();
    const auto reading = readPond(path);
    EXPECT_LT(static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC, kMostTime_s) << path;
    EXPECT_FALSE(reading.pond);
    ASSERT_EQ(reading.diagnostics.size(), 1U) << said(reading);
    EXPECT_EQ(reading.diagnostics.front().file, path.string());
    EXPECT_NE(reading.diagnostics.front().sentence.find(fragment), std::string::npos) << said(reading);
}

TEST(PondFileItself, IsRefusedInWordsIfItIsNoPondFile) {
    const TemporaryFolder temporary;
    const std::filesystem::path& folder = temporary.path();
    const auto write = [&](const char* name, std::string_view text) { return temporary.write(name, text); };
    expectRefused(folder / "nowhere.toml", "no such file");
    expectRefused(folder / "nowhere" / "nowhere.toml", "no such file");
    expectRefused(folder, "directory");
    expectRefused("", "no such file");
    expectRefused(std::string(5000, 'x'), "cannot be looked at");
    if (std::filesystem::exists("/dev/zero")) {
        expectRefused("/dev/zero", "not a regular file");
    }
    const auto huge = write("huge.toml", "");
    std::filesystem::resize_file(huge, std::uintmax_t{100} << 20);
    expectRefused(huge, "larger than 4 MiB");

    std::string garbage(std::size_t{4} << 20, '\0');
    unsigned state = 1;
    for (char& c : garbage) {
        state = state * 1664525U + 1013904223U;
        c = static_cast<char>(state >> 24U);
    }
    expectRefused(write("garbage.toml", garbage), "UTF-8");
    for (char& c : garbage) {
        c = static_cast<char>(' ' + static_cast<unsigned char>(c) % 95U);
    }
    expectRefused(write("printable.toml", garbage), ".");
    expectRefused(write("zeros.toml", std::string(1000, '\0')), "byte 00");
    expectRefused(write("text.toml", "Dear owner,\nyour pond is well.\n"),
                  "a key, an equals sign and a value");

    // Shapes that are known to take parsers too deep or too long.
    const std::size_t million = 1000000;
    const auto repeated = [](std::string text, std::string_view piece, std::size_t times) {
        for (std::size_t i = 0; i < times; ++i) {
            text += piece;
        }
        return text;
    };
    expectRefused(write("dots.toml", repeated("a", ".a", million)), "more than 8 parts");
    expectRefused(write("brackets.toml", repeated("a = ", "[", million)), "values");
    expectRefused(write("nested.toml", repeated("a = ", "[", 90000)), "closing ]");
    expectRefused(write("keys.toml", repeated("", "[[ramp]]\n", 400000)), "values");
    expectRefused(write("string.toml", repeated("a = \"", "x", 4 * million)), "closing quotation mark");
}

}  // namespace
}  // namespace engine::test
