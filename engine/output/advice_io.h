#pragma once

#include "engine/advice/advice.h"
#include "engine/base/files.h"

#include <string>
#include <string_view>

namespace engine {

/// `advice.csv`: field,value, one field a row; empty where it does not apply. Chances are of 100 ponds.
/// @param run  Name of the frozen run; empty where there is none.
[[nodiscard]] std::string adviceCsv(const Advice& advice, std::string_view run = {});

/// The file of that.
[[nodiscard]] TextFile adviceFile(const Advice& advice, std::string_view run = {});

/// `months.csv`: a start with the answer's ramp in the middle of each of the next twelve months; only the
/// first three columns of a month with ice. Chances are of 100 ponds.
[[nodiscard]] std::string calendarCsv(const Advice& advice);

/// What a reading is, and from which value on it turns the answer, as it stands in a cell.
[[nodiscard]] std::string readingText(const TellingReading& reading);

}  // namespace engine
