#pragma once

#include "engine/intake/pasted_day.h"
#include "engine/pond/pond.h"

#include <optional>
#include <string>
#include <vector>

namespace engine {

inline constexpr double kUsualSpan = 11.0;  ///< Between a day's high and low, judgement [degC]

/// What was met on the way from a pasted text to days of weather.
struct PastedCounts {
    int lows = 0, highs = 0, winds = 0, clouds = 0, humidities = 0;  ///< Days on which it was filled
    int gaps = 0;                                                    ///< Days filled by the one before
    int twice = 0;                                                   ///< Days that stand there twice
    int left = 0;                                                    ///< Lines without a temperature
    std::vector<std::string> firstLeft;                              ///< The first of them, as they are named
    std::optional<TemperatureUnit> temperature;                      ///< As which the text was read
    std::optional<WindUnit> wind;
    bool isWindUnitTaken = false;  ///< The text does not say it
    bool hasRainChance = false;
};

/// The sentences of it, with numbers in the units asked for.
[[nodiscard]] std::vector<std::string> pastedSentences(const std::vector<WeatherDay>& days,
                                                       const PastedCounts& counts, UnitSystem units);

}  // namespace engine
