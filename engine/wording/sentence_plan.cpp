#include "engine/ensemble/ensemble.h"
#include "engine/plan/constants_plan.h"
#include "engine/plan/plan.h"
#include "engine/plan/plan_members.h"
#include "engine/plan/plan_sensitivity.h"
#include "engine/run/shares.h"
#include "engine/run/triage.h"
#include "engine/wording/grounds.h"
#include "engine/wording/sentence_advice.h"
#include "engine/wording/sentence_builder.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace engine {
namespace {

SentenceValue percent(const char* name, double share) {
    return number(name, Measure::Plain, 100.0 * share);
}

/// The wanted share as it was asked for, in percent.
SentenceValue wanted(double chance) {
    return number("chance", Measure::Input, std::round(1e6 * chance) / 1e4);
}

SentenceValue clock(const char* name, ClockTime at) {
    return number(name, Measure::Clock, at.minutes * kMinute);
}

std::string_view termOf(SustainedKind kind) {
    switch (kind) {
        case SustainedKind::Continuous:
            return "standing-continuous";
        case SustainedKind::Raised:
            return "standing-raised";
        case SustainedKind::ByDay:
            return "standing-by-day";
        case SustainedKind::ByNight:
            return "standing-by-night";
        case SustainedKind::PartTime:
            return "standing-part-time";
    }
    return "";
}

std::string_view termOf(EndVerdict verdict) {
    return verdict == EndVerdict::Keeps    ? "end-keeps"
           : verdict == EndVerdict::Better ? "end-better"
                                           : "end-fails";
}

/// What do-nothing comes to.
void addNothing(const Plan& plan, const SentenceBuilder& builder, SentenceKey key) {
    const RampEnsemble& nothing = plan.comparison.ensemble->ramps.front();
    const double lethal = plan.comparison.model.parameters.thresholds.lethal;
    builder.add(key, {of100("count", nothing.chanceBelowStress), oxygen("line", plan.line),
                      whole("days", plan.comparison.days), wanted(plan.chance),
                      of100("lethal", nothing.chanceBelowLethal), oxygen("lethalLine", lethal)});
}

void addWhyNot(const Plan& plan, const SentenceBuilder& builder) {
    const RampRun& nothing = plan.comparison.runs.front();
    const bool failsAlone =
        plan.reason == PlanReason::NothingBelowLethal || plan.reason == PlanReason::NothingTooWarm;
    if (plan.isUnderWay) {
        // Where the pond fails left alone, to switch off air that has mixed it may be the worse.
        builder.add(SentenceKey::PlanUnderWay, {term("order", failsAlone ? "go-by-morning" : "leave-off")});
    }
    switch (plan.reason) {
        case PlanReason::None:
            return;
        case PlanReason::NothingBelowLethal:
            builder.add(plan.isClimb ? SentenceKey::PlanLeftAloneLethal : SentenceKey::PlanDoNotStartLethal,
                        {oxygen("low", nothing.worst().lowest), whole("night", nothing.worst().day),
                         oxygen("lethalLine", plan.comparison.model.parameters.thresholds.lethal)});
            return;
        case PlanReason::NothingTooWarm:
            builder.add(
                SentenceKey::PlanDoNotStartWarm,
                {number("limit", Measure::Degrees, plan.comparison.model.parameters.thresholds.fishMax),
                 whole("night", nothing.worst().day)});
            return;
        case PlanReason::NoEndState:
            builder.add(SentenceKey::PlanDoNotStartNoEnd,
                        {oxygen("line", plan.line), oxygen("worse", kNoWorse.value)});
            return;
        case PlanReason::NoSafeWay:
        case PlanReason::BetterHarms:
            builder.add(plan.toxicantsFound                    ? SentenceKey::PlanDoNotStartToxicants
                        : plan.reason == PlanReason::NoSafeWay ? SentenceKey::PlanDoNotStartNoWay
                                                               : SentenceKey::PlanDoNotStartBetter,
                        {oxygen("line", plan.line), wanted(plan.chance)});
            return;
    }
}

void addDays(const Plan& plan, const SentenceBuilder& builder) {
    const ClockTime start = plan.sustainedSchedules[*plan.chosen].start;
    const SentenceValue all =
        number("all", Measure::Whole, plan.comparison.model.pond.aerator->diffusers->value);
    for (std::size_t i = 0; i + 1 < plan.days.size(); ++i) {
        const DayAction& action = plan.days[i];
        const SentenceValue day = whole("day", static_cast<int>(i) + 1);
        if (action.minutes == 0) {
            builder.add(SentenceKey::PlanDayHeld, {day});
            continue;
        }
        builder.add(action.pulses > 1 ? SentenceKey::PlanDayPulses : SentenceKey::PlanDay,
                    {day, number("minutes", Measure::Minutes, action.minutes), clock("clock", start),
                     whole("pulses", action.pulses), whole("diffusers", action.diffusers), all,
                     number("depth", Measure::Depth, action.depth)});
    }
}

void addRamp(const Plan& plan, const SentenceBuilder& builder) {
    const SustainedSchedule& sustainedSchedule = plan.sustainedSchedules[*plan.chosen];
    const PondModel& model = plan.comparison.model;
    const std::optional<double> ratio = debtToReserve(model);
    if (!model.bottom.exists() || (ratio && ratioBand(*ratio) == RatioBand::Low)) {
        builder.add(SentenceKey::PlanCourtesy);
    }
    if (plan.verdict != PlanVerdict::AtOnce) {
        builder.add(SentenceKey::PlanRamp, {whole("days", static_cast<int>(plan.days.size()))});
        addDays(plan, builder);
    }
    builder.add(
        SentenceKey::PlanSustained,
        {term("kind", termOf(sustainedSchedule.kind)),
         number("minutes", Measure::Minutes, sustainedSchedule.action.minutes),
         clock("clock", sustainedSchedule.start), whole("diffusers", sustainedSchedule.action.diffusers),
         number("all", Measure::Whole, model.pond.aerator->diffusers->value),
         number("depth", Measure::Depth, sustainedSchedule.action.depth),
         oxygen("end", sustainedSchedule.endState), oxygen("nothing", plan.nothingEndState)});
    if (sustainedSchedule.verdict == EndVerdict::Better) {
        builder.add(SentenceKey::PlanBelowLine, {oxygen("line", plan.line)});
    }
    if (model.bottom.exists() && !liftsBottomWater(model, sustainedSchedule.action.depth)) {
        builder.add(SentenceKey::PlanLiftsNothing, {number("depth", Measure::Depth, model.bottom.depth)});
    }
}

void addOwnDraws(const Plan& plan, const SentenceBuilder& builder) {
    builder.add(plan.isClimb ? SentenceKey::PlanHeld : SentenceKey::PlanOwnDraws,
                {whole("members", plan.ownHarm.members), whole("count", plan.ownHarm.count),
                 percent("upper", plan.ownHarm.upper())});
}

void addEndStates(const Plan& plan, const SentenceBuilder& builder) {
    builder.add(SentenceKey::EndStateOfNothing, {oxygen("end", plan.nothingEndState)});
    for (const SustainedSchedule& row : plan.sustainedSchedules) {
        builder.add(SentenceKey::EndStateRow,
                    {term("kind", termOf(row.kind)), number("minutes", Measure::Minutes, row.action.minutes),
                     clock("clock", row.start), number("depth", Measure::Depth, row.action.depth),
                     oxygen("end", row.endState), term("verdict", termOf(row.verdict))});
    }
}

void addContinuous(const Plan& plan, const SentenceBuilder& builder) {
    const SustainedSchedule& continuous = plan.sustainedSchedules.front();
    builder.add(continuous.verdict == EndVerdict::Keeps    ? SentenceKey::PlanContinuousKeeps
                : continuous.verdict == EndVerdict::Better ? SentenceKey::PlanContinuousBetter
                                                           : SentenceKey::PlanContinuousFails,
                {oxygen("end", continuous.endState), oxygen("line", plan.line),
                 oxygen("nothing", plan.nothingEndState)});
}

void addHolds(const Plan& plan, bool saysNone, const SentenceBuilder& builder) {
    const Pond& pond = plan.comparison.model.pond;
    for (const HoldDay& held : plan.holds) {
        for (const HoldReason reason : held.reasons) {
            builder.add(SentenceKey::HoldOne, {whole("day", held.day), day("date", dateOfDay(pond, held.day)),
                                               term("reason", termOf(reason))});
        }
    }
    if (plan.holds.empty()) {
        if (saysNone) {
            builder.add(SentenceKey::AdviceNoHolds);
        }
    } else if (plan.chosen && !plan.heedsHolds) {
        builder.add(SentenceKey::HoldsDoNotCount);
    }
    const std::vector<OutlookDay> outlook = outlookOf(pond);
    if (!outlook.empty() && outlook.back().day < plan.comparison.days) {
        builder.add(SentenceKey::HoldsNoOutlook, {whole("day", outlook.back().day)});
    }
    if (!plan.stress.empty()) {
        const StressCase& worst = plan.stress.front();
        builder.add(SentenceKey::StressWorst,
                    {term("kind", worst.kind == StressKind::ColdFront ? "stress-front" : "stress-overcast"),
                     whole("day", worst.day), oxygen("low", worst.lowest), whole("night", worst.worstNight),
                     oxygen("nothing", worst.nothing)});
    }
}

void addSensitivity(const Plan& plan, const SentenceBuilder& builder) {
    for (const TradeOffPoint& point : plan.tradeOff) {
        std::vector<SentenceValue> values{whole("added", point.added.count),
                                          whole("members", point.added.members), oxygen("line", plan.line),
                                          number("left", Measure::Percent, 100.0 * point.debtLeft),
                                          text("ramp", point.name)};
        if (point.days) {
            values.push_back(whole("days", *point.days));
        }
        builder.add(point.name.empty() ? SentenceKey::SensitivitySearched
                    : point.days       ? SentenceKey::SensitivityPoint
                                       : SentenceKey::SensitivityPointNoEnd,
                    values);
    }
    if (plan.slow.empty()) {
        return;
    }
    // From the longest down, so that what is said holds for all longer ones too.
    auto clears = plan.slow.end();
    while (clears != plan.slow.begin() && std::prev(clears)->debtLeft < kClearedDebt.value) {
        --clears;
    }
    const SlowPoint& slowest = plan.slow.front();
    std::vector<SentenceValue> values{percent("cleared", kClearedDebt.value), whole("days", kSlowDays),
                                      number("less", Measure::Minutes, slowest.minutes),
                                      number("left", Measure::Percent, 100.0 * slowest.debtLeft),
                                      number("all", Measure::Percent, 100.0 * plan.slow.back().debtLeft)};
    if (clears != plan.slow.end()) {
        values.push_back(number("minutes", Measure::Minutes, clears->minutes));
    }
    builder.add(clears != plan.slow.end() ? SentenceKey::SensitivitySlow : SentenceKey::SensitivitySlowNever,
                values);
}

}  // namespace

namespace {

std::vector<Sentence> planSentences(const Plan& plan, const Advice* advice) {
    std::vector<Sentence> out;
    const SentenceBuilder builder(out, SentencePart::Plan);
    const PondModel& model = plan.comparison.model;
    builder.add(SentenceKey::PlanTitle, {title(model.pond), day("date", *model.pond.place.firstDay),
                                         wanted(plan.chance), oxygen("line", plan.line)});
    if (advice != nullptr) {
        append(out, sentencesOf(*advice, model));
    }
    const RampEnsemble& nothing = plan.comparison.ensemble->ramps.front();
    const bool exceeds = nothing.chanceBelowStress > plan.chance;
    if (exceeds) {
        addNothing(plan, {out, SentencePart::DoNothing}, SentenceKey::PlanNothingExceeds);
    }
    if (plan.chosen) {
        addRamp(plan, builder);
        addOwnDraws(plan, builder);
    } else {
        addWhyNot(plan, builder);
    }
    addContinuous(plan, builder);
    if (!exceeds) {
        addNothing(plan, {out, SentencePart::DoNothing}, SentenceKey::PlanNothingWithin);
    }
    addEndStates(plan, {out, SentencePart::EndStates});
    if (advice != nullptr) {
        append(out, sentencesOf(advice->calendar, model));
    }
    addHolds(plan, advice == nullptr, {out, SentencePart::Holds});
    addSensitivity(plan, {out, SentencePart::Sensitivity});
    SentenceBuilder(out, SentencePart::Assumption)
        .add(plan.isClimb ? SentenceKey::PlanHarmMeaning : SentenceKey::PlanStartMeaning,
             {oxygen("line", plan.line), oxygen("worse", kNoWorse.value)});
    addAssumptions(plan.comparison, {out, SentencePart::Assumption});
    append(out, sentencesOfGrounds(model.pond));
    addCautions(model, {out, SentencePart::Caution});
    return inUnitsOf(model.pond, std::move(out));
}

}  // namespace

std::vector<Sentence> sentencesOf(const Plan& plan) {
    return planSentences(plan, nullptr);
}

std::vector<Sentence> sentencesOf(const Plan& plan, const Advice& advice) {
    return planSentences(plan, &advice);
}

}  // namespace engine
