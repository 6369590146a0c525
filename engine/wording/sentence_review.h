#pragma once

#include "engine/follow_up/review.h"
#include "engine/follow_up/start_check.h"
#include "engine/wording/sentence.h"

#include <vector>

namespace engine {

/// What there is to say of a review that is done.
[[nodiscard]] std::vector<Sentence> sentencesOf(const Review& review);

/// How far a start's plan was off, and all those of the ledger.
/// @param distance  Mean of the ledger [g/m^3]
[[nodiscard]] std::vector<Sentence> sentencesOf(const StartCheck& check, int starts, double distance);

}  // namespace engine
