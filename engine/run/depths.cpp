#include "engine/run/depths.h"

#include "engine/ramps/constants_weather.h"

#include <algorithm>
#include <cmath>

namespace engine {

const HourRow* hourNear(const RampRun& run, double time, double within) {
    const auto found = std::find_if(run.hours.begin(), run.hours.end(), [=](const HourRow& hour) {
        return std::abs(hour.time - time) <= within;
    });
    return found == run.hours.end() ? nullptr : &*found;
}

std::size_t dawnHour(const Backdrop& backdrop, const RampRun& run, int night) {
    const NightSky& sky = backdrop.nights[static_cast<std::size_t>(night - 1)];
    const double dawn = sky.sunrise.value_or(night * kDay + kSunriseWithoutSun_h.value * kHour);
    std::size_t best = 0;
    for (std::size_t i = 0; i < run.hours.size(); ++i) {
        if (std::abs(run.hours[i].time - dawn) < std::abs(run.hours[best].time - dawn)) {
            best = i;
        }
    }
    return best;
}

double enoughDownTo(const Grid& grid, const std::vector<LayerRow>& layers, double level) {
    if (layers.empty() || layers.front().oxygen < level) {
        return 0.0;
    }
    for (std::size_t i = 0; i + 1 < layers.size(); ++i) {
        if (layers[i + 1].oxygen < level) {  // between the middles of two layers, where the line is drawn too
            const double share = (layers[i].oxygen - level) / (layers[i].oxygen - layers[i + 1].oxygen);
            return grid.middle[i] + share * (grid.middle[i + 1] - grid.middle[i]);
        }
    }
    return grid.face.back();
}

OxygenField oxygenField(const Grid& grid, const RampRun& run, double from, double to, int rows) {
    constexpr double kEnds = 0.05;  // [d]; over an hour, so that the ends of a stretch are in it
    OxygenField field;
    field.depth = grid.face.back();
    std::vector<double> column;
    for (std::size_t i = 0; i < run.layers.size() && i < run.hours.size(); ++i) {
        const double day = run.hours[i].time / kDay;
        if (day < from - kEnds || day > to + kEnds) {
            continue;
        }
        column.clear();
        for (const LayerRow& layer : run.layers[i]) {
            column.push_back(layer.oxygen);
        }
        field.time.push_back(run.hours[i].time);
        field.fishWater.push_back(run.hours[i].fishWater);
        auto& even = field.oxygen.emplace_back();
        for (int row = 0; row < rows; ++row) {
            even.push_back(interpolate(grid.middle, column, (row + 0.5) * field.depth / rows));
        }
    }
    return field;
}

}  // namespace engine
