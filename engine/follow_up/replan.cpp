#include "engine/follow_up/replan.h"

#include "engine/base/error.h"
#include "engine/base/units.h"
#include "engine/follow_up/morning.h"
#include "engine/follow_up/ramp_steps.h"
#include "engine/ramps/log.h"

#include <algorithm>

namespace engine {

namespace {

/// The time of the day's last reading by `at` that a profile can be made of; `at` if there is none.
/// @param readings  In force.
LocalTime lastProfile(const std::vector<Reading>& readings, LocalTime at) {
    const auto today = std::chrono::floor<std::chrono::days>(at);
    std::optional<LocalTime> last;
    for (const Reading& reading : readings) {
        if (reading.depth && reading.oxygen && reading.temperature && *reading.at <= at &&
            *reading.at >= today) {
            last = std::max(*reading.at, last.value_or(*reading.at));
        }
    }
    return last.value_or(at);
}

}  // namespace

int daysOfVerdict(const DawnDecision& decision) {
    switch (decision.verdict) {
        case DawnVerdict::Go:
            return decision.runsToday ? 0 : 1;
        case DawnVerdict::Hold:
        case DawnVerdict::Back:
            return 1;
        case DawnVerdict::Stop:
            return kDaysAfterStop;
    }
    return 1;
}

PlanMornings morningsOf(const Today& today) {
    PlanMornings out;
    out.limits = today.limits;
    out.isUnderWay = today.morning.isStarted;
    const auto days = static_cast<std::size_t>(daysOfVerdict(today.decision));
    for (std::size_t i = 0; i < std::min(days, today.steps.size()); ++i) {
        out.firstDays.push_back(today.steps[i].minutes);
    }
    const bool isReduced = today.decision.verdict >= DawnVerdict::Back ||
                           (today.restart && today.restart->restart == Restart::ReducedStart);
    if (isReduced && days < today.steps.size()) {
        out.most = today.steps[days].minutes;
    }
    return out;
}

Plan replanned(const Today& today, const TodayOptions& options, const RunControl& control) {
    ensure(today.isDecided, "a schedule is planned anew after the morning's decision");
    Plan none;
    const Pond& known = today.model.pond;
    const std::vector<Reading> readings = readingsInForce(known);
    const std::optional<Profile> profile = presentProfile(known, readings, lastProfile(readings, today.at));
    if (!profile) {
        none.message =
            "A new schedule needs readings of temperature and oxygen at two or more depths of today, within "
            "3 h.";
        return none;
    }
    Pond now = presentPond(known, *profile);
    if (today.model.bottom.exists()) {
        Quantity debt(today.model.debt_kg * kGramPerKilogram / today.model.bottom.volume);
        debt.confidence = Confidence::Guessed;
        debt = known.bottom.oxygenDebt.value_or(debt);
        debt.value *= today.debtLeft;
        for (std::optional<double>* point : {&debt.low, &debt.high}) {
            if (*point) {
                **point *= today.debtLeft;
            }
        }
        now.bottom.oxygenDebt = debt;
    }
    PlanOptions asked;
    asked.members = std::max(kReplanMembers, fewestMembers(asked.chance));
    asked.seed = options.seed;
    asked.threads = options.threads;
    asked.resolution = options.resolution;
    asked.isBrief = true;
    asked.mornings = morningsOf(today);
    const std::vector<std::string> faults = planFaults(now, asked);
    if (!faults.empty()) {
        none.message = faults.front();
        return none;
    }
    return makePlan(now, asked, control);
}

}  // namespace engine
