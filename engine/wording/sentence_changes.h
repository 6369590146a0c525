#pragma once

#include "engine/advice/answer_change.h"
#include "engine/wording/sentence.h"

namespace engine {

/// What has changed from one answer to the next, and of what that may come.
/// @param pond  Whose clock the times are shown by.
[[nodiscard]] std::vector<Sentence> sentencesOf(const AnswerChange& change, const Pond& pond);

}  // namespace engine
