#pragma once

#include "widgets/papers/paper_run.h"

#include <QImage>

namespace widgets {

// What several papers hold.

/// A paper with its head and a template below it. @param scale  Of the type.
[[nodiscard]] Paper paperOf(const PaperRun& run, const QString& file, const QString& title,
                            const char* context, std::span<const TemplateLine> lines,
                            const PaperInserts& inserts = {}, double scale = 1.0);

/// Runs of the plan; with boxes to fill in or without.
[[nodiscard]] PaperTable runTable(const PaperRun& run, bool hasBoxes);

/// So many of 100 ponds like this one under the lines: do-nothing, the plan, and the ramp it is held against.
[[nodiscard]] PaperTable chanceTable(const PaperRun& run);

/// Go, hold, ease off, stop, with this pond's numbers.
[[nodiscard]] PaperTable dawnTable(const PaperRun& run);

/// A table of empty boxes.
[[nodiscard]] PaperTable blankTable(const QStringList& titles, const std::vector<double>& shares, int rows,
                                    double points = 8.0);

/// Why the consultant's logo is no picture; nothing if it is one, or if there is none.
[[nodiscard]] std::optional<std::string> logoFault(const engine::Consultant& consultant);

/// The logo on white and no larger than print needs; null without one.
[[nodiscard]] QImage logoOf(const engine::Consultant& consultant);

}  // namespace widgets
