#pragma once

#include "engine/error.h"
#include "engine/pond_source.h"

namespace engine {

/// Refuses the keys whose term the engine does not have yet: they are never accepted and ignored.
/// A list of tables is refused once, at its first line.
[[nodiscard]] Diagnostics refuseNotBuilt(const PondSource& source);

}  // namespace engine
