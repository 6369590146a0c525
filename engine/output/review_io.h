#pragma once

#include "engine/follow_up/review.h"

#include <string>

namespace engine {

/// review.csv: date, dawn and bottom oxygen with and without the aerator (5, 50, 95 %), readings.
[[nodiscard]] std::string reviewCsv(const Review& review);

}  // namespace engine
