#pragma once

#include "engine/base/error.h"
#include "engine/pond/pond.h"

#include <string>
#include <string_view>
#include <vector>

namespace engine {

/// Reads an hourly weather file: columns at, air_c, humidity_percent or dew_point_c, wind_m_per_s, and
/// one of shortwave_w_per_m2, par_umol_per_m2_s, cloud_percent. Hours must follow each other without a
/// gap. The columns rain_mm and snow_mm, of the hour and as water, may be there. With two columns for one
/// thing the dew point and the first light column of that list are used.
/// @param text   Valid UTF-8.
/// @param file   Stands in front of every diagnostic.
/// @param stamp  At which end of its hour a row is stamped.
/// @param[out] diagnostics  Faults and remarks are added.
/// @return The hours, of use only if no error was added.
[[nodiscard]] std::vector<WeatherHour> readWeatherCsv(std::string_view text, const std::string& file,
                                                      HourStamp stamp, Diagnostics& diagnostics);

}  // namespace engine
