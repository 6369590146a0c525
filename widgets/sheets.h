#pragma once

#include "widgets/chart_export.h"
#include "widgets/outcome.h"
#include "widgets/selection.h"

#include <vector>

namespace widgets {

// The sheets of the charts that the window shows, with the same numbers.

[[nodiscard]] ChartSheet nightSheet(const OutcomePtr& outcome, const Selection& selection, bool criteria);
[[nodiscard]] ChartSheet dawnLowsSheet(const OutcomePtr& outcome, const Selection& selection, bool criteria);
[[nodiscard]] ChartSheet wholeRunSheet(const OutcomePtr& outcome, const Selection& selection);

/// What `--charts` writes: the worst night with all ramps, all nights of the chosen ramp, the lows, the run.
[[nodiscard]] std::vector<ChartSheet> allSheets(const OutcomePtr& outcome);

/// The ramp that a pond file has chosen, its first ramp if it chose none, do-nothing if there is none.
[[nodiscard]] std::size_t chosenRamp(const engine::Comparison& comparison);

/// The night on which any ramp has its worst low; do-nothing's without ramps.
[[nodiscard]] int worstNight(const engine::Comparison& comparison);

}  // namespace widgets
