#pragma once

#include "engine/advice/advice.h"

#include <vector>

namespace engine {

/// Limits of the conditions, as the pond file has them or by common practice.
struct StartLimits {
    double lethal_percent = 0.0, lethalAlone_percent = 0.0, lethalAdded_percent = 0.0;
    double daysAfterAlgaecide = 0.0;
};
[[nodiscard]] StartLimits startLimits(const Pond& pond);

/// What stands against starting a ramp, in the order of StartCondition; empty if nothing does.
/// @param hasSurfaceAir  Surface air runs with it: what the pond does left alone is then no reason.
[[nodiscard]] std::vector<UnmetCondition> unmetBy(const Comparison& comparison, const Advice& advice,
                                                  bool hasSurfaceAir);

/// True if a ramp's end state is known to lie lower than that of the pond left alone.
[[nodiscard]] bool endsLower(const RampRun& run, const RampRun& nothing);

/// True if more oxygen would lift it, as surface air gives it.
[[nodiscard]] bool isOfOxygen(StartCondition condition);

}  // namespace engine
