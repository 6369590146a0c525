#pragma once

#include "engine/review.h"
#include "engine/sentence.h"

#include <vector>

namespace engine {

/// What there is to say of a review that is done.
[[nodiscard]] std::vector<Sentence> sentencesOf(const Review& review);

}  // namespace engine
