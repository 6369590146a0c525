#pragma once

#include "engine/follow_up/incident.h"
#include "engine/wording/sentence.h"

#include <vector>

namespace engine {

/// What can be done, what not to forget, and how to tell want of oxygen from poison, of a judged incident.
[[nodiscard]] std::vector<Sentence> sentencesOf(const Incident& incident);

}  // namespace engine
