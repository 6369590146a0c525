#include "engine/ensemble/compare.h"

#include "engine/base/error.h"
#include "engine/base/parallel.h"
#include "engine/base/units.h"
#include "engine/ensemble/ensemble.h"
#include "engine/run/attribution.h"
#include "engine/run/end_state.h"
#include "engine/run/run_bounds.h"

#include <algorithm>
#include <mutex>
#include <utility>

namespace engine {
namespace {

constexpr int kShortestRun = 14;        // [d]
constexpr int kAfterRamp = 7;           // [d]
constexpr double kCentralShare = 0.05;  // of the progress, where members follow

}  // namespace

bool runsCompleted(const Comparison& comparison) {
    return std::all_of(comparison.runs.begin(), comparison.runs.end(),
                       [](const RampRun& run) { return run.end == RunEnd::Completed; });
}

bool isWhole(const Comparison& comparison) {
    return runsCompleted(comparison) &&
           (!comparison.ensemble || comparison.ensemble->end == EnsembleEnd::Completed);
}

bool differsByRampsOnly(const PondModel& model, const PondModel& other) {
    Pond before = other.pond;
    before.ramps = model.pond.ramps;
    before.chosenRamp = model.pond.chosenRamp;
    before.title = model.pond.title;
    before.client = model.pond.client;
    before.weather.file = model.pond.weather.file;  // their rows are compared
    before.climate.file = model.pond.climate.file;
    before.readingsFile.name = model.pond.readingsFile.name;
    return before == model.pond && model.grid.face == other.grid.face &&
           model.bottomDepth == other.bottomDepth &&
           model.resolution.largestStep == other.resolution.largestStep;
}

namespace {

/// The model of a pond; its balance is taken over from an earlier comparison of the same pond, whose ramps
/// may be others as long as they reach no deeper.
PondModel modelOf(const Pond& pond, const CompareOptions& options, bool& isSame) {
    isSame = false;
    if (options.earlier == nullptr) {
        return prepare(pond, options.resolution);
    }
    const PondModel& earlier = options.earlier->model;
    PondModel model = prepareUnbalanced(pond, options.resolution);
    isSame = differsByRampsOnly(model, earlier);
    if (!isSame) {
        return prepare(pond, options.resolution);
    }
    model.parameters = earlier.parameters;
    model.balance = earlier.balance;
    return model;
}

/// The run of an earlier comparison that a ramp of the same pond would give again; null if there is none.
const RampRun* knownRun(const CompareOptions& options, const Ramp* ramp, int days) {
    const Comparison& earlier = *options.earlier;
    for (std::size_t i = 0; earlier.days == days && i < earlier.runs.size(); ++i) {
        const RampRun& run = earlier.runs[i];
        if (run.end != RunEnd::Completed || (i == 0) != (ramp == nullptr)) {
            continue;
        }
        if (ramp == nullptr) {
            return &run;
        }
        Ramp before = earlier.model.pond.ramps[i - 1];
        before.name = ramp->name;
        before.colour = ramp->colour;
        if (before == *ramp) {
            return &run;
        }
    }
    return nullptr;
}

/// Says how many of a number of tasks on several threads are done.
class TaskProgress {
public:
    /// @param share  Of the whole, that these tasks are.
    TaskProgress(const RunControl& control, double share, std::size_t tasks)
        : m_control(control), m_share(share), m_tasks(tasks) {}

    void step() {
        const std::scoped_lock lock(m_reporting);
        ++m_done;
        if (m_control.progress) {
            m_control.progress(m_share * static_cast<double>(m_done) / static_cast<double>(m_tasks));
        }
    }

private:
    const RunControl& m_control;
    double m_share;
    std::size_t m_tasks, m_done = 0;
    std::mutex m_reporting;
};

/// Do-nothing, which is null, and after it the ramps.
const Ramp* rampOf(const PondModel& model, std::size_t i) {
    return i == 0 ? nullptr : &model.pond.ramps[i - 1];
}

/// One run of a comparison: that of an earlier comparison, or a new one.
RampRun runOf(const Comparison& result, std::size_t i, const CompareOptions& options, bool isSame,
              const std::stop_token& stop) {
    const Ramp* ramp = rampOf(result.model, i);
    if (const RampRun* before = isSame ? knownRun(options, ramp, result.days) : nullptr) {
        RampRun run = *before;
        run.name = ramp == nullptr ? before->name : ramp->name;
        return run;
    }
    RunRequest request;
    request.days = result.days;
    return runRamp(result.model, ramp, request, {stop, nullptr});
}

/// Finds the end states that the runs do not have yet, each kind of sustained air once.
void findEndStates(Comparison& result, int threads, const std::stop_token& stop) {
    struct Kind {
        bool isNothing = false;
        SustainedAir air;
        std::optional<EndState> end;
    };
    std::vector<Kind> kinds;
    std::vector<std::pair<RampRun*, std::size_t>> wanted;
    for (RampRun& run : result.runs) {
        if (run.end != RunEnd::Completed || run.endState) {
            continue;
        }
        const Kind own{&run == result.runs.data(), sustainedAirOf(run), {}};
        const auto same = std::find_if(kinds.begin(), kinds.end(), [&](const Kind& kind) {
            return kind.isNothing == own.isNothing && kind.air == own.air;
        });
        wanted.emplace_back(&run, same - kinds.begin());
        if (same == kinds.end()) {
            kinds.push_back(own);
        }
    }
    static_cast<void>(forEachIndex(kinds.size(), threads, stop, [&](std::size_t k) {
        kinds[k].end = endStateOf(result.model, kinds[k].isNothing ? nullptr : &kinds[k].air, stop);
    }));
    for (const auto& [run, kind] : wanted) {
        if (const std::optional<EndState>& end = kinds[kind].end) {
            run->endState = end->low;
            run->endDrift = end->drift;
        }
    }
}

/// Says of each run that has no causes yet what its worst night would be without each.
/// @return the number of questions that were looked at.
std::size_t attribute(Comparison& result, int threads, const std::stop_token& stop, TaskProgress& progress) {
    const std::size_t count = result.runs.size();
    std::vector<std::vector<Cause>> attribution(count);
    for (std::size_t i = 0; i < count; ++i) {
        attribution[i] =
            result.runs[i].attribution.empty() ? std::vector<Cause>(kCauses) : std::vector<Cause>();
    }
    const std::size_t finished = forEachIndex(count * kCauses, threads, stop, [&](std::size_t task) {
        const std::size_t i = task / kCauses;
        const RampRun& run = result.runs[i];
        const auto kind = static_cast<CauseKind>(task % kCauses);
        if (run.end == RunEnd::Completed && run.attribution.empty()) {
            const double gain =
                gainWithout(result.model, rampOf(result.model, i), run, kind, run.worst().day);
            attribution[i][task % kCauses] = {kind, gain};
        }
        progress.step();
    });
    for (std::size_t i = 0; i < count; ++i) {
        if (!attribution[i].empty()) {
            std::stable_sort(attribution[i].begin(), attribution[i].end(),
                             [](const Cause& a, const Cause& b) { return a.gain > b.gain; });
            result.runs[i].attribution = attribution[i];
        }
    }
    return finished;
}

/// The ensemble of all runs, unless one of them ended early.
void addMembers(Comparison& result, const CompareOptions& options, bool isSame, int threads,
                const RunControl& control) {
    EnsembleOptions asked;
    asked.days = result.days;
    asked.members = options.members;
    asked.seed = options.seed;
    asked.threads = threads;
    asked.mostLethal = options.mostLethal;
    if (isSame && options.earlier->ensemble) {
        asked.earlier = &*options.earlier->ensemble;
    }
    std::vector<EnsembleRamp> ramps;
    for (const RampRun& run : result.runs) {
        if (run.end != RunEnd::Completed) {
            return;
        }
        ramps.push_back(ensembleRamp(run));
    }
    RunControl rest{control.stop, {}};
    if (control.progress) {
        rest.progress = [&](double share) {
            control.progress(kCentralShare + (1.0 - kCentralShare) * share);
        };
    }
    result.ensemble = runMembers(result.model, ramps, asked, rest);
}

}  // namespace

int defaultDays(const Pond& pond) {
    int longest = 0;
    for (const Ramp& ramp : pond.ramps) {
        longest = std::max(longest, ramp.kind == RampKind::Capped ? 0 : ruleLength(ramp));
    }
    return std::clamp(longest + kAfterRamp, kShortestRun, kMostDays);
}

std::optional<std::string> compareFault(const Pond& pond, const CompareOptions& options) {
    return sizeFault({pond.ramps.size() + 1, options.days.value_or(defaultDays(pond)), options.members,
                      options.resolution});
}

Comparison compare(const Pond& pond, const CompareOptions& options, const RunControl& control) {
    Comparison result;
    bool isSame = false;
    result.model = modelOf(pond, options, isSame);
    const std::size_t count = pond.ramps.size() + 1;
    const int threads = threadsFor(options.threads);
    result.days = options.days.value_or(defaultDays(pond));
    const std::size_t questions = options.attribution ? kCauses : 0;
    TaskProgress progress(control, options.members > 1 ? kCentralShare : 1.0, count * (1 + questions));
    result.runs.resize(count);
    std::size_t finished = forEachIndex(count, threads, control.stop, [&](std::size_t i) {
        result.runs[i] = runOf(result, i, options, isSame, control.stop);
        progress.step();
    });
    if (options.endStates) {
        findEndStates(result, threads, control.stop);
    }
    finished += questions > 0 ? attribute(result, threads, control.stop, progress) : 0;
    ensure(finished == count * (1 + questions) || control.stop.stop_requested(),
           "every ramp was run unless stopped");
    if (options.members > 1) {
        addMembers(result, options, isSame, threads, control);
    }
    return result;
}

}  // namespace engine
