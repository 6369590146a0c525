#pragma once

#include "engine/base/units.h"

#include <cmath>

namespace engine {

/// The whole hour after a time [s after midnight of day 1], for rounding's sake not the one that it is.
[[nodiscard]] inline double nextWholeHour(double time) {
    return (std::floor(time / kHour + 1e-9) + 1.0) * kHour;
}

/// Even steps from one mark of a run to the next.
struct EvenSteps {
    int count = 0;    ///< Even, so that one begins halfway, where the plume is found again
    double dt = 0.0;  ///< [s]
};

/// Steps by the clock and never by the state, so that the same pond takes the same steps whatever it does:
/// half as long as the longest from late afternoon to late evening, when the surface turns from gaining heat
/// to losing it and the mixed layer begins to deepen, and in the hour after air changed.
/// @param from, until   No whole hour lies between them [s after midnight of day 1].
/// @param longest       [s]
/// @param sinceSwitch   Since air or its depth last changed [s].
[[nodiscard]] inline EvenSteps evenSteps(double from, double until, double longest, double sinceSwitch) {
    constexpr double kEveningBegins_h = 17.0, kEveningEnds_h = 21.0;
    const double middle = 0.5 * (from + until);
    const double hour = (middle - std::floor(middle / kDay) * kDay) / kHour;
    const bool isEvening = hour >= kEveningBegins_h && hour < kEveningEnds_h;
    const double step = isEvening || sinceSwitch < kHour - 1.0 ? 0.5 * longest : longest;
    const int count = 2 * static_cast<int>(std::ceil(0.5 * (until - from) / step - 1e-9));
    return {count, (until - from) / count};
}

}  // namespace engine
