#pragma once

#include "engine/pond_keys.h"

#include <string_view>

namespace widgets {

// The ranges and units of the pond file's keys, from the engine's own list of them.

/// @throws InternalError if the table has no number of that key.
[[nodiscard]] engine::NumberRule rampRule(std::string_view key);
[[nodiscard]] engine::NumberRule limitsRule(std::string_view key);
[[nodiscard]] engine::NumberRule aeratorRule(std::string_view key);

}  // namespace widgets
