#pragma once

#include "engine/water/parameters.h"

#include <array>

namespace engine {

/// What a member has of the oxygen that the balance is led to (BalanceTarget), 0 where it was not read
/// [g/m^3].
using ReadOxygen = std::array<double, 2>;

/// One pond like the file's: what a run needs of it where it differs from the central run.
struct Member {
    Parameters<double> parameters;
    StartState<double> start;
    double windFactor = 1.0;  ///< Wind on the pond over the central run's
    ReadOxygen read{};
};

}  // namespace engine
