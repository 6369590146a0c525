#include "engine/ensemble/chances.h"

namespace engine {
namespace {

/// Share of members that a ramp takes below a line and do-nothing does not.
std::optional<double> addedBelow(const EnsembleResult& all, const RampEnsemble& ramp,
                                 const RampEnsemble* nothing, double line) {
    if (nothing == nullptr) {
        return std::nullopt;
    }
    std::vector<std::uint8_t> added;
    for (std::size_t i = 0; i < ramp.lowest.size(); ++i) {
        const bool isAdded =
            static_cast<double>(ramp.lowest[i]) < line && static_cast<double>(nothing->lowest[i]) >= line;
        added.push_back(isAdded ? 1 : 0);
    }
    return all.shareOf(added);
}

}  // namespace

bool isBelow(const RampRun& run, double hours, double line) {
    return hours > 0.0 || run.worst().lowest < line;
}

Chances chancesOf(const Comparison& comparison, const RampRun& run) {
    const auto index = static_cast<std::size_t>(&run - comparison.runs.data());
    const OxygenThresholds& thresholds = comparison.model.parameters.thresholds;
    if (const RampEnsemble* members = membersOf(comparison, index)) {
        return {members->chanceBelowStress, members->chanceBelowLethal, members->chanceAdded,
                addedBelow(*comparison.ensemble, *members, membersOf(comparison, 0), thresholds.lethal)};
    }
    const RampRun& nothing = comparison.runs.front();
    const bool isBelowStress = isBelow(run, run.hoursBelowStress, thresholds.stress);
    const bool isBelowLethal = isBelow(run, run.hoursBelowLethal, thresholds.lethal);
    Chances chances{isBelowStress ? 1.0 : 0.0, isBelowLethal ? 1.0 : 0.0, {}, {}};
    if (nothing.end == RunEnd::Completed) {
        chances.added =
            isBelowStress && !isBelow(nothing, nothing.hoursBelowStress, thresholds.stress) ? 1.0 : 0.0;
        chances.addedLethal =
            isBelowLethal && !isBelow(nothing, nothing.hoursBelowLethal, thresholds.lethal) ? 1.0 : 0.0;
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
