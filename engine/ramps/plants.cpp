#include "engine/ramps/plants.h"

#include "engine/base/units.h"
#include "engine/ramps/weather.h"
#include "engine/water/basin.h"
#include "engine/water/parameters.h"

namespace engine {

PlantTable::PlantTable(const Pond& pond, double startTime) {
    const double chlorophyll = startChlorophyll(pond);
    const double weeds = pond.water.weedsCover_percent ? pond.water.weedsCover_percent->value : 0.0;
    m_chlorophyll = {{startTime}, {1.0}};
    m_weeds = {{startTime}, {1.0}};
    for (const WaterChange& change : pond.water.changes) {
        const double time = (dayNumber(pond, change.date) - 1) * kDay;
        if (change.chlorophyll_ugPerL && chlorophyll > 0.0) {
            m_chlorophyll.times.push_back(time);
            m_chlorophyll.scales.push_back(*change.chlorophyll_ugPerL / chlorophyll);
        }
        if (change.weedsCover_percent && weeds > 0.0) {
            m_weeds.times.push_back(time);
            m_weeds.scales.push_back(*change.weedsCover_percent / weeds);
        }
    }
}

double PlantTable::Line::at(double time) const {
    return times.size() < 2 ? 1.0 : interpolate(times, scales, time);
}

PlantTable::Scale PlantTable::at(double time) const {
    return {m_chlorophyll.at(time), m_weeds.at(time)};
}

}  // namespace engine
