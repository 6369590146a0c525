#include "engine/ensemble/measure.h"

#include "engine/base/csv_table.h"
#include "engine/base/error.h"
#include "engine/base/parallel.h"
#include "engine/base/percentile.h"
#include "engine/ensemble/compare.h"
#include "engine/ensemble/ensemble.h"
#include "engine/ensemble/past.h"
#include "engine/ensemble/variance_share.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

constexpr int kResamples = 200;
constexpr double kScore95 = 1.6448536269514722;  // of the standard normal distribution's 95 % point
constexpr double kMembersShare = 0.97;           // of the progress; the rest are the shares
constexpr const char* kDoNothing = "do-nothing";

const Ramp* rampOf(const Pond& pond, const std::string& name) {
    const auto found = std::find_if(pond.ramps.begin(), pond.ramps.end(),
                                    [&](const Ramp& ramp) { return ramp.name == name; });
    return found != pond.ramps.end() ? &*found : nullptr;
}

/// Days that `compare` would run if the pond had this ramp alone.
int daysOf(Pond alone, const Ramp* ramp) {
    alone.ramps = ramp != nullptr ? std::vector<Ramp>{*ramp} : std::vector<Ramp>();
    return defaultDays(alone);
}

MeasuredInput measured(const UncertainInput& input, const std::vector<double>& values,
                       const ShareEstimator& estimator, std::uint64_t seed) {
    MeasuredInput out;
    out.name = input.name;
    out.unit = input.unit;
    out.low = input.spread.quantile(0.05);
    out.high = input.spread.quantile(0.95);
    const VarianceShare share = estimator.share(values, out.low, out.high);
    out.worstAtLow = std::max(share.atLow, 0.0);
    out.worstAtHigh = std::max(share.atHigh, 0.0);
    out.share = std::clamp(share.share, 0.0, 1.0);
    out.shareLow = std::clamp(share.share - kScore95 * share.deviation, 0.0, 1.0);
    out.shareHigh = std::clamp(share.share + kScore95 * share.deviation, 0.0, 1.0);
    if (input.meter && !input.measured) {
        out.way = measuringWay(input.name);
    }
    if (out.way != nullptr) {
        // A reading cannot tell more than the value itself.
        const double all = std::sqrt(1.0 - out.share);
        out.left = std::min(estimator.leftAfter(values, *input.meter, seed).value_or(all), 1.0);
    }
    return out;
}

void fillInputs(const MemberDraws& draws, const std::vector<double>& worst, int threads,
                const RunControl& control, MeasureResult& result) {
    const ShareEstimator estimator(worst, kResamples, result.seed);
    result.inputs.resize(draws.inputs.size());
    const std::size_t done = forEachIndex(draws.inputs.size(), threads, control.stop, [&](std::size_t k) {
        std::vector<double> values;
        for (const std::vector<double>& member : draws.values) {
            values.push_back(member[k]);
        }
        // Readings of a meter err in an order of their own.
        result.inputs[k] = measured(draws.inputs[k], values, estimator, result.seed + 7919U * (k + 1));
    });
    if (done < draws.inputs.size()) {
        result.end = EnsembleEnd::Cancelled;
        result.message = "Measuring was stopped before it was done.";
        return;
    }
    std::stable_sort(result.inputs.begin(), result.inputs.end(),
                     [](const MeasuredInput& a, const MeasuredInput& b) { return a.share > b.share; });
}

}  // namespace

std::optional<std::string> rampToMeasure(const Pond& pond, const std::string& asked) {
    if (!asked.empty()) {
        return asked == kDoNothing || rampOf(pond, asked) != nullptr ? std::optional(asked) : std::nullopt;
    }
    return !pond.chosenRamp.empty() ? pond.chosenRamp
           : !pond.ramps.empty()    ? pond.ramps.front().name
                                    : kDoNothing;
}

MeasureResult measure(const Pond& pond, const MeasureOptions& options, const RunControl& control) {
    requireRange("members", options.members, kLeastMembersToMeasure, kMostMembers, "members");
    const auto name = rampToMeasure(pond, options.ramp);
    ensure(name.has_value(), "the ramp to measure for is there");
    const int threads = threadsFor(options.threads);
    MeasureResult result;
    result.model = prepare(pond, options.resolution);
    result.ramp = *name;
    result.members = options.members;
    result.seed = options.seed;
    const Ramp* const ramp = rampOf(result.model.pond, *name);
    result.days = daysOf(pond, ramp);
    RunRequest request;
    request.days = result.days;
    request.keepLayers = false;
    const RampRun central = runRamp(result.model, ramp, request, {control.stop, nullptr});
    if (central.end != RunEnd::Completed) {
        result.end = central.end == RunEnd::Cancelled ? EnsembleEnd::Cancelled : EnsembleEnd::NotFinite;
        result.message = central.message;
        return result;
    }
    EnsembleOptions asked;
    asked.days = result.days;
    asked.members = options.members;
    asked.seed = options.seed;
    asked.threads = threads;
    RunControl rest{control.stop, {}};
    if (control.progress) {
        rest.progress = [&](double share) { control.progress(kMembersShare * share); };
    }
    const EnsembleResult ensemble = runMembers(result.model, {ensembleRamp(central)}, asked, rest);
    result.end = ensemble.end;
    result.message = ensemble.message;
    if (ensemble.end != EnsembleEnd::Completed) {
        return result;
    }
    // Shares are found of members that weigh the same.
    const MemberDraws all = drawMembers(result.model, ensemble.members, result.days, options.seed);
    MemberDraws draws{all.inputs, {}, {}};
    std::vector<double> worst;
    for (const std::size_t i : resampled(ensemble.weights, all.values.size(), all.values.size())) {
        draws.values.push_back(all.values[i]);
        worst.push_back(static_cast<double>(ensemble.ramps.front().lowest[i]));
    }
    std::vector<float> sorted = ensemble.ramps.front().lowest;
    const Percentiles percentiles = percentilesOf(sorted, ensemble.weights);
    result.low = percentiles.front();
    result.median = percentiles[2];
    result.high = percentiles.back();
    fillInputs(draws, worst, threads, control, result);
    if (control.progress && result.end == EnsembleEnd::Completed) {
        control.progress(1.0);
    }
    return result;
}

std::vector<TextFile> measureFiles(const MeasureResult& result) {
    CsvWriter shares("input,low,high,worst_at_low_mg_per_l,worst_at_high_mg_per_l,share_of_variance");
    CsvWriter gains("input,unit,share_p05,share_p95,cost_rank,width_now_mg_per_l,width_measured_mg_per_l");
    const double width = result.high - result.low;
    for (const MeasuredInput& input : result.inputs) {
        shares.text(input.name).number(input.low).number(input.high);
        shares.number(input.worstAtLow).number(input.worstAtHigh).number(input.share).end();
        gains.text(input.name).text(input.unit).number(input.shareLow).number(input.shareHigh);
        if (input.way != nullptr) {
            gains.number(input.way->cost).number(width).number(width * input.left).end();
        } else {
            gains.nothing().number(width).nothing().end();
        }
    }
    return {{"measure.csv", shares.take()}, {"measure_gain.csv", gains.take()}};
}

}  // namespace engine
