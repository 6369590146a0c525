#include "engine/base/text.h"

#include "engine/base/error.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <vector>

namespace engine {

std::string shortest(double value) {
    ensure(std::isfinite(value), "shortest: the number is finite");
    const double magnitude = std::fabs(value);
    const bool plain = value == 0.0 || (magnitude >= 1e-4 && magnitude < 1e9);
    std::array<char, 64> buffer{};
    const auto form = plain ? std::chars_format::fixed : std::chars_format::general;
    const auto done = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, form);
    ensure(done.ec == std::errc(), "shortest: the number fits its buffer");
    return {buffer.data(), done.ptr};
}

std::string fixed(double value, int decimals) {
    ensure(std::isfinite(value), "fixed: the number is finite");
    std::array<char, 400> buffer{};
    const auto done = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value,
                                    std::chars_format::fixed, decimals);
    ensure(done.ec == std::errc(), "fixed: the number fits its buffer");
    std::string text(buffer.data(), done.ptr);
    if (text.front() == '-' && text.find_first_not_of("-0.") == std::string::npos) {
        text.erase(0, 1);
    }
    return text;
}

std::optional<double> toNumber(std::string_view text) {
    if (!text.empty() && text.front() == '+') {
        text.remove_prefix(1);
        if (!text.empty() && text.front() == '-') {
            return std::nullopt;
        }
    }
    double value = 0.0;
    const auto done = std::from_chars(text.data(), text.data() + text.size(), value);
    if (text.empty() || done.ec != std::errc() || done.ptr != text.data() + text.size() ||
        !std::isfinite(value)) {
        return std::nullopt;
    }
    return value;
}

int editDistance(std::string_view a, std::string_view b, int most) {
    const std::size_t apart = a.size() > b.size() ? a.size() - b.size() : b.size() - a.size();
    if (most < 0 || apart > static_cast<std::size_t>(most)) {
        return most + 1;
    }
    // Optimal string alignment: three rows of the usual table.
    std::vector<int> beforeLast(b.size() + 1), last(b.size() + 1), row(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j) {
        last[j] = static_cast<int>(j);
    }
    for (std::size_t i = 1; i <= a.size(); ++i) {
        row[0] = static_cast<int>(i);
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const int cost = a[i - 1] == b[j - 1] ? 0 : 1;
            row[j] = std::min({last[j] + 1, row[j - 1] + 1, last[j - 1] + cost});
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
                row[j] = std::min(row[j], beforeLast[j - 2] + 1);
            }
        }
        // No number of a later row is less than the least of two rows in a row.
        if (std::min(*std::min_element(last.begin(), last.end()), *std::min_element(row.begin(), row.end())) >
            most) {
            return most + 1;
        }
        std::swap(beforeLast, last);
        std::swap(last, row);
    }
    return std::min(last[b.size()], most + 1);
}

std::string figures(double value) {
    const double magnitude = std::fabs(value);
    return value == 0.0 ? "0" : fixed(value, magnitude >= 99.95 ? 0 : magnitude >= 9.995 ? 1 : 2);
}

}  // namespace engine
