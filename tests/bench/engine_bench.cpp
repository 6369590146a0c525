// What the engine costs: a run, its parts, packs and whole ensembles, and how that grows. The last table sets
// it beside yardsticks of the same run and beside the project's targets; it decides nothing.
#include "engine/column/plume.h"
#include "engine/column/transport.h"
#include "engine/ensemble/ensemble.h"
#include "engine/run/balance.h"
#include "engine/run/kernel.h"
#include "engine/run/member_run.h"
#include "engine/water/water.h"
#include "tests/bench/measure.h"
#include "tests/bench/smooth_problem.h"
#include "tests/bench/targets_table.h"
#include "tests/bench/words.h"
#include "tests/scenario.h"

#include <benchmark/benchmark.h>
#include <cmath>
#include <cstdlib>
#include <type_traits>

namespace {

using namespace engine;
using bench::Cost;
using bench::words;

constexpr int kDays = 14, kMembers = 1000, kRamps = 4;
constexpr double kWantedMiB = 150.0;
double g_peakOfEnsembles_MiB = 0.0;  // After the ensembles of a thousand, before larger ones

const Pond& headline() {
    static const Pond pond = test::scenario("grandfathers-pond");
    return pond;
}

PondModel modelOf(int layers) {
    Resolution resolution;
    resolution.layers = layers;
    return prepare(headline(), resolution);
}

const PondModel& model() {
    static const PondModel made = modelOf(Resolution{}.layers);
    return made;
}

const Ramp& continuous() {
    return test::rampOfKind(headline(), RampKind::Continuous);
}

RunRequest requestOf(int days) {
    RunRequest request;
    request.days = days;
    request.keepLayers = false;
    return request;
}

/// Do-nothing and the pond's first ramps, as many as asked for.
std::vector<EnsembleRamp> rampsOf(int count, int days) {
    std::vector<EnsembleRamp> ramps{ensembleRamp(runRamp(model(), nullptr, requestOf(days)))};
    for (const Ramp& ramp : headline().ramps) {
        if (static_cast<int>(ramps.size()) < count) {
            ramps.push_back(ensembleRamp(runRamp(model(), &ramp, requestOf(days))));
        }
    }
    return ramps;
}

void exponentials(benchmark::State& state) {
    for (auto unused : state) {
        static_cast<void>(unused);
        double sum = 0.0;
        for (int i = 0; i < 100000; ++i) {
            sum += std::exp(-1e-5 * i);
        }
        benchmark::DoNotOptimize(sum);
    }
}

void run(benchmark::State& state, int layers, int days, bool isAerated, bool isPlumeFrozen) {
    const PondModel own = modelOf(layers);
    RunRequest request = requestOf(days);
    request.switches.freezePlume = isPlumeFrozen;
    for (auto unused : state) {
        static_cast<void>(unused);
        benchmark::DoNotOptimize(runRamp(own, isAerated ? &continuous() : nullptr, request).steps);
    }
}

/// The standing water of the start, as the plume sees it.
struct Standing {
    std::vector<double> density;
    PlumeSource source;
    Plume plume;

    explicit Standing(const PondModel& of) {
        for (std::size_t i = 0; i < of.start.temperature.size(); ++i) {
            density.push_back(densityOverOrigin(of.start.temperature[i], of.start.salinity[i]));
        }
        source = {*of.pond.aerator->depth, of.aerator.freeAir, of.aerator.diffusers,
                  of.aerator.bubbleDiameter, of.parameters.site.airPressure};
        plume = rise(of);
    }
    [[nodiscard]] Plume rise(const PondModel& of) const {
        return integratePlume(source,
                              {of.grid, of.start.temperature, of.start.salinity, density, of.start.oxygen},
                              of.bottom.depth);
    }
};

void plume(benchmark::State& state) {
    const Standing water(model());
    for (auto unused : state) {
        static_cast<void>(unused);
        benchmark::DoNotOptimize(water.rise(model()).hypolimneticLift);
    }
}

void transport(benchmark::State& state) {
    const Standing water(model());
    const Grid& grid = model().grid;
    Flows<double> flows(grid.layers());
    flows.moving = true;
    flows.segments = static_cast<int>(water.plume.segments.size());
    for (int k = 0; k < flows.segments; ++k) {
        const PlumeSegment& segment = water.plume.segments[static_cast<std::size_t>(k)];
        flows.taken[static_cast<std::size_t>(k)] = segment.entrained;
        for (int i = 0; i < grid.layers(); ++i) {
            flows.returned[static_cast<std::size_t>(k)][i] = segment.flow * segment.detrained[i];
        }
    }
    const std::vector<double> diffusivity(grid.face.size(), 1e-5);
    Transport<double> heat(grid), solutes(grid);
    Fields<double, 1> warm(model().start.temperature.size(), {20.0});
    Fields<double, kSolutes> carried(model().start.temperature.size());
    for (std::size_t i = 0; i < carried.size(); ++i) {
        carried[i].fill(1.0 + 0.01 * static_cast<double>(i));
    }
    for (auto unused : state) {
        static_cast<void>(unused);
        Transport<double>::prepareBoth(360.0, diffusivity, flows, heat, 1.4e-7, {}, solutes, 1.0e-9);
        heat.advance<1, 1>(flows, {}, {}, warm);
        solutes.advance<kAlwaysCarried, kSolutes>(flows, {}, {}, carried);
        benchmark::DoNotOptimize(carried.front()[kOxygen]);
    }
}

void balance(benchmark::State& state) {
    for (auto unused : state) {
        static_cast<void>(unused);
        benchmark::DoNotOptimize(prepare(headline()).balance.photosynthesis);
    }
}

template <class Real>
void pack(benchmark::State& state) {
    WeatheredMember member{{model().parameters, model().start, 1.0, {}}, {}};
    member.offsets.assign(kDays + 4, WeatherOffset{});
    const std::vector<WeatheredMember> members(kLanes<Real>, member);
    const MemberPlan plan =
        memberPlan(model(), ensembleRamp(runRamp(model(), &continuous(), requestOf(kDays))), kDays, false);
    const MemberPack<Real> own = packOf<Real>(members);
    for (auto unused : state) {
        static_cast<void>(unused);
        MemberTrace trace(members.size(), plan);
        if constexpr (std::is_same_v<Real, Lanes>) {
            kernel().runPack(model(), plan, own, 0, members.size(), trace, {});
        } else {
            runPack(model(), plan, own, 0, members.size(), trace, {});
        }
        benchmark::DoNotOptimize(trace.lows.front());
    }
}

void members(benchmark::State& state, int count, int ramps, int days, int threads, bool isWhole) {
    const std::vector<EnsembleRamp> own = rampsOf(ramps, days);
    EnsembleOptions options;
    options.days = days;
    options.members = count;
    options.threads = threads;
    options.balance = isWhole;
    options.endStates = isWhole;
    for (auto unused : state) {
        static_cast<void>(unused);
        if (runMembers(model(), own, options).end != EnsembleEnd::Completed) {
            state.SkipWithError("the members did not come to the end");
        }
    }
    if (count == kMembers) {
        g_peakOfEnsembles_MiB = bench::peak_MiB();
    }
}

/// Shows medians only, and keeps them.
class Collector : public benchmark::ConsoleReporter {
public:
    Collector() : ConsoleReporter(OO_Tabular) {}
    void ReportRuns(const std::vector<Run>& runs) override {
        std::vector<Run> shown;
        for (const Run& one : runs) {
            if (one.error_occurred || one.aggregate_name == "median") {
                shown.push_back(one);
            }
            if (!one.error_occurred && one.aggregate_name == "median") {
                const double perMs = 1e3 / benchmark::GetTimeUnitMultiplier(one.time_unit);
                costs[one.run_name.function_name] = {one.GetAdjustedCPUTime() * perMs,
                                                     one.GetAdjustedRealTime() * perMs};
            }
        }
        ConsoleReporter::ReportRuns(shown);
    }
    bench::Costs costs;
};

const std::vector<int> kLayers{10, 20, 40, 80, 160}, kDaysOf{7, 14, 28, 56, 90}, kMembersOf{8, 64, 512, 4096};
const char* const kThousand = "1,000 members, 4 ramps, 14 days";
const char* const kWhole = "the same with balance and end states";

std::string layersName(int layers) {
    return words("run of %d layers, 14 days", layers);
}
std::string daysName(int days) {
    return words("run of 40 layers, %d days", days);
}
std::string membersName(int count) {
    return words("%d members, 1 ramp, 2 days", count);
}
/// A fifth of the members, for what a second thread brings.
std::string threadsName(int threads) {
    return words("200 members, 4 ramps, threads: %d", threads);
}

template <class Work>
void add(const std::string& name, int repeats, const Work& work) {
    benchmark::RegisterBenchmark(name.c_str(), work)
        ->Unit(benchmark::kMillisecond)
        ->MinTime(0.05)
        ->Repetitions(repeats)
        ->ReportAggregatesOnly();
}

template <class Work>
void addEnsemble(const std::string& name, int repeats, const Work& work) {
    benchmark::RegisterBenchmark(name.c_str(), work)
        ->Unit(benchmark::kMillisecond)
        ->Iterations(1)
        ->MeasureProcessCPUTime()
        ->UseRealTime()
        ->Repetitions(repeats)
        ->ReportAggregatesOnly();
}

void addAll() {
    constexpr int kRepeats = 9;
    add("100,000 exponentials", kRepeats, exponentials);
    for (const int layers : kLayers) {
        add(layersName(layers), kRepeats,
            [layers](benchmark::State& s) { run(s, layers, kDays, true, false); });
    }
    for (const int days : kDaysOf) {
        if (days == kDays) {
            continue;  // of the layers above
        }
        add(daysName(days), kRepeats,
            [days](benchmark::State& s) { run(s, Resolution{}.layers, days, true, false); });
    }
    add("run with its plume frozen", kRepeats,
        [](benchmark::State& s) { run(s, Resolution{}.layers, kDays, true, true); });
    add("do-nothing run", kRepeats,
        [](benchmark::State& s) { run(s, Resolution{}.layers, kDays, false, false); });
    add("plume", kRepeats, plume);
    add("transport step", kRepeats, transport);
    add("balance", kRepeats, balance);
    add("pack of one", kRepeats, pack<double>);
    add("pack of members", kRepeats, pack<Lanes>);
    add("pack of four doubles", kRepeats, pack<DoubleLanes>);
    for (const int threads : {1, 2}) {
        addEnsemble(threadsName(threads), 3, [threads](benchmark::State& s) {
            members(s, kMembers / 5, kRamps, kDays, threads, false);
        });
    }
    addEnsemble(kThousand, 3, [](benchmark::State& s) { members(s, kMembers, kRamps, kDays, 2, false); });
    addEnsemble(kWhole, 2, [](benchmark::State& s) { members(s, kMembers, kRamps, kDays, 2, true); });
    for (const int count : kMembersOf) {
        addEnsemble(membersName(count), 3,
                    [count](benchmark::State& s) { members(s, count, 1, 2, 2, false); });
    }
}

void printTable(bench::Costs& costs) {
    const double yardstick = costs["100,000 exponentials"].processor;
    const char* exponentialsName = "100,000 exponentials";
    const auto growth = [&](const std::vector<int>& sizes, std::string (*name)(int)) {
        std::vector<double> size, cost;
        for (const int n : sizes) {
            size.push_back(n);
            cost.push_back(costs[name(n)].processor);
        }
        return bench::exponent(size, cost);
    };
    const double one = costs[layersName(40)].processor, coarse = costs[layersName(20)].processor;
    const Cost two = costs[kThousand], whole = costs[kWhole];
    const bench::SmoothComparison smooth = bench::compareOnSmoothProblem(Resolution{}.layers, 5);
    const bench::WorkPoint *ours = bench::fastestWithin({smooth.ours}, 0.05),
                           *theirs = bench::fastestWithin(smooth.cvode, 0.05);
    std::vector<bench::TargetRow> rows{
        {"headline pond, 14 days, plume running", one, "ms", one / yardstick, exponentialsName, 3.0, false},
        {"the same with 20 layers", coarse, "ms", coarse / yardstick, exponentialsName, 1.5, false},
        {"a member in a pack, 14 days", costs["pack of members"].processor / kPack, "ms",
         costs["pack of members"].processor / kPack / one, "a lone run", 1.8, false},
        {"a member in a pack of four doubles, 14 days", costs["pack of four doubles"].processor / 4.0, "ms",
         costs["pack of four doubles"].processor / 4.0 / one, "a lone run", 0.0, false},
        {"balance of the central run", costs["balance"].processor, "ms", costs["balance"].processor / one,
         "a lone run", 0.0, false},
        {"1,000 members by 4 ramps, two threads", 1e-3 * two.real, "s", two.real / (kMembers * kRamps * one),
         "4,000 lone runs", 3.0, false},
        {"its processor time over two", 0.5e-3 * two.processor, "s", 0.0, "", 0.0, false},
        {"the same with balance and end states", 1e-3 * whole.real, "s", whole.real / two.real, "without",
         12.0, false},
        {"its processor time over two", 0.5e-3 * whole.processor, "s", 0.0, "", 0.0, false},
        {"largest resident memory of these", g_peakOfEnsembles_MiB, "MiB", 0.0, "", kWantedMiB, false},
        {"two threads over one, real time", costs[threadsName(1)].real / costs[threadsName(2)].real, "", 0.0,
         "", 1.8, true},
        {"plume's share of a running step",
         100.0 * (1.0 - costs["run with its plume frozen"].processor / one), "%", 0.0, "", 30.0, false},
        {"cost by layers, exponent of 10 to 160", growth(kLayers, layersName), "", 0.0, "", 1.1, false},
        {"cost by days, exponent of 7 to 90", growth(kDaysOf, daysName), "", 0.0, "", 1.1, false},
        {"cost by members, exponent of 8 to 4,096", growth(kMembersOf, membersName), "", 0.0, "", 0.0,
         false}};
    if (ours != nullptr && theirs != nullptr) {
        rows.push_back({"smooth problem: CVODE over ours, both within 0.05 mg/L",
                        theirs->time_ms / ours->time_ms, "", 0.0, "", 100.0, true});
    }
    bench::printTargets(rows);
}

}  // namespace

int main(int argc, char** argv) {
    benchmark::Initialize(&argc, argv);
    if (benchmark::ReportUnrecognizedArguments(argc, argv)) {
        return 2;
    }
    addAll();
    Collector collector;
    benchmark::RunSpecifiedBenchmarks(&collector);
    // Without a filter only: the table needs all of them.
    if (collector.costs.size() >= kLayers.size() + kDaysOf.size() + kMembersOf.size() + 10) {
        printTable(collector.costs);
    }
    return 0;
}
