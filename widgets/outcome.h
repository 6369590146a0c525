#pragma once

#include "engine/backdrop.h"
#include "engine/run.h"

#include <memory>

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

}  // namespace widgets
