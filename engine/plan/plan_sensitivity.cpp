#include "engine/plan/plan_sensitivity.h"

#include "engine/base/parallel.h"
#include "engine/base/units.h"
#include "engine/plan/plan_search.h"
#include "engine/run/gas_limits.h"

#include <boost/math/distributions/binomial.hpp>

#include <algorithm>
#include <array>
#include <cmath>

namespace engine {
namespace {

constexpr double kTail = 0.05;  // of the one-sided upper 95 % bound

/// Minutes that grow by one factor a day from half an hour to those of a sustained schedule on the last day.
std::vector<DayAction> growing(const DayAction& sustainedAction, int days) {
    constexpr double kFirst = 30.0;
    std::vector<DayAction> out;
    const double first = std::min(kFirst, 0.5 * sustainedAction.minutes);
    for (int day = 1; day < days; ++day) {
        DayAction one = sustainedAction;
        const double share = static_cast<double>(day - 1) / (days - 1);
        one.minutes = static_cast<int>(std::lround(first * std::pow(sustainedAction.minutes / first, share)));
        out.push_back(one);
    }
    out.push_back(sustainedAction);
    return out;
}

}  // namespace

double CountedChance::share() const {
    return members > 0 ? static_cast<double>(count) / members : 0.0;
}

double CountedChance::upper() const {
    if (members <= 0 || count >= members) {
        return 1.0;
    }
    return boost::math::binomial_distribution<>::find_upper_bound_on_p(members, count, kTail);
}

std::optional<int> largestCount(int members, double share) {
    std::optional<int> largest;
    for (int count = 0; count <= members && CountedChance{count, members}.upper() <= share; ++count) {
        largest = count;
    }
    return largest;
}

int fewestMembers(double share) {
    // None of n: the bound is 1 - 0.05^(1/n).
    return share >= 1.0 ? 1 : static_cast<int>(std::ceil(std::log(kTail) / std::log1p(-share) - 1e-9));
}

CountedChance addedBelow(const EnsembleResult& ensemble, std::size_t ramp, double line) {
    const std::vector<float>& with = ensemble.ramps[ramp].lowest;
    const std::vector<float>& without = ensemble.ramps.front().lowest;
    std::vector<std::uint8_t> added;
    for (std::size_t i = 0; i < with.size(); ++i) {
        added.push_back(static_cast<double>(with[i]) < line && static_cast<double>(without[i]) >= line ? 1
                                                                                                       : 0);
    }
    // As so many members of equal weight would count it.
    const auto members = static_cast<int>(std::lround(ensemble.effective));
    return {static_cast<int>(std::lround(ensemble.shareOf(added) * members)), members};
}

std::vector<TradeOffPoint> fileTradeOff(const Plan& plan) {
    std::vector<TradeOffPoint> points;
    const Comparison& fresh = plan.comparison;
    for (std::size_t i = 1; i < fresh.runs.size(); ++i) {
        const RampRun& run = fresh.runs[i];
        TradeOffPoint point;
        point.name = run.name;
        point.days = run.daysToContinuous;
        point.added = addedBelow(*fresh.ensemble, i, plan.line);
        point.debtLeft = run.days.back().debtLeft;
        point.isPlanned = plan.ramp && i + 1 == fresh.runs.size();
        points.push_back(point);
    }
    return points;
}

std::vector<TradeOffPoint> searchTradeOff(const PlanMembers& members, const DayAction& sustainedAction,
                                          ClockTime start, const std::stop_token& stop) {
    std::vector<TradeOffPoint> points;
    for (const int days : {1, 2, 4, 7}) {
        if (days + 7 > members.days() || stop.stop_requested()) {
            break;
        }
        const std::vector<DayAction> actions = growing(sustainedAction, days);
        const HarmCount harm = harmOf(members, actions, start, members.members());
        TradeOffPoint point;
        point.days = days;
        point.added = {harm.addedStress, harm.members};
        RunRequest request;
        request.days = members.days();
        request.keepLayers = false;
        const Ramp ramp = rampOf(actions, start);
        const RampRun run = runRamp(members.model(), &ramp, request, {stop, {}});
        point.debtLeft = run.days.back().debtLeft;
        points.push_back(point);
    }
    return points;
}

std::vector<SlowPoint> slowSensitivity(const PondModel& model, int threads, const std::stop_token& stop) {
    if (!(model.debt_kg > 0.0)) {
        return {};
    }
    std::vector<SlowPoint> points;
    for (const int minutes : {5, 15, 30, 60, 120, 240, 480, kMinutesPerDay}) {
        points.push_back({minutes, 1.0});
    }
    static_cast<void>(forEachIndex(points.size(), threads, stop, [&](std::size_t i) {
        DayAction day;
        day.minutes = points[i].minutes;
        day.diffusers = static_cast<int>(model.pond.aerator->diffusers->value);
        day.depth = *model.pond.aerator->depth;
        const Ramp ramp = rampOf({day}, ClockTime{600});
        RunRequest request;
        request.days = kSlowDays;
        request.weather.usualThroughout = true;
        request.keepLayers = false;
        const RampRun run = runRamp(model, &ramp, request, {stop, {}});
        points[i].debtLeft = run.days.back().debtLeft;
    }));
    return points;
}

bool addsToxicants(const PondModel& model, const RampRun& run, const RampRun& nothing) {
    const GasPeaks with = gasPeaks(model, run), without = gasPeaks(model, nothing);
    const auto isWorse = [](const GasPeak& one, const GasPeak& other) {
        return one.isPassed() && (!other.isPassed() || one.peak * other.limit > other.peak * one.limit);
    };
    return isWorse(with.ammonia, without.ammonia) || isWorse(with.sulfide, without.sulfide);
}

}  // namespace engine
