#pragma once

#include "engine/base/csv_table.h"
#include "engine/base/files.h"
#include "engine/ensemble/compare.h"

#include <string>
#include <vector>

namespace engine {

// The tables of a comparison as CSV: RFC 4180, UTF-8, CRLF, decimal point, header first,
// numbers as the shortest text that reads back, an empty field for a number that does not exist. The
// headers carry the units.

/// One row a ramp. A run that did not complete has its name and empty fields: it has no worst night.
[[nodiscard]] std::string summaryCsv(const Comparison& comparison);
/// One row a ramp and day.
[[nodiscard]] std::string dailyCsv(const Comparison& comparison);
/// One row a ramp and whole hour; without members the percentiles repeat the central run.
[[nodiscard]] std::string hourlyCsv(const Comparison& comparison);
/// One row a ramp, whole hour and layer; no rows where the layers were not kept.
[[nodiscard]] std::string layersCsv(const Comparison& comparison);
/// One row a ramp and calendar day, days 0 and N + 1 among them.
[[nodiscard]] std::string budgetCsv(const Comparison& comparison);
/// One row a ramp and day, as in budget.csv: labile organic matter of water and sediment as the oxygen that
/// it takes, made (less what growth breathes at once and what weeds keep), loaded (leaves, feed, inflow, dead
/// weeds), respired in the water, settled onto the sediment, lost from the pond, burnt by the sediment.
[[nodiscard]] std::string organicCsv(const Comparison& comparison);

/// One row a ramp and whole hour: un-ionised ammonia as nitrogen and hydrogen sulfide as sulfur, where the
/// fish are.
[[nodiscard]] std::string gasesCsv(const Comparison& comparison);

/// The six files of `compare`.
[[nodiscard]] std::vector<TextFile> comparisonFiles(const Comparison& comparison);

}  // namespace engine
