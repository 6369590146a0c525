#include "tests/property/measured_plume.h"

#include "engine/base/error.h"
#include "engine/base/units.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <optional>

namespace engine::test {
namespace {

using std::chrono::local_days;

constexpr double kParting = 3.0, kReach = 6.5;  // [m]; water above and below the first, down to the second

Schedule scheduleOf(const PlumeStart& start, const DiffuserLine& line) {
    Schedule air;
    const auto first = static_cast<double>((start.firstAir - start.before).count());
    for (int i = 0; i < start.daysOfAir; ++i) {
        const double on = (first + i) * kDay + start.clockHour * kHour;
        air.push_back({on, on + start.hoursEachDay * kHour, static_cast<int>(line.diffusers), line.depth,
                       static_cast<int>(first) + i + 1});
    }
    return air;
}

/// The flow between two at which the heat moved is the measured one, by halving on its logarithm; nothing if
/// they do not enclose it.
std::optional<LineTried> withFlowThatMoves(const Reservoir& reservoir, const PlumeStart& start,
                                           DiffuserLine line, const WaterOptions& options) {
    constexpr int kHalvings = 11;       // to 0.3 % of the flow
    double low = 50.0, high = 20000.0;  // [L/min]
    const auto tried = [&](double flow) {
        line.freeAir_lPerMin = flow;
        return LineTried{line, plumeOutcome(reservoir, start, line, options)};
    };
    const auto isShort = [](const LineTried& one) {
        return one.outcome.movedModel < one.outcome.movedMeasured;
    };
    if (!isShort(tried(low)) || isShort(tried(high))) {
        return std::nullopt;
    }
    LineTried middle;
    for (int i = 0; i < kHalvings; ++i) {
        middle = tried(std::sqrt(low * high));
        (isShort(middle) ? low : high) = middle.line.freeAir_lPerMin;
    }
    return middle;
}

}  // namespace

PlumeStart startToChooseBy() {
    using namespace std::chrono;
    return {"29 May 2017", local_days(2017y / May / 29), local_days(2017y / May / 30),
            24.0,          local_days(2017y / May / 29), 1,
            12.0};
}

std::vector<PlumeStart> startsToPredict(double onAndOff_h) {
    using namespace std::chrono;
    return {{"27 June 2016", local_days(2016y / June / 26), local_days(2016y / June / 28), 24.0,
             local_days(2016y / June / 27), 1, 0.0},
            {"25-27 July 2016", local_days(2016y / July / 25), local_days(2016y / July / 28), onAndOff_h,
             local_days(2016y / July / 25), 3, 12.0},
            {"10-12 July 2017", local_days(2017y / July / 10), local_days(2017y / July / 13), 9.0,
             local_days(2017y / July / 10), 3, 12.0}};
}

PlumeOutcome plumeOutcome(const Reservoir& reservoir, const PlumeStart& start, const DiffuserLine& line,
                          const WaterOptions& options) {
    const LakeProfile& before = reservoir.profileOf(start.before);
    const LakeProfile& after = reservoir.profileOf(start.after);
    ensure(before.isHandHeld == after.isHandHeld, "profiles of one instrument are compared");
    const int days = static_cast<int>((start.after - start.before).count());
    Pond pond = reservoirPond(reservoir, before, days, options);
    Aerator& aerator = pond.aerator.emplace();
    aerator.diffusers = line.diffusers;
    aerator.depth = line.depth;
    aerator.freeAir_lPerMin = line.freeAir_lPerMin / line.diffusers;
    const WaterRun water = runWater(pond, days, scheduleOf(start, line), options.resolution);

    const auto measured = [](const LakeProfile& profile) {
        return [&profile](double depth) { return interpolate(profile.depth, profile.temperature, depth); };
    };
    const auto modelled = [&](double depth) { return water.lastTemperature(depth); };
    const Basin& basin = water.model.basin;
    const double above = meanBetween(basin, 0.0, kParting, measured(before));
    const double below = meanBetween(basin, kParting, kReach, measured(before));
    PlumeOutcome out;
    out.movedMeasured = (meanBetween(basin, kParting, kReach, measured(after)) - below) / (above - below);
    out.movedModel = (meanBetween(basin, kParting, kReach, modelled) - below) / (above - below);
    for (const double depth : kReservoirDepths) {
        const double wanted = measured(after)(depth);
        out.errors.push_back(modelled(depth) - wanted);
        out.profileError += std::fabs(out.errors.back()) / kReservoirDepths.size();
        out.unchangedError += std::fabs(measured(before)(depth) - wanted) / kReservoirDepths.size();
    }
    return out;
}

std::vector<LineTried> linesThatMoveTheHeat(const Reservoir& reservoir, const PlumeStart& start,
                                            const WaterOptions& options) {
    std::vector<LineTried> found;
    for (const double diffusers : {10.0, 20.0, 50.0, 100.0}) {
        for (const double depth : {5.0, 5.5, 6.0, 6.5}) {
            const auto one = withFlowThatMoves(reservoir, start, {diffusers, depth, 0.0}, options);
            if (one) {
                found.push_back(*one);
            }
        }
    }
    return found;
}

const LineTried& bestOf(const std::vector<LineTried>& tried) {
    ensure(!tried.empty(), "some line moves the heat");
    return *std::min_element(tried.begin(), tried.end(), [](const LineTried& a, const LineTried& b) {
        return a.outcome.profileError < b.outcome.profileError;
    });
}

void print(const DiffuserLine& line, const std::string& name, const PlumeOutcome& outcome) {
    std::printf(
        "%-16s %3.0f at %.1f m, %6.0f L/min: moved %.2f, measured %.2f (%+3.0f %%); profile off by %.2f K,"
        " unchanged %.2f;",
        name.c_str(), line.diffusers, line.depth, line.freeAir_lPerMin, outcome.movedModel,
        outcome.movedMeasured, 100.0 * (outcome.movedModel / outcome.movedMeasured - 1.0),
        outcome.profileError, outcome.unchangedError);
    for (const double error : outcome.errors) {
        std::printf(" %+.1f", error);
    }
    std::printf("\n");
}

}  // namespace engine::test
