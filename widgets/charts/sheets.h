#pragma once

#include "widgets/charts/chart_export.h"
#include "widgets/document/outcome.h"
#include "widgets/document/selection.h"

#include <vector>

namespace widgets {

// The sheets of the charts that the window shows, with the same numbers.

/// Pond, first day and what no one may forget who sees a chart alone.
[[nodiscard]] QString sheetFoot(const Outcome& outcome);

[[nodiscard]] ChartSheet nightSheet(const OutcomePtr& outcome, const Selection& selection, bool criteria);
[[nodiscard]] ChartSheet dawnLowsSheet(const OutcomePtr& outcome, const Selection& selection, bool criteria);
[[nodiscard]] ChartSheet wholeRunSheet(const OutcomePtr& outcome, const Selection& selection);

/// What `--charts` and the bundle hold: every view, of the chosen ramp and its worst night; what to measure
/// only where it was worked out.
[[nodiscard]] std::vector<ChartSheet> allSheets(const OutcomePtr& outcome);

}  // namespace widgets
