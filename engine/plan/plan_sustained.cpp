#include "engine/plan/plan_sustained.h"

#include "engine/base/parallel.h"
#include "engine/base/units.h"
#include "engine/plan/constants_plan.h"
#include "engine/run/end_state.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

constexpr ClockTime kMorning{8 * 60}, kStart{10 * 60}, kEvening{20 * 60};

std::vector<double> raisedDepths(const PondModel& model, double full) {
    std::vector<double> depths;
    const auto add = [&](double depth) {
        const double rounded = 0.1 * std::floor(10.0 * depth + 1e-6);
        if (rounded >= kShallowestDiffuser.value && rounded < full - 0.05) {
            depths.push_back(std::round(10.0 * rounded) / 10.0);
        }
    };
    for (const double share : {0.85, 0.7, 0.6, 0.5, 0.4, 0.3}) {
        add(share * full);
    }
    if (model.bottom.exists()) {
        add(model.bottom.depth - kAboveBottomWater.value);
    }
    std::sort(depths.begin(), depths.end(), std::greater<>());
    depths.erase(std::unique(depths.begin(), depths.end()), depths.end());
    return depths;
}

}  // namespace

EndVerdict endVerdict(double endState, double nothingEnd, double line) {
    const bool isBetter = nothingEnd < line && endState > nothingEnd + kNoWorse.value;
    return endState >= line ? EndVerdict::Keeps : isBetter ? EndVerdict::Better : EndVerdict::Fails;
}

std::vector<SustainedSchedule> sustainedSchedules(const PondModel& model, double nothingEnd, int threads,
                                                  const std::stop_token& stop) {
    const Aerator& aerator = *model.pond.aerator;
    const int all = static_cast<int>(aerator.diffusers->value);
    const double full = aerator.depth->value;
    std::vector<SustainedSchedule> table;
    const auto add = [&](SustainedKind kind, int minutes, double depth, ClockTime start) {
        SustainedSchedule one;
        one.kind = kind;
        one.action = {minutes, all, depth, 1, false};
        one.start = start;
        table.push_back(one);
    };
    add(SustainedKind::Continuous, kMinutesPerDay, full, kStart);
    for (const double depth : raisedDepths(model, full)) {
        add(SustainedKind::Raised, kMinutesPerDay, depth, kStart);
    }
    add(SustainedKind::ByDay, kMinutesPerDay / 2, full, kMorning);
    add(SustainedKind::ByNight, kMinutesPerDay / 2, full, kEvening);
    for (const int minutes : {480, 360, 240, 120, 60, 30}) {
        add(SustainedKind::PartTime, minutes, full, kStart);
    }
    static_cast<void>(forEachIndex(table.size(), threads, stop, [&](std::size_t i) {
        SustainedSchedule& one = table[i];
        const double start = one.start.minutes * kMinute;
        const SustainedAir air{
            {{start, start + one.action.minutes * kMinute, one.action.diffusers, one.action.depth, 0}},
            one.action.minutes == kMinutesPerDay,
            {}};
        const EndState end = endStateOf(model, &air, stop).value_or(EndState{});
        one.endState = end.low;
        one.endDrift = end.drift;
        one.verdict = endVerdict(one.endState, nothingEnd, model.parameters.thresholds.stress);
    }));
    return table;
}

std::vector<std::size_t> inOrderOfChoice(const std::vector<SustainedSchedule>& table) {
    std::vector<std::size_t> order;
    for (std::size_t i = 0; i < table.size(); ++i) {
        if (table[i].verdict != EndVerdict::Fails) {
            order.push_back(i);
        }
    }
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        const SustainedSchedule &x = table[a], &y = table[b];
        if (x.verdict != y.verdict) {
            return x.verdict == EndVerdict::Keeps;
        }
        return x.action.minutes != y.action.minutes ? x.action.minutes > y.action.minutes
                                                    : x.action.depth > y.action.depth;
    });
    return order;
}

}  // namespace engine
