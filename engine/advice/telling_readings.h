#pragma once

#include "engine/advice/advice.h"

namespace engine {

/// The two readings that could change the answer about a ramp most: of the inputs that can be measured and
/// were not, those whose lower and upper halves of the members differ most in how many go below the lethal
/// line. From the members of the comparison alone; empty without them.
/// @param limit_percent  Of ponds below the lethal line, above which the answer is no.
[[nodiscard]] std::vector<TellingReading> tellingReadings(const Comparison& comparison, std::size_t run,
                                                          double limit_percent);

}  // namespace engine
