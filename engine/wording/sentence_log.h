#pragma once

#include "engine/follow_up/fit.h"
#include "engine/wording/sentence.h"

#include <optional>
#include <string>
#include <vector>

namespace engine {

/// What a completed fit says.
[[nodiscard]] std::vector<Sentence> sentencesOf(const FitResult& fit);

/// The log of a pond: its entries in the order of time, flags of sensors, the head of its chain.
/// @param printed  A head to compare with, as it was printed; the caller has read it.
[[nodiscard]] std::vector<Sentence> sentencesOfLog(const Pond& pond,
                                                   const std::optional<std::string>& printed);

}  // namespace engine
