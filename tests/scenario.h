#pragma once

#include "engine/pond/pond_io.h"
#include "engine/run/run.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <stdexcept>
#include <string>
#include <string_view>

namespace engine::test {

/// A pond of the scenarios folder by its file's name without ".toml".
inline Pond scenario(const std::string& name) {
    const PondReading reading = readPond(std::string(DAWNLINE_SCENARIOS) + "/" + name + ".toml");
    if (!reading.pond) {
        throw std::runtime_error("the scenario " + name + " cannot be read");
    }
    return *reading.pond;
}

/// A pond with copies of its first ramp under long names, until there are so many.
inline Pond withLongNamedRamps(Pond pond, std::size_t ramps) {
    while (pond.ramps.size() < ramps) {
        Ramp ramp = pond.ramps.front();
        ramp.name = "a ramp with quite a long name, number " + std::to_string(pond.ramps.size());
        pond.ramps.push_back(ramp);
    }
    return pond;
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

inline const Ramp& rampOf(const Pond& pond, std::string_view name) {
    const auto found = std::find_if(pond.ramps.begin(), pond.ramps.end(),
                                    [name](const Ramp& ramp) { return ramp.name == name; });
    if (found == pond.ramps.end()) {
        throw std::runtime_error("the pond has no ramp of the name " + std::string(name));
    }
    return *found;
}

inline const Ramp& rampOfKind(const Pond& pond, RampKind kind) {
    const auto found = std::find_if(pond.ramps.begin(), pond.ramps.end(),
                                    [kind](const Ramp& ramp) { return ramp.kind == kind; });
    if (found == pond.ramps.end()) {
        throw std::runtime_error("the pond has no ramp of this kind");
    }
    return *found;
}

/// A ramp that runs the same minutes every day.
inline Ramp minutesEachDay(double minutes) {
    Ramp ramp;
    ramp.name = "the same each day";
    ramp.kind = RampKind::Table;
    ramp.minutes = {minutes};
    return ramp;
}

inline Ramp cappedRamp(double dose_percent, bool hold) {
    Ramp ramp;
    ramp.name = "capped";
    ramp.kind = RampKind::Capped;
    ramp.dose_percent = Quantity(dose_percent);
    ramp.hold = hold;
    return ramp;
}

inline Ramp continuousRamp() {
    Ramp ramp;
    ramp.name = "continuous";
    return ramp;
}

}  // namespace engine::test
