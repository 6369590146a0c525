#include "engine/advice/telling_readings.h"

#include "engine/advice/constants_advice.h"
#include "engine/ensemble/chances.h"
#include "engine/ensemble/ensemble.h"
#include "engine/ensemble/site_visit.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace engine {
namespace {

constexpr std::size_t kReadings = 2;

/// Members in rising order of one input, with their weights and whether the ramp takes them below the lethal
/// line.
struct Ordered {
    std::vector<double> value, weight, lethal;
    /// Weighted share that is lethal of the members from one to before another.
    [[nodiscard]] double chance(std::size_t from, std::size_t until) const {
        double all = 0.0, below = 0.0;
        for (std::size_t i = from; i < until; ++i) {
            all += weight[i];
            below += weight[i] * lethal[i];
        }
        return all > 0.0 ? below / all : 0.0;
    }
};

Ordered orderedBy(const MemberDraws& draws, std::size_t input, const EnsembleResult& ensemble,
                  const RampEnsemble& members, double lethal) {
    std::vector<std::size_t> order(members.lowest.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return draws.values[a][input] < draws.values[b][input];
    });
    Ordered out;
    for (const std::size_t i : order) {
        out.value.push_back(draws.values[i][input]);
        out.weight.push_back(ensemble.weights.empty() ? 1.0 : ensemble.weights[i]);
        out.lethal.push_back(static_cast<double>(members.lowest[i]) < lethal ? 1.0 : 0.0);
    }
    return out;
}

/// From which value on the answer turns: the widest part of the members, from one end, on the other side of
/// the limit.
std::optional<double> turningValue(const Ordered& members, bool fromBelow, bool isNo, double limit) {
    constexpr int kParts = 10;
    const std::size_t count = members.value.size();
    for (int part = kParts - 1; part >= 1; --part) {
        const std::size_t some = count * static_cast<std::size_t>(part) / kParts;
        if (some == 0) {
            break;
        }
        const double chance = fromBelow ? members.chance(0, some) : members.chance(count - some, count);
        if ((chance <= limit) == isNo) {
            return fromBelow ? members.value[some - 1] : members.value[count - some];
        }
    }
    return std::nullopt;
}

}  // namespace

std::vector<TellingReading> tellingReadings(const Comparison& comparison, std::size_t run,
                                            double limit_percent) {
    const RampEnsemble* members = membersOf(comparison, run);
    if (members == nullptr) {
        return {};
    }
    const EnsembleResult& ensemble = *comparison.ensemble;
    const double lethal = comparison.model.parameters.thresholds.lethal, limit = 0.01 * limit_percent;
    const MemberDraws draws = drawMembers(comparison.model, ensemble.members, comparison.days, ensemble.seed);
    const bool isNo = members->chanceBelowLethal > limit;
    std::vector<std::pair<double, TellingReading>> found;
    for (std::size_t k = 0; k < draws.inputs.size(); ++k) {
        const UncertainInput& input = draws.inputs[k];
        if (!input.meter || input.measured || measuringWay(input.name) == nullptr) {
            continue;
        }
        const Ordered ordered = orderedBy(draws, k, ensemble, *members, lethal);
        const std::size_t half = ordered.value.size() / 2;
        const double below = ordered.chance(0, half), above = ordered.chance(half, ordered.value.size());
        if (std::fabs(below - above) < kTellingHalves.value) {
            continue;
        }
        // Where the answer is no, the better half can turn it; else the worse one.
        const bool fromBelow = (below < above) == isNo;
        found.emplace_back(
            std::fabs(below - above),
            TellingReading{input.name, input.unit, turningValue(ordered, fromBelow, isNo, limit), fromBelow});
    }
    std::stable_sort(found.begin(), found.end(),
                     [](const auto& a, const auto& b) { return a.first > b.first; });
    std::vector<TellingReading> out;
    for (std::size_t i = 0; i < std::min(found.size(), kReadings); ++i) {
        out.push_back(found[i].second);
    }
    return out;
}

}  // namespace engine
