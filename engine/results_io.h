#pragma once

#include "engine/csv_table.h"
#include "engine/files.h"
#include "engine/run.h"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace engine {

// The tables of a comparison as CSV (design 6): RFC 4180, UTF-8, CRLF, decimal point, header first,
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

/// One row a ramp and whole hour: un-ionised ammonia as nitrogen and hydrogen sulfide as sulfur, where the
/// fish are.
[[nodiscard]] std::string gasesCsv(const Comparison& comparison);

/// The six files of `compare`.
[[nodiscard]] std::vector<TextFile> comparisonFiles(const Comparison& comparison);

/// True if a completed run's fish water was under a line at any step of its nights; `hours` is the time it
/// was, which may be too short to have been counted.
[[nodiscard]] bool isBelow(const RampRun& run, double hours, double line);

/// Shares of the members that are below a line at any step of the nights, or 0 and 1 of the central run.
struct Chances {
    double belowStress = 0.0, belowLethal = 0.0;
    std::optional<double>
        added;  ///< Below the stress line, but not in do-nothing; nothing if that did not complete
    std::optional<double> addedLethal;  ///< The same of the lethal line
};
/// @pre `run` is one of the comparison's and completed.
[[nodiscard]] Chances chancesOf(const Comparison& comparison, const RampRun& run);

/// The members of a run by its place; null without members, or as long as only other ramps have theirs.
[[nodiscard]] const RampEnsemble* membersOf(const Comparison& comparison, std::size_t run);

}  // namespace engine
