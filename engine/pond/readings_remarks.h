#pragma once

#include "engine/pond/csv.h"
#include "engine/pond/pond.h"

#include <string>
#include <vector>

namespace engine {

// What can only be said of the readings of a file together.

/// The readings without those that say again what one before said, which is warned of, as is another value
/// for a time, depth and meter that a row before has; both of these are kept.
[[nodiscard]] std::vector<Reading> withoutRepeats(std::vector<Reading> readings, CsvFaults& faults);

/// Warns of jumps back of the logger's clock, meter by meter and depth by depth, in the order of the file.
void warnOfClock(const std::vector<Reading>& readings, CsvFaults& faults);

/// What is taken of a logger's file, as one sentence: how many readings, from when to when, where, and
/// between which values, in the units asked for.
[[nodiscard]] std::string readingsTaken(const std::vector<Reading>& readings,
                                        UnitSystem units = UnitSystem::Metric);

/// A number and what it counts, such as "2 rows".
[[nodiscard]] std::string countOf(int count, const char* one, const char* many);

}  // namespace engine
