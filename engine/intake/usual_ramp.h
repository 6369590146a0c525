#pragma once

#include "engine/pond/pond.h"

#include <string>

namespace engine {

/// Makes a ramp one of another kind, in one go and valid: what the new kind does not have is dropped, what
/// it needs is carried over where the old kind says it, and is a usual value (common practice, no source)
/// elsewhere: 30 min doubling daily, 30 min more each day, a dose of 10 %, or the minutes of the doubling.
void changeKind(Ramp& ramp, RampKind kind);

/// A ramp of a kind with usual numbers (common practice, no source).
[[nodiscard]] Ramp usualRamp(RampKind kind, const std::string& name);

/// An aerator as it is usual for a pond of this shape: one diffuser of 45 L/min, 0.4 m above the deepest
/// point (common practice, no source).
[[nodiscard]] Aerator usualAerator(const BasinShape& basin);

}  // namespace engine
