#pragma once

#include "engine/follow_up/review.h"
#include "engine/wording/sentence.h"

#include <vector>

namespace engine {

/// What there is to say of a review that is done.
[[nodiscard]] std::vector<Sentence> sentencesOf(const Review& review);

}  // namespace engine
