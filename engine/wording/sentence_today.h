#pragma once

#include "engine/follow_up/today.h"
#include "engine/wording/sentence.h"

#include <vector>

namespace engine {

/// What a morning's decision says, or that there is none and why.
[[nodiscard]] std::vector<Sentence> sentencesOf(const Today& today);

}  // namespace engine
