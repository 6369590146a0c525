#pragma once

#include "engine/base/files.h"
#include "engine/follow_up/fit.h"

#include <string>
#include <vector>

namespace engine {

/// fit.csv: one row an input, percentiles before and after.
[[nodiscard]] std::string fitCsv(const FitResult& fit);
/// forecast.csv: each whole hour from the time of the fit on, at the depths of the readings, of "surface" and
/// "bottom" and half way between.
[[nodiscard]] std::string forecastCsv(const FitResult& fit);
/// residuals.csv: time_h, depth_m, quantity, reading, prior_p05 to fitted_p95.
[[nodiscard]] std::string residualsCsv(const FitResult& fit);
[[nodiscard]] std::vector<TextFile> fitFiles(const FitResult& fit);

}  // namespace engine
