#include "engine/reactions.h"

namespace engine {

template <>
DAWNLINE_CLONES void reactionStep(const Reactions<double>& r, double dt, OxygenAndDebt<double>& state,
                                  ReactionAmounts<double>& a) {
    reactionStepOf(r, dt, state, a);
}

}  // namespace engine
