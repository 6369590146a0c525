#pragma once

#include "engine/ensemble/ramp_risk.h"
#include "engine/run/backdrop.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace engine {

// The numbers behind a picture as CSV, in the form of the tables of a comparison (results_io.h).

/// One run in one night.
struct RunNight {
    std::size_t run = 0;  ///< Place in the comparison
    int night = 0;
};
/// Fish water of runs from noon to noon with the members' percentiles, their lows among the hours, and after
/// them the readings beside a run.
/// @param curves      Of completed runs
/// @param readingsOf  The run whose readings follow: those of one night, or all of them
[[nodiscard]] std::string nightCurvesCsv(const Comparison& comparison, const std::vector<RunNight>& curves,
                                         std::size_t readingsOf, std::optional<int> readingsNight);

/// The low of each night of every completed run, and do-nothing's beside it.
[[nodiscard]] std::string nightLowsCsv(const Comparison& comparison);

/// Fish water, share of the hour with air, and the weather, a row a run and hour.
[[nodiscard]] std::string wholeRunCsv(const Comparison& comparison, const Backdrop& backdrop);

/// Fish water of one run by night and hour. @param run  Place in the comparison
[[nodiscard]] std::string nightHoursCsv(const Comparison& comparison, std::size_t run);
/// The same of nights 1 to N, with do-nothing's beside it instead of the air.
[[nodiscard]] std::string nightsBesideNothingCsv(const Comparison& comparison, std::size_t run);

/// Debt left, dose and minutes of air, a row a run and day.
[[nodiscard]] std::string debtCsv(const Comparison& comparison);

/// What is toxic beside the lack of oxygen in micrograms, a row a run and hour.
[[nodiscard]] std::string gasMicrogramsCsv(const Comparison& comparison);

/// Temperature and oxygen by depth at the start and at the dawn of a night.
/// @param runs  Places in the comparison of runs whose layers were kept
[[nodiscard]] std::string profilesCsv(const Comparison& comparison, const Backdrop& backdrop,
                                      const std::vector<std::size_t>& runs, int night);

/// Chances of each ramp and how soon its air runs around the clock.
[[nodiscard]] std::string riskCsv(const Comparison& comparison, const std::vector<RampRisk>& risks);

}  // namespace engine
