#pragma once

#include "engine/advice/advice.h"
#include "engine/base/files.h"
#include "engine/plan/plan.h"
#include "engine/pond/pond_io.h"

#include <filesystem>
#include <string>
#include <vector>

namespace engine {

/// schedule.csv of a plan: one row a run, days of the run's length, a hold day with 0 minutes; the header
/// alone where it has no ramp. Doses and lows of a day stand in each of its runs, the dose by its share of
/// the minutes; lows are percentiles over the fresh draws.
[[nodiscard]] std::string scheduleCsv(const Plan& plan);

/// schedule.csv, summary.csv of the fresh draws, advice.csv and pond.toml: the pond file with the ramps of
/// the answer. Where the answer is not to start, schedule.csv is its header, and the ramp to take later
/// stands in later.csv.
/// @param pond    As it was read.
/// @param path    Where from: weather and readings files are named relative to it.
/// @param folder  Where the files go, from where pond.toml names them anew.
[[nodiscard]] std::vector<TextFile> planFiles(const Plan& plan, const Answered& answer, const Pond& pond,
                                              const std::filesystem::path& path,
                                              const std::filesystem::path& folder,
                                              const TypedNumbers& typed = {});

}  // namespace engine
