#pragma once

#include "engine/follow_up/known_pond.h"
#include "engine/follow_up/model_error.h"

#include <cstddef>
#include <vector>

namespace engine {

/// Readings of one quantity that are compared with the model: one value an hour and depth, fewer where there
/// would be too many.
struct FitData {
    std::vector<FitPoint> points;
    std::vector<double> values;
};

struct FitReadings {
    FitData oxygen, temperature;
    std::size_t flagged = 0;  ///< Left out: of sensors at fault
    std::size_t outside = 0;  ///< Left out: before the run's start
};

/// The readings of a log that a fit goes by.
[[nodiscard]] FitReadings fitReadings(const KnownPond& known);

}  // namespace engine
