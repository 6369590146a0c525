#include "engine/pond/pond_units.h"

#include "engine/pond/key_list.h"
#include "engine/pond/pond_io.h"
#include "tests/pond_texts.h"

#include <gtest/gtest.h>

namespace engine {
namespace {

double typed(const char* text, const char* unit) {
    const TypedNumber number = readTyped(text, unit);
    EXPECT_EQ(number.fault, "") << text;
    return number.value.value_or(-999.0);
}

// Exact by the definitions of foot, pound, gallon and horsepower; to the twelve digits that are kept.
TEST(PondUnits, AreConvertedExactly) {
    EXPECT_DOUBLE_EQ(typed("1.8 acres", "m2"), 7284.34156032);  // 4046.8564224 m2 each
    EXPECT_DOUBLE_EQ(typed("11 ft", "m"), 3.3528);
    EXPECT_DOUBLE_EQ(typed("5 ft 6 in", "m"), 1.6764);
    EXPECT_DOUBLE_EQ(typed("5' 6\"", "m"), 1.6764);
    EXPECT_DOUBLE_EQ(typed("77 degF", "degC"), 25.0);
    EXPECT_DOUBLE_EQ(typed("-40 \u00b0F", "degC"), -40.0);
    EXPECT_NEAR(typed("2 cfm", "L/min"), 56.633693184, 1e-9);
    EXPECT_NEAR(typed("10 gal/min", "L/s"), 0.630901964, 1e-9);
    EXPECT_DOUBLE_EQ(typed("10 mph", "m/s"), 4.4704);
    EXPECT_DOUBLE_EQ(typed("1 in", "mm"), 25.4);
    EXPECT_NEAR(typed("100 lb/acre", "kg/ha"), 112.085115619, 1e-8);
    EXPECT_DOUBLE_EQ(typed("0.9 lb", "g"), 408.233133);
    EXPECT_NEAR(typed("0.5 hp", "kW"), 0.372849935791, 1e-12);
    EXPECT_DOUBLE_EQ(typed("2 h", "min"), 120.0);
    EXPECT_DOUBLE_EQ(typed("90.5 W", "degrees east"), -90.5);
    EXPECT_DOUBLE_EQ(typed("33 S", "degrees north"), -33.0);
}

TEST(PondUnits, AFaultNamesTheUnitsThatAreKnown) {
    EXPECT_EQ(readTyped("3 furlongs", "m").fault,
              "The unit \"furlongs\" is not known here; write m, cm, mm, ft, in or yd behind the number.");
    EXPECT_NE(readTyped("36 N", "degrees east").fault.find("E or W"), std::string::npos);
    EXPECT_NE(readTyped("1,8 acres", "m2").fault.find("decimal comma; write a point: 1.8"),
              std::string::npos);
    EXPECT_NE(readTyped("3", "m").fault.find("one of m, cm, mm, ft, in or yd"), std::string::npos);
    EXPECT_NE(readTyped("3 ft", "").fault.find("without a unit"), std::string::npos);
    EXPECT_NE(readTyped("- ft", "m").fault.find("No number"), std::string::npos);
}

/// Every unit of every key reads back what it is printed as.
TEST(PondUnits, EveryKnownUnitIsUnderstood) {
    int units = 0;
    for (const KeyFact& fact : pondKeys()) {
        for (const std::string& unit : unitsKnown(fact.rule.unit)) {
            EXPECT_TRUE(readTyped("1 " + unit, fact.rule.unit).value.has_value()) << fact.path << ' ' << unit;
            ++units;
        }
        if (fact.kind == KeyKind::Number && *fact.rule.unit != '\0' &&
            std::string_view(fact.rule.unit) != "diffusers") {
            EXPECT_FALSE(unitsKnown(fact.rule.unit).empty()) << fact.path << ' ' << fact.rule.unit;
        }
    }
    EXPECT_GT(units, 200);
}

std::string usPond() {
    std::string text(test::kPlainPond);
    text = test::with(text, "area_m2 = 8000", "area_m2 = \"1.8 acres\"");
    text = test::with(text, "max_depth_m = 3.4",
                      "max_depth_m = { value = \"11 ft\", low = \"10 ft\", high = \"12 ft\" }");
    text = test::with(text, "depth_m = [0, 1, 2, 3]", "depth_m = [0, \"3 ft\", \"6 ft\", \"9 ft 6 in\"]");
    text = test::with(text, "longitude_deg = -90", "longitude_deg = \"90 W\"");
    text = test::with(text, "free_air_l_per_min = 45", "free_air_l_per_min = \"1.6 cfm\"");
    return test::with(text, "air_max_c = 33", "air_max_c = \"91 degF\"");
}

TEST(PondUnits, APondInAnyUnitIsReadAndKeptAsTyped) {
    const PondReading reading = readPondText(usPond(), "us.toml");
    ASSERT_TRUE(reading.pond) << (reading.diagnostics.empty() ? "" : format(reading.diagnostics.front()));
    EXPECT_NEAR(*reading.pond->basin.area, 7284.34156032, 1e-6);
    EXPECT_NEAR(*reading.pond->basin.maxDepth->low, 3.048, 1e-12);
    EXPECT_NEAR(reading.pond->profile->depth[3], 2.8956, 1e-12);
    EXPECT_EQ(reading.pond->place.longitude_deg->value, -90.0);
    const std::string written = writePond(*reading.pond, reading.typed);
    for (const char* kept :
         {"area_m2 = \"1.8 acres\"", "value = \"11 ft\", low = \"10 ft\", high = \"12 ft\"",
          "depth_m = [0, \"3 ft\", \"6 ft\", \"9 ft 6 in\"]", "\"90 W\"", "\"1.6 cfm\"", "\"91 degF\""}) {
        EXPECT_NE(written.find(kept), std::string::npos) << kept << " in " << written;
    }
    const PondReading again = readPondText(written, "us.toml");
    ASSERT_TRUE(again.pond);
    EXPECT_EQ(*again.pond, *reading.pond);
    EXPECT_EQ(writePond(*again.pond, again.typed), written);
}

TEST(PondUnits, WhatWasChangedIsWrittenAnew) {
    const PondReading reading = readPondText(usPond(), "us.toml");
    Pond pond = *reading.pond;
    pond.basin.area = Quantity(9000.0);
    pond.ramps.erase(pond.ramps.begin());
    const std::string written = writePond(pond, reading.typed);
    EXPECT_NE(written.find("area_m2 = 9000\n"), std::string::npos);
    EXPECT_EQ(written.find("acres"), std::string::npos);
}

TEST(PondUnits, RangesHoldInTheKeysUnit) {
    const std::string deep = test::with(test::kPlainPond, "max_depth_m = 3.4", "max_depth_m = \"340 ft\"");
    const PondReading reading = readPondText(deep, "deep.toml");
    ASSERT_FALSE(reading.pond);
    EXPECT_EQ(reading.diagnostics.front().key, "basin.max_depth_m");
    EXPECT_NE(reading.diagnostics.front().sentence.find("103.632 m"), std::string::npos);
}

}  // namespace
}  // namespace engine
