#pragma once

#include "engine/ensemble/compare.h"

#include <cstddef>
#include <optional>

namespace engine {

/// True if a completed run's fish water was under a line at any step of its nights; `hours` is the time it
/// was, which may be too short to have been counted.
[[nodiscard]] bool isBelow(const RampRun& run, double hours, double line);

/// Shares of the members that are below a line at any step of the nights, or 0 and 1 of the central run.
struct Chances {
    double belowStress = 0.0, belowLethal = 0.0;
    /// With the ramp minus left alone, of the stress line; nothing if do-nothing did not complete
    std::optional<double> added;
    std::optional<double> addedLethal;  ///< The same of the lethal line
};
/// @pre `run` is one of the comparison's and completed.
[[nodiscard]] Chances chancesOf(const Comparison& comparison, const RampRun& run);

/// The members of a run by its place; null without members, or as long as only other ramps have theirs.
[[nodiscard]] const RampEnsemble* membersOf(const Comparison& comparison, std::size_t run);

}  // namespace engine
