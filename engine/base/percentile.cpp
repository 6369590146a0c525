#include "engine/base/percentile.h"

#include "engine/base/error.h"

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

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

Percentiles percentilesOf(std::span<float> sample, std::span<const double> weights) {
    if (weights.empty()) {
        return percentilesOf(sample);
    }
    ensure(weights.size() == sample.size(), "each value has its weight");
    std::vector<std::pair<float, double>> values;
    for (std::size_t i = 0; i < sample.size(); ++i) {
        if (weights[i] > 0.0) {
            values.emplace_back(sample[i], weights[i]);
        }
    }
    ensure(!values.empty(), "some value has a weight");
    std::sort(values.begin(), values.end());
    std::vector<double> place;  // Of each value: the weight up to its middle, from that of the first on
    double before = 0.0;
    for (const auto& [value, weight] : values) {
        place.push_back(before + 0.5 * weight - 0.5 * values.front().second);
        before += weight;
    }
    Percentiles out{};
    for (std::size_t k = 0; k < out.size(); ++k) {
        const double wanted = kPercentiles[k] * place.back();
        const auto above = static_cast<std::size_t>(
            std::min(std::lower_bound(place.begin(), place.end(), wanted), place.end() - 1) - place.begin());
        const std::size_t below = above > 0 ? above - 1 : 0;
        const double span = place[above] - place[below];
        const double share = span > 0.0 ? (wanted - place[below]) / span : 1.0;
        const double low = static_cast<double>(values[below].first),
                     high = static_cast<double>(values[above].first);
        out[k] = low + share * (high - low);
    }
    return out;
}

}  // namespace engine
