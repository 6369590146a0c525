#pragma once

#include "engine/pond/pond.h"

#include <string>
#include <vector>

namespace engine {

/// The days of a pond's weather with those of a forecast put in.
struct JoinedWeather {
    std::vector<WeatherDay> days;
    std::string said;  ///< What becomes of the weather that was there, as sentences; may be empty
};

/// Puts a forecast's days in the place of those of the same dates. Days before and after it stay where they
/// join on to it without a gap, and go out where they do not, since a table of weather may have none. Where
/// the weather that is there was measured, the days put in are marked as a forecast's.
/// @pre pasted is not empty; both in order and without gaps.
[[nodiscard]] JoinedWeather joinWeather(const Weather& there, const std::vector<WeatherDay>& pasted);

}  // namespace engine
