#pragma once

#include "engine/sentence.h"
#include "engine/today.h"

#include <vector>

namespace engine {

/// What a morning's decision says, or that there is none and why.
[[nodiscard]] std::vector<Sentence> sentencesOf(const Today& today);

}  // namespace engine
