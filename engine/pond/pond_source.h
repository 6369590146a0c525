#pragma once

#include "engine/base/error.h"

#include <map>
#include <set>
#include <string>
#include <string_view>

namespace engine {

/// Where the parts of a pond stood in its file. Key paths are dotted, with the items of a list
/// counted from 1: "ramp[2].first_min". Empty for a pond that does not come from a file.
struct PondSource {
    std::string file;                               ///< As the user gave it.
    std::map<std::string, int, std::less<>> lines;  ///< Every known key that is there.
    std::set<std::string, std::less<>> unread;      ///< What is there but could not be read.

    [[nodiscard]] bool isWritten(std::string_view path) const { return lines.contains(path); }

    /// True if this key, or a table or list that it belongs to, could not be read.
    [[nodiscard]] bool isUnread(std::string_view path) const;

    /// Line of the key, or else of what it belongs to; 1 if nothing of it is there; 0 without a file.
    [[nodiscard]] int lineOf(std::string_view path) const;
};

/// The path without its last part: "ramp[2]" of "ramp[2].name", "ramp" of "ramp[2]", "" of "ramp".
[[nodiscard]] std::string_view parentOf(std::string_view path);

/// Puts `key` under `parent`; keys that are not plain words are quoted, as they are the user's.
[[nodiscard]] std::string childPath(std::string_view parent, std::string_view key);

/// "ramp[2]" from "ramp" and 1.
[[nodiscard]] std::string itemPath(std::string_view list, std::size_t index);

}  // namespace engine
