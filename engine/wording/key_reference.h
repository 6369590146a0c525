#pragma once

#include "engine/pond/key_list.h"
#include "engine/wording/key_texts.h"

#include <optional>
#include <string>
#include <string_view>

namespace engine {

// The reference of the pond file: kinds, units and ranges from the table that reads it (pond_keys.h), with
// the meaning of each key beside it.

/// @throws InternalError if the key has no text.
[[nodiscard]] const KeyText& keyText(std::string_view path);

/// "Number in m2 (or ha, ac, ft2, km2), above 0 to 10000000; needed."
[[nodiscard]] std::string kindOf(const KeyFact& fact);

/// As a key stands in a file: "area_m2 = 8000", "[basin]", "[[fish]]".
[[nodiscard]] std::string exampleOf(const KeyFact& fact);

/// All that is known of one key or table as lines of at most 78 characters, its path the first.
[[nodiscard]] std::string explained(const KeyFact& fact);

/// What `word` asks for: a path, the name of a key in any table, a table with or without its brackets; else
/// what is nearest to it, as a sentence.
struct Explanation {
    std::optional<std::string> text;
    std::string fault;
};
[[nodiscard]] Explanation explain(std::string_view word);

/// The tables with the names of their keys.
[[nodiscard]] std::string keyOverview();

/// The whole reference.
[[nodiscard]] std::string keyReference();

}  // namespace engine
