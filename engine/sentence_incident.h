#pragma once

#include "engine/incident.h"
#include "engine/sentence.h"

#include <vector>

namespace engine {

/// What can be done, what not to forget, and how to tell want of oxygen from poison, of a judged incident.
[[nodiscard]] std::vector<Sentence> sentencesOf(const Incident& incident);

}  // namespace engine
