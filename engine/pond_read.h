#pragma once

#include "engine/pond_io.h"

#include <string_view>

namespace engine {

/// What becomes of keys whose term is not built yet: only tests of reading and writing allow them.
enum class NotBuiltKeys { Refuse, Allow };

/// readPondText with a say in that.
[[nodiscard]] PondReading readPondText(std::string_view text, const std::filesystem::path& name,
                                       NotBuiltKeys notBuilt);

}  // namespace engine
