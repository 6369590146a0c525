#include "engine/plan/plan_members.h"

#include "engine/base/parallel.h"
#include "engine/base/units.h"
#include "engine/plan/constants_plan.h"
#include "engine/run/kernel.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace engine {
namespace {

constexpr double kTouch = 1e-3;  // [s]; sums of steps come this near to a whole hour

/// The steps of a plan between two whole hours.
std::span<const MemberStep> stepsBetween(const MemberPlan& plan, double start, double from, double until) {
    double time = start;
    std::size_t first = plan.steps.size(), last = plan.steps.size();
    for (std::size_t i = 0; i < plan.steps.size(); ++i) {
        if (time > from - kTouch && first == plan.steps.size()) {
            first = i;
        }
        if (time > until - kTouch) {
            last = i;
            break;
        }
        time += plan.steps[i].dt;
    }
    return std::span(plan.steps).subspan(first, last - std::min(first, last));
}

}  // namespace

PlanMembers::PlanMembers(const PondModel& model, int members, int days, std::uint64_t seed, int threads,
                         const std::stop_token& stop)
    : m_model(model), m_days(days), m_threads(threads), m_stop(stop) {
    EnsembleOptions options;
    options.days = days;
    options.members = members;
    options.seed = seed;
    options.threads = threads;
    m_members = balancedMembers(model, options, {stop, {}});
    for (std::size_t pack = 0; pack < packsOf(m_members.size()); ++pack) {
        m_packs.push_back(packOf<Lanes>(membersOfPack(std::span(m_members), pack)));
    }
    if (m_members.empty()) {
        return;
    }
    m_nothing = runPlan(start(), {"do-nothing", {}, true}, endOfNight(days));
    m_ready = !stop.stop_requested();
}

double PlanMembers::endOfNight(int night) {
    return night * kDay + kDay / 2;
}

MembersRunState PlanMembers::start() const {
    MembersRunState at;
    at.time = m_model.startTime;
    at.packs.resize(m_packs.size());
    for (auto& pack : at.packs) {
        pack.lows.assign(static_cast<std::size_t>(m_days), Lanes(std::numeric_limits<double>::infinity()));
    }
    return at;
}

MembersRunState PlanMembers::run(const MembersRunState& from, const Schedule& schedule, double until,
                                 const SurfaceAir& surfaceAir) const {
    return runPlan(from, {"planned", schedule, false, surfaceAir}, until);
}

MembersRunState PlanMembers::runPlan(const MembersRunState& from, const EnsembleRamp& ramp,
                                     double until) const {
    const MemberPlan plan = memberPlan(m_model, ramp, m_days, false);
    const std::span<const MemberStep> steps = stepsBetween(plan, m_model.startTime, from.time, until);
    MembersRunState at = from;
    at.time = until;
    static_cast<void>(forEachIndex(m_packs.size(), m_threads, m_stop, [&](std::size_t pack) {
        kernel().goOn(m_model, steps, m_packs[pack], at.packs[pack], m_stop);
    }));
    m_memberDays += static_cast<double>(members()) * (until - from.time) / kDay;
    return at;
}

HarmCount PlanMembers::harm(const MembersRunState& at, int firstNight, int lastNight) const {
    const OxygenThresholds& thresholds = m_model.parameters.thresholds;
    HarmCount count;
    count.members = members();
    for (int i = 0; i < members(); ++i) {
        const auto pack = static_cast<std::size_t>(i) / kPack;
        const int k = static_cast<int>(static_cast<std::size_t>(i) % kPack);
        double lowest = std::numeric_limits<double>::infinity(), without = lowest;
        bool deepened = false;
        for (int night = 0; night < m_days; ++night) {
            const double nothing = lane(m_nothing.packs[pack].lows[static_cast<std::size_t>(night)], k);
            without = std::min(without, nothing);
            if (night + 1 < firstNight || night + 1 > lastNight) {
                continue;
            }
            const double low = lane(at.packs[pack].lows[static_cast<std::size_t>(night)], k);
            lowest = std::min(lowest, low);
            deepened = deepened || (low < thresholds.stress && low < nothing - kNoWorse.value);
        }
        const bool stress = lowest < thresholds.stress && without >= thresholds.stress;
        const bool lethal = lowest < thresholds.lethal && without >= thresholds.lethal;
        count.addedStress += stress ? 1 : 0;
        count.addedLethal += lethal ? 1 : 0;
        count.deepened += deepened ? 1 : 0;
        count.any += stress || lethal || deepened ? 1 : 0;
    }
    return count;
}

}  // namespace engine
