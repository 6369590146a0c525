#pragma once

#include "engine/water/parameters.h"

namespace engine {

/// What an amount of oxygen means to the fish.
enum class OxygenState { Enough, Stress, Lethal };

/// @param oxygen  Of the fish water [g/m^3]; at a line it is not below it.
[[nodiscard]] constexpr OxygenState stateOf(double oxygen, const OxygenThresholds& thresholds) {
    return oxygen < thresholds.lethal   ? OxygenState::Lethal
           : oxygen < thresholds.stress ? OxygenState::Stress
                                        : OxygenState::Enough;
}

}  // namespace engine
