#include "widgets/outcome.h"

#include <algorithm>

namespace widgets {

std::vector<std::size_t> drawingOrder(const engine::Comparison& comparison, std::size_t selected) {
    std::vector<std::size_t> order;
    for (std::size_t i = 0; i < comparison.runs.size(); ++i) {
        if (i != selected && isDrawn(comparison.runs[i])) {
            order.push_back(i);
        }
    }
    if (selected < comparison.runs.size() && isDrawn(comparison.runs[selected])) {
        order.push_back(selected);
    }
    return order;
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

}  // namespace widgets
