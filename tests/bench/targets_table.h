#pragma once

#include <map>
#include <string>
#include <vector>

namespace bench {

/// Medians of one benchmark [ms].
struct Cost {
    double processor = 0.0;  ///< Of all threads
    double real = 0.0;
};
using Costs = std::map<std::string, Cost>;

/// Slope of ln(cost) over ln(size) by least squares: the power of the size with which the cost grows. 0 with
/// less than two points.
[[nodiscard]] double exponent(const std::vector<double>& size, const std::vector<double>& cost);

/// One line of the last table.
struct TargetRow {
    std::string what;
    double value = 0.0;
    std::string unit;
    double ratio = 0.0;     ///< Over the yardstick; 0: none
    std::string yardstick;  ///< Measured in the same run
    double target = 0.0;    ///< 0: none
    bool atLeast = false;   ///< The target is a least value, not a most
};

void printTargets(const std::vector<TargetRow>& rows);

}  // namespace bench
