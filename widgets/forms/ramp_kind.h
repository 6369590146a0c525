#pragma once

#include "engine/pond/pond.h"

#include <QString>

namespace widgets {

/// Makes a ramp one of another kind, in one go and valid: what the new kind does not have is dropped, what
/// it needs is carried over where the old kind says it, and is a usual value (common practice, no source)
/// elsewhere: 30 min doubling daily, 30 min more each day, a dose of 10 %, or the minutes of the doubling.
void changeKind(engine::Ramp& ramp, engine::RampKind kind);

/// A kind in a few words, as it stands in a list.
[[nodiscard]] QString kindText(engine::RampKind kind);

}  // namespace widgets
