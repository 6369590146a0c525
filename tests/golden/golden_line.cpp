#include "tests/golden/golden_line.h"

#include "engine/base/text.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>

namespace engine::test {
namespace {

/// Parts of a text between one mark and the next.
std::vector<std::string_view> parted(std::string_view text, char mark) {
    std::vector<std::string_view> parts;
    for (std::size_t end = text.find(mark); end != std::string_view::npos; end = text.find(mark)) {
        parts.push_back(text.substr(0, end));
        text.remove_prefix(end + 1);
    }
    parts.push_back(text);
    return parts;
}

struct NumberWord {
    std::string_view name;
    std::optional<double> number;
};
NumberWord numberOf(std::string_view word) {
    const std::size_t start = word.find('=') + 1;  // 0 without a name
    return {word.substr(0, start), toNumber(word.substr(start))};
}

bool isWithin(double tolerance, std::string_view word, std::string_view held) {
    if (word == held) {
        return true;
    }
    const NumberWord now = numberOf(word), then = numberOf(held);
    if (tolerance == 0.0 || now.name != then.name || !now.number || !then.number) {
        return false;
    }
    constexpr double kRounding = 1e-9;  // decimal digits have no exact binary ones
    return std::fabs(*now.number - *then.number) <= tolerance * (1.0 + kRounding);
}

}  // namespace

GoldenLine& GoldenLine::text(std::string_view words) {
    m_text.append(m_text.empty() ? "" : " ").append(words);
    m_tolerances.resize(parted(m_text, ' ').size());
    return *this;
}

GoldenLine& GoldenLine::number(std::string_view name, double value, int decimals, double tolerance) {
    text(std::string(name) + (name.empty() ? "" : "=") + fixed(value, decimals));
    m_tolerances.back() = tolerance;
    return *this;
}

bool GoldenLine::agreesWith(std::string_view held) const {
    const auto words = parted(m_text, ' '), heldWords = parted(held, ' ');
    if (words.size() != heldWords.size()) {
        return false;
    }
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (!isWithin(i < m_tolerances.size() ? m_tolerances[i] : 0.0, words[i], heldWords[i])) {
            return false;
        }
    }
    return true;
}

std::string asText(const std::vector<GoldenLine>& lines) {
    std::string text;
    for (const GoldenLine& line : lines) {
        text.append(line.asText()).append("\n");
    }
    return text;
}

std::vector<std::string> differences(const std::vector<GoldenLine>& lines, std::string_view held) {
    std::vector<std::string_view> heldLines = parted(held, '\n');
    std::vector<std::string> found;
    if (heldLines.back().empty()) {
        heldLines.pop_back();
    } else {
        found.emplace_back("The file does not end with the end of a line.");
    }
    const bool isAsLong = heldLines.size() == lines.size();
    for (std::size_t i = 0; i < std::min(lines.size(), heldLines.size()) && (isAsLong || found.empty());
         ++i) {
        if (!lines[i].agreesWith(heldLines[i])) {
            found.push_back("Line " + std::to_string(i + 1) + " is held to be\n  " +
                            std::string(heldLines[i]) + "\nand is now\n  " + lines[i].asText());
        }
    }
    if (!isAsLong) {
        found.push_back("The file has " + std::to_string(heldLines.size()) + " lines, and there are now " +
                        std::to_string(lines.size()) + ".");
    }
    return found;
}

}  // namespace engine::test
