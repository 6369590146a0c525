#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace engine::test {

/// One line of a golden file: words with one space between them. A word is a text, or a number with or
/// without "name=" before it; a number may be off by its tolerance, all else may not.
class GoldenLine {
public:
    /// Any text, its spaces among it.
    GoldenLine& text(std::string_view words);
    /// @param tolerance  In the number's own unit. Both numbers are taken as they are written, with these
    /// decimals.
    GoldenLine& number(std::string_view name, double value, int decimals, double tolerance);

    [[nodiscard]] const std::string& asText() const { return m_text; }
    /// Whether a line of a file says the same.
    [[nodiscard]] bool agreesWith(std::string_view held) const;

private:
    std::string m_text;
    std::vector<double> m_tolerances;  ///< One a word
};

[[nodiscard]] std::string asText(const std::vector<GoldenLine>& lines);

/// Each line that does not say what the file holds, as a sentence; of files with another number of lines the
/// first.
[[nodiscard]] std::vector<std::string> differences(const std::vector<GoldenLine>& lines,
                                                   std::string_view held);

}  // namespace engine::test
