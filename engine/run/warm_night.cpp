#include "engine/run/warm_night.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

constexpr double kAnyWarmth = 100.0;  // [degC]; a limit above it is none

/// The water of one hour of a run.
WarmNight waterAt(const PondModel& model, const RampRun& run, std::size_t hour) {
    const OxygenThresholds& thresholds = model.parameters.thresholds;
    const double limit = thresholds.fishMax, need_percent = 100.0 * thresholds.fishShare;
    if (run.layers.size() <= hour) {
        const double bottom = run.hours[hour].bottomTemperature;
        return {limit, need_percent, bottom <= limit ? 100.0 : 0.0, bottom, model.bottomDepth};
    }
    const std::vector<LayerRow>& layers = run.layers[hour];
    WarmNight out{limit, need_percent, 0.0, layers.front().temperature, model.grid.middle.front()};
    double volume = 0.0, cool = 0.0;
    for (std::size_t i = 0; i < layers.size(); ++i) {
        const double temperature = layers[i].temperature;
        volume += model.grid.volume[i];
        cool += temperature <= limit ? model.grid.volume[i] : 0.0;
        if (temperature < out.coolest) {
            out.coolest = temperature;
            out.depth = model.grid.middle[i];
        }
    }
    out.cool_percent = 100.0 * cool / volume;
    return out;
}

bool isTooWarm(const WarmNight& water) {
    return water.cool_percent < water.need_percent;
}

}  // namespace

std::optional<WarmNight> warmNight(const PondModel& model, const RampRun& run, const DayRow& night) {
    const OxygenThresholds& thresholds = model.parameters.thresholds;
    if (thresholds.fishMax >= kAnyWarmth || !(night.lowest < thresholds.lethal)) {
        return std::nullopt;
    }
    const auto after = std::find_if(run.hours.begin(), run.hours.end(),
                                    [&](const HourRow& row) { return row.time >= night.lowestTime; });
    if (after == run.hours.end() || !(after->mean > thresholds.lethal)) {
        return std::nullopt;
    }
    const auto hour = static_cast<std::size_t>(after - run.hours.begin());
    // The low lies between two hours: the warmer of them is nearer to it.
    WarmNight out = waterAt(model, run, hour);
    if (hour > 0) {
        const WarmNight before = waterAt(model, run, hour - 1);
        out = before.cool_percent < out.cool_percent ? before : out;
    }
    if (!isTooWarm(out)) {
        return std::nullopt;
    }
    for (std::size_t i = 0; i < run.hours.size(); ++i) {
        out.hours += isTooWarm(waterAt(model, run, i)) ? 1 : 0;
    }
    return out;
}

}  // namespace engine
