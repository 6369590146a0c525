#pragma once

#include "engine/run/run.h"
#include "engine/water/constants_debt.h"

#include <optional>
#include <vector>

namespace engine {

/// What a meter in good order may be off, plus or minus [g/m^3].
inline constexpr double kOxygenMeterError = kMeterError.value;

/// A reading of oxygen and what a run has at the same depth and time.
struct ReadingBeside {
    double time = 0.0;            ///< [s after local midnight of day 1]
    double depth = 0.0;           ///< [m]
    double oxygen = 0.0;          ///< As read [g/m^3]
    std::optional<double> model;  ///< Of the run [g/m^3]; nothing outside the run's hours
};

/// Every oxygen reading of the pond file and its CSV, in the order of time.
/// @param run  With its layers kept; interpolated between hours and layer middles.
[[nodiscard]] std::vector<ReadingBeside> readingsBeside(const PondModel& model, const RampRun& run);

}  // namespace engine
