#pragma once

#include "engine/pond/pond.h"

#include <optional>
#include <vector>

namespace engine {

/// Air on from `start` to `end` without a break [s after local midnight of day 1].
struct RunBlock {
    double start = 0.0;
    double end = 0.0;
    int open = 0;        ///< Diffusers running
    double depth = 0.0;  ///< [m]
    int day = 0;         ///< The day on which it starts
    bool operator==(const RunBlock&) const = default;
};

/// Surface air that goes with a ramp, night by night from the first on.
struct SurfaceAir {
    double transfer = 0.0;  ///< Clean water, 20 degC, no oxygen [g/s]; 0: none
    double from = 0.0;      ///< [s after midnight]
    double until = 0.0;     ///< [s after midnight]; before `from`: of the next day
    bool operator==(const SurfaceAir&) const = default;
};
/// That of a ramp: 22:00 to 08:00 unless it says otherwise.
[[nodiscard]] SurfaceAir surfaceAirOf(const Ramp& ramp);

/// When the air is on: blocks in order, not overlapping; blocks may meet.
using Schedule = std::vector<RunBlock>;

inline constexpr int kMinutesPerDay = 1440;

/// Minutes that the rule of a ramp gives to its day `step` (1 is the first), 0 to 1440, whole.
/// @pre the ramp is not capped.
[[nodiscard]] int ruleMinutes(const Ramp& ramp, int step);

inline constexpr int kLongestRamp = 60;  ///< [d]

/// Days that a ramp takes by its own rule to come to a whole day of air; a table's length or 60 if it does
/// not.
/// @pre the ramp is not capped.
[[nodiscard]] int ruleLength(const Ramp& ramp);

/// What a list by day holds on a day (1 is the first); the last value is kept.
[[nodiscard]] double onDay(const ByDay& list, int day);

/// Start of a ramp's day [s]; 10:00 unless the ramp says otherwise.
[[nodiscard]] double dayStart(const Ramp& ramp, int day);

/// Diffusers open and their depth on a day of a ramp.
struct DayAeration {
    int open = 0;
    double depth = 0.0;
};
[[nodiscard]] DayAeration dayAeration(const Ramp& ramp, const Aerator& aerator, int day);

/// The runs of one day of a ramp with `minutes` of air: pulses evenly spaced over the window (or 24 h),
/// cut by the window. A day's run may end after midnight.
/// @param cutMinutes  What the window cut off is added here.
void addDayRuns(const Ramp& ramp, const Aerator& aerator, int day, int minutes, Schedule& schedule,
                double& cutMinutes);

/// The whole schedule of a ramp that is not capped, days 1 to `lastDay`; runs end at the latest at `end`.
/// @param holdDays  Days that are skipped, until the air runs around the clock: no air, and the rule's count
///                  of days waits.
[[nodiscard]] Schedule scheduleOf(const Ramp& ramp, const Aerator& aerator, int lastDay, double end,
                                  const std::vector<int>& holdDays, double& cutMinutes);

/// Joins blocks that meet with the same diffusers at the same depth.
[[nodiscard]] Schedule joined(const Schedule& schedule);

/// Seconds of air between two times.
[[nodiscard]] double runningBetween(const Schedule& schedule, double from, double to);

/// The first day after whose start the air never stops until `end`; nothing if there is none.
[[nodiscard]] std::optional<int> daysToContinuous(const Schedule& schedule, double end);

}  // namespace engine
