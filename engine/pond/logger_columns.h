#pragma once

#include "engine/pond/pond.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace engine {

/// What a column of a logger's file holds.
enum class LoggerColumn {
    Unused,
    At,
    DateOnly,
    ClockOnly,
    Depth,
    Temperature,
    Oxygen,
    OxygenPercent,
    Secchi,
    Meter,
    Note
};

/// A column as its heading says, and how its numbers get into the units of the pond file.
struct ColumnMeaning {
    LoggerColumn column = LoggerColumn::Unused;
    double factor = 1.0;  ///< File to degC, m or mg/L: factor x (number - offset)
    double offset = 0.0;
    std::string unit;         ///< Of the file, as it stands in a sentence: "degF", "ft", "ppm"
    bool isUnitGiven = true;  ///< Else the pond file's own is taken
};

/// Reads a heading such as "depth_m", "DO (mg/L)", "Temp [degF]" or "Date/Time", in any case.
[[nodiscard]] ColumnMeaning columnMeaning(std::string_view heading);

/// How far the clock of a heading such as "Date Time, GMT-05:00" or "UTC time" is ahead of UTC [h]; nothing
/// if it does not say.
[[nodiscard]] std::optional<double> clockOfHeading(std::string_view heading);

/// The separator of a file by its first lines: semicolon or tab where they separate more than commas do.
[[nodiscard]] char separatorOf(std::string_view text);

/// A number with a decimal point or comma; nothing if it is neither or cannot be told (1.234,5; 1,234,5).
[[nodiscard]] std::optional<double> loggerNumber(std::string_view text);

/// True for a cell that says there is no value: empty, "NA", "NaN", "---", "-9999" and their like.
[[nodiscard]] bool isBlank(std::string_view text);

/// Which orders of day and month a date may have: 24.05.2020 and 24/05/2020 the day first, 05/24/2020 the
/// month first, 05/06/2020 either.
struct DateOrders {
    bool dayFirst = true, monthFirst = true;
};
[[nodiscard]] DateOrders possibleOrders(std::string_view text);

/// Date and time in ISO form, with slashes, points or dashes, years of two or four digits, seconds or not, 12
/// or 24 hours; nothing on any fault, a zone among them.
[[nodiscard]] std::optional<LocalTime> loggerTime(std::string_view text, DateOrder order);

}  // namespace engine
