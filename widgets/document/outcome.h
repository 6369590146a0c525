#pragma once

#include "engine/ensemble/compare.h"
#include "engine/run/backdrop.h"

#include <cstddef>
#include <memory>
#include <vector>

namespace engine {
struct Advice;
struct MeasureResult;
}  // namespace engine

namespace widgets {

class Selection;

/// What the views draw: the ramps computed, and what stands behind them. Shared between views, never changed.
struct Outcome {
    engine::Comparison comparison;  ///< Its members come last: first of two runs, then of all
    engine::Backdrop backdrop;
    bool isWhole = false;        ///< Causes and end states are there too
    bool hasAllMembers = false;  ///< Members of every ramp, not of the chosen one and do-nothing alone
    bool isGivenUp = false;      ///< Stopped by the user: what is not there does not come
    /// What the runs say of the ramp that papers would be about, without a kind of answer; null until the
    /// comparison is whole, or where it failed.
    std::shared_ptr<const engine::Advice> compared;
    /// The answer about that ramp, as papers would have it; null without members of all.
    std::shared_ptr<const engine::Advice> answer;
    /// What to measure for the chosen ramp; null unless it was asked for.
    std::shared_ptr<const engine::MeasureResult> measured;
};

using OutcomePtr = std::shared_ptr<const Outcome>;

/// What is advised, or as long as there is no answer what the runs say; null while there is neither.
[[nodiscard]] inline const engine::Advice* adviceOf(const Outcome& outcome) {
    return outcome.answer != nullptr ? outcome.answer.get() : outcome.compared.get();
}

/// True if a run can be drawn.
[[nodiscard]] inline bool isDrawn(const engine::RampRun& run) {
    return run.end == engine::RunEnd::Completed;
}

/// True if a run can be drawn and is not hidden.
[[nodiscard]] bool isVisible(const engine::RampRun& run, const Selection& selection);

/// Places of the runs that are drawn, rising.
[[nodiscard]] std::vector<std::size_t> visibleRuns(const engine::Comparison& comparison,
                                                   const Selection& selection);

/// Places of the runs that are drawn, do-nothing first and the selected one last, over the others.
[[nodiscard]] std::vector<std::size_t> drawingOrder(const engine::Comparison& comparison,
                                                    const Selection& selection);

/// A comparison of one run alone, for a table of it; without members.
[[nodiscard]] engine::Comparison aloneOf(const engine::Comparison& comparison, std::size_t run);

/// Highest fish-water oxygen of all hours of all runs that can be drawn, at least `least` [g/m^3].
[[nodiscard]] double highestFishWater(const engine::Comparison& comparison, double least);

/// Colour and dashes of a run's line: its own if the ramp has one, otherwise by its place.
[[nodiscard]] std::size_t lookOf(const engine::Comparison& comparison, std::size_t run);

/// The ramp that a pond file has chosen, its first ramp if it chose none, do-nothing if there is none.
[[nodiscard]] std::size_t chosenRamp(const engine::Comparison& comparison);

/// The worst night of that ramp; 1 if it cannot be drawn.
[[nodiscard]] int chosenNight(const engine::Comparison& comparison);

}  // namespace widgets
