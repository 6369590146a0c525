#pragma once

#include "engine/error.h"
#include "engine/pond.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace engine {

/// Reads a logger's file: columns at, depth_m, temperature_c, oxygen_mg_per_l, in rows of any order.
/// A cell of temperature or oxygen may be empty, but not both of a row.
/// @param text     Valid UTF-8.
/// @param file     Stands in front of every diagnostic.
/// @param deepest  Deepest point of the pond [m]; depths below it are errors.
/// @param[out] diagnostics  Faults and remarks are added.
/// @return The readings, of use only if no error was added.
[[nodiscard]] std::vector<Reading> readReadingsCsv(std::string_view text, const std::string& file,
                                                   std::optional<double> deepest, Diagnostics& diagnostics);

}  // namespace engine
