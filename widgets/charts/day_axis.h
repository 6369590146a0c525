#pragma once

#include "widgets/charts/chart_parts.h"
#include "widgets/document/outcome.h"
#include "widgets/document/selection.h"

#include <QFontMetricsF>

namespace widgets {

// What all views over the days of a run share: the stretch that is shown, its nights, its labels, and the
// strip of weather under it.

inline constexpr int kDaysLeft = 76, kDaysRight = 14;  ///< [px]; the strip's names stand at the left

/// The stretch of the run that is shown [days after midnight of day 1]: all of it, or where one has zoomed.
[[nodiscard]] Selection::Span shownDays(const Outcome& outcome, const Selection& selection);

/// Sunset to sunrise of every night [d].
[[nodiscard]] std::vector<Shade> nightShades(const Outcome& outcome);

/// Day numbers in the middle of their days, as many as fit; clock times where less than two days are shown.
[[nodiscard]] std::vector<std::pair<double, QString>> dayLabels(const Selection::Span& span, double width,
                                                                const QFontMetricsF& metrics);

/// Adds an axis rect with fixed margins as a row of the plot's layout.
QCPAxisRect* addRect(QCustomPlot& plot, int row, const QMargins& margins);

/// Adds air, cloud and wind of each day as the last row, with the days' numbers under it.
/// @param right  Margin of the pictures above it [px].
void addWeatherStrip(QCustomPlot& plot, int row, const OutcomePtr& outcome, const Selection::Span& span,
                     const PlotStyle& style, int right = kDaysRight);
/// Height that the strip takes [px].
[[nodiscard]] int weatherStripHeight(const QFontMetricsF& metrics);

/// "day 5, 05:40".
[[nodiscard]] QString momentText(double time);

}  // namespace widgets
