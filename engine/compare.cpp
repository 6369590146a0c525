#include "engine/run.h"

#include "engine/error.h"
#include "engine/parallel.h"
#include "engine/units.h"

#include <algorithm>
#include <mutex>
#include <thread>

namespace engine {
namespace {

constexpr int kShortestRun = 14;        // [d]
constexpr int kAfterRamp = 7;           // [d]
constexpr int kLongestCappedRamp = 60;  // [d]
constexpr int kEndStateDays = 30;
constexpr int kEndStateNights = 7;

/// Days that a ramp takes by its own rule, if it gets anywhere.
int rampLength(const PondModel& model, const Ramp& ramp) {
    if (ramp.kind == RampKind::Capped) {
        RunRequest request;
        request.days = kLongestCappedRamp;
        request.keepLayers = false;
        request.stopWhenLifted = true;
        if (ramp.hold) {
            return kLongestCappedRamp;
        }
        const RampRun run = runRamp(model, &ramp, request);
        // In two steps: half a day's air on the day it is lifted, continuous the day after.
        return run.capLiftedDay ? std::min(*run.capLiftedDay + 1, kLongestCappedRamp) : kLongestCappedRamp;
    }
    for (int day = 1; day <= kLongestCappedRamp; ++day) {
        if (ruleMinutes(ramp, day) >= kMinutesPerDay) {
            return day;
        }
    }
    return ramp.kind == RampKind::Table ? static_cast<int>(std::min<std::size_t>(ramp.minutes.size(), 60)) : 60;
}

/// Where the dawn low settles: the schedule the run ended with, held for 30 more days under the usual day.
void addEndState(const PondModel& model, const Ramp* ramp, int days, RampRun& run) {
    RunRequest request;
    request.days = days + kEndStateDays;
    request.keepLayers = false;
    request.weather.usualAfterDay = days;
    if (ramp != nullptr) {
        // What ran on the last whole day goes on each day.
        Schedule schedule = run.schedule;
        const double end = request.days * kDay + kDay / 2;
        if (run.daysToContinuous) {
            schedule.back().end = end;
        } else {
            Schedule last;
            for (const RunBlock& block : run.schedule) {
                if (block.day == days) {
                    last.push_back(block);
                }
            }
            for (int extra = 1; extra <= kEndStateDays; ++extra) {
                for (RunBlock block : last) {
                    block.start += extra * kDay;
                    block.end = std::min(block.end + extra * kDay, end);
                    block.day += extra;
                    schedule.push_back(block);
                }
            }
        }
        request.schedule = joined(schedule);
    }
    const RampRun longer = runRamp(model, ramp, request);
    const auto lows = longer.days.end() - kEndStateNights;
    double mean = 0.0, slope = 0.0;
    for (int i = 0; i < kEndStateNights; ++i) {
        mean += lows[i].lowest / kEndStateNights;
        slope += lows[i].lowest * (i - 3) / 28.0;  // least squares over seven evenly spaced nights
    }
    run.endState = mean;
    run.endDrift = slope;
}

}  // namespace

int defaultDays(const PondModel& model) {
    int longest = 0;
    for (const Ramp& ramp : model.pond.ramps) {
        longest = std::max(longest, rampLength(model, ramp));
    }
    return std::max(kShortestRun, longest + kAfterRamp);
}

Comparison compare(const Pond& pond, const CompareOptions& options, const RunControl& control) {
    Comparison result;
    result.model = prepare(pond, options.resolution);
    result.days = options.days ? *options.days : defaultDays(result.model);
    const std::size_t count = pond.ramps.size() + 1;
    result.runs.resize(count);
    const int threads =
        options.threads > 0 ? options.threads : std::max(1, static_cast<int>(std::thread::hardware_concurrency()));
    std::mutex reporting;
    std::size_t done = 0;
    const std::size_t started = forEachIndex(count, threads, control.stop, [&](std::size_t i) {
        const Ramp* ramp = i == 0 ? nullptr : &result.model.pond.ramps[i - 1];
        RunRequest request;
        request.days = result.days;
        RampRun run = runRamp(result.model, ramp, request, {control.stop, nullptr});
        if (run.end == RunEnd::Completed && options.endStates) {
            addEndState(result.model, ramp, result.days, run);
        }
        result.runs[i] = std::move(run);
        const std::scoped_lock lock(reporting);
        if (control.progress) {
            control.progress(static_cast<double>(++done) / static_cast<double>(count));
        }
    });
    ensure(started == count || control.stop.stop_requested(), "every ramp was run unless stopped");
    return result;
}

}  // namespace engine
