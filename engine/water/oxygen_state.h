#pragma once

#include "engine/water/criteria.h"
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

/// The criteria of EPA (1986) that a night can be held against: those of cold water for trout, of warm water
/// for all others, both without early life stages.
[[nodiscard]] inline OxygenCriteria criteriaOf(const OxygenThresholds& thresholds) {
    const bool isCold = thresholds.group == SpeciesGroup::Trout;
    return epa1986(isCold ? WaterKind::Cold : WaterKind::Warm, LifeStage::Other);
}

}  // namespace engine
