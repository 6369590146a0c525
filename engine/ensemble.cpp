#include "engine/ensemble.h"

#include "engine/draws.h"
#include "engine/error.h"
#include "engine/parallel.h"
#include "engine/prepare.h"

#include <algorithm>
#include <cmath>
#include <mutex>
#include <thread>

namespace engine {
namespace {

using Lanes = Pack<4>;
constexpr std::size_t kPack = kLanes<Lanes>;

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

std::vector<WeatheredMember> membersOf(const PondModel& model, const MemberDraws& draws, int days) {
    const WeatherDays span = weatherDays(model, days);
    const std::vector<WeatherScatter> scatter = weatherScatter(model.pond, span.first, span.last);
    const MemberSource source = memberSource(model);
    std::vector<WeatheredMember> members;
    for (std::size_t i = 0; i < draws.values.size(); ++i) {
        WeatheredMember one{memberOf(model, source, draws.inputs, draws.values[i]), {}};
        one.offsets = weatherOffsets(scatter, draws.weatherScores[i], one.member.windFactor);
        one.offsets.push_back({0.0, one.member.windFactor, 0.0});
        members.push_back(std::move(one));
    }
    return members;
}

std::span<WeatheredMember> packMembers(std::vector<WeatheredMember>& members, std::size_t pack) {
    const std::size_t first = pack * kPack;
    return std::span(members).subspan(first, std::min(kPack, members.size() - first));
}

void balanceMembers(const PondModel& model, const BalanceSlopes& slopes, std::span<WeatheredMember> members,
                    const std::stop_token& stop) {
    MemberPack<Lanes> pack = packOf<Lanes>(members);
    std::array<double, kPack> dawn{};
    for (std::size_t k = 0; k < kPack; ++k) {
        dawn[k] = members[std::min(k, members.size() - 1)].member.dawnOxygen.value_or(0.0);
    }
    balancePack(model, slopes, dawn, pack, stop);
    for (std::size_t k = 0; k < members.size(); ++k) {
        Parameters<double>& own = members[k].member.parameters;
        own.respirationFactor = lane(pack.parameters.respirationFactor, static_cast<int>(k));
        own.photosynthesisFactor = lane(pack.parameters.photosynthesisFactor, static_cast<int>(k));
    }
}

int threadsOf(const EnsembleOptions& options) {
    return options.threads > 0 ? options.threads
                               : std::max(1, static_cast<int>(std::thread::hardware_concurrency()));
}

/// Balances all members, pack by pack; false after a stop.
bool balanceAll(const PondModel& model, std::vector<WeatheredMember>& members, int threads,
                const std::stop_token& stop, const std::function<void()>& packDone) {
    const std::size_t packs = (members.size() + kPack - 1) / kPack;
    const BalanceSlopes slopes = balanceSlopes(model);
    const std::size_t done = forEachIndex(packs, threads, stop, [&](std::size_t pack) {
        balanceMembers(model, slopes, packMembers(members, pack), stop);
        packDone();
    });
    return done == packs && !stop.stop_requested();
}

bool isAtFactorEnd(const WeatheredMember& one) {
    const auto isEnd = [](double factor) {
        return factor < kLeastBalance * (1.0 + 1e-9) || factor > kGreatestBalance * (1.0 - 1e-9);
    };
    return isEnd(one.member.parameters.respirationFactor) ||
           isEnd(one.member.parameters.photosynthesisFactor);
}

double share(const std::vector<std::uint8_t>& flags) {
    return static_cast<double>(std::count(flags.begin(), flags.end(), 1)) / static_cast<double>(flags.size());
}

RampEnsemble summed(const std::string& name, const MemberPlan& plan, MemberTrace& trace) {
    RampEnsemble out;
    out.name = name;
    out.hours = plan.hours;
    const std::size_t members = trace.members;
    out.lowest.assign(members, std::numeric_limits<float>::infinity());
    for (std::size_t i = 0; i < trace.lows.size(); ++i) {
        out.lowest[i % members] = std::min(out.lowest[i % members], trace.lows[i]);
    }
    for (std::size_t hour = 0; hour < plan.hours.size(); ++hour) {
        out.fishWater.push_back(percentilesOf(std::span(trace.hours).subspan(hour * members, members)));
    }
    for (int night = 0; night < plan.nights; ++night) {
        out.nightLows.push_back(percentilesOf(std::span(trace.lows).subspan(night * members, members)));
    }
    out.chanceBelowStress = share(trace.isBelowStress);
    out.chanceBelowLethal = share(trace.isBelowLethal);
    out.isBelowStress = trace.isBelowStress;
    out.endStates = trace.endStates;
    return out;
}

void addChances(const std::vector<EnsembleRamp>& ramps, EnsembleResult& result) {
    const auto nothing =
        std::find_if(ramps.begin(), ramps.end(), [](const EnsembleRamp& ramp) { return ramp.isDoNothing; });
    if (nothing == ramps.end()) {
        return;
    }
    const auto& without = result.ramps[static_cast<std::size_t>(nothing - ramps.begin())].isBelowStress;
    for (RampEnsemble& ramp : result.ramps) {
        std::size_t added = 0;
        for (std::size_t i = 0; i < without.size(); ++i) {
            added += ramp.isBelowStress[i] == 1 && without[i] == 0 ? 1 : 0;
        }
        ramp.chanceAdded = static_cast<double>(added) / static_cast<double>(without.size());
    }
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

std::vector<WeatheredMember> balancedMembers(const PondModel& model, const EnsembleOptions& options,
                                             const RunControl& control) {
    requireRange("members", options.members, 1, kMostMembers, "members");
    std::vector<WeatheredMember> members =
        membersOf(model, drawMembers(model, options.members, options.days, options.seed), options.days);
    if (options.balance && !balanceAll(model, members, threadsOf(options), control.stop, [] {})) {
        members.clear();
    }
    return members;
}

EnsembleRamp ensembleRamp(const RampRun& run) {
    return {run.name, run.schedule, run.name == "do-nothing"};
}

EnsembleResult runMembers(const PondModel& model, const std::vector<EnsembleRamp>& ramps,
                          const EnsembleOptions& options, const RunControl& control) {
    requireRange("members", options.members, 1, kMostMembers, "members");
    requireRange("days", options.days, 1, 365, "days");
    const int threads = threadsOf(options);
    EnsembleResult result;
    result.seed = options.seed;
    result.members = options.members;
    const auto stopped = [&] {
        result.end = EnsembleEnd::Cancelled;
        result.message = "The members were stopped before their runs were done.";
        return result;
    };
    std::vector<WeatheredMember> members =
        membersOf(model, drawMembers(model, options.members, options.days, options.seed), options.days);
    const std::size_t packs = (members.size() + kPack - 1) / kPack;
    std::vector<MemberPlan> plans;
    std::vector<MemberTrace> traces;
    for (const EnsembleRamp& ramp : ramps) {
        plans.push_back(memberPlan(model, ramp, options.days, options.endStates));
        traces.emplace_back(members.size(), plans.back());
    }
    // A balance is about half a run of two weeks.
    const double perRun = options.days * (options.endStates ? 3.0 : 1.0),
                 perBalance = options.balance ? 6.0 : 0.0;
    Reporter reporter(control,
                      static_cast<double>(packs) * (static_cast<double>(ramps.size()) * perRun + perBalance));
    if (options.balance) {
        if (!balanceAll(model, members, threads, control.stop, [&] { reporter.done(perBalance); })) {
            return stopped();
        }
        result.atFactorEnd = static_cast<int>(std::count_if(members.begin(), members.end(), isAtFactorEnd));
    }
    const std::size_t tasks = packs * ramps.size();
    const std::size_t done = forEachIndex(tasks, threads, control.stop, [&](std::size_t task) {
        const std::size_t pack = task / ramps.size(), ramp = task % ramps.size();
        const std::span<WeatheredMember> own = packMembers(members, pack);
        runPack(model, plans[ramp], packOf<Lanes>(own), pack * kPack, own.size(), traces[ramp], control.stop);
        reporter.done(perRun);
    });
    if (done < tasks || control.stop.stop_requested()) {
        return stopped();
    }
    for (std::size_t r = 0; r < ramps.size(); ++r) {
        const auto& finite = traces[r].isFinite;
        const auto bad = std::find(finite.begin(), finite.end(), 0);
        if (bad != finite.end()) {
            result.end = EnsembleEnd::NotFinite;
            result.message = "The oxygen of member " + std::to_string(bad - finite.begin() + 1) +
                             " of ramp \"" + ramps[r].name + "\" is not a finite number at some hour.";
            return result;
        }
    }
    for (std::size_t r = 0; r < ramps.size(); ++r) {
        result.ramps.push_back(summed(ramps[r].name, plans[r], traces[r]));
    }
    addChances(ramps, result);
    result.end = EnsembleEnd::Completed;
    return result;
}

}  // namespace engine
