#include "engine/ensemble/ensemble.h"
#include "engine/plan/plan.h"
#include "engine/plan/plan_edges.h"
#include "engine/plan/plan_members.h"
#include "engine/wording/speaker.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

constexpr double kCourtesyRatio = 0.15;  // of debt to pool; common practice, no published source

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

std::string_view termOf(StandingKind kind) {
    switch (kind) {
        case StandingKind::Continuous:
            return "standing-continuous";
        case StandingKind::Raised:
            return "standing-raised";
        case StandingKind::ByDay:
            return "standing-by-day";
        case StandingKind::ByNight:
            return "standing-by-night";
        case StandingKind::PartTime:
            return "standing-part-time";
    }
    return "";
}

std::string_view termOf(EndVerdict verdict) {
    return verdict == EndVerdict::Keeps    ? "end-keeps"
           : verdict == EndVerdict::Better ? "end-better"
                                           : "end-fails";
}

int countBelow(const RampEnsemble& ramp, double line) {
    return static_cast<int>(std::count_if(ramp.lowest.begin(), ramp.lowest.end(),
                                          [line](float low) { return static_cast<double>(low) < line; }));
}

/// What do-nothing comes to by itself.
void sayNothing(const Plan& plan, const Speaker& speaker, SentenceKey key) {
    const RampEnsemble& nothing = plan.comparison.ensemble->ramps.front();
    const double lethal = plan.comparison.model.parameters.lines.lethal;
    speaker.say(key, {whole("count", countBelow(nothing, plan.line)),
                      whole("members", plan.comparison.ensemble->members), oxygen("line", plan.line),
                      whole("days", plan.comparison.days), wanted(plan.chance),
                      whole("lethal", countBelow(nothing, lethal)), oxygen("lethalLine", lethal)});
}

void sayWhyNot(const Plan& plan, const Speaker& speaker) {
    const RampRun& nothing = plan.comparison.runs.front();
    // Where the pond fails by itself, to leave air off that has mixed it may be the worse.
    const SentenceValue never = term("order", plan.isUnderWay ? "go-by-morning" : "do-not-start"),
                        notNow = term("order", plan.isUnderWay ? "leave-off" : "do-not-start-now");
    switch (plan.reason) {
        case PlanReason::None:
            return;
        case PlanReason::NothingBelowLethal:
            speaker.say(SentenceKey::PlanDoNotStartLethal,
                        {never, oxygen("low", nothing.worst().lowest), whole("night", nothing.worst().day),
                         oxygen("lethalLine", plan.comparison.model.parameters.lines.lethal)});
            return;
        case PlanReason::NothingTooWarm:
            speaker.say(
                SentenceKey::PlanDoNotStartWarm,
                {never, number("limit", Measure::Degrees, plan.comparison.model.parameters.lines.fishMax),
                 whole("night", nothing.worst().day)});
            return;
        case PlanReason::NoEndState:
            speaker.say(SentenceKey::PlanDoNotStartNoEnd,
                        {notNow, oxygen("line", plan.line), oxygen("worse", kNoWorse)});
            return;
        case PlanReason::NoSafeWay:
        case PlanReason::BetterHarms:
            speaker.say(plan.poisonsFound                      ? SentenceKey::PlanDoNotStartPoisons
                        : plan.reason == PlanReason::NoSafeWay ? SentenceKey::PlanDoNotStartNoWay
                                                               : SentenceKey::PlanDoNotStartBetter,
                        {notNow, oxygen("line", plan.line), wanted(plan.chance)});
            return;
    }
}

void sayDays(const Plan& plan, const Speaker& speaker) {
    const ClockTime start = plan.standing[*plan.chosen].start;
    const SentenceValue all =
        number("all", Measure::Whole, plan.comparison.model.pond.aerator->diffusers->value);
    for (std::size_t i = 0; i + 1 < plan.days.size(); ++i) {
        const DayAction& action = plan.days[i];
        const SentenceValue day = whole("day", static_cast<int>(i) + 1);
        if (action.minutes == 0) {
            speaker.say(SentenceKey::PlanDayHeld, {day});
            continue;
        }
        speaker.say(action.pulses > 1 ? SentenceKey::PlanDayPulses : SentenceKey::PlanDay,
                    {day, number("minutes", Measure::Minutes, action.minutes), clock("clock", start),
                     whole("pulses", action.pulses), whole("diffusers", action.diffusers), all,
                     number("depth", Measure::Depth, action.depth)});
    }
}

void sayRamp(const Plan& plan, const Speaker& speaker) {
    const StandingSchedule& standing = plan.standing[*plan.chosen];
    const PondModel& model = plan.comparison.model;
    if (plan.verdict == PlanVerdict::AtOnce) {
        speaker.say(SentenceKey::PlanAtOnce);
        const bool isMixed = !model.bottom.exists();
        if (isMixed || (model.pool_kg > 0.0 && model.debt_kg / model.pool_kg < kCourtesyRatio)) {
            speaker.say(SentenceKey::PlanCourtesy);
        }
    } else {
        speaker.say(SentenceKey::PlanRamp, {whole("days", static_cast<int>(plan.days.size()))});
        sayDays(plan, speaker);
    }
    speaker.say(
        SentenceKey::PlanStanding,
        {term("kind", termOf(standing.kind)), number("minutes", Measure::Minutes, standing.action.minutes),
         clock("clock", standing.start), whole("diffusers", standing.action.diffusers),
         number("all", Measure::Whole, model.pond.aerator->diffusers->value),
         number("depth", Measure::Depth, standing.action.depth), oxygen("end", standing.endState),
         oxygen("nothing", plan.nothingEndState)});
    if (standing.verdict == EndVerdict::Better) {
        speaker.say(SentenceKey::PlanBelowLine, {oxygen("line", plan.line)});
    }
    if (model.bottom.exists() && standing.action.depth <= model.bottom.depth) {
        speaker.say(SentenceKey::PlanLiftsNothing, {number("depth", Measure::Depth, model.bottom.depth)});
    }
}

void sayChances(const Plan& plan, const Speaker& speaker) {
    const EnsembleResult& ensemble = *plan.comparison.ensemble;
    const RampEnsemble &planned = ensemble.ramps.back(), &nothing = ensemble.ramps.front();
    const double lethal = plan.comparison.model.parameters.lines.lethal;
    speaker.say(
        SentenceKey::PlanChances,
        {whole("members", ensemble.members), whole("added", plan.added.count), oxygen("line", plan.line),
         percent("share", plan.added.share()), percent("upper", plan.added.upper()),
         whole("total", countBelow(planned, plan.line)), whole("nothing", countBelow(nothing, plan.line))});
    speaker.say(SentenceKey::PlanLethalChances,
                {whole("added", plan.addedLethal.count), oxygen("lethalLine", lethal),
                 percent("upper", plan.addedLethal.upper()), whole("total", countBelow(planned, lethal)),
                 whole("nothing", countBelow(nothing, lethal))});
    speaker.say(SentenceKey::PlanOwnDraws,
                {whole("members", plan.ownHarm.members), whole("count", plan.ownHarm.count),
                 percent("upper", plan.ownHarm.upper())});
}

void sayEndStates(const Plan& plan, const Speaker& speaker) {
    speaker.say(SentenceKey::EndStateOfNothing, {oxygen("end", plan.nothingEndState)});
    for (const StandingSchedule& row : plan.standing) {
        speaker.say(SentenceKey::EndStateRow,
                    {term("kind", termOf(row.kind)), number("minutes", Measure::Minutes, row.action.minutes),
                     clock("clock", row.start), number("depth", Measure::Depth, row.action.depth),
                     oxygen("end", row.endState), term("verdict", termOf(row.verdict))});
    }
    for (const MonthStart& month : plan.months) {
        speaker.say(
            month.isHarmless ? SentenceKey::MonthHarmless : SentenceKey::MonthHarmful,
            {whole("month", month.month), oxygen("low", month.lowest), oxygen("nothing", month.nothing)});
    }
    speaker.say(plan.months.empty() ? SentenceKey::MonthsMissing : SentenceKey::MonthsMeaning);
}

void sayContinuous(const Plan& plan, const Speaker& speaker) {
    const StandingSchedule& continuous = plan.standing.front();
    speaker.say(continuous.verdict == EndVerdict::Keeps    ? SentenceKey::PlanContinuousKeeps
                : continuous.verdict == EndVerdict::Better ? SentenceKey::PlanContinuousBetter
                                                           : SentenceKey::PlanContinuousFails,
                {oxygen("end", continuous.endState), oxygen("line", plan.line),
                 oxygen("nothing", plan.nothingEndState)});
}

void sayHolds(const Plan& plan, const Speaker& speaker) {
    const Pond& pond = plan.comparison.model.pond;
    for (const HoldDay& held : plan.holds) {
        for (const HoldReason reason : held.reasons) {
            speaker.say(SentenceKey::HoldOne, {whole("day", held.day), day("date", dateOfDay(pond, held.day)),
                                               term("reason", termOf(reason))});
        }
    }
    if (plan.holds.empty()) {
        speaker.say(SentenceKey::HoldsNone);
    } else if (plan.chosen && !plan.heedsHolds) {
        speaker.say(SentenceKey::HoldsDoNotCount);
    }
    const std::vector<OutlookDay> outlook = outlookOf(pond);
    if (!outlook.empty() && outlook.back().day < plan.comparison.days) {
        speaker.say(SentenceKey::HoldsNoOutlook, {whole("day", outlook.back().day)});
    }
    if (!plan.stress.empty()) {
        const StressCase& worst = plan.stress.front();
        speaker.say(SentenceKey::StressWorst,
                    {term("kind", worst.kind == StressKind::ColdFront ? "stress-front" : "stress-overcast"),
                     whole("day", worst.day), oxygen("low", worst.lowest), whole("night", worst.worstNight),
                     oxygen("nothing", worst.nothing)});
    }
}

void sayEdges(const Plan& plan, const Speaker& speaker) {
    for (const TradeOffPoint& point : plan.tradeOff) {
        std::vector<SentenceValue> values{whole("added", point.added.count),
                                          whole("members", point.added.members), oxygen("line", plan.line),
                                          number("left", Measure::Percent, 100.0 * point.debtLeft),
                                          text("ramp", point.name)};
        if (point.days) {
            values.push_back(whole("days", *point.days));
        }
        speaker.say(point.name.empty() ? SentenceKey::EdgeSearched
                    : point.days       ? SentenceKey::EdgePoint
                                       : SentenceKey::EdgePointNoEnd,
                    values);
    }
    if (plan.slow.empty()) {
        return;
    }
    // From the longest down, so that what is said holds for all longer ones too.
    auto clears = plan.slow.end();
    while (clears != plan.slow.begin() && std::prev(clears)->debtLeft < kClearedDebt) {
        --clears;
    }
    const SlowPoint& slowest = plan.slow.front();
    std::vector<SentenceValue> values{percent("cleared", kClearedDebt), whole("days", kSlowDays),
                                      number("less", Measure::Minutes, slowest.minutes),
                                      number("left", Measure::Percent, 100.0 * slowest.debtLeft),
                                      number("all", Measure::Percent, 100.0 * plan.slow.back().debtLeft)};
    if (clears != plan.slow.end()) {
        values.push_back(number("minutes", Measure::Minutes, clears->minutes));
    }
    speaker.say(clears != plan.slow.end() ? SentenceKey::EdgeSlow : SentenceKey::EdgeSlowNever, values);
}

}  // namespace

std::vector<Sentence> sentencesOf(const Plan& plan) {
    std::vector<Sentence> out;
    const Speaker speaker(out, SentencePart::Plan);
    const PondModel& model = plan.comparison.model;
    speaker.say(SentenceKey::PlanTitle, {title(model.pond), day("date", *model.pond.place.firstDay),
                                         wanted(plan.chance), oxygen("line", plan.line)});
    const RampEnsemble& nothing = plan.comparison.ensemble->ramps.front();
    const bool exceeds = nothing.chanceBelowStress > plan.chance;
    if (exceeds) {
        sayNothing(plan, {out, SentencePart::DoNothing}, SentenceKey::PlanNothingExceeds);
    }
    if (plan.chosen) {
        sayRamp(plan, speaker);
        sayChances(plan, speaker);
    } else {
        sayWhyNot(plan, speaker);
    }
    sayContinuous(plan, speaker);
    if (!exceeds) {
        sayNothing(plan, {out, SentencePart::DoNothing}, SentenceKey::PlanNothingWithin);
    }
    sayEndStates(plan, {out, SentencePart::EndStates});
    sayHolds(plan, {out, SentencePart::Holds});
    sayEdges(plan, {out, SentencePart::Edges});
    Speaker(out, SentencePart::Assumption)
        .say(SentenceKey::PlanHarmMeaning, {oxygen("line", plan.line), oxygen("worse", kNoWorse)});
    sayAssumptions(plan.comparison, {out, SentencePart::Assumption});
    sayCautions(model, {out, SentencePart::Caution});
    return inUnitsOf(model.pond, std::move(out));
}

}  // namespace engine
