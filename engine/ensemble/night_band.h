#pragma once

#include "engine/ensemble/ensemble_result.h"

#include <optional>
#include <vector>

namespace engine {

/// Between which values nine of ten members are, from noon to noon.
struct PercentileBand {
    std::vector<double> hour;       ///< After noon, 0 to 24
    std::vector<double> low, high;  ///< 5 and 95 % of the members [g/m^3], same size
    /// Place of the hour with the least of the lower ends. @pre not empty
    [[nodiscard]] std::size_t lowest() const;
};
[[nodiscard]] PercentileBand nightBand(const RampEnsemble& members, int night);

/// Percentiles at a whole hour of the run; null between two hours. @param time  [s after midnight of day 1]
[[nodiscard]] const Percentiles* percentilesAt(const RampEnsemble& members, double time);

}  // namespace engine
