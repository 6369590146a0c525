#pragma once

#include "engine/backdrop.h"
#include "engine/run.h"

#include <cstddef>
#include <memory>
#include <vector>

namespace widgets {

/// What the views draw: the ramps computed, and what stands behind them. Shared between views, never changed.
struct Outcome {
    engine::Comparison comparison;
    engine::Backdrop backdrop;
    bool isWhole = false;  ///< Causes and end states are there too
};

using OutcomePtr = std::shared_ptr<const Outcome>;

/// True if a run can be drawn.
[[nodiscard]] inline bool isDrawn(const engine::RampRun& run) {
    return run.end == engine::RunEnd::Completed;
}

/// Places of the runs that can be drawn, do-nothing first and the selected one last, over the others.
[[nodiscard]] std::vector<std::size_t> drawingOrder(const engine::Comparison& comparison,
                                                    std::size_t selected);

/// Highest fish-water oxygen of all hours of all runs that can be drawn, at least `least` [g/m^3].
[[nodiscard]] double highestFishWater(const engine::Comparison& comparison, double least);

}  // namespace widgets
