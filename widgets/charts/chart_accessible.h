#pragma once

namespace widgets {

/// Lets assistive technology know charts as charts: a ChartView's role is that of a chart, what it says is
/// its name and its text alternative, and its last child is the table of its numbers (ChartTable). Once is
/// enough; more calls change nothing.
void installChartAccessibility();

}  // namespace widgets
