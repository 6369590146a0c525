#pragma once

#include <optional>
#include <string_view>

namespace engine {

/// Cloud cover [%] that words for the sky mean, such as "mostly sunny" or "scattered t-storms"; nothing if
/// there are none. Small letters. Judgement: what forecasts call so, over a day.
[[nodiscard]] std::optional<double> cloudOfWords(std::string_view words);

/// Wind [m/s] over a day that words mean, such as "breezy"; nothing if there are none. Judgement.
[[nodiscard]] std::optional<double> windOfWords(std::string_view words);

}  // namespace engine
