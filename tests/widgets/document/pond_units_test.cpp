#include "widgets/document/pond_units.h"

#include "tests/widgets/typing.h"
#include "widgets/controls/number_box.h"
#include "widgets/document/key_rules.h"
#include "widgets/document/number_text.h"

#include <gtest/gtest.h>

namespace widgets {
namespace {

using engine::UnitSystem;
using test::plain;

double read(const char* text, const char* key, UnitSystem system = UnitSystem::Metric) {
    const auto reading = readQuantity(QString::fromUtf8(text), keyRule(key), system, QLocale::c());
    EXPECT_TRUE(reading.fault.isEmpty()) << text << ": " << plain(reading.fault);
    return reading.value;
}

TEST(PondUnits, AUnitTypedBehindANumberIsUnderstoodInAnySystem) {
    // NIST Handbook 44 (2024), appendix C: 1 acre is 4046.872... m2 (survey foot) or 4046.8564
    // (international).
    EXPECT_NEAR(read("2.5 ac", "basin.area_m2"), 10117.1, 0.1);
    EXPECT_NEAR(read("2,5 acres", "basin.area_m2", UnitSystem::Us), 10117.1, 0.1);
    EXPECT_DOUBLE_EQ(read("1 ha", "basin.area_m2", UnitSystem::Us), 10000.0);
    EXPECT_NEAR(read("12 ft", "basin.max_depth_m"), 3.6576, 1e-9);
    EXPECT_NEAR(read("12'", "basin.max_depth_m"), 3.6576, 1e-9);
    EXPECT_NEAR(read("80 F", "profile.temperature_c"), 26.6667, 1e-3);
    EXPECT_NEAR(read("2 cfm", "aerator.free_air_l_per_min"), 56.634, 1e-3);
    EXPECT_NEAR(read("100 lb/ac", "fish.stock_kg_per_ha"), 112.085, 1e-3);
    EXPECT_NEAR(read("5 mph", "weather.day.wind_m_per_s"), 2.2352, 1e-9);
    EXPECT_NEAR(read("0.5hp", "aerator.power_kw"), 0.37285, 1e-4);
    EXPECT_NEAR(read("1.5 h", "ramp.first_min"), 90.0, 1e-9);
}

TEST(PondUnits, ANumberAloneIsInTheUnitThatIsShown) {
    EXPECT_DOUBLE_EQ(read("12", "basin.max_depth_m"), 12.0);
    EXPECT_NEAR(read("12", "basin.max_depth_m", UnitSystem::Us), 3.6576, 1e-9);
    EXPECT_NEAR(read("50", "profile.temperature_c", UnitSystem::Us), 10.0, 1e-9);
}

TEST(PondUnits, AnUnknownUnitAndARangeAreSaidInTheShownUnit) {
    const auto fault = [](const char* text, const char* key, UnitSystem system) {
        return plain(readQuantity(QString::fromUtf8(text), keyRule(key), system, QLocale::c()).fault);
    };
    EXPECT_EQ(fault("3 furlongs", "basin.max_depth_m", UnitSystem::Metric),
              "“furlongs” is no unit that is known here; known are m, cm, mm, ft, in, yd.");
    EXPECT_EQ(fault("300", "basin.max_depth_m", UnitSystem::Us),
              "The value is 300 ft, but must be from 0.98425 to 196.85 ft.");
    EXPECT_EQ(fault("300 ft", "basin.max_depth_m", UnitSystem::Metric),
              "The value is 91.44 m, but must be from 0.3 to 60 m.");
    EXPECT_EQ(fault("many", "basin.max_depth_m", UnitSystem::Metric), "“many” is not a number.");
}

TEST(PondUnits, WhatIsShownAndTakenAgainIsTheSameNumber) {
    for (const char* key :
         {"basin.area_m2", "basin.max_depth_m", "profile.temperature_c", "aerator.free_air_l_per_min",
          "fish.stock_kg_per_ha", "weather.day.wind_m_per_s", "spring.flow_l_per_s", "feed.kg_per_d"}) {
        const ShownUnit unit = shownUnitOf(keyRule(key).unit, UnitSystem::Us);
        for (const double value : {0.3, 1.7, 12.0, 45.0}) {
            const double shown = shownNumber(value, unit);
            EXPECT_NEAR(unit.toFile(shown), value, 1e-5 * value + 1e-5) << key;
        }
    }
}

TEST(PondUnits, AFieldThatIsOnlyLookedAtChangesNothing) {
    NumberBox box(keyRule("basin.area_m2"), 100.0, NumberBox::Empty::Refused);
    box.setUnits(UnitSystem::Us);
    box.setValue(8000.0);
    EXPECT_EQ(test::textOf(&box), "1.97684");
    test::showActive(box);
    box.setFocus();
    EXPECT_TRUE(box.entry().commit());
    EXPECT_DOUBLE_EQ(*box.value(), 8000.0);
    box.setUnits(UnitSystem::Metric);
    EXPECT_EQ(test::textOf(&box), "8000");
}

}  // namespace
}  // namespace widgets
