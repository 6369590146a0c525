#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace engine {

/// The shortest decimal text that reads back as the same number, without exponent for magnitudes
/// from 1e-4 up to 1e9. Decimal point under any locale.
/// @pre value is finite.
[[nodiscard]] std::string shortest(double value);

/// Fixed decimals, e.g. fixed(3.14159, 1) == "3.1"; never "-0.0". Decimal point under any locale.
[[nodiscard]] std::string fixed(double value, int decimals);

/// Reads the whole of `text` as a finite number with a decimal point; nothing on any fault.
[[nodiscard]] std::optional<double> toNumber(std::string_view text);

/// The candidate with the smallest edit distance to `word` (ties: the first); empty if none is near
/// enough to be a likely slip (more than half of the longer word would have to change).
template <class Range>
[[nodiscard]] std::string nearest(std::string_view word, const Range& candidates);

/// Number of single-character insertions, deletions, replacements and neighbour swaps between a and b.
/// @param most  What is more comes out as `most` + 1, much sooner.
[[nodiscard]] int editDistance(std::string_view a, std::string_view b, int most = 1 << 20);

template <class Range>
std::string nearest(std::string_view word, const Range& candidates) {
    std::string best;
    int bestDistance = 1 << 20;
    for (const auto& candidate : candidates) {
        const std::string_view text(candidate);
        const int longer = static_cast<int>(word.size() > text.size() ? word.size() : text.size());
        const int most = bestDistance <= longer / 2 ? bestDistance - 1 : longer / 2;
        const int distance = editDistance(word, text, most);
        if (distance <= most) {
            bestDistance = distance;
            best = text;
        }
    }
    return best;
}

/// Three figures, which are enough for kilograms and factors; small numbers keep two decimals.
[[nodiscard]] std::string figures(double value);

}  // namespace engine
