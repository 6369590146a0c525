#pragma once

#include "engine/pond/pond.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace engine {

/// A unit in which a number may be shown or typed: file = shown * factor + offset.
struct KeyUnit {
    const char* text = "";  ///< As it is printed
    double factor = 1.0;
    double offset = 0.0;

    [[nodiscard]] double toFile(double shown) const { return shown * factor + offset; }
    [[nodiscard]] double toShown(double file) const { return (file - offset) / factor; }
};

/// In which unit numbers of a key are shown. @param unit  As the rule of the key says it (pond_keys.h).
[[nodiscard]] KeyUnit unitIn(const char* unit, UnitSystem system);

/// The unit that a word means for a key, such as "ac" or "acres" for square metres; nothing if none.
[[nodiscard]] std::optional<KeyUnit> unitNamed(std::string_view unit, std::string_view word);

/// The units that are understood for a key, as they are printed, the key's own first; empty for plain
/// numbers.
[[nodiscard]] std::vector<std::string> unitsKnown(std::string_view unit);

/// "m2, ha, ac, ft2 or km2", for sentences.
[[nodiscard]] std::string unitList(std::string_view unit);

/// What a text such as "1.8 acres" is for a key: a number in the key's own unit, or a sentence.
struct TypedNumber {
    std::optional<double> value;
    std::string fault;  ///< Empty if and only if there is a value.
};

/// Reads a number with its unit behind it. "5 ft 6 in" adds up. To twelve digits: what is left of the
/// conversion's rounding would only be noise in the file.
[[nodiscard]] TypedNumber readTyped(std::string_view text, std::string_view unit);

}  // namespace engine
