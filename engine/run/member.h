#pragma once

#include "engine/water/parameters.h"

#include <optional>

namespace engine {

/// One pond like the file's: what a run needs of it where it differs from the central run.
struct Member {
    Parameters<double> parameters;
    StartState<double> start;
    double windFactor = 1.0;           ///< Wind on the pond over the central run's
    std::optional<double> dawnOxygen;  ///< The dawn reading that the balance is led to [g/m^3]
};

}  // namespace engine
