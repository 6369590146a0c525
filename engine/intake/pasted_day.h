#pragma once

#include "engine/pond/pond.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace engine {

enum class TemperatureUnit { Celsius, Fahrenheit };
enum class WindUnit { MetrePerSecond, KilometrePerHour, Mile, Knot };

/// What the columns of a pasted table are, by its headings.
enum class PastedColumn { Other, Day, High, Low, Wind, Sky, Humidity, Cloud, Rain, RainChance };

/// Which day a record is about.
struct PastedDate {
    std::optional<Date> date;         ///< Written in full or without its year
    std::optional<unsigned> weekday;  ///< 0 for Sunday
    std::optional<int> fromFirst;     ///< 0 for "today", 1 for "tomorrow"
    bool isNight = false;             ///< Its low is that of the morning after
    [[nodiscard]] bool isThere() const { return date || weekday || fromFirst; }
};

/// One day as it was pasted, in the units that stand beside its numbers; empty where none does.
struct PastedDay {
    int line = 1;
    std::string text;
    PastedDate day;
    std::vector<double> temperatures;  ///< High and low in any order, where no word says which
    std::optional<double> high, low, wind, humidity_percent, cloud_percent, rain;
    std::optional<double> windByWord;  ///< [m/s]
    std::optional<TemperatureUnit> temperatureUnit;
    std::optional<WindUnit> windUnit;
    bool isRainInInches = false;
    bool hasRainChance = false;  ///< Which is not taken
};

/// The day at the front of a line.
/// @param near  A date without its year is that which is nearest to this day.
/// @param dayFirst  Of 14/6.
[[nodiscard]] PastedDate dayOfLine(std::string_view line, Date near, bool dayFirst);

/// Reads a record of free words and numbers: "High 91 Low 70, wind SW 5 to 10 mph, mostly sunny".
[[nodiscard]] PastedDay dayOfWords(std::string_view text, int line);

/// Reads the cells of a table whose headings are known.
[[nodiscard]] PastedDay dayOfCells(const std::vector<std::string>& cells,
                                   const std::vector<PastedColumn>& columns, int line);

/// What a heading says. @return Other if nothing that is known.
[[nodiscard]] PastedColumn columnOfHeading(std::string_view heading);

/// The units that a text names, for headings.
[[nodiscard]] std::optional<TemperatureUnit> temperatureUnitIn(std::string_view text);
[[nodiscard]] std::optional<WindUnit> windUnitIn(std::string_view text);

}  // namespace engine
