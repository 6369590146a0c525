#pragma once

#include "engine/ensemble/compare.h"

#include <string>
#include <vector>

namespace bench {

/// Distances of night lows from others that stand for the exact ones [g/m^3].
struct LowsOff {
    int count = 0, within = 0;  ///< Nights times ramps; those off by no more than was wanted
    double worst = 0.0, sum = 0.0;
    std::string where;  ///< Ramp and night of the worst
    [[nodiscard]] double mean() const { return count > 0 ? sum / count : 0.0; }
    void add(const LowsOff& other);
};

/// All ramps of a pond and do-nothing, without end states and attribution.
/// @param days  0: as many as `compare` takes by itself.
[[nodiscard]] engine::Comparison compared(const engine::Pond& pond, const engine::Resolution& resolution,
                                          int days);

/// @param nights  Those after are left out.
[[nodiscard]] LowsOff lowsOff(const engine::Comparison& runs, const engine::Comparison& exact, double wanted,
                              int nights = 1000);

/// Share of the hours of all ramps whose fish water is off by no more than `wanted`, and their number.
struct HoursOff {
    long count = 0, within = 0;
};
[[nodiscard]] HoursOff hoursOff(const engine::Comparison& runs, const engine::Comparison& exact,
                                double wanted);

/// How far lows with the plume found by the rule are off from those with the plume found at each step: the
/// steps that members take, every ramp under the schedule of its central run.
[[nodiscard]] LowsOff plumeRuleOff(const engine::Comparison& central, double wanted);

/// Names of the scenarios without ".toml", in order.
[[nodiscard]] std::vector<std::string> scenarioNames();

}  // namespace bench
