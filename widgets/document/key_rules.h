#pragma once

#include "engine/pond/pond_keys.h"

#include <string_view>

namespace widgets {

// The ranges and units of the pond file's keys, from the engine's own list of them.

/// Of a key by its path without numbers, such as "basin.contour.depth_m".
/// @throws InternalError if there is no number of that path.
[[nodiscard]] engine::NumberRule keyRule(std::string_view path);

/// @throws InternalError if the table has no number of that key.
[[nodiscard]] engine::NumberRule rampRule(std::string_view key);
[[nodiscard]] engine::NumberRule limitsRule(std::string_view key);
[[nodiscard]] engine::NumberRule aeratorRule(std::string_view key);

}  // namespace widgets
