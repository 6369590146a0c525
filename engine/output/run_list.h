#pragma once

#include "engine/ensemble/compare.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace engine {

/// One run of a ramp as a person switches it, or a day without one.
struct RunRow {
    int day = 0;
    Date date{};
    std::optional<double> start;  ///< [s after midnight of day 1]; nothing on a day without a run
    std::optional<double> stop;   ///< Nothing where the air stays on from here
    double minutes = 0.0;         ///< From start to stop; to the end of the run list where there is no stop
    int open = 0;                 ///< Diffusers
    double depth = 0.0;           ///< [m]
    std::optional<double> dose_percent;          ///< Of the calendar day; nothing without bottom water
    std::optional<double> lowestP05, lowestP50;  ///< Of the night, over members [g/m^3]
    std::optional<double> lowest;                ///< Of the night, in the central run [g/m^3]
};

/// What of a row belongs to its day and not to its run. @param run  As for runList().
[[nodiscard]] RunRow dayOf(const Comparison& comparison, std::size_t run, int day);

/// The runs of a ramp from day 1 to the day on which the air stays on, or to the last night. Runs that meet
/// with the same diffusers at the same depth are one; a change of either while the air is on is a row of its
/// own whose stop is the next one's start. Empty for do-nothing.
/// @param run  Place in the comparison; completed.
[[nodiscard]] std::vector<RunRow> runList(const Comparison& comparison, std::size_t run);

/// Columns of `schedule.csv`.
inline constexpr std::string_view kScheduleHeader =
    "day,date,start_time,run_minutes,diffusers,depth_m,dose_percent,lowest_p05_mg_per_l,lowest_p50_mg_per_l,"
    "surface_air_from,surface_air_until";

/// Those rows as `schedule.csv`. A day without a run has 0 minutes, and neither start, diffusers nor depth.
/// @param surfaceAir  That goes with the ramp, or none.
[[nodiscard]] std::string runListCsv(const std::vector<RunRow>& rows, const SurfaceAir& surfaceAir = {});

}  // namespace engine
