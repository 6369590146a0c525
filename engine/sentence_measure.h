#pragma once

#include "engine/measure.h"
#include "engine/sentence.h"

#include <vector>

namespace engine {

/// What there is to say of a completed result.
[[nodiscard]] std::vector<Sentence> sentencesOf(const MeasureResult& result);

}  // namespace engine
