#include "engine/follow_up/readings_beside.h"

#include "engine/ramps/weather.h"
#include "engine/water/basin.h"

#include <algorithm>

namespace engine {
namespace {

double oxygenAt(const PondModel& model, const std::vector<LayerRow>& layers, double depth) {
    std::vector<double> oxygen;
    for (const LayerRow& layer : layers) {
        oxygen.push_back(layer.oxygen);
    }
    return interpolate(model.grid.middle, oxygen, depth);
}

std::optional<double> modelAt(const PondModel& model, const RampRun& run, double time, double depth) {
    const auto after = std::lower_bound(run.hours.begin(), run.hours.end(), time,
                                        [](const HourRow& row, double t) { return row.time < t; });
    if (after == run.hours.end() || run.layers.size() != run.hours.size()) {
        return std::nullopt;
    }
    const auto index = static_cast<std::size_t>(after - run.hours.begin());
    const double there = oxygenAt(model, run.layers[index], depth);
    if (after->time == time) {
        return there;
    }
    if (index == 0) {
        return std::nullopt;
    }
    const double share = (time - run.hours[index - 1].time) / (after->time - run.hours[index - 1].time);
    return (1.0 - share) * oxygenAt(model, run.layers[index - 1], depth) + share * there;
}

}  // namespace

std::vector<ReadingBeside> readingsBeside(const PondModel& model, const RampRun& run) {
    std::vector<ReadingBeside> out;
    for (const auto* list : {&model.pond.readings, &model.pond.fileReadings}) {
        for (const Reading& reading : *list) {
            if (reading.at && reading.depth && reading.oxygen) {
                const double time = secondsOf(model.pond, *reading.at);
                out.push_back(
                    {time, *reading.depth, *reading.oxygen, modelAt(model, run, time, *reading.depth)});
            }
        }
    }
    std::stable_sort(out.begin(), out.end(),
                     [](const ReadingBeside& a, const ReadingBeside& b) { return a.time < b.time; });
    return out;
}

}  // namespace engine
