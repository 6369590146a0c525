#include "engine/advice/start_conditions.h"

#include "engine/advice/constants_advice.h"
#include "engine/ensemble/chances.h"
#include "engine/plan/constants_plan.h"
#include "engine/plan/plan_sensitivity.h"
#include "engine/ramps/hold_rules.h"
#include "engine/run/balance.h"
#include "engine/run/shares.h"
#include "engine/run/triage.h"

#include <algorithm>

namespace engine {
namespace {

/// The days before the start on which an algaecide went in, the fewest; nothing without one.
std::optional<double> daysSinceAlgaecide(const Pond& pond) {
    std::optional<double> fewest;
    for (const HeldSpan& span : heldByEvents(pond)) {
        if (span.reason == HoldReason::Algaecide && span.first <= 1) {
            const double days = 1.0 - span.first;
            fewest = fewest ? std::min(*fewest, days) : days;
        }
    }
    return fewest;
}

/// A computed low under which the ramp's own morning rule stops the air.
std::optional<UnmetCondition> stoppedBy(const Comparison& comparison, const Advice& advice) {
    const PondModel& model = comparison.model;
    const DawnLimits limits = dawnLimits(model, model.profile.temperature.front());
    const RampRun& run = comparison.runs[advice.run];
    const int last = std::min(advice.daysToSustained.value_or(comparison.days), comparison.days);
    for (const DayRow& row : run.days) {
        if (row.day <= last && row.lowest < limits.back) {
            return UnmetCondition{StartCondition::MorningRules, row.lowest, limits.back, row.day};
        }
    }
    return std::nullopt;
}

}  // namespace

StartLimits startLimits(const Pond& pond) {
    StartLimits out{kLethalWith_percent.value, kLethalAlone_percent.value, kLethalAdded_percent.value,
                    kDaysAfterAlgaecide.value};
    if (pond.startRules) {
        const auto take = [](double& to, const MaybeQuantity& from) { to = from ? from->value : to; };
        take(out.lethal_percent, pond.startRules->lethal_percent);
        take(out.lethalAlone_percent, pond.startRules->lethalAlone_percent);
        take(out.lethalAdded_percent, pond.startRules->lethalAdded_percent);
        take(out.daysAfterAlgaecide, pond.startRules->daysAfterAlgaecide);
    }
    return out;
}

std::vector<UnmetCondition> unmetBy(const Comparison& comparison, const Advice& advice, bool hasSurfaceAir) {
    const PondModel& model = comparison.model;
    const StartLimits limits = startLimits(model.pond);
    const RampRun &run = comparison.runs[advice.run], &nothing = comparison.runs.front();
    std::vector<UnmetCondition> out;
    const auto atMost = [&](StartCondition condition, double share, double limit) {
        const double value = 100.0 * share;
        if (value > limit + 1e-9) {
            out.push_back({condition, value, limit, 0});
        }
    };
    const Chances chances = chancesOf(comparison, run), alone = chancesOf(comparison, nothing);
    atMost(StartCondition::LethalWith, chances.belowLethal, limits.lethal_percent);
    if (!hasSurfaceAir) {
        atMost(StartCondition::LethalAlone, alone.belowLethal, limits.lethalAlone_percent);
    }
    atMost(StartCondition::LethalAdded, chances.belowLethal - alone.belowLethal, limits.lethalAdded_percent);
    if (const MaybeQuantity dawn = balanceTarget(model).dawnOxygen) {
        const double go = dawnLimits(model, model.profile.temperature.front()).go;
        if (dawn->value < go) {
            out.push_back({StartCondition::DawnReading, dawn->value, go, 0});
        }
    }
    const auto since = daysSinceAlgaecide(model.pond);
    if (since && *since < limits.daysAfterAlgaecide) {
        out.push_back({StartCondition::Algaecide, *since, limits.daysAfterAlgaecide, 0});
    }
    if (addsToxicants(model, run, nothing)) {
        out.push_back({StartCondition::Gases, 0.0, 0.0, 0});
    }
    if (const auto stopped = stoppedBy(comparison, advice)) {
        out.push_back(*stopped);
    }
    if (endsLower(run, nothing)) {
        out.push_back({StartCondition::EndState, *run.endState, *nothing.endState, 0});
    }
    const Triage triage = triageOf(model);
    if (triage.season == StartSeason::Freezing) {
        out.push_back({StartCondition::Frost, model.profile.temperature.front(), 4.0, 0});
    }
    return out;
}

bool endsLower(const RampRun& run, const RampRun& nothing) {
    return run.endState && nothing.endState && *run.endState < *nothing.endState - kNoWorse.value;
}

bool isOfOxygen(StartCondition condition) {
    return condition == StartCondition::LethalWith || condition == StartCondition::LethalAlone ||
           condition == StartCondition::LethalAdded || condition == StartCondition::MorningRules;
}

}  // namespace engine
