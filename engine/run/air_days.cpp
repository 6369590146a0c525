#include "engine/run/air_days.h"

#include "engine/base/units.h"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace engine {
namespace {

/// What starts on a day: minutes, diffusers, depth.
struct DayAir {
    long minutes = 0;
    int open = 0;
    double depth = 0.0;
    bool operator==(const DayAir&) const = default;
};

DayAir airOf(const RampRun& run, int day) {
    double seconds = 0.0;
    DayAir out;
    for (const RunBlock& block : run.schedule) {
        if (block.day == day) {
            seconds += block.end - block.start;
            out.open = block.open;
            out.depth = block.depth;
        }
    }
    out.minutes = std::lround(seconds / kMinute);
    return out;
}

}  // namespace

std::optional<int> firstAirDay(const RampRun& run) {
    return run.schedule.empty() ? std::nullopt : std::optional(run.schedule.front().day);
}

std::optional<int> firstSustainedDay(const RampRun& run) {
    if (run.schedule.empty()) {
        return std::nullopt;
    }
    if (run.daysToContinuous) {
        // The last block is the last change of depth or diffusers.
        return std::max(*run.daysToContinuous, run.schedule.back().day);
    }
    const int last = static_cast<int>(run.days.size());
    int first = last;
    while (first > 1 && airOf(run, first - 1) == airOf(run, last)) {
        --first;
    }
    return first < last ? std::optional(first) : std::nullopt;
}

bool isStepUp(const RampRun& run, int day) {
    if (const auto sustained = firstSustainedDay(run); sustained && day > *sustained) {
        return false;
    }
    const DayAir now = airOf(run, day), before = airOf(run, day - 1);
    return now.minutes > before.minutes || (now.minutes > 0 && now.open > before.open) ||
           (now.minutes > 0 && now.depth > before.depth);
}

}  // namespace engine
