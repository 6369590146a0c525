#pragma once

#include "engine/base/error.h"
#include "engine/pond/pond.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace engine {

/// Reads a logger's file, in rows of any order: at, depth_m, temperature_c, oxygen_mg_per_l, or such headings
/// and forms as engine/pond/logger_columns.h knows. Rows of another unit, date form or separator are
/// understood or refused in words. Nothing is lost without a word: blank rows, rows that say the same twice,
/// jumps of the clock and columns that are not used are counted in warnings; two different values of one time
/// and depth are both kept.
/// @param text     Valid UTF-8.
/// @param file     Stands in front of every diagnostic.
/// @param shape    What the pond file says of the file.
/// @param deepest  Deepest point of the pond [m]; depths below it are errors.
/// A row that cannot be used is left out with a word, as long as most rows can; so is an error code of the
/// meter.
/// @param[out] diagnostics  Faults and remarks are added.
/// @param utcOffset_h  Of the pond's own clock; times of a column that names another are brought to it.
/// @return The readings in the order of the file, of use only if no error was added.
[[nodiscard]] std::vector<Reading> readReadingsCsv(std::string_view text, const std::string& file,
                                                   const ReadingsFile& shape, std::optional<double> deepest,
                                                   Diagnostics& diagnostics,
                                                   std::optional<double> utcOffset_h = std::nullopt);

}  // namespace engine
