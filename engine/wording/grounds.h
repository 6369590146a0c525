#pragma once

#include "engine/pond/pond.h"
#include "engine/wording/sentence.h"

#include <string>
#include <vector>

namespace engine {

/// One thing that an answer stands on and that is not measured.
struct Ground {
    std::string what;    ///< "The oxygen debt of the bottom water is guessed from age, muck and smell."
    std::string better;  ///< What would better it, a sentence
    int weight = 0;      ///< How much hangs on it
};

/// What the answers about a pond stand on, worst first: what is missing, guessed or only told. The order is
/// judgement, from what moves dawn lows of mucky ponds most (profile, debt, algae, wind); `measure` computes
/// the order for one pond and one ramp.
[[nodiscard]] std::vector<Ground> groundsOf(const Pond& pond);

/// The same as sentences, of the part Grounds.
[[nodiscard]] std::vector<Sentence> sentencesOfGrounds(const Pond& pond);

}  // namespace engine
