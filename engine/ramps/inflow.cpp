#include "engine/ramps/inflow.h"

#include "engine/base/units.h"
#include "engine/water/water.h"

#include <algorithm>

namespace engine {

InflowTable::InflowTable(const Pond& pond) : m_airPressure(airPressure(*pond.place.elevation)) {
    for (const Inflow& inflow : pond.inflows) {
        m_rows.push_back({secondsOf(pond, *inflow.from), secondsOf(pond, *inflow.until), inflow});
    }
}

InflowingWater InflowTable::at(double time, const Forcing& now) const {
    constexpr double kColdest = 0.0, kWarmest = 40.0;  // [degC] of running water
    const auto valueOr = [](const MaybeQuantity& given, double other) {
        return given ? given->value : other;
    };
    InflowingWater out;
    out.rain = now.rain;
    out.rainTemperature = now.rainTemperature;
    for (const Row& row : m_rows) {
        if (time < row.from || time >= row.until || *row.inflow.flow_lPerS <= 0.0) {
            continue;
        }
        const double flow = *row.inflow.flow_lPerS / 1000.0, all = out.flow + flow;
        const double temperature = valueOr(row.inflow.temperature, std::clamp(now.air, kColdest, kWarmest));
        const double salinity = valueOr(row.inflow.salinity, 0.0);
        const double saturation =
            oxygenSaturation(std::clamp(temperature, 0.0, 40.0), salinity, m_airPressure);
        // Several at a time are mixed before they enter.
        const auto mix = [&](double& to, double own) { to = (out.flow * to + flow * own) / all; };
        mix(out.temperature, temperature);
        mix(out.oxygen, valueOr(row.inflow.oxygen, saturation));
        mix(out.salinity, salinity);
        mix(out.labile, valueOr(row.inflow.organic, 0.0));
        out.flow = all;
    }
    return out;
}

}  // namespace engine
