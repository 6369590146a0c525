#pragma once

#include "engine/pond/pond.h"

#include <string>
#include <string_view>
#include <vector>

namespace engine {

/// Weather as it was pasted from a web page or a spreadsheet.
struct PastedWeather {
    std::vector<WeatherDay> days;   ///< In order and without gaps; empty with a fault
    std::vector<std::string> said;  ///< What was taken, what was filled and what was left out, as sentences
    std::string fault;              ///< Why nothing could be taken; empty otherwise
};

/// Reads days with their high and low, wind and sky in words, one a line, with or without headings, parted by
/// tabs, semicolons, commas or blanks. A day may be a date, a weekday, "today" or nothing (then they follow
/// each other from `firstDay`). Temperatures are in degC or degF as their signs or the heading say, else as
/// `units` does unless they can be only the other; so is the wind. What is missing is filled: humidity, wind
/// and cloud by usual values (judgement), days in a gap by the one before.
[[nodiscard]] PastedWeather readPastedWeather(std::string_view text, Date firstDay, UnitSystem units);

}  // namespace engine
