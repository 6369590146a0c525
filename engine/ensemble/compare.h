#pragma once

#include "engine/ensemble/ensemble_result.h"
#include "engine/run/run.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace engine {

/// Everything `compare` says: do-nothing first, then the ramps in the order of the file.
struct Comparison {
    PondModel model;
    int days = 14;
    std::vector<RampRun> runs;
    std::optional<EnsembleResult> ensemble;  ///< Of the runs, in their order; nothing with one member
};

/// True if every run completed; the members are another matter.
[[nodiscard]] bool runsCompleted(const Comparison& comparison);

/// True if every run completed, and the members too where there are any.
[[nodiscard]] bool isWhole(const Comparison& comparison);

struct CompareOptions {
    std::optional<int> days;  ///< As defaultDays() has it
    int threads = 0;          ///< 0: as many as cores
    Resolution resolution;
    bool endStates = true;
    bool attribution = true;
    /// A comparison whose runs are taken over where pond, ramp and days are the same, so that an edit of one
    /// ramp runs that ramp alone; the numbers are the same bits. May be null; only read during the call.
    const Comparison* earlier = nullptr;
    std::optional<double> mostLethal{};  ///< As in EnsembleOptions
    int members = 1;         ///< 1: the central run alone
    std::uint64_t seed = 1;  ///< Of the members
};

/// True if two models are of one pond and may differ in ramps and names alone: what was worked out for the
/// one without its ramps, or of a ramp that both have, holds for the other.
[[nodiscard]] bool differsByRampsOnly(const PondModel& model, const PondModel& other);

/// Why a comparison is too large to be begun (engine/run/run_bounds.h); nothing if it is not.
[[nodiscard]] std::optional<std::string> compareFault(const Pond& pond, const CompareOptions& options);

/// @pre compareFault() has nothing to say, where the pond or the options are a user's.
[[nodiscard]] Comparison compare(const Pond& pond, const CompareOptions& options,
                                 const RunControl& control = {});

/// Days that `compare` runs by default: 14, or the longest ramp and a week after it, kMostDays at most.
/// Capped ramps, whose length only a run can tell, do not count.
[[nodiscard]] int defaultDays(const Pond& pond);

}  // namespace engine
