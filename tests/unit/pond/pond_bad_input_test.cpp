// Bad input of every kind: one place of a good file is changed, and exactly one fault must be said, with
// its line, its key and the reason.
#include "tests/pond_bad_input.h"

#include "engine/pond/pond_io.h"
#include "tests/pond_texts.h"

#include <gtest/gtest.h>

namespace engine::test {
namespace {

class PlainPond : public testing::TestWithParam<BadInput> {};

TEST_P(PlainPond, IsRefusedInWords) {
    const BadInput& row = GetParam();
    const std::string text = with(kPlainPond, row.from, row.to);
    ASSERT_FALSE(text.empty()) << "the good file does not hold: " << row.from;
    expectOneFault(readPondText(text, "bad.toml"), row.line, row.key, row.fragment);
}

// One row a line.
// clang-format off
constexpr BadInput kSyntax[] = {
    {"Unclosed", "title = \"Test pond\"", "title = \"Test pond", 2, "", "closing quotation mark"},
    {"NoValue", "latitude_deg = 36", "latitude_deg =", 6, "", "No value follows"},
    {"DecimalComma", "max_depth_m = 3.4", "max_depth_m = 3,4", 14, "", "write a decimal point: 3.4"},
    {"KeyTwice", "max_depth_m = 3.4", "area_m2 = 3.4", 14, "", "stands twice"},
    {"TableTwice", "[limits]", "[profile]", 57, "", "stands twice"},
    {"NoSuchDay", "2026-06-14\nutc", "2026-02-30\nutc", 9, "", "no such day"},
    {"HugeWhole", "area_m2 = 8000", "area_m2 = 99999999999999999999", 13, "", "number"},
    {"Bare", "species_group = \"sport\"", "species_group = sport", 58, "", "stands in quotes"},
    {"ZeroByteEscape", "title = \"Test pond\"", "title = \"\\u0000\"", 2, "title", "control characters"},
    {"LetterInABareKey", "title = ", "logo\u0350bu = ", 2, "", "\"logo\u0350bu\" holds a letter that may only stand in quotation marks"},
    {"LetterInAValue", "species_group = \"sport\"", "species_group = sp\u00F6rt", 58, "", "\"sp\u00F6rt\" holds a letter"},
    {"Latin1", "Test pond", "T\xE4st", 2, "", "UTF-8"},
    {"Surrogate", "Test pond", "\xED\xA0\x80", 2, "", "UTF-8"},
    {"Overlong", "Test pond", "\xC0\xAF", 2, "", "UTF-8"},
    {"ManyParts", "latitude_deg = 36", "a.b.c.d.e.f.g.h.i = 36", 6, "", "parts"},
    {"ManyPartsBehindOneQuote", "title = \"Test pond\"", "title = ['''a'''', {a.b.c.d.e.f.g.h.i = 1}]", 2, "", "parts"},
    {"ManyPartsBehindTwoQuotes", "title = \"Test pond\"", "title = ['''a''''', {a.b.c.d.e.f.g.h.i = 1}]", 2, "", "parts"},
    {"ManyPartsBehindOneDoubleQuote", "title = \"Test pond\"", "title = [\"\"\"a\"\"\"\", {a.b.c.d.e.f.g.h.i = 1}]", 2, "", "parts"},
    {"ManyPartsBehindTwoDoubleQuotes", "title = \"Test pond\"", "title = [\"\"\"a\"\"\"\"\", {a.b.c.d.e.f.g.h.i = 1}]", 2, "", "parts"},
};

constexpr BadInput kFormat[] = {
    {"FormatMissing", "format = 1\n", "\n", 1, "format", "missing"},
    {"FormatNewer", "format = 1\n", "format = 2\nfrom_the_future = 1\n", 1, "format", "newer version"},
    {"FormatNewerFraction", "format = 1\n", "format = 1.5\n", 1, "format", "newer version"},
    {"FormatZero", "format = 1\n", "format = 0\n", 1, "format", "must be the whole number 1"},
    {"FormatText", "format = 1\n", "format = \"1\"\n", 1, "format", "must be the whole number 1"},
    {"FormatReal", "format = 1\n", "format = 1.0\n", 1, "format", "must be the whole number 1"},
    {"FormatNan", "format = 1\n", "format = nan\n", 1, "format", "must be the whole number 1"},
};

constexpr BadInput kUnknown[] = {
    {"UnknownTop", "title =", "titel =", 2, "titel", "did you mean \"title\"?"},
    {"UnknownTable", "[limits]", "[limit]", 57, "limit", "did you mean \"limits\"?"},
    {"UnknownFar", "title = \"Test pond\"", "zzzzzzzzzzzz = 1", 2, "zzzzzzzzzzzz", "no key or table of this name."},
    {"UnknownInTable", "age_years", "age_yaers", 18, "bottom.age_yaers", "did you mean \"age_years\"?"},
    {"UnknownUnit", "age_years = 48", "age_months = 48", 18, "bottom.age_months", "did you mean \"age_years\"?"},
    {"UnknownInItem", "species_group", "species", 58, "limits.species", "did you mean \"species_group\"?"},
    {"UnknownOddName", "age_years", "\"a b\\n\"", 18, "bottom.\"a b\\n\"", "no such key"},
    {"WrongCase", "smell =", "Smell =", 20, "bottom.Smell", "did you mean \"smell\"?"},
};

constexpr BadInput kMissing[] = {
    {"NoPlace", "[place]\nlatitude_deg = 36\nlongitude_deg = -90\nelevation_m = 120\nfirst_day = 2026-06-14\nutc_offset_h = -6\n", "", 1, "place", "[place] is missing"},
    {"NoBasin", "[basin]\narea_m2 = 8000\nmax_depth_m = 3.4\nmean_depth_m = 1.7\n", "", 1, "basin", "[basin] is missing"},
    {"NoWater", "[water]\nsecchi_m = 0.45\nchlorophyll_ug_per_l = 70\n", "", 1, "water", "[water] is missing"},
    {"NoAerator", "[aerator]\nfree_air_l_per_min = 45\ndiffusers = 2\ndepth_m = 3\n", "", 1, "aerator", "the ramps need it"},
    {"NoLatitude", "latitude_deg = 36\n", "", 5, "place.latitude_deg", "missing"},
    {"NoLongitude", "longitude_deg = -90\n", "", 5, "place.longitude_deg", "missing"},
    {"NoElevation", "elevation_m = 120\n", "", 5, "place.elevation_m", "missing"},
    {"NoFirstDay", "first_day = 2026-06-14\n", "", 5, "place.first_day", "missing"},
    {"NoOffset", "utc_offset_h = -6\n", "", 5, "place.utc_offset_h", "missing"},
    {"NoArea", "area_m2 = 8000\n", "", 12, "basin.area_m2", "missing"},
    {"NoMaxDepth", "max_depth_m = 3.4\n", "", 12, "basin.max_depth_m", "missing"},
    {"NoMeanDepth", "mean_depth_m = 1.7\n", "", 12, "basin.mean_depth_m", "missing"},
    {"NoSecchi", "secchi_m = 0.45\n", "", 22, "water.secchi_m", "missing"},
    {"NoFishKind", "kind = \"bass\"\n", "", 26, "fish[1].kind", "missing"},
    {"NoStock", "stock_kg_per_ha = 120\n", "", 26, "fish[1].stock_kg_per_ha", "missing"},
    {"NoProfileTime", "at = 2026-06-13T17:30:00\n", "", 30, "profile.at", "missing"},
    {"NoDepths", "depth_m = [0, 1, 2, 3]\n", "", 30, "profile.depth_m", "missing"},
    {"NoTemperatures", "temperature_c = [28.5, 27.5, 22, 20]\n", "", 30, "profile.temperature_c", "missing"},
    {"NoOxygen", "oxygen_mg_per_l = [8.5, 6.8, 0.3, 0]\n", "", 30, "profile.oxygen_mg_per_l", "missing"},
    {"NoDate", "date = 2026-06-14\n", "", 36, "weather.day[1].date", "missing"},
    {"NoAirMin", "air_min_c = 21\n", "", 44, "weather.day[2].air_min_c", "missing"},
    {"NoAirMax", "air_max_c = 34\n", "", 44, "weather.day[2].air_max_c", "missing"},
    {"NoDewPoint", "dew_point_c = 19\n", "", 44, "weather.day[2]", "humidity_percent or dew_point_c"},
    {"NoWind", "wind_m_per_s = 1.5\n", "", 44, "weather.day[2].wind_m_per_s", "missing"},
    {"NoCloud", "cloud_percent = 90\n", "", 44, "weather.day[2].cloud_percent", "missing"},
    {"NoAirFlow", "free_air_l_per_min = 45\n", "", 52, "aerator.free_air_l_per_min", "missing"},
    {"NoDiffusers", "diffusers = 2\n", "", 52, "aerator.diffusers", "missing"},
    {"NoDiffuserDepth", "depth_m = 3\n\n[limits]", "\n[limits]", 52, "aerator.depth_m", "missing"},
    {"NoRampName", "name = \"at once\"\n", "", 60, "ramp[1].name", "missing"},
    {"NoRampKind", "kind = \"doubling\"\n", "", 64, "ramp[2].kind", "missing"},
    {"NoReadingTime", "at = 2026-06-14T05:40:00\n", "", 74, "reading[1].at", "missing"},
    {"NoReadingDepth", "depth_m = 0.5\n", "", 74, "reading[1].depth_m", "needs its depth"},
    {"NoReadingValue", "depth_m = 0.5\noxygen_mg_per_l = 5.1\n", "", 74, "reading[1]", "A reading needs"},
    {"EmptyFishKind", "kind = \"bass\"", "kind = \"\"", 27, "fish[1].kind", "must not be empty"},
    {"EmptyRampName", "name = \"at once\"", "name = \"\"", 61, "ramp[1].name", "must not be empty"},
    {"EmptyChosen", "chosen_ramp = \"gentle\"", "chosen_ramp = \"\"", 3, "chosen_ramp", "must not be empty"},
};

constexpr BadInput kTypes[] = {
    {"TitleNumber", "title = \"Test pond\"", "title = 3", 2, "title", "the number 3, but must be a text"},
    {"LatitudeText", "latitude_deg = 36", "latitude_deg = \"36\"", 6, "place.latitude_deg", "the text \"36\", but must be a number"},
    {"LatitudeTrue", "latitude_deg = 36", "latitude_deg = true", 6, "place.latitude_deg", "true, but must be a number"},
    {"LatitudeList", "latitude_deg = 36", "latitude_deg = [36]", 6, "place.latitude_deg", "a list, but must be a number"},
    {"LatitudeDate", "latitude_deg = 36", "latitude_deg = 2026-06-14", 6, "place.latitude_deg", "a date, but must be a number"},
    {"FirstDayText", "first_day = 2026-06-14", "first_day = \"2026-06-14\"", 9, "place.first_day", "without quotes"},
    {"FirstDayTime", "first_day = 2026-06-14", "first_day = 2026-06-14T00:00:00", 9, "place.first_day", "a date with a time, but must be a date"},
    {"FirstDayZone", "first_day = 2026-06-14", "first_day = 2026-06-14T00:00:00Z", 9, "place.first_day", "with a zone, but must be a date"},
    {"PlaceText", "[place]\nlatitude_deg = 36\nlongitude_deg = -90\nelevation_m = 120\nfirst_day = 2026-06-14\nutc_offset_h = -6\n", "[[place]]\n", 5, "place", "written [place]"},
    {"FishTable", "[[fish]]", "[fish]", 26, "fish", "written [[fish]]"},
    {"DayTable", "[[ramp]]\nname = \"at once\"\nkind = \"continuous\"\n\n[[ramp]]\nname = \"doubling\"\nkind = \"doubling\"\nfirst_min = 30\n\n[[ramp]]", "[ramp]", 60, "ramp", "written [[ramp]]"},
    {"DebtValueText", "value = 14", "value = \"14\"", 19, "bottom.oxygen_debt_mg_per_l.value", "must be a number"},
    {"DebtSure", "\"estimated\"", "\"certain\"", 19, "bottom.oxygen_debt_mg_per_l.sure", "\"measured\", \"estimated\" or \"guessed\""},
    {"DebtSource", "\"age and smell\"", "3", 19, "bottom.oxygen_debt_mg_per_l.source", "a text in quotes"},
    {"DebtNoValue", "value = 14, ", "", 19, "bottom.oxygen_debt_mg_per_l.value", "missing"},
    {"DebtUnknown", "sure =", "shure =", 19, "bottom.oxygen_debt_mg_per_l.shure", "did you mean \"sure\"?"},
    {"SmellWord", "\"strong\"", "\"awful\"", 20, "bottom.smell", "\"none\", \"faint\" or \"strong\""},
    {"SmellNumber", "\"strong\"", "1", 20, "bottom.smell", "\"none\", \"faint\" or \"strong\""},
    {"ProfileTimeZone", "17:30:00", "17:30:00-06:00", 31, "profile.at", "with a zone, but must be a date with a time"},
    {"ProfileTimeText", "2026-06-13T17:30:00", "\"2026-06-13T17:30:00\"", 31, "profile.at", "without quotes"},
    {"ProfileTimeDate", "2026-06-13T17:30:00", "2026-06-13", 31, "profile.at", "a date, but must be a date with a time"},
    {"ProfileTimeOfDay", "2026-06-13T17:30:00", "17:30:00", 31, "profile.at", "a time of day"},
    {"ProfileTimeFraction", "17:30:00", "17:30:00.5", 31, "profile.at", "whole seconds"},
    {"DepthsNumber", "depth_m = [0, 1, 2, 3]", "depth_m = 3", 32, "profile.depth_m", "a list of numbers"},
    {"DepthsText", "depth_m = [0, 1, 2, 3]", "depth_m = [0, \"1\", 2, 3]", 32, "profile.depth_m[2]", "plain number"},
    {"OxygenSpread", "[8.5, 6.8, 0.3, 0]", "[8.5, { value = 6.8 }, 0.3, 0]", 34, "profile.oxygen_mg_per_l[2]", "plain number"},
    {"DateText", "date = 2026-06-15", "date = \"15 June\"", 45, "weather.day[2].date", "must be a date"},
    {"SpeciesWord", "\"sport\"", "\"bass\"", 58, "limits.species_group", "\"sport\", \"catfish\", \"carp\", \"koi\", \"trout\" or \"percid\""},
    {"RampKindWord", "kind = \"doubling\"", "kind = \"s-shape\"", 66, "ramp[2].kind", "\"linear\""},
    {"RampNameNumber", "name = \"at once\"", "name = 1", 61, "ramp[1].name", "text in quotes"},
    {"RampMinText", "first_min = 30", "first_min = \"30 minuets\"", 67, "ramp[2].first_min", "must be a number"},
    {"RampHoldText", "dose_percent = 10", "dose_percent = 10\nhold = \"yes\"", 73, "ramp[3].hold", "true or false"},
    {"StartTimeToml", "first_min = 30", "first_min = 30\nstart_time = 10:00:00", 68, "ramp[2].start_time", "in quotes"},
    {"StartTimeLate", "first_min = 30", "first_min = 30\nstart_time = \"24:00\"", 68, "ramp[2].start_time", "\"00:00\" to \"23:59\""},
    {"StartTimeShort", "first_min = 30", "first_min = 30\nstart_time = \"9:00\"", 68, "ramp[2].start_time", "\"00:00\" to \"23:59\""},
    {"ReadingsText", "[[reading]]", "[[readings]]", 74, "readings", "written [readings]"},
};

constexpr BadInput kRanges[] = {
    {"Latitude", "latitude_deg = 36", "latitude_deg = 66.5", 6, "place.latitude_deg", "66.5 degrees north, but must be from -66 to 66"},
    {"LatitudeNan", "latitude_deg = 36", "latitude_deg = nan", 6, "place.latitude_deg", "not a number"},
    {"LatitudeInf", "latitude_deg = 36", "latitude_deg = -inf", 6, "place.latitude_deg", "minus infinite"},
    {"Longitude", "longitude_deg = -90", "longitude_deg = 181", 7, "place.longitude_deg", "181"},
    {"Elevation", "elevation_m = 120", "elevation_m = 1e300", 8, "place.elevation_m", "1e+300 m"},
    {"FirstDayYear", "first_day = 2026-06-14", "first_day = 0026-06-14", 9, "place.first_day", "1900 to 2200"},
    {"Offset", "utc_offset_h = -6", "utc_offset_h = -600", 10, "place.utc_offset_h", "-600 h"},
    {"Shelter", "utc_offset_h = -6", "utc_offset_h = -6\nwind_shelter = 70", 11, "place.wind_shelter", "from 0.05 to 1"},
    {"AreaNegative", "area_m2 = 8000", "area_m2 = -8000", 13, "basin.area_m2", "-8000 m2, but must be from 10"},
    {"AreaZero", "area_m2 = 8000", "area_m2 = 0", 13, "basin.area_m2", "from 10 to 10000000 m2"},
    {"AreaHuge", "area_m2 = 8000", "area_m2 = 1e300", 13, "basin.area_m2", "1e+300 m2"},
    {"MeanDeep", "mean_depth_m = 1.7", "mean_depth_m = 3.4", 15, "basin.mean_depth_m", "deepest point of 3.4 m"},
    {"MeanShallow", "mean_depth_m = 1.7", "mean_depth_m = 0.5", 15, "basin.mean_depth_m", "from 0.68 to 3.23 m"},
    {"Age", "age_years = 48", "age_years = -1", 18, "bottom.age_years", "-1 years"},
    {"DebtValue", "value = 14, low = 6, high = 30", "value = 600, low = 6, high = 30", 19, "bottom.oxygen_debt_mg_per_l.value", "600 mg/L"},
    {"DebtLowAlone", "high = 30, ", "", 19, "bottom.oxygen_debt_mg_per_l", "together"},
    {"DebtOutside", "low = 6", "low = 15", 19, "bottom.oxygen_debt_mg_per_l", "between its low end 15 mg/L and its high end 30 mg/L"},
    {"DebtLowNegative", "low = 6", "low = -6", 19, "bottom.oxygen_debt_mg_per_l.low", "-6 mg/L"},
    {"DebtHighNan", "high = 30", "high = nan", 19, "bottom.oxygen_debt_mg_per_l.high", "not a number"},
    {"Secchi", "secchi_m = 0.45", "secchi_m = 45", 23, "water.secchi_m", "45 m"},
    {"Chlorophyll", "per_l = 70", "per_l = 7000", 24, "water.chlorophyll_ug_per_l", "7000 ug/L"},
    {"Weeds", "secchi_m = 0.45", "secchi_m = 0.45\nweeds_cover_percent = 101", 24, "water.weeds_cover_percent", "101 percent"},
    {"Stock", "per_ha = 120", "per_ha = 60000", 28, "fish[1].stock_kg_per_ha", "60000 kg/ha"},
    {"FishMass", "per_ha = 120", "per_ha = 120\nmean_mass_g = 0", 29, "fish[1].mean_mass_g", "0 g"},
    {"ProfileTemperature", "[28.5, 27.5", "[28.5, 81.5", 33, "profile.temperature_c[2]", "81.5 degC"},
    {"ProfileOxygen", "[8.5, 6.8", "[8.5, -6.8", 34, "profile.oxygen_mg_per_l[2]", "-6.8 mg/L"},
    {"ProfileOxygenNan", "[8.5, 6.8", "[nan, 6.8", 34, "profile.oxygen_mg_per_l[1]", "not a number"},
    {"AirMin", "air_min_c = 20", "air_min_c = -70", 38, "weather.day[1].air_min_c", "-70 degC"},
    {"Humidity", "humidity_percent = 65", "humidity_percent = 165", 40, "weather.day[1].humidity_percent", "165 percent"},
    {"DewPoint", "dew_point_c = 19", "dew_point_c = 41", 48, "weather.day[2].dew_point_c", "41 degC"},
    {"Wind", "wind_m_per_s = 2", "wind_m_per_s = 60", 41, "weather.day[1].wind_m_per_s", "60 m/s"},
    {"Cloud", "cloud_percent = 10", "cloud_percent = -10", 42, "weather.day[1].cloud_percent", "-10 percent"},
    {"AirFlow", "per_min = 45", "per_min = 0", 53, "aerator.free_air_l_per_min", "0 L/min"},
    {"DiffusersHalf", "diffusers = 2", "diffusers = 2.5", 54, "aerator.diffusers", "whole number"},
    {"DiffusersMany", "diffusers = 2", "diffusers = 101", 54, "aerator.diffusers", "101 diffusers"},
    {"Bubble", "diffusers = 2", "diffusers = 2\nbubble_mm = 0.1", 55, "aerator.bubble_mm", "0.1 mm"},
    {"NetShare", "diffusers = 2", "diffusers = 2\nnet_share = 50", 55, "aerator.net_share", "from 0.05 to 1"},
    {"Stress", "\"sport\"", "\"sport\"\nstress_mg_per_l = 40", 59, "limits.stress_mg_per_l", "40 mg/L"},
    {"LethalAboveStress", "\"sport\"", "\"sport\"\nstress_mg_per_l = 4\nlethal_mg_per_l = 5", 60, "limits.lethal_mg_per_l", "above the stress line"},
    {"FishWater", "\"sport\"", "\"sport\"\nfish_water_percent = 0.2", 59, "limits.fish_water_percent", "0.2 percent"},
    {"FirstMin", "first_min = 30", "first_min = 1441", 67, "ramp[2].first_min", "1441 min"},
    {"Factor", "first_min = 30", "first_min = 30\nfactor = 1", 68, "ramp[2].factor", "from 1.01 to 10"},
    {"Dose", "dose_percent = 10", "dose_percent = 0", 72, "ramp[3].dose_percent", "0 percent"},
    {"ReadingOxygen", "per_l = 5.1", "per_l = 51", 77, "reading[1].oxygen_mg_per_l", "51 mg/L"},
};

constexpr BadInput kTogether[] = {
    {"ChosenNobody", "chosen_ramp = \"gentle\"", "chosen_ramp = \"genlte\"", 3, "chosen_ramp", "\"genlte\""},
    {"ContoursToo", "[bottom]", "[[basin.contour]]\ndepth_m = 0\narea_m2 = 90\n[[basin.contour]]\ndepth_m = 3.2\narea_m2 = 0\n\n[bottom]", 13, "basin.area_m2", "must not be given"},
    {"ProfileDepthsFall", "depth_m = [0, 1, 2, 3]", "depth_m = [0, 2, 1, 3]", 32, "profile.depth_m[3]", "1 m follows 2 m"},
    {"ProfileDepthTwice", "depth_m = [0, 1, 2, 3]", "depth_m = [0, 1, 1, 3]", 32, "profile.depth_m[3]", "must rise"},
    {"ProfileDepthBelow", "depth_m = [0, 1, 2, 3]", "depth_m = [0, 1, 2, 3.5]", 32, "profile.depth_m[4]", "below the bottom, which is at 3.4 m"},
    {"ProfileDepthNegative", "depth_m = [0, 1, 2, 3]", "depth_m = [-1, 1, 2, 3]", 32, "profile.depth_m[1]", "-1 m"},
    {"ProfileEmptyList", "depth_m = [0, 1, 2, 3]", "depth_m = []", 32, "profile.depth_m", "must not be empty"},
    {"ProfileTooFew", "temperature_c = [28.5, 27.5, 22, 20]", "temperature_c = [28.5, 27.5]", 33, "profile.temperature_c", "2 values for 4 depths"},
    {"ProfileTooMany", "[8.5, 6.8, 0.3, 0]", "[8.5, 6.8, 0.3, 0, 0]", 34, "profile.oxygen_mg_per_l", "5 values for 4 depths"},
    {"ProfileEarly", "2026-06-13T17:30:00", "2026-06-10T23:59:59", 31, "profile.at", "3 days before"},
    {"ProfileLate", "2026-06-13T17:30:00", "2026-06-15T00:00:01", 31, "profile.at", "24 hours after"},
    {"AirUpsideDown", "air_min_c = 20", "air_min_c = 34", 38, "weather.day[1].air_min_c", "34 degC is above the highest, 33 degC"},
    {"BothHumidities", "humidity_percent = 65", "humidity_percent = 65\ndew_point_c = 18", 41, "weather.day[1].dew_point_c", "not both"},
    {"DayTwice", "date = 2026-06-15", "date = 2026-06-14", 45, "weather.day[2].date", "comes twice"},
    {"DayBackwards", "date = 2026-06-15", "date = 2026-06-13", 45, "weather.day[2].date", "in order"},
    {"DayMissing", "date = 2026-06-15", "date = 2026-06-16", 45, "weather.day[2].date", "2026-06-15 is missing"},
    {"StampAlone", "[[weather.day]]\ndate = 2026-06-14", "[weather]\nstamp = \"end\"\n[[weather.day]]\ndate = 2026-06-14", 37, "weather.stamp", "no file is given"},
    {"FileAndDays", "[[weather.day]]\ndate = 2026-06-14", "[weather]\nstamp = \"end\"\nfile = \"none.csv\"\n[[weather.day]]\ndate = 2026-06-14", 38, "weather.file", "not from both"},
    {"DiffuserAtBottom", "depth_m = 3\n\n[limits]", "depth_m = 3.4\n\n[limits]", 55, "aerator.depth_m", "above the bottom, which is at 3.4 m"},
    {"DiffuserBelow", "depth_m = 3\n\n[limits]", "depth_m = 5\n\n[limits]", 55, "aerator.depth_m", "above the bottom, which is at 3.4 m"},
    {"NameTwice", "name = \"doubling\"", "name = \"at once\"", 65, "ramp[2].name", "already a ramp"},
    {"NameLong", "name = \"doubling\"", "name = \"1234567890123456789012345678901234567890123456789012345678901\"", 65, "ramp[2].name", "61 characters"},
    {"NameControl", "name = \"doubling\"", "name = \"doub\\nling\"", 65, "ramp[2].name", "\"doub\\nling\""},
    {"DoNothing", "name = \"doubling\"", "name = \"do-nothing\"", 65, "ramp[2].name", "is kept"},
    {"DoNothingSpelt", "name = \"doubling\"", "name = \" Do_NOTHING \"", 65, "ramp[2].name", "is kept"},
    {"DoNothingSpaced", "name = \"doubling\"", "name = \"do nothing\"", 65, "ramp[2].name", "is kept"},
    {"ReadingBelow", "depth_m = 0.5", "depth_m = 3.5", 76, "reading[1].depth_m", "below the bottom"},
    {"DoublingNeedsFirst", "first_min = 30\n", "", 64, "ramp[2].first_min", "the kind \"doubling\" needs it"},
    {"LinearNeedsAdd", "kind = \"doubling\"", "kind = \"linear\"", 64, "ramp[2].add_min_per_d", "the kind \"linear\" needs it"},
    {"CappedNeedsDose", "dose_percent = 10\n", "", 69, "ramp[3].dose_percent", "the kind \"capped\" needs it"},
    {"TableNeedsMinutes", "kind = \"continuous\"", "kind = \"table\"", 60, "ramp[1].minutes", "the kind \"table\" needs it"},
    {"TableEmpty", "kind = \"continuous\"", "kind = \"table\"\nminutes = []", 63, "ramp[1].minutes", "must not be empty"},
    {"TableHalfMinute", "kind = \"continuous\"", "kind = \"table\"\nminutes = [5, 7.5]", 63, "ramp[1].minutes[2]", "whole number"},
    {"TableLong", "kind = \"continuous\"", "kind = \"table\"\nminutes = [5, 1500]", 63, "ramp[1].minutes[2]", "1500 min"},
    {"TableNegative", "kind = \"continuous\"", "kind = \"table\"\nminutes = [-5]", 63, "ramp[1].minutes[1]", "-5 min"},
    {"ForeignFirst", "kind = \"continuous\"", "kind = \"continuous\"\nfirst_min = 5", 63, "ramp[1].first_min", "does not belong to a ramp of the kind \"continuous\""},
    {"ForeignFactor", "dose_percent = 10", "dose_percent = 10\nfactor = 2", 73, "ramp[3].factor", "kind \"capped\""},
    {"ForeignAdd", "first_min = 30", "first_min = 30\nadd_min_per_d = 2", 68, "ramp[2].add_min_per_d", "kind \"doubling\""},
    {"ForeignDose", "first_min = 30", "first_min = 30\ndose_percent = 2", 68, "ramp[2].dose_percent", "kind \"doubling\""},
    {"ForeignHold", "first_min = 30", "first_min = 30\nhold = false", 68, "ramp[2].hold", "kind \"doubling\""},
    {"ForeignMinutes", "first_min = 30", "first_min = 30\nminutes = []", 68, "ramp[2].minutes", "kind \"doubling\""},
};

/// What is between tables: each alone would be good.
constexpr BadInput kDatesAndFlows[] = {
    {"TwoProfiles", "[profile]", "[[profile]]", 30, "profile", "written [profile]"},
    {"CappedPulses", "dose_percent = 10", "dose_percent = 10\npulses = 2", 73, "ramp[3].pulses", "one run a day"},
    {"CappedPulsesLater", "dose_percent = 10", "dose_percent = 10\npulses = [1, 1, 3]", 73, "ramp[3].pulses", "one run a day"},
    {"DiffusersMore", "first_min = 30", "first_min = 30\ndiffusers = [1, 3]", 68, "ramp[2].diffusers[2]", "opens 3 diffusers, but the aerator has 2"},
    {"RampDepthAtBottom", "first_min = 30", "first_min = 30\ndepth_m = [1, 3.4]", 68, "ramp[2].depth_m[2]", "above the bottom, which is at 3.4 m"},
    {"RampDepthBelow", "first_min = 30", "first_min = 30\ndepth_m = 4", 68, "ramp[2].depth_m", "above the bottom, which is at 3.4 m"},
    {"SpringTurnsThePondOver", "[[fish]]", "[spring]\nflow_l_per_s = 158\ntemperature_c = 10\noxygen_mg_per_l = 8\n[[fish]]", 27, "spring.flow_l_per_s", "13651.2 m3 a day, but must not bring more than the pond holds, 13600 m3"},
    {"WeedsFromNothing", "[[fish]]", "[[water.change]]\ndate = 2026-06-14\nweeds_cover_percent = 1\n[[fish]]", 28, "water.change[1].weeds_cover_percent", "above 0"},
    {"WeedsFromZero", "[[fish]]", "weeds_cover_percent = 0\n[[water.change]]\ndate = 2026-06-14\nweeds_cover_percent = 1\n[[fish]]", 29, "water.change[1].weeds_cover_percent", "above 0"},
    {"AlgaeFromZero", "chlorophyll_ug_per_l = 70\n", "chlorophyll_ug_per_l = 0\n[[water.change]]\ndate = 2026-06-14\nchlorophyll_ug_per_l = 1\n", 27, "water.change[1].chlorophyll_ug_per_l", "above 0"},
    {"ChangeBeforeTheProfile", "[[fish]]", "[[water.change]]\ndate = 2026-06-13\nchlorophyll_ug_per_l = 1\n[[fish]]", 27, "water.change[1].date", "2026-06-13 begins must come after the start of the run, 2026-06-13 17:30"},
    {"EventEndsBefore", "[[reading]]", "[[event]]\nat = 2026-06-14T10:00:00\nkind = \"run\"\nuntil = 2026-06-14T09:00:00\n[[reading]]", 77, "event[1].until", "2026-06-14 09:00 must not come before the start, 2026-06-14 10:00"},
    {"EventOfNoRamp", "[[reading]]", "[[event]]\nat = 2026-06-14T10:00:00\nkind = \"started\"\nramp = \"other\"\n[[reading]]", 77, "event[1].ramp", "no ramp named \"other\""},
    {"EventEndsTwice", "[[reading]]", "[[event]]\nat = 2026-06-14T10:00:00\nkind = \"run\"\nuntil = 2026-06-14T11:00:00\nminutes = 60\n[[reading]]", 78, "event[1].minutes", "an end or minutes, not both"},
    {"ChangeTwice", "[[fish]]", "[[water.change]]\ndate = 2026-06-14\nchlorophyll_ug_per_l = 1\n[[water.change]]\ndate = 2026-06-14\nchlorophyll_ug_per_l = 2\n[[fish]]", 30, "water.change[2].date", "must come after the one before"},
    {"HoldDayText", "[[weather.day]]\ndate = 2026-06-14", "[weather]\nhold_days = [\"2026-06-14\"]\n[[weather.day]]\ndate = 2026-06-14", 37, "weather.hold_days[1]", "without quotes"},
    {"HoldDaysDate", "[[weather.day]]\ndate = 2026-06-14", "[weather]\nhold_days = 2026-06-14\n[[weather.day]]\ndate = 2026-06-14", 37, "weather.hold_days", "a list of dates"},
    {"HoldDayYear", "[[weather.day]]\ndate = 2026-06-14", "[weather]\nhold_days = [2026-06-15, 0026-06-14]\n[[weather.day]]\ndate = 2026-06-14", 37, "weather.hold_days[2]", "1900 to 2200"},
};

/// What leaves the pond with one warning.
constexpr BadInput kWarned[] = {
    {"HoldDayBefore", "[[weather.day]]\ndate = 2026-06-14", "[weather]\nhold_days = [2025-06-15]\n[[weather.day]]\ndate = 2026-06-14", 37, "weather.hold_days[1]", "before the first day, 2026-06-14"},
    {"HoldDayLate", "[[weather.day]]\ndate = 2026-06-14", "[weather]\nhold_days = [2026-06-14, 2026-08-20]\n[[weather.day]]\ndate = 2026-06-14", 37, "weather.hold_days[2]", "more than 67 days after the first day"},
    {"ReadingOld", "2026-06-14T05:40:00", "2025-06-14T05:40:00", 75, "reading[1].at", "more than 60 days before the first day, 2026-06-14"},
    {"EventOwnKind", "[[reading]]", "[[event]]\nat = 2026-06-14T10:00:00\nkind = \"treatmnt\"\n[[reading]]", 76, "event[1].kind", "nothing is computed from it; is it \"treatment\"?"},
    {"DewPointHigh", "dew_point_c = 19", "dew_point_c = 34.5", 48, "weather.day[2].dew_point_c", "34.5 degC is above the highest air temperature, 34 degC"},
};

/// What is good, beside what the whole file holds.
struct GoodInput {
    const char* name;
    const char* from;
    const char* to;
};

void PrintTo(const GoodInput& row, std::ostream* stream) {
    *stream << row.name;
}

constexpr GoodInput kAccepted[] = {
    {"Spring", "[[fish]]", "[spring]\nflow_l_per_s = 157\ntemperature_c = 10\noxygen_mg_per_l = 8\n[[fish]]"},
    {"Change", "[[fish]]", "[[water.change]]\ndate = 2026-06-14\nchlorophyll_ug_per_l = 1\n[[fish]]"},
    {"WeedsDie", "[[fish]]", "weeds_cover_percent = 30\n[[water.change]]\ndate = 2026-06-14\nweeds_cover_percent = 0\n[[fish]]"},
    {"AlgaeOfSecchiDie", "chlorophyll_ug_per_l = 70\n", "[[water.change]]\ndate = 2026-06-14\nchlorophyll_ug_per_l = 0\n"},
    {"Ph", "secchi_m = 0.45", "secchi_m = 0.45\nph = 8"},
    {"Poisons", "secchi_m = 0.45", "secchi_m = 0.45\ntotal_sulfide_mg_per_l = 2\ntotal_ammonia_mg_per_l = 1"},
    {"Salinity", "[8.5, 6.8, 0.3, 0]", "[8.5, 6.8, 0.3, 0]\nsalinity = [0, 0, 0, 0]"},
    {"FishMax", "\"sport\"", "\"sport\"\nfish_max_c = 20"},
    {"SurfaceAerator", "[limits]", "[surface_aerator]\nstandard_transfer_kg_per_h = 1\nstart_time = \"20:00\"\nend_time = \"08:00\"\n[limits]"},
    {"Window", "first_min = 30", "first_min = 30\nwindow = [\"10:00\", \"16:00\"]"},
    {"Pulses", "first_min = 30", "first_min = 30\npulses = 2"},
    {"OnePulseOfACappedRamp", "dose_percent = 10", "dose_percent = 10\npulses = 1"},
    {"OpenDiffusers", "first_min = 30", "first_min = 30\ndiffusers = [1, 2]"},
    {"RampDepth", "first_min = 30", "first_min = 30\ndepth_m = [1, 2, 3.3]"},
    {"WeatherHold", "first_min = 30", "first_min = 30\nweather_hold = true"},
    {"HoldDaysThatNoRampHeeds", "[[weather.day]]\ndate = 2026-06-14", "[weather]\nhold_days = [2026-06-14, 2026-08-19]\n[[weather.day]]\ndate = 2026-06-14"},
    {"NoHoldDays", "[[weather.day]]\ndate = 2026-06-14", "[weather]\nhold_days = []\n[[weather.day]]\ndate = 2026-06-14"},
    {"ReadingOfSpring", "2026-06-14T05:40:00", "2026-04-15T05:40:00"},
    {"Events", "[[reading]]", "[[event]]\nat = 2026-06-14T10:00:00\nkind = \"started\"\n[[event]]\nat = 2026-06-15T10:00:00\nkind = \"stopped\"\n[[reading]]"},
    {"Alkalinity", "secchi_m = 0.45", "secchi_m = 0.45\nalkalinity_mg_per_l = 90"},
    {"DewPointAtTheAir", "dew_point_c = 19", "dew_point_c = 34"},
};

// clang-format on

INSTANTIATE_TEST_SUITE_P(Syntax, PlainPond, testing::ValuesIn(kSyntax), nameOf);
INSTANTIATE_TEST_SUITE_P(Format, PlainPond, testing::ValuesIn(kFormat), nameOf);
INSTANTIATE_TEST_SUITE_P(Unknown, PlainPond, testing::ValuesIn(kUnknown), nameOf);
INSTANTIATE_TEST_SUITE_P(Missing, PlainPond, testing::ValuesIn(kMissing), nameOf);
INSTANTIATE_TEST_SUITE_P(Types, PlainPond, testing::ValuesIn(kTypes), nameOf);
INSTANTIATE_TEST_SUITE_P(Ranges, PlainPond, testing::ValuesIn(kRanges), nameOf);
INSTANTIATE_TEST_SUITE_P(Together, PlainPond, testing::ValuesIn(kTogether), nameOf);
INSTANTIATE_TEST_SUITE_P(DatesAndFlows, PlainPond, testing::ValuesIn(kDatesAndFlows), nameOf);

class OddPond : public testing::TestWithParam<BadInput> {};

TEST_P(OddPond, IsReadWithOneWarning) {
    const BadInput& row = GetParam();
    const std::string text = with(kPlainPond, row.from, row.to);
    ASSERT_FALSE(text.empty()) << "the good file does not hold: " << row.from;
    const PondReading reading = readPondText(text, "odd.toml");
    EXPECT_TRUE(reading.pond) << said(reading);
    ASSERT_EQ(reading.diagnostics.size(), 1U) << said(reading);
    const Diagnostic& warning = reading.diagnostics.front();
    EXPECT_EQ(warning.severity, Severity::Warning);
    EXPECT_EQ(warning.line, row.line) << said(reading);
    EXPECT_EQ(warning.key, row.key) << said(reading);
    EXPECT_NE(warning.sentence.find(row.fragment), std::string::npos) << said(reading);
}

INSTANTIATE_TEST_SUITE_P(Rows, OddPond, testing::ValuesIn(kWarned), nameOf);

class GoodPond : public testing::TestWithParam<GoodInput> {};

TEST_P(GoodPond, IsReadWithoutAWord) {
    const std::string text = with(kPlainPond, GetParam().from, GetParam().to);
    ASSERT_FALSE(text.empty()) << "the good file does not hold: " << GetParam().from;
    const PondReading reading = readPondText(text, "good.toml");
    EXPECT_TRUE(reading.pond) << said(reading);
    EXPECT_TRUE(reading.diagnostics.empty()) << said(reading);
}

INSTANTIATE_TEST_SUITE_P(Rows, GoodPond, testing::ValuesIn(kAccepted),
                         [](const auto& row) { return std::string(row.param.name); });

}  // namespace
}  // namespace engine::test
