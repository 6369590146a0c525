#pragma once

#include "engine/pond/pond.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace engine {

enum class TomlKind { Text, Whole, Real, Truth, DateOnly, TimeOnly, DateTime, ZonedDateTime, List, Table };

/// One value of a TOML text with its line. Keeps the parser's own types in one source file.
struct TomlNode {
    std::string key;  ///< Empty for the items of a list and for the whole text.
    TomlKind kind = TomlKind::Table;
    int line = 1;                 ///< 1-based line on which the value starts.
    std::string text;             ///< Text
    double number = 0.0;          ///< Whole, Real
    bool truth = false;           ///< Truth
    Date date{};                  ///< DateOnly
    LocalTime at{};               ///< DateTime
    bool hasFraction = false;     ///< DateTime: there are parts of a second
    std::vector<TomlNode> items;  ///< List: its values; Table: its values with their keys.

    [[nodiscard]] const TomlNode* find(std::string_view wanted) const;
};

/// What was found, as it stands in a sentence: `the text "x"`, `the number 3`, `a list`.
[[nodiscard]] std::string describe(const TomlNode& node);

/// The whole text as a table, or the first fault.
struct TomlParse {
    std::optional<TomlNode> root;
    int line = 0;       ///< Of the fault.
    std::string fault;  ///< A sentence.
};

/// Reads TOML 1.0 from valid UTF-8. Never throws for what the text holds.
[[nodiscard]] TomlParse parseToml(std::string_view text);

/// A text as TOML 1.0 writes it on one line: a basic string with its quotes. @pre valid UTF-8
[[nodiscard]] std::string tomlText(std::string_view text);

}  // namespace engine
