#pragma once

#include "engine/ensemble/measure.h"

#include <cstddef>
#include <vector>

namespace engine {

/// A smaller share of the variance, 0 to 1, comes by chance at 1,000 members (seen, measure()).
inline constexpr double kLeastShare = 0.03;
/// A reading that takes less off the spread of the worst low, 0 to 1, is not worth a visit (judgement).
inline constexpr double kLeastGain = 0.01;

/// Inputs whose share is more than chance, in their order, at most so many.
[[nodiscard]] std::vector<MeasuredInput> tellingInputs(const MeasureResult& result, std::size_t most);

/// What a reading of an input takes off the spread of the worst low, 0 to 1; 0 where it is not measured.
[[nodiscard]] double gainOf(const MeasuredInput& input);

/// The reading that narrows the worst low most; null if none is worth it.
[[nodiscard]] const MeasuredInput* bestReading(const MeasureResult& result);

}  // namespace engine
