#pragma once

#include "engine/pond/pond.h"

#include <optional>
#include <string>
#include <string_view>

namespace engine {

/// "YYYY-MM-DD" as a date that exists; nothing on any fault.
[[nodiscard]] std::optional<Date> parseDate(std::string_view text);

/// "YYYY-MM-DD HH:MM", with or without ":SS", with a space or a "T" between; nothing on any fault,
/// a zone among them.
[[nodiscard]] std::optional<LocalTime> parseLocalTime(std::string_view text);

/// "HH:MM" from 00:00 to 23:59; nothing on any fault.
[[nodiscard]] std::optional<ClockTime> parseClock(std::string_view text);

/// 1 on the first of January.
[[nodiscard]] int dayOfYear(Date date);

[[nodiscard]] std::string formatDate(Date date);  ///< "2026-06-14"
[[nodiscard]] std::string formatLocalTime(
    LocalTime at);                                      ///< "2026-06-13 17:30", seconds only if there are any
[[nodiscard]] std::string formatIsoTime(LocalTime at);  ///< "2026-06-13T17:30:00"
[[nodiscard]] std::string formatClock(ClockTime time);  ///< "10:00"

}  // namespace engine
