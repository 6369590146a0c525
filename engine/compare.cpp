#include "engine/causes.h"
#include "engine/error.h"
#include "engine/parallel.h"
#include "engine/run.h"
#include "engine/units.h"

#include <algorithm>
#include <mutex>
#include <thread>

namespace engine {
namespace {

constexpr int kShortestRun = 14;  // [d]
constexpr int kAfterRamp = 7;     // [d]

/// Days that a ramp takes by its own rule, if it gets anywhere.
int rampLength(const PondModel& model, const Ramp& ramp) {
    if (ramp.kind == RampKind::Capped) {
        RunRequest request;
        request.days = kLongestRamp;
        request.keepLayers = false;
        request.stopWhenLifted = true;
        if (ramp.hold) {
            return kLongestRamp;
        }
        const RampRun run = runRamp(model, &ramp, request);
        // In two steps: half a day's air on the day it is lifted, continuous the day after.
        return run.capLiftedDay ? std::min(*run.capLiftedDay + 1, kLongestRamp) : kLongestRamp;
    }
    return ruleLength(ramp);
}

}  // namespace

int ruleDays(const Pond& pond) {
    int longest = 0;
    for (const Ramp& ramp : pond.ramps) {
        longest = std::max(longest, ramp.kind == RampKind::Capped ? 0 : ruleLength(ramp));
    }
    return std::max(kShortestRun, longest + kAfterRamp);
}

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
    const int threads = options.threads > 0
                            ? options.threads
                            : std::max(1, static_cast<int>(std::thread::hardware_concurrency()));
    const auto rampOf = [&](std::size_t i) { return i == 0 ? nullptr : &result.model.pond.ramps[i - 1]; };
    std::mutex reporting;
    // The runs first, then what the worst night of each would be without each of the causes.
    const std::size_t questions = options.causes ? kCauses : 0;
    std::size_t done = 0;
    const auto report = [&] {
        const std::scoped_lock lock(reporting);
        ++done;
        if (control.progress) {
            control.progress(static_cast<double>(done) / static_cast<double>(count * (1 + questions)));
        }
    };
    result.runs.resize(count);
    std::size_t finished = forEachIndex(count, threads, control.stop, [&](std::size_t i) {
        RunRequest request;
        request.days = result.days;
        request.endState = options.endStates;
        result.runs[i] = runRamp(result.model, rampOf(i), request, {control.stop, nullptr});
        report();
    });
    std::vector<std::vector<Cause>> causes(count, std::vector<Cause>(options.causes ? kCauses : 0));
    finished += forEachIndex(count * questions, threads, control.stop, [&](std::size_t task) {
        const RampRun& run = result.runs[task / questions];
        const auto kind = static_cast<CauseKind>(task % questions);
        if (run.end == RunEnd::Completed) {
            causes[task / questions][task % questions] = {
                kind, gainWithout(result.model, rampOf(task / questions), run, kind, run.worst().day)};
        }
        report();
    });
    ensure(finished == count * (1 + questions) || control.stop.stop_requested(),
           "every ramp was run unless stopped");
    for (std::size_t i = 0; i < count; ++i) {
        std::stable_sort(causes[i].begin(), causes[i].end(),
                         [](const Cause& a, const Cause& b) { return a.gain > b.gain; });
        result.runs[i].causes = causes[i];
    }
    return result;
}

}  // namespace engine
