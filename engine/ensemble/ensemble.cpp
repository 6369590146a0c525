#include "engine/ensemble/ensemble.h"

#include "engine/base/error.h"
#include "engine/base/parallel.h"
#include "engine/ensemble/constants_past.h"
#include "engine/ensemble/draws.h"
#include "engine/ensemble/past.h"
#include "engine/run/balance.h"
#include "engine/run/kernel.h"
#include "engine/run/run_bounds.h"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <mutex>
#include <numeric>

namespace engine {
namespace {

/// Progress of tasks that end on any thread.
class Reporter {
public:
    Reporter(const RunControl& control, double total) : m_control(control), m_total(total) {}
    void done(double work) {
        if (m_control.progress) {
            const std::scoped_lock lock(m_mutex);
            m_done += work;
            m_control.progress(std::min(m_done / m_total, 1.0));
        }
    }

private:
    const RunControl& m_control;
    double m_total;
    double m_done = 0.0;
    std::mutex m_mutex;
};

void balanceOnePack(const PondModel& model, const BalanceSlopes& slopes, std::span<WeatheredMember> members,
                    const std::stop_token& stop) {
    MemberPack<Lanes> pack = packOf<Lanes>(members);
    std::array<ReadOxygen, kPack> read{};
    for (std::size_t k = 0; k < kPack; ++k) {
        read[k] = members[std::min(k, members.size() - 1)].member.read;
    }
    kernel().balancePack(model, slopes, read, pack, {}, stop);
    for (std::size_t k = 0; k < members.size(); ++k) {
        setFactors(members[k].member.parameters, factorsOf(pack.parameters, static_cast<int>(k)));
    }
}

bool isAtFactorEnd(const BalanceFactors& one) {
    const auto isEnd = [](double factor) {
        return factor < kLeastBalance * (1.0 + 1e-9) || factor > kGreatestBalance * (1.0 - 1e-9);
    };
    return isEnd(one.respiration) || isEnd(one.photosynthesis);
}

/// The ramp of an earlier result that would come out the same; null if there is none.
const RampEnsemble* knownRamp(const EnsembleOptions& options, const EnsembleRamp& ramp,
                              const MemberPlan& plan) {
    const EnsembleResult* const earlier = options.earlier;
    if (earlier == nullptr || earlier->end != EnsembleEnd::Completed || earlier->seed != options.seed ||
        earlier->asked != options.members || earlier->factors.empty() == options.balance) {
        return nullptr;
    }
    const auto found =
        std::find_if(earlier->ramps.begin(), earlier->ramps.end(), [&](const RampEnsemble& one) {
            return one.isDoNothing == ramp.isDoNothing && one.schedule == ramp.schedule &&
                   one.surfaceAir == ramp.surfaceAir && one.hours == plan.hours &&
                   one.endStates.empty() == plan.endSteps.empty();
        });
    return found == earlier->ramps.end() ? nullptr : &*found;
}

/// Whether an earlier result has the same members, with their factors and weights.
bool hasMembers(const EnsembleOptions& options) {
    const EnsembleResult* const earlier = options.earlier;
    return earlier != nullptr && earlier->end == EnsembleEnd::Completed && earlier->seed == options.seed &&
           earlier->asked == options.members && !earlier->factors.empty() && options.balance;
}

double plainShare(const std::vector<std::uint8_t>& flags) {
    return static_cast<double>(std::count(flags.begin(), flags.end(), 1)) / static_cast<double>(flags.size());
}

/// Members of an earlier result.
DrawnMembers knownMembers(const PondModel& model, const EnsembleOptions& options, const RunControl& control) {
    const EnsembleResult& earlier = *options.earlier;
    DrawnMembers out;
    out.draws = drawMembers(model, earlier.members, options.days, options.seed);
    out.members = weatheredMembers(model, out.draws, options.days, threadsFor(options.threads), control.stop);
    for (std::size_t i = 0; i < out.members.size(); ++i) {
        setFactors(out.members[i].member.parameters, earlier.factors[i]);
    }
    out.weights = earlier.weights;
    out.effective = earlier.effective;
    return out;
}

/// The rows of draws from one on.
MemberDraws rowsFrom(const MemberDraws& draws, std::size_t first) {
    MemberDraws out{draws.inputs, {}, {}};
    const auto skip = static_cast<std::ptrdiff_t>(first);
    out.values.assign(draws.values.begin() + skip, draws.values.end());
    out.weatherScores.assign(draws.weatherScores.begin() + skip, draws.weatherScores.end());
    return out;
}

/// A ramp that is to be run, and its place among those asked for.
struct RampWork {
    std::size_t ramp = 0;
    MemberPlan plan;
    MemberTrace trace;
    double lethal = 0.0;  ///< Weight of the members below the lethal line so far
};

/// Weight of the members of a pack that went below the lethal line.
double lethalWeight(const MemberTrace& trace, const std::vector<double>& weights, std::size_t first,
                    std::size_t count) {
    double sum = 0.0;
    for (std::size_t i = first; i < first + count; ++i) {
        sum += trace.isBelowLethal[i] != 1 ? 0.0 : weights.empty() ? 1.0 : weights[i];
    }
    return sum;
}

RampEnsemble summed(const EnsembleResult& result, const EnsembleRamp& ramp, const MemberPlan& plan,
                    MemberTrace& trace) {
    RampEnsemble out;
    out.name = ramp.name;
    out.schedule = ramp.schedule;
    out.surfaceAir = ramp.surfaceAir;
    out.isDoNothing = ramp.isDoNothing;
    out.hours = plan.hours;
    const std::size_t members = trace.members;
    out.lowest.assign(members, std::numeric_limits<float>::infinity());
    for (std::size_t i = 0; i < trace.lows.size(); ++i) {
        out.lowest[i % members] = std::min(out.lowest[i % members], trace.lows[i]);
    }
    const std::vector<double>& weights = result.weights;
    for (std::size_t hour = 0; hour < plan.hours.size(); ++hour) {
        out.fishWater.push_back(
            percentilesOf(std::span(trace.hours).subspan(hour * members, members), weights));
    }
    for (int night = 0; night < plan.nights; ++night) {
        out.nightLows.push_back(
            percentilesOf(std::span(trace.lows).subspan(night * members, members), weights));
    }
    out.chanceBelowStress = result.shareOf(trace.isBelowStress);
    out.chanceBelowLethal = result.shareOf(trace.isBelowLethal);
    out.plainBelowStress = plainShare(trace.isBelowStress);
    out.plainBelowLethal = plainShare(trace.isBelowLethal);
    out.isBelowStress = trace.isBelowStress;
    out.endStates = trace.endStates;
    return out;
}

}  // namespace

MemberDraws drawMembers(const PondModel& model, int members, int days, std::uint64_t seed) {
    MemberDraws draws;
    draws.inputs = uncertainInputs(model);
    const WeatherDays span = weatherDays(model, days);
    const std::size_t inputs = draws.inputs.size();
    // The inputs come first, so that their draws do not depend on the days.
    const std::size_t row = inputs + kWeatherScores * static_cast<std::size_t>(span.last - span.first + 1);
    const std::vector<double> scores = normalScores(members, static_cast<int>(row), seed);
    const Eigen::MatrixXd factor = choleskyFactor(correlations(draws.inputs));
    for (int i = 0; i < members; ++i) {
        const std::span<const double> own = std::span(scores).subspan(static_cast<std::size_t>(i) * row, row);
        drawValues(draws.inputs, factor, own.first(inputs), draws.values.emplace_back(inputs));
        draws.weatherScores.emplace_back(own.begin() + static_cast<std::ptrdiff_t>(inputs), own.end());
    }
    return draws;
}

std::vector<WeatheredMember> weatheredMembers(const PondModel& model, const MemberDraws& draws, int days,
                                              int threads, const std::stop_token& stop) {
    const WeatherDays span = weatherDays(model, days);
    const std::vector<WeatherScatter> scatter = weatherScatter(model.pond, span.first, span.last);
    const MemberSource source = memberSource(model);
    std::vector<WeatheredMember> members(draws.values.size());
    static_cast<void>(forEachIndex(members.size(), threads, stop, [&](std::size_t i) {
        members[i] = weathered(memberOf(model, source, draws.inputs, draws.values[i]), scatter,
                               draws.weatherScores[i]);
    }));
    return members;
}

bool balanceMembers(const PondModel& model, std::span<WeatheredMember> members, int threads,
                    const std::stop_token& stop, const std::function<void()>& packDone) {
    const std::size_t packs = packsOf(members.size());
    const BalanceSlopes slopes = balanceSlopes(model, stop);
    const std::size_t done = forEachIndex(packs, threads, stop, [&](std::size_t pack) {
        balanceOnePack(model, slopes, membersOfPack(members, pack), stop);
        if (packDone) {
            packDone();
        }
    });
    return done == packs && !stop.stop_requested();
}

double EnsembleResult::shareOf(const std::vector<std::uint8_t>& holds) const {
    if (weights.empty()) {
        return holds.empty() ? 0.0 : plainShare(holds);
    }
    double sum = 0.0;
    for (std::size_t i = 0; i < holds.size(); ++i) {
        sum += holds[i] == 1 ? weights[i] : 0.0;
    }
    return sum / std::accumulate(weights.begin(), weights.end(), 0.0);
}

DrawnMembers drawnMembers(const PondModel& model, const EnsembleOptions& options, const RunControl& control) {
    constexpr int kMostTimes = 4;
    requireRange("members", options.members, 1, kMostMembers, "members");
    const int threads = threadsFor(options.threads);
    const bool counts = options.past && options.balance && options.members > 1 && countsPast(model);
    DrawnMembers out;
    std::vector<double> likelihoods;
    // A trial takes two days, a balance mostly three to five trials, and the past its nights.
    const double perMember = options.balance ? 10.0 + (counts ? kPastNights.value : 0.0) : 1.0;
    Reporter reporter(control, perMember * options.members);
    for (int count = options.members;; count *= 2) {
        const std::size_t first = out.members.size();
        out.draws = drawMembers(model, count, options.days, options.seed);
        const MemberDraws rows = rowsFrom(out.draws, first);
        std::vector<WeatheredMember> more =
            weatheredMembers(model, rows, options.days, threads, control.stop);
        if (control.stop.stop_requested() ||
            (options.balance && !balanceMembers(model, more, threads, control.stop,
                                                [&] { reporter.done(10.0 * static_cast<double>(kPack)); }))) {
            return {};
        }
        if (counts) {
            const std::vector<double> own =
                pastLikelihoods(model, rows, more, first, options.seed, threads, control.stop);
            if (own.empty()) {
                return {};
            }
            likelihoods.insert(likelihoods.end(), own.begin(), own.end());
        }
        out.members.insert(out.members.end(), std::make_move_iterator(more.begin()),
                           std::make_move_iterator(more.end()));
        out.weights = weightsOf(likelihoods);
        const auto members = static_cast<double>(count);
        out.effective = out.weights.empty() ? members : effectiveSize(out.weights);
        const double wanted = std::min(kLeastEffective.value, 0.5 * static_cast<double>(options.members));
        if (out.effective >= wanted - 1e-9 ||
            2 * count > std::min(kMostTimes * options.members, kMostMembers)) {
            return out;
        }
    }
}

std::vector<WeatheredMember> balancedMembers(const PondModel& model, const EnsembleOptions& options,
                                             const RunControl& control) {
    EnsembleOptions asked = options;
    if (options.past && countsPast(model)) {
        asked.members = std::min(2 * options.members, kMostMembers);
    }
    const DrawnMembers drawn = drawnMembers(model, asked, control);
    if (drawn.members.empty()) {
        return {};
    }
    const auto count = static_cast<std::size_t>(options.members);
    std::vector<WeatheredMember> out;
    if (drawn.weights.empty()) {
        out.assign(drawn.members.begin(), drawn.members.begin() + options.members);
        return out;
    }
    for (const std::size_t i : resampled(drawn.weights, drawn.members.size(), count)) {
        out.push_back(drawn.members[i]);
    }
    return out;
}

EnsembleRamp ensembleRamp(const RampRun& run) {
    return {run.name, run.schedule, run.name == "do-nothing", run.surfaceAir};
}

EnsembleResult runMembers(const PondModel& model, const std::vector<EnsembleRamp>& ramps,
                          const EnsembleOptions& options, const RunControl& control) {
    requireRange("members", options.members, 1, kMostMembers, "members");
    requireRange("days", options.days, 1, kMostDays, "days");
    const int threads = threadsFor(options.threads);
    EnsembleResult result;
    result.seed = options.seed;
    result.asked = options.members;
    const auto stopped = [&] {
        result.end = EnsembleEnd::Cancelled;
        result.message = "The members were stopped before their runs were done.";
        result.factors.clear();
        result.ramps.clear();
        return result;
    };
    const bool isKnown = hasMembers(options);
    // A balance with the nights of the past takes about as long as a run of two weeks.
    const double perRun = options.days * (options.endStates ? 3.0 : 1.0),
                 before = isKnown || !options.balance ? 0.0 : 16.0,
                 all = static_cast<double>(ramps.size()) * perRun + before;
    RunControl drawing{control.stop, {}};
    if (control.progress) {
        drawing.progress = [&](double share) { control.progress(share * before / all); };
    }
    DrawnMembers drawn =
        isKnown ? knownMembers(model, options, control) : drawnMembers(model, options, drawing);
    if (control.stop.stop_requested() || drawn.members.empty()) {
        return stopped();
    }
    std::vector<WeatheredMember>& members = drawn.members;
    result.members = static_cast<int>(members.size());
    result.weights = drawn.weights;
    result.effective = drawn.effective;
    if (options.balance) {
        for (const WeatheredMember& one : members) {
            result.factors.push_back(factorsOf(one.member.parameters, 0));
        }
        result.atFactorEnd =
            static_cast<int>(std::count_if(result.factors.begin(), result.factors.end(), isAtFactorEnd));
    }
    const std::size_t packs = packsOf(members.size());
    std::vector<RampWork> work;
    result.ramps.resize(ramps.size());
    for (std::size_t r = 0; r < ramps.size(); ++r) {
        MemberPlan plan = memberPlan(model, ramps[r], options.days, options.endStates);
        if (const RampEnsemble* known = knownRamp(options, ramps[r], plan)) {
            result.ramps[r] = *known;
            result.ramps[r].name = ramps[r].name;
        } else {
            MemberTrace trace(members.size(), plan);
            work.push_back({r, std::move(plan), std::move(trace), 0.0});
        }
    }
    RunControl running{control.stop, {}};
    if (control.progress) {
        running.progress = [&](double share) { control.progress((before + (all - before) * share) / all); };
    }
    Reporter reporter(running, std::max(1.0, static_cast<double>(packs * work.size()) * perRun));
    const std::size_t tasks = packs * work.size();
    // Sums may differ by rounding from those of the whole, which alone decide close to the share.
    constexpr double kSurely = 1.0 + 1e-9;
    const double mostLethal =
        options.mostLethal.value_or(1.0) * static_cast<double>(members.size()) * kSurely;
    std::atomic<bool> isRefused = false;
    std::mutex summing;
    const std::size_t done = forEachIndex(tasks, threads, control.stop, [&](std::size_t task) {
        if (isRefused) {
            return;
        }
        const std::size_t pack = task / work.size();
        RampWork& ramp = work[task % work.size()];
        const std::span<WeatheredMember> own = membersOfPack(std::span(members), pack);
        kernel().runPack(model, ramp.plan, packOf<Lanes>(own), pack * kPack, own.size(), ramp.trace,
                         control.stop);
        if (options.mostLethal) {
            const double more = lethalWeight(ramp.trace, result.weights, pack * kPack, own.size());
            const std::scoped_lock lock(summing);
            ramp.lethal += more;
            isRefused = isRefused || ramp.lethal > mostLethal;
        }
        reporter.done(perRun);
    });
    if (done < tasks || control.stop.stop_requested()) {
        return stopped();
    }
    if (isRefused) {
        result.end = EnsembleEnd::Refused;
        result.message = "More of the members went below the lethal line than were wanted at most.";
        result.ramps.clear();
        return result;
    }
    for (RampWork& one : work) {
        const auto& finite = one.trace.isFinite;
        const auto bad = std::find(finite.begin(), finite.end(), 0);
        if (bad != finite.end()) {
            result.ramps.clear();
            result.end = EnsembleEnd::NotFinite;
            result.message = "The oxygen of member " + std::to_string(bad - finite.begin() + 1) +
                             " of ramp \"" + ramps[one.ramp].name + "\" is not a finite number at some hour.";
            return result;
        }
        result.ramps[one.ramp] = summed(result, ramps[one.ramp], one.plan, one.trace);
    }
    result.end = EnsembleEnd::Completed;
    return result;
}

}  // namespace engine
