#pragma once

#include "engine/pond/pond.h"

#include <vector>

namespace engine {

/// How algae and weeds go by the pond file's dated table, as shares of what they were at the profile's hour: linear
/// between dates (each counts from its local midnight), constant after the last.
class PlantTable {
public:
    /// @param startTime  Of the run [s after midnight of day 1].
    PlantTable(const Pond& pond, double startTime);

    struct Scale {
        double chlorophyll = 1.0;
        double weeds = 1.0;
    };
    [[nodiscard]] Scale at(double time) const;

private:
    struct Line {
        std::vector<double> times, scales;
        [[nodiscard]] double at(double time) const;
    };
    Line m_chlorophyll, m_weeds;
};

}  // namespace engine
