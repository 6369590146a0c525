#include "engine/plan/start_conditions.h"

#include "engine/ensemble/chances.h"
#include "engine/plan/constants_plan.h"
#include "engine/plan/constants_start.h"
#include "engine/plan/dawn_rules.h"
#include "engine/plan/plan_sensitivity.h"
#include "engine/ramps/hold_rules.h"
#include "engine/run/air_days.h"
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

std::optional<UnmetCondition> haltedByMornings(const PondModel& model, const RampRun& run) {
    const auto first = firstAirDay(run);
    if (!first) {
        return std::nullopt;
    }
    const DawnLimits limits = dawnLimits(model, model.profile.temperature.front());
    const int last = firstSustainedDay(run).value_or(static_cast<int>(run.days.size()));
    for (const DayRow& row : run.days) {
        if (row.day + 1 < *first || row.day > last) {
            continue;
        }
        if (row.lowest < limits.back) {
            return UnmetCondition{StartCondition::MorningStops, row.lowest, limits.back, row.day};
        }
        if (row.day < last && row.lowest < limits.go && isStepUp(run, row.day + 1)) {
            return UnmetCondition{StartCondition::MorningHolds, row.lowest, limits.go, row.day};
        }
    }
    return std::nullopt;
}

std::vector<UnmetCondition> unmetBy(const Comparison& comparison, std::size_t place) {
    const PondModel& model = comparison.model;
    const StartLimits limits = startLimits(model.pond);
    const RampRun &run = comparison.runs[place], &nothing = comparison.runs.front();
    std::vector<UnmetCondition> out;
    const auto atMost = [&](StartCondition condition, double share, double limit) {
        const double value = 100.0 * share;
        if (value > limit + 1e-9) {
            out.push_back({condition, value, limit, 0});
        }
    };
    const Chances chances = chancesOf(comparison, run), alone = chancesOf(comparison, nothing);
    atMost(StartCondition::LethalWith, chances.belowLethal, limits.lethal_percent);
    if (!(run.surfaceAir.transfer > 0.0)) {
        atMost(StartCondition::LethalAlone, alone.belowLethal, limits.lethalAlone_percent);
    }
    atMost(StartCondition::LethalAdded, chances.belowLethal - alone.belowLethal, limits.lethalAdded_percent);
    if (const std::optional<Reading> dawn = dawnReading(model)) {
        const double go = dawnLimits(model, model.profile.temperature.front()).go;
        if (*dawn->oxygen < go) {
            out.push_back({StartCondition::DawnReading, *dawn->oxygen, go, 0});
        }
    }
    const auto since = daysSinceAlgaecide(model.pond);
    if (since && *since < limits.daysAfterAlgaecide) {
        out.push_back({StartCondition::Algaecide, *since, limits.daysAfterAlgaecide, 0});
    }
    const Triage triage = triageOf(model);
    const auto first = firstAirDay(run);
    const auto cap = triage.band ? doseCap_percent(*triage.band) : std::nullopt;
    if (first && cap && model.bottom.exists() && *first <= comparison.days) {
        const double dose = doseOf(model, run.days[static_cast<std::size_t>(*first - 1)]);
        if (dose > *cap) {
            out.push_back({StartCondition::FirstDose, dose, *cap, 0});
        }
    }
    if (addsToxicants(model, run, nothing)) {
        out.push_back({StartCondition::Gases, 0.0, 0.0, 0});
    }
    if (const auto halted = haltedByMornings(model, run)) {
        out.push_back(*halted);
    }
    if (endsLower(model, run, nothing)) {
        out.push_back({StartCondition::EndState, *run.endState, *nothing.endState, 0});
    }
    if (triage.season == StartSeason::Freezing) {
        out.push_back({StartCondition::Frost, model.profile.temperature.front(), 4.0, 0});
    }
    return out;
}

bool endsLower(const PondModel& model, const RampRun& run, const RampRun& nothing) {
    return run.endState && nothing.endState && *run.endState < model.parameters.thresholds.stress &&
           *run.endState < *nothing.endState - kNoWorse.value;
}

bool isOfOxygen(StartCondition condition) {
    return condition == StartCondition::LethalWith || condition == StartCondition::LethalAlone ||
           condition == StartCondition::LethalAdded || condition == StartCondition::MorningStops ||
           condition == StartCondition::MorningHolds;
}

}  // namespace engine
