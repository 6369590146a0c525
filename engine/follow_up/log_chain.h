#pragma once

#include "engine/pond/pond.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace engine {

/// The head of a log: how many entries it is over, and a hash that each of them went into.
///
/// Readings of the pond file, events and rows of the readings file are three chains; the hash of an entry is
/// that of the hash before it and the entry's text, and the head is the hash of the three last ones. So a
/// head printed earlier can be found again in a log to which entries were only added. It shows that an entry
/// was changed, taken out or put between after the head was printed. It cannot show that what was written was
/// true, who wrote it or when, nor a change made before the head was printed, nor by someone who also prints
/// the papers anew.
struct LogHead {
    std::size_t readings = 0, events = 0, rows = 0;
    std::string hash;  ///< 64 hexadecimal digits
    bool operator==(const LogHead&) const = default;
};

[[nodiscard]] LogHead logHead(const Pond& pond);

/// "3-1-420-HASH": readings, events, rows of the file and the hash.
[[nodiscard]] std::string shown(const LogHead& head);
/// Reads that back; nothing on any fault.
[[nodiscard]] std::optional<LogHead> parseLogHead(std::string_view text);

enum class HeadMatch { Same, OnlyAdded, Changed };

/// Whether the log, or its first entries that the head is over, give that head.
[[nodiscard]] HeadMatch matchHead(const Pond& pond, const LogHead& printed);

}  // namespace engine
