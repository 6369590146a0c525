#pragma once

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

namespace engine {

inline constexpr std::uintmax_t kPondFileLimit_bytes = std::uintmax_t{4} << 20;
inline constexpr std::uintmax_t kCsvFileLimit_bytes = std::uintmax_t{64} << 20;

/// The whole of a file, or a sentence saying why there is none.
struct FileText {
    std::optional<std::string> text;
    std::string fault;  ///< Empty if and only if there is text.
};

/// Reads a regular file of at most `limit_bytes` whole. Kind and size are looked at before the file
/// is opened, so that neither a pipe nor a huge file can hold us up.
[[nodiscard]] FileText readWholeFile(const std::filesystem::path& path, std::uintmax_t limit_bytes);

/// A place at which a text is not UTF-8 text.
struct TextFault {
    int line = 1;  ///< 1-based
    std::string sentence;
};

/// The first zero byte or invalid UTF-8 sequence (overlong forms and surrogates are invalid).
[[nodiscard]] std::optional<TextFault> findTextFault(std::string_view text);

/// Number of code points of valid UTF-8.
[[nodiscard]] std::size_t countCharacters(std::string_view text);

/// A text on its way to a terminal, which everything that is printed goes through. Written out is what would
/// move the cursor, hide or turn round what stands there: control characters of ASCII and Latin-1, marks of
/// the direction of writing, separators of lines (Unicode 15, UAX #9), and bytes that are no UTF-8. Line
/// breaks stay.
[[nodiscard]] std::string forTerminal(std::string_view text);

/// The same of what belongs into one line, such as a name or a note of the user: line breaks are written out
/// too, so that no part of it can pass for a line of ours.
[[nodiscard]] std::string onOneLine(std::string_view text);

/// A text of the user as it may stand in a sentence: in quotes, on one line as above, cut after 40
/// characters.
[[nodiscard]] std::string shownText(std::string_view text);

/// A path in quotation marks, for sentences, on one line as above; whole unless it has quotation marks.
[[nodiscard]] std::string shownPath(const std::filesystem::path& path);

/// A number of the user as it may stand in a sentence, "not a number" and "infinite" among them.
[[nodiscard]] std::string shownNumber(double value);

}  // namespace engine
