#pragma once

#include "engine/ensemble/measure.h"
#include "engine/wording/sentence.h"

#include <vector>

namespace engine {

/// What there is to say of a completed result.
[[nodiscard]] std::vector<Sentence> sentencesOf(const MeasureResult& result);

}  // namespace engine
