#include "engine/water/criteria.h"

#include "engine/base/error.h"

#include <algorithm>
#include <cstddef>
#include <numeric>
#include <vector>

namespace engine {
namespace {

constexpr std::size_t kHours = 24;

// The lowest mean of `days` values in a row; empty if there are fewer.
std::optional<double> lowestMean(const std::vector<double>& values, std::size_t days) {
    std::optional<double> lowest;
    for (std::size_t first = 0; first + days <= values.size(); ++first) {
        const auto begin = values.begin() + static_cast<std::ptrdiff_t>(first);
        const double mean = std::accumulate(begin, begin + static_cast<std::ptrdiff_t>(days), 0.0) /
                            static_cast<double>(days);
        lowest = lowest ? std::min(*lowest, mean) : mean;
    }
    return lowest;
}

bool isBelow(std::optional<double> value, std::optional<double> limit) {
    return value && limit && *value < *limit;
}

}  // namespace

OxygenCriteria epa1986(WaterKind water, LifeStage stage) {
    OxygenCriteria criteria;
    const bool warm = water == WaterKind::Warm;
    if (stage == LifeStage::Early) {
        criteria.mean7Days = warm ? 6.0 : 9.5;
        criteria.minimum = warm ? 5.0 : 8.0;
    } else {
        criteria.mean30Days = warm ? 5.5 : 6.5;
        criteria.meanMinimum7Days = warm ? 4.0 : 5.0;
        criteria.minimum = warm ? 3.0 : 4.0;
    }
    return criteria;
}

OxygenLows oxygenLows(std::span<const double> hourly) {
    for (const double value : hourly) {
        requireRange("oxygen of an hour", value, 0.0, 1000.0, "g/m^3");
    }
    std::vector<double> means;
    std::vector<double> minima;
    for (std::size_t first = 0; first + kHours <= hourly.size(); first += kHours) {
        const auto day = hourly.subspan(first, kHours);
        means.push_back(std::accumulate(day.begin(), day.end(), 0.0) / static_cast<double>(kHours));
        minima.push_back(*std::min_element(day.begin(), day.end()));
    }
    OxygenLows lows;
    lows.mean30Days = lowestMean(means, 30);
    lows.mean7Days = lowestMean(means, 7);
    lows.meanMinimum7Days = lowestMean(minima, 7);
    if (!hourly.empty()) {
        lows.minimum = *std::min_element(hourly.begin(), hourly.end());
    }
    return lows;
}

CriteriaBroken brokenCriteria(const OxygenLows& lows, const OxygenCriteria& criteria) {
    return {.mean30Days = isBelow(lows.mean30Days, criteria.mean30Days),
            .mean7Days = isBelow(lows.mean7Days, criteria.mean7Days),
            .meanMinimum7Days = isBelow(lows.meanMinimum7Days, criteria.meanMinimum7Days),
            .minimum = isBelow(lows.minimum, criteria.minimum)};
}

}  // namespace engine
