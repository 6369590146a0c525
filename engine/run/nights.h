#pragma once

#include "engine/run/run.h"

#include <array>
#include <cstddef>
#include <optional>
#include <vector>

namespace engine {

// What the nights of a run come to. Night n goes from the noon of day n to the next noon.

/// The noon at which a night starts [s after midnight of day 1].
[[nodiscard]] double noonOf(int night);
/// The night that a time belongs to; a noon is the start of its night. 0 and less before day 1.
[[nodiscard]] int nightAt(double time);

/// A night's row of a run. @pre the run has that night
[[nodiscard]] const DayRow& nightRow(const RampRun& run, int night);

/// Fish water of a run from noon to noon.
struct NightCurve {
    std::vector<double> hour;    ///< After noon, rising, 0 to 24; the low stands among the whole hours
    std::vector<double> oxygen;  ///< [g/m^3], same size
    double low = 0.0;            ///< Lowest of all steps [g/m^3]
    double lowHour = 0.0;        ///< After noon
    double lowTime = 0.0;        ///< [s after midnight of day 1]
};
/// @pre the run has that night
[[nodiscard]] NightCurve nightCurve(const RampRun& run, int night);

/// Nights of a run that go below a line at any step. @param line  [g/m^3]
[[nodiscard]] int nightsBelow(const RampRun& run, double line);

/// Whole hours of the nights at which the fish water is below a line.
struct HoursBelow {
    int hours = 0;
    std::array<int, 24> nightsAt{};  ///< How many nights are below at each hour of the clock
    /// The hour of the clock at which most nights are below; the earliest of equals.
    [[nodiscard]] int worstHour() const;
};
/// @param line  [g/m^3]
[[nodiscard]] HoursBelow hoursBelow(const RampRun& run, double line);

/// The run with the lowest low in a night; the first of equals, nothing if there is none to look at.
/// @param among  Places in `runs`, each with that night.
[[nodiscard]] std::optional<std::size_t> lowestRun(const std::vector<RampRun>& runs,
                                                   const std::vector<std::size_t>& among, int night);

}  // namespace engine
