#pragma once

#include <string>
#include <string_view>

namespace engine {

/// True if a text has quotation marks as a word processor sets them, which TOML does not know.
[[nodiscard]] bool hasCurlyQuotes(std::string_view text);
inline constexpr std::string_view kCurlyQuotes =
    "This line has curly quotation marks; write straight ones: \"...\".";

/// What is wrong with a text that is no TOML, in the words of somebody who has never heard of it: the fault
/// and what would be right. The parser's own words are looked at for what stands twice alone.
/// @param line         At which the parser gave up, 1-based.
/// @param description  The parser's words.
struct TomlFault {
    int line = 1;  ///< Where the fault lies; the parser may have gone past it.
    std::string sentence;
};
[[nodiscard]] TomlFault tomlFault(std::string_view text, int line, std::string_view description);

}  // namespace engine
