#include "engine/base/percentile.h"

#include "engine/base/error.h"

#include <algorithm>
#include <cmath>

namespace engine {

double sortedQuantile(std::span<const float> sorted, double share) {
    ensure(!sorted.empty(), "a sample has at least one value");
    requireRange("share of the sample", share, 0.0, 1.0, "");
    const double place = share * static_cast<double>(sorted.size() - 1);
    const auto below = static_cast<std::size_t>(std::floor(place));
    const std::size_t above = std::min(below + 1, sorted.size() - 1);
    const double low = static_cast<double>(sorted[below]), high = static_cast<double>(sorted[above]);
    return low + (place - static_cast<double>(below)) * (high - low);
}

Percentiles percentilesOf(std::span<float> sample) {
    std::sort(sample.begin(), sample.end());
    Percentiles out{};
    for (std::size_t i = 0; i < out.size(); ++i) {
        out[i] = sortedQuantile(sample, kPercentiles[i]);
    }
    return out;
}

}  // namespace engine
