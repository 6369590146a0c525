#include "engine/follow_up/fit_readings.h"

#include "engine/base/units.h"
#include "engine/ramps/weather.h"

#include <cmath>
#include <map>
#include <utility>

namespace engine {
namespace {

constexpr std::size_t kMostReadings = 1500;  // of one quantity; the covariance of more would take too long

/// Means of the readings of each depth within each span of time; spans are an hour, or more where there would
/// be too many.
FitData thinned(const std::vector<std::pair<FitPoint, double>>& all) {
    for (double span = kHour;; span *= 2.0) {
        struct Sum {
            double time = 0.0, depth = 0.0, value = 0.0, count = 0.0;
        };
        std::map<std::pair<long, long>, Sum> sums;
        for (const auto& [point, value] : all) {
            Sum& sum = sums[{std::lround(std::floor(point.time / span)), std::lround(10.0 * point.depth)}];
            sum.time += point.time;
            sum.depth += point.depth;
            sum.value += value;
            sum.count += 1.0;
        }
        if (sums.size() > kMostReadings) {
            continue;
        }
        FitData out;
        for (const auto& [key, sum] : sums) {
            out.points.push_back({sum.time / sum.count, sum.depth / sum.count});
            out.values.push_back(sum.value / sum.count);
        }
        return out;
    }
}

}  // namespace

FitReadings fitReadings(const KnownPond& known) {
    FitReadings out;
    const std::vector<Reading>& readings = known.log.inForce.readings;
    std::vector<std::pair<FitPoint, double>> oxygen, temperature;
    for (std::size_t i = 0; i < readings.size(); ++i) {
        const Reading& reading = readings[i];
        if (!reading.depth || (!reading.oxygen && !reading.temperature)) {
            continue;
        }
        const double time = secondsOf(known.model.pond, *reading.at);
        if (time <= known.model.startTime) {
            ++out.outside;
        } else if (known.log.faults[i] != SensorFault::None) {
            ++out.flagged;
        } else {
            const FitPoint point{time, *reading.depth};
            if (reading.oxygen) {
                oxygen.emplace_back(point, *reading.oxygen);
            }
            if (reading.temperature) {
                temperature.emplace_back(point, *reading.temperature);
            }
        }
    }
    out.oxygen = thinned(oxygen);
    out.temperature = thinned(temperature);
    return out;
}

}  // namespace engine
