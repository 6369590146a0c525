#pragma once

#include "engine/pond_io.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <string>

namespace engine::test {

/// A pond of scenarios/, without its ".toml". The test breaks if it is not good.
inline Pond scenario(const std::string& name) {
    const PondReading reading = readPond(std::filesystem::path(DAWNLINE_SCENARIOS) / (name + ".toml"));
    EXPECT_TRUE(reading.pond) << name << ": "
                              << (reading.diagnostics.empty() ? "" : format(reading.diagnostics.front()));
    return reading.pond.value();
}

/// The clear-weather variant: every day is the table's day of least cloud (the first of them), at 10 % cloud;
/// the dates stay.
inline Pond inClearWeather(Pond pond) {
    auto& days = pond.weather.days;
    WeatherDay clear = *std::min_element(days.begin(), days.end(), [](const auto& a, const auto& b) {
        return a.cloud_percent->value < b.cloud_percent->value;
    });
    clear.cloud_percent = Quantity(10.0);
    for (WeatherDay& day : days) {
        clear.date = day.date;
        day = clear;
    }
    return pond;
}

/// A ramp of a pond by its name.
inline const Ramp& rampOf(const Pond& pond, const std::string& name) {
    const auto found = std::find_if(pond.ramps.begin(), pond.ramps.end(),
                                    [&](const Ramp& ramp) { return ramp.name == name; });
    EXPECT_NE(found, pond.ramps.end()) << name;
    return *found;
}

}  // namespace engine::test
