#pragma once

#include "engine/pond/pond.h"

#include <QString>

namespace widgets {

/// A kind in a few words, as it stands in a list.
[[nodiscard]] QString kindText(engine::RampKind kind);

}  // namespace widgets
