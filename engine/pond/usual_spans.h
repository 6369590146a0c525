#pragma once

#include <span>
#include <string_view>

namespace engine {

/// Between which values a key of nearly all ponds lies; what lies outside is asked about, not refused.
/// Judgement, so wide that a pond outside is more likely a slip of unit or decimal point.
struct UsualSpan {
    std::string_view path;  ///< Without the numbers of lists
    double low, high;
    std::string_view question;  ///< What the slip may be, a question
};

[[nodiscard]] std::span<const UsualSpan> usualSpans();

}  // namespace engine
