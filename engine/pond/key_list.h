#pragma once

#include "engine/pond/pond_keys.h"

#include <string>
#include <string_view>
#include <vector>

namespace engine {

enum class KeyKind {
    Number,
    Numbers,
    ByDay,
    Text,
    Truth,
    Day,
    Days,
    Time,
    Clock,
    Window,
    Choice,
    Table,
    Tables
};

/// A table or key of the pond file as pond_keys.h has it.
struct KeyFact {
    std::string path;  ///< Dotted, without the numbers of lists: "basin.contour.depth_m"
    KeyKind kind = KeyKind::Number;
    NumberRule rule;          ///< Of numbers
    bool isRequired = false;  ///< Where its table stands
    std::string words;        ///< Of a choice: `"none", "faint" or "strong"`

    [[nodiscard]] bool isTable() const { return kind == KeyKind::Table || kind == KeyKind::Tables; }
    [[nodiscard]] std::string table() const;  ///< Of which it is a key; empty at the top.
    [[nodiscard]] std::string name() const;   ///< Without its table
};

/// All tables and keys in the order of the file, each table before its keys.
[[nodiscard]] const std::vector<KeyFact>& pondKeys();

/// The key of a path; null if there is none.
[[nodiscard]] const KeyFact* findKey(std::string_view path);

/// The path without the numbers of lists: "ramp.first_min" of "ramp[2].first_min".
[[nodiscard]] std::string plainPath(std::string_view path);

/// Where a key of this name, or of one spelt nearly so, stands: whole paths, the best first, at most three.
[[nodiscard]] std::vector<std::string> keysLike(std::string_view word);

/// The table that somebody means who writes one of this name with these keys in it: "basin" for "pond" with
/// area_m2 in it, "place" for "location". Empty if none is likely.
[[nodiscard]] std::string tableMeant(std::string_view name, const std::vector<std::string_view>& keys);

}  // namespace engine
