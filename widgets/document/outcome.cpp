#include "widgets/document/outcome.h"

#include "widgets/document/selection.h"

#include <algorithm>

namespace widgets {

bool isVisible(const engine::RampRun& run, const Selection& selection) {
    return isDrawn(run) && !selection.isHidden(run.name);
}

std::vector<std::size_t> visibleRuns(const engine::Comparison& comparison, const Selection& selection) {
    std::vector<std::size_t> places;
    for (std::size_t i = 0; i < comparison.runs.size(); ++i) {
        if (isVisible(comparison.runs[i], selection)) {
            places.push_back(i);
        }
    }
    return places;
}

std::vector<std::size_t> drawingOrder(const engine::Comparison& comparison, const Selection& selection) {
    std::vector<std::size_t> order = visibleRuns(comparison, selection);
    const auto selected = std::find(order.begin(), order.end(), selection.ramp());
    if (selected != order.end()) {
        std::rotate(selected, selected + 1, order.end());
    }
    return order;
}

engine::Comparison aloneOf(const engine::Comparison& comparison, std::size_t run) {
    engine::Comparison one;
    one.model = comparison.model;
    one.days = comparison.days;
    one.runs.push_back(comparison.runs[run]);
    return one;
}

double highestFishWater(const engine::Comparison& comparison, double least) {
    double highest = least;
    for (const engine::RampRun& run : comparison.runs) {
        for (const engine::HourRow& hour : run.hours) {
            highest = isDrawn(run) ? std::max(highest, hour.fishWater) : highest;
        }
    }
    return highest;
}

std::size_t lookOf(const engine::Comparison& comparison, std::size_t run) {
    const auto& ramps = comparison.model.pond.ramps;
    if (run == 0 || run > ramps.size() || !ramps[run - 1].colour) {
        return run;
    }
    return static_cast<std::size_t>(ramps[run - 1].colour->value);
}

std::size_t chosenRamp(const engine::Comparison& comparison) {
    const engine::Pond& pond = comparison.model.pond;
    const auto found = std::find_if(pond.ramps.begin(), pond.ramps.end(),
                                    [&](const engine::Ramp& ramp) { return ramp.name == pond.chosenRamp; });
    if (found != pond.ramps.end()) {
        return static_cast<std::size_t>(found - pond.ramps.begin()) + 1;
    }
    return pond.ramps.empty() ? 0 : 1;
}

int chosenNight(const engine::Comparison& comparison) {
    const engine::RampRun& run = comparison.runs[chosenRamp(comparison)];
    return isDrawn(run) ? run.worst().day : 1;
}

}  // namespace widgets
