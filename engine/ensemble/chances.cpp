#include "engine/ensemble/chances.h"

namespace engine {
bool isBelow(const RampRun& run, double hours, double line) {
    return hours > 0.0 || run.worst().lowest < line;
}

Chances chancesOf(const Comparison& comparison, const RampRun& run) {
    const auto index = static_cast<std::size_t>(&run - comparison.runs.data());
    const OxygenThresholds& thresholds = comparison.model.parameters.thresholds;
    const RampRun& nothing = comparison.runs.front();
    const RampEnsemble *members = membersOf(comparison, index), *alone = membersOf(comparison, 0);
    const auto chancesOfRun = [&](const RampRun& one, const RampEnsemble* drawn) {
        const auto share = [](bool holds) { return holds ? 1.0 : 0.0; };
        return drawn != nullptr ? Chances{drawn->chanceBelowStress, drawn->chanceBelowLethal, {}, {}}
                                : Chances{share(isBelow(one, one.hoursBelowStress, thresholds.stress)),
                                          share(isBelow(one, one.hoursBelowLethal, thresholds.lethal)),
                                          {},
                                          {}};
    };
    Chances chances = chancesOfRun(run, members);
    // One pond is held against one pond, and many against as many.
    if (nothing.end == RunEnd::Completed && (members == nullptr || alone != nullptr)) {
        const Chances without = chancesOfRun(nothing, members != nullptr ? alone : nullptr);
        chances.added = chances.belowStress - without.belowStress;
        chances.addedLethal = chances.belowLethal - without.belowLethal;
    }
    return chances;
}

const RampEnsemble* membersOf(const Comparison& comparison, std::size_t run) {
    const bool hasMembers = comparison.ensemble && comparison.ensemble->end == EnsembleEnd::Completed;
    if (!hasMembers || run >= comparison.ensemble->ramps.size()) {
        return nullptr;
    }
    const RampEnsemble& members = comparison.ensemble->ramps[run];
    return members.hours.empty() ? nullptr : &members;
}

}  // namespace engine
