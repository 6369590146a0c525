#pragma once

#include "engine/base/error.h"
#include "engine/pond/pond.h"

#include <string>
#include <string_view>
#include <vector>

namespace engine {

/// Reads the hours of a typical year in the open EPW form, from memory: eight lines of header, of which the
/// first, LOCATION, says where the station stands and the eighth begins with DATA PERIODS; then a row an
/// hour, with year, month, day, hour 1 to 24, air, dew point, relative humidity, wind and sky cover at its
/// places. The months may be of different years. What a row marks as missing is left out, and so is a day of
/// which too few hours have the air. A station far from the pond is warned of.
/// @param text   Valid UTF-8.
/// @param file   Stands in front of every diagnostic.
/// @param place  Of the pond.
/// @param[out] diagnostics  Faults and remarks are added.
/// @return Twelve months, January first, with the means of the days' lowest and highest air, of dew point (of
///   humidity where the dew point is missing), wind and cloud; of use only if no error was added.
[[nodiscard]] std::vector<ClimateMonth> readEpw(std::string_view text, const std::string& file,
                                                const Place& place, Diagnostics& diagnostics);

}  // namespace engine
