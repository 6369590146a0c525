#include "engine/run/end_state.h"

#include "engine/base/units.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

constexpr int kDays = 14;
constexpr double kStart = 10.0 * kHour;  // of air that never stops, on day 1

Schedule heldFromDayOne(const SustainedAir& air) {
    constexpr double kEnd = (kDays + 1.0) * kDay;
    Schedule out;
    if (air.isContinuous) {
        RunBlock block = air.day.front();
        block.start = kStart;
        block.end = kEnd;
        block.day = 1;
        return {block};
    }
    for (int day = 1; day <= kDays + 1; ++day) {
        for (RunBlock block : air.day) {
            block.start += (day - 1) * kDay;
            block.end = std::min(block.end + (day - 1) * kDay, kEnd);
            block.day = day;
            if (block.end > block.start) {
                out.push_back(block);
            }
        }
    }
    return out;
}

}  // namespace

SustainedAir sustainedAirOf(const RampRun& run) {
    SustainedAir out;
    out.surfaceAir = run.surfaceAir;
    if (run.schedule.empty()) {
        return out;
    }
    out.isContinuous = run.daysToContinuous.has_value();
    if (out.isContinuous) {
        RunBlock block = run.schedule.back();
        block.start = block.end = 0.0;
        block.day = 0;
        out.day = {block};
        return out;
    }
    const int last = static_cast<int>(run.days.size());
    for (RunBlock block : run.schedule) {
        if (block.day == last) {
            block.start -= (last - 1) * kDay;
            block.end -= (last - 1) * kDay;
            block.day = 0;
            out.day.push_back(block);
        }
    }
    return out;
}

std::optional<EndState> endStateOf(const PondModel& model, const SustainedAir* air,
                                   const std::stop_token& stop) {
    RunRequest request;
    request.days = kDays;
    request.keepLayers = false;
    request.endState = true;
    const Ramp any;  // with a schedule, a ramp only says that this is not do-nothing
    if (air != nullptr) {
        request.schedule = heldFromDayOne(*air);
        request.surfaceAir = air->surfaceAir;
    }
    const RampRun run = runRamp(model, air != nullptr ? &any : nullptr, request, {stop, {}});
    return run.endState ? std::optional(EndState{*run.endState, run.endDrift}) : std::nullopt;
}

}  // namespace engine
