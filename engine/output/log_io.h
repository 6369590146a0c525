#pragma once

#include "engine/base/files.h"
#include "engine/follow_up/fit.h"
#include "engine/wording/sentence.h"

#include <optional>
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

/// What a completed fit says.
[[nodiscard]] std::vector<Sentence> sentencesOf(const FitResult& fit);

/// The log of a pond: its entries in the order of time, flags of sensors, the head of its chain.
/// @param printed  A head to compare with, as it was printed; the caller has read it.
[[nodiscard]] std::vector<Sentence> sentencesOfLog(const Pond& pond,
                                                   const std::optional<std::string>& printed);

}  // namespace engine
