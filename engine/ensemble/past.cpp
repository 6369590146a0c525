#include "engine/ensemble/past.h"

#include "engine/base/parallel.h"
#include "engine/base/units.h"
#include "engine/ensemble/constants_past.h"
#include "engine/ensemble/draws.h"
#include "engine/pond/pond_words.h"
#include "engine/run/balance.h"
#include "engine/run/kernel.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace engine {
namespace {

constexpr int kNights = static_cast<int>(kPastNights.value);
constexpr std::uint64_t kOwnSequence = 500000003;  // apart from the members' own draws

/// The lowest level under which the fish water stays for some hours of a night [g/m^3].
/// @param night  From 0. @param member  Of the trace.
double levelOf(const MemberTrace& trace, const MemberPlan& plan, int night, std::size_t member) {
    constexpr auto kSpan = static_cast<std::size_t>(kKillHours.value);
    const double from = (night + 0.5) * kDay, until = from + kDay;
    double lowest = 1e300;
    for (std::size_t hour = 0; hour + kSpan < plan.hours.size(); ++hour) {
        if (plan.hours[hour] < from || plan.hours[hour + kSpan] > until) {
            continue;
        }
        double highest = 0.0;
        for (std::size_t k = hour; k <= hour + kSpan; ++k) {
            highest = std::max(highest, static_cast<double>(trace.hours[k * trace.members + member]));
        }
        lowest = std::min(lowest, highest);
    }
    return lowest;
}

/// Members as drawn, but with the central debt: what lies below has no part in nights without air.
std::vector<WeatheredMember> pastMembers(const PondModel& model, const MemberDraws& draws,
                                         std::span<const WeatheredMember> members, std::size_t first,
                                         std::uint64_t seed, int threads, const std::stop_token& stop) {
    const WeatherDays span = weatherDays(model, kNights);
    // Weather of the past is not forecast: all days scatter as a forecast's last ones.
    std::vector<WeatherScatter> scatter = weatherScatter(model.pond, span.first, span.first + 30);
    scatter.assign(static_cast<std::size_t>(span.last - span.first + 1), scatter.back());
    const auto row = kWeatherScores * scatter.size();
    const std::vector<double> scores =
        normalScores(static_cast<int>(first + members.size()), static_cast<int>(row), seed + kOwnSequence);
    const MemberSource source = memberSource(model);
    std::vector<WeatheredMember> out(members.size());
    static_cast<void>(forEachIndex(members.size(), threads, stop, [&](std::size_t i) {
        std::vector<double> values = draws.values[i];
        for (std::size_t k = 0; k < values.size(); ++k) {
            if (draws.inputs[k].isDebt) {
                values[k] = draws.inputs[k].spread.quantile(0.5);
            }
        }
        Member member = memberOf(model, source, draws.inputs, values);
        setFactors(member.parameters, factorsOf(members[i].member.parameters, 0));
        out[i] = weathered(std::move(member), scatter, std::span(scores).subspan((first + i) * row, row));
    }));
    return out;
}

/// Years before the first day in which the pond file or its log tells of dead fish.
std::vector<Date> killsOf(const Pond& pond) {
    std::vector<Date> kills = pond.history.kills;
    const std::chrono::local_days first(*pond.place.firstDay);
    for (const Event& event : pond.events) {
        if (event.at && *event.at < first && eventKind(event.kind) == EventKind::Kill) {
            kills.push_back(Date(std::chrono::floor<std::chrono::days>(*event.at)));
        }
    }
    std::erase_if(kills, [&](const Date& date) {
        const auto ago = first - std::chrono::local_days(date);
        return ago.count() < 0 || static_cast<double>(ago.count()) > 365.25 * kYearsBack.value;
    });
    return kills;
}

}  // namespace

bool countsPast(const PondModel& model) {
    return !dawnReading(model);
}

double chanceBelow(std::span<const double> levels, double line) {
    const auto count = static_cast<double>(levels.size());
    const double mean = std::accumulate(levels.begin(), levels.end(), 0.0) / count;
    const double square =
        std::accumulate(levels.begin(), levels.end(), 0.0,
                        [mean](double sum, double level) { return sum + (level - mean) * (level - mean); });
    const double scatter = std::max(std::sqrt(square / std::max(count - 1.0, 1.0)), kLowScatter.value);
    return 0.5 * std::erfc((mean - line) / (scatter * std::sqrt(2.0)));
}

double pastLikelihood(const Pond& pond, const PastNights& nights) {
    // Of one spell that nobody noticed.
    const double now = std::log1p(-kSeenKill.value * nights.lethal),
                 then = std::log1p(-kSeenKill.value * nights.kill);
    double sum = kNightsBefore.value / kNightsOfSpell.value * now;
    const double quietYear = std::exp(kLikeNights.value / kNightsOfSpell.value * then);
    const std::vector<Date> kills = killsOf(pond);
    if (pond.history.yearsWithoutKill) {
        const double years = std::min(pond.history.yearsWithoutKill->value, kYearsBack.value);
        sum += years * std::log(kOtherPond.value + (1.0 - kOtherPond.value) * quietYear);
    }
    return sum + static_cast<double>(kills.size()) *
                     std::log(kOtherPond.value + (1.0 - kOtherPond.value) * (1.0 - quietYear));
}

std::vector<double> pastLikelihoods(const PondModel& model, const MemberDraws& draws,
                                    std::span<const WeatheredMember> members, std::size_t first,
                                    std::uint64_t seed, int threads, const std::stop_token& stop) {
    std::vector<WeatheredMember> own = pastMembers(model, draws, members, first, seed, threads, stop);
    const MemberPlan plan = pastPlan(model, kNights);
    MemberTrace trace(own.size(), plan);
    const std::size_t packs = packsOf(own.size());
    const std::size_t done =
        stop.stop_requested() ? 0 : forEachIndex(packs, threads, stop, [&](std::size_t pack) {
            const std::span<WeatheredMember> some = membersOfPack(std::span(own), pack);
            kernel().runPack(model, plan, packOf<Lanes>(some), pack * kPack, some.size(), trace, stop);
        });
    if (done < packs || stop.stop_requested()) {
        return {};
    }
    std::vector<double> out;
    for (std::size_t i = 0; i < own.size(); ++i) {
        std::vector<double> lows, levels;
        for (int night = 0; night < kNights; ++night) {
            lows.push_back(
                static_cast<double>(trace.lows[static_cast<std::size_t>(night) * trace.members + i]));
            levels.push_back(levelOf(trace, plan, night, i));
        }
        const double lethal = model.parameters.thresholds.lethal;
        out.push_back(pastLikelihood(
            model.pond, {chanceBelow(lows, lethal), chanceBelow(levels, kKillShare.value * lethal)}));
    }
    return out;
}

std::vector<double> weightsOf(std::span<const double> likelihoods) {
    constexpr double kSame = 1e-9;
    const auto [least, most] = std::minmax_element(likelihoods.begin(), likelihoods.end());
    if (likelihoods.empty() || *most - *least < kSame) {
        return {};
    }
    std::vector<double> weights;
    for (const double likelihood : likelihoods) {
        weights.push_back(std::exp(likelihood - *most));
    }
    const double mean =
        std::accumulate(weights.begin(), weights.end(), 0.0) / static_cast<double>(weights.size());
    for (double& weight : weights) {
        weight /= mean;
    }
    return weights;
}

double effectiveSize(std::span<const double> weights) {
    const double sum = std::accumulate(weights.begin(), weights.end(), 0.0);
    const double square = std::inner_product(weights.begin(), weights.end(), weights.begin(), 0.0);
    return square > 0.0 ? sum * sum / square : 0.0;
}

std::vector<std::size_t> resampled(std::span<const double> weights, std::size_t members, std::size_t count) {
    std::vector<std::size_t> out;
    const double all =
        weights.empty() ? static_cast<double>(members) : std::accumulate(weights.begin(), weights.end(), 0.0);
    double passed = weights.empty() ? 1.0 : weights[0];
    std::size_t at = 0;
    for (std::size_t i = 0; i < count; ++i) {
        const double wanted = (static_cast<double>(i) + 0.5) / static_cast<double>(count) * all;
        while (passed < wanted && at + 1 < members) {
            ++at;
            passed += weights.empty() ? 1.0 : weights[at];
        }
        out.push_back(at);
    }
    return out;
}

}  // namespace engine
