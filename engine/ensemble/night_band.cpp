#include "engine/ensemble/night_band.h"

#include "engine/base/units.h"
#include "engine/run/nights.h"

#include <algorithm>
#include <cmath>

namespace engine {

std::size_t PercentileBand::lowest() const {
    return static_cast<std::size_t>(std::min_element(low.begin(), low.end()) - low.begin());
}

PercentileBand nightBand(const RampEnsemble& members, int night) {
    constexpr double kRounding = 1e-6;  // [h]
    PercentileBand band;
    for (std::size_t i = 0; i < members.hours.size(); ++i) {
        const double at = (members.hours[i] - noonOf(night)) / kHour;
        if (at >= -kRounding && at <= 24.0 + kRounding) {
            band.hour.push_back(at);
            band.low.push_back(members.fishWater[i].front());
            band.high.push_back(members.fishWater[i].back());
        }
    }
    return band;
}

const Percentiles* percentilesAt(const RampEnsemble& members, double time) {
    constexpr double kRounding = 1.0;  // [s]
    const auto found = std::lower_bound(members.hours.begin(), members.hours.end(), time - kRounding);
    return found == members.hours.end() || std::abs(*found - time) > kRounding
               ? nullptr
               : &members.fishWater[static_cast<std::size_t>(found - members.hours.begin())];
}

}  // namespace engine
