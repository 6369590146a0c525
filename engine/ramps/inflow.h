#pragma once

#include "engine/pond/pond.h"
#include "engine/ramps/weather.h"
#include "engine/water/inflowing_water.h"

#include <vector>

namespace engine {

/// What runs into a pond by its file's inflow tables, and the rain of its weather.
class InflowTable {
public:
    explicit InflowTable(const Pond& pond);

    /// @param time  [s after midnight of day 1]
    /// @param now   The weather then: inflow without a temperature has that of the air, without oxygen what
    /// water of its temperature holds.
    [[nodiscard]] InflowingWater at(double time, const Forcing& now) const;

private:
    struct Row {
        double from = 0.0, until = 0.0;  ///< [s after midnight of day 1]
        Inflow inflow;
    };
    std::vector<Row> m_rows;
    double m_airPressure;
};

}  // namespace engine
