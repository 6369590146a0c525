#pragma once

#include "engine/plan/plan.h"

#include <stop_token>
#include <vector>

namespace engine {

/// Whether a start around the clock at once is harmless in each month of the pond file's climate, central run
/// of two weeks from the 15th under the month's usual day. The water at the start is the guess that stands in
/// for a missing profile (engine/water/parameters.h), everything else as in the file, so this is a rough
/// answer about seasons. Months whose mean air is below freezing are left out: the model has no ice.
/// @return  In the order of the file; empty without a climate.
[[nodiscard]] std::vector<MonthStart> harmlessMonths(const PondModel& model, int threads,
                                                     const std::stop_token& stop);

}  // namespace engine
