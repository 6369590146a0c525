#include "engine/wording/sentence.h"

#include "engine/advice/frozen_run.h"
#include "engine/ensemble/chances.h"
#include "engine/pond/pond_words.h"
#include "engine/ramps/hold_rules.h"
#include "engine/run/shares.h"
#include "engine/water/constants_fish.h"
#include "engine/wording/grounds.h"
#include "engine/wording/sentence_advice.h"
#include "engine/wording/sentence_builder.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

constexpr double kSaidDrift = 0.1;  // [g/m^3/d]; less is not told from none (judgement)

/// Night, clock and date of a night's low; clock and date agree on the minute they are rounded to.
std::vector<SentenceValue> nightOf(const Pond& pond, const DayRow& night) {
    const double time = std::round(night.lowestTime / kMinute) * kMinute;
    const int date = static_cast<int>(std::floor(time / kDay)) + 1;
    return {whole("night", night.day), number("clock", Measure::Clock, time),
            day("date", dateOfDay(pond, date)), oxygen("low", night.lowest)};
}

/// How long a run is below a line and the first night on which it is.
std::vector<SentenceValue> below(const RampRun& run, double hours, double line) {
    const auto first = std::find_if(run.days.begin(), run.days.end(),
                                    [line](const DayRow& night) { return night.lowest < line; });
    return {number("hours", Measure::Hours, hours),
            number("total", Measure::Whole, static_cast<double>(run.days.size()) * kDay / kHour),
            whole("first", first != run.days.end() ? first->day : run.worst().day), oxygen("line", line)};
}

void addNothing(const Comparison& comparison, const SentenceBuilder& builder) {
    const RampRun& run = comparison.runs.front();
    const OxygenThresholds& thresholds = comparison.model.parameters.thresholds;
    const auto night = nightOf(comparison.model.pond, run.worst());
    const auto warm = warmNight(comparison.model, run, run.worst());
    if (warm) {
        builder.add(SentenceKey::NothingTooWarm, join(night, waterOf(*warm)));
    } else if (isBelow(run, run.hoursBelowStress, thresholds.stress)) {
        builder.add(SentenceKey::NothingBelowStress,
                    join(night, below(run, run.hoursBelowStress, thresholds.stress)));
    } else {
        builder.add(SentenceKey::NothingWorst, night);
        builder.add(SentenceKey::NothingAbove, {oxygen("line", thresholds.stress)});
    }
    if (!warm) {
        addAttribution(run, builder);
    }
    if (!warm && isBelow(run, run.hoursBelowLethal, thresholds.lethal)) {
        builder.add(SentenceKey::NothingBelowLethal, below(run, run.hoursBelowLethal, thresholds.lethal));
    }
    addChances(comparison, 0, builder);
    addHabitat(comparison, run, builder);
    addToxicants(comparison, run, builder);
    if (run.endState) {
        builder.add(SentenceKey::NothingEndState, {oxygen("end", *run.endState)});
        if (std::fabs(run.endDrift) > kSaidDrift) {
            builder.add(SentenceKey::EndStateDrift, {number("drift", Measure::Rate, run.endDrift)});
        }
    }
}

void addThresholds(const PondModel& model, const SentenceBuilder& builder) {
    const OxygenThresholds& thresholds = model.parameters.thresholds;
    const Limits& own = model.pond.limits;
    const SentenceValue group = term("group", wordOf(thresholds.group));
    builder.add(own.stress ? SentenceKey::StressLineOwn : SentenceKey::StressLine,
                {oxygen("line", thresholds.stress), group});
    if (thresholds.warmWaterRaise) {
        const double limit = speciesLines(thresholds.group).warmSurface;
        builder.add(SentenceKey::WarmWaterRaise, {number("limit", Measure::Degrees, limit)});
    }
    if (thresholds.altitudeCut) {
        builder.add(SentenceKey::AltitudeCut);
    }
    builder.add(own.lethal ? SentenceKey::LethalLineOwn : SentenceKey::LethalLine,
                {oxygen("line", thresholds.lethal), group});
    builder.add(SentenceKey::FishWaterShare,
                {number("share", Measure::Percent, 100.0 * thresholds.fishShare)});
    if (thresholds.fishMax < 100.0) {
        builder.add(SentenceKey::FishWaterTooWarm, {number("limit", Measure::Degrees, thresholds.fishMax)});
    }
}

/// What a ramp's night is without the new aerator.
const DayRow& sameNight(const RampRun& nothing, const DayRow& night) {
    return nothing.days[static_cast<std::size_t>(night.day - nothing.days.front().day)];
}

void addCap(const Comparison& comparison, const Ramp& ramp, const RampRun& run,
            const SentenceBuilder& builder) {
    if (ramp.kind != RampKind::Capped) {
        return;
    }
    const SentenceValue cap = number("cap", Measure::Input, *ramp.dose_percent);
    if (ramp.hold) {
        builder.add(SentenceKey::RampCapHeld, {cap});
    } else if (!comparison.model.bottom.exists()) {
        builder.add(SentenceKey::RampCapNotNeeded, {cap});
    } else if (run.capLiftedDay && *run.capLiftedDay <= comparison.days) {
        builder.add(SentenceKey::RampCapLifted, {cap, whole("day", *run.capLiftedDay)});
    } else {
        builder.add(SentenceKey::RampCapNotLifted, {cap, whole("days", comparison.days)});
    }
}

void addDose(const Comparison& comparison, const RampRun& run, const SentenceBuilder& builder) {
    if (!comparison.model.bottom.exists()) {
        return;
    }
    if (const DayRow* largest = run.largestDose()) {
        builder.add(SentenceKey::RampLargestDose,
                    {number("dose", Measure::Percent, doseOf(comparison.model, *largest)),
                     whole("day", largest->day), number("minutes", Measure::Minutes, largest->runMinutes)});
    } else {
        builder.add(SentenceKey::RampLiftsNothing);
    }
}

void addLow(const Comparison& comparison, const RampRun& run, const SentenceBuilder& builder) {
    const RampRun& nothing = comparison.runs.front();
    const OxygenThresholds& thresholds = comparison.model.parameters.thresholds;
    const DayRow& worst = run.worst();
    if (const auto warm = warmNight(comparison.model, run, worst)) {
        // How long it lasts is said of the cool water, not as hours below a line of oxygen.
        builder.add(
            SentenceKey::RampTooWarm,
            join(join(nightOf(comparison.model.pond, worst), waterOf(*warm)), {text("ramp", run.name)}));
        const DayRow& alone = sameNight(nothing, worst);
        if (!warmNight(comparison.model, nothing, alone)) {
            builder.add(SentenceKey::NightNothing,
                        {oxygen("low", alone.lowest), crossing(alone.lowest, thresholds)});
        }
        return;
    }
    builder.add(SentenceKey::RampWorst,
                join(nightOf(comparison.model.pond, worst),
                     {text("ramp", run.name), oxygen("nothing", sameNight(nothing, worst).lowest)}));
    addAttribution(run, builder);
    if (isBelow(run, run.hoursBelowStress, thresholds.stress)) {
        builder.add(SentenceKey::RampBelowStress,
                    join(below(run, run.hoursBelowStress, thresholds.stress),
                         {number("nothing", Measure::Hours, nothing.hoursBelowStress)}));
    } else {
        builder.add(SentenceKey::RampAbove, {oxygen("line", thresholds.stress)});
    }
    if (isBelow(run, run.hoursBelowLethal, thresholds.lethal)) {
        builder.add(SentenceKey::RampBelowLethal,
                    join(below(run, run.hoursBelowLethal, thresholds.lethal),
                         {number("nothing", Measure::Hours, nothing.hoursBelowLethal)}));
    }
}

void addEnd(const Comparison& comparison, const RampRun& run, const SentenceBuilder& builder) {
    const RampRun& nothing = comparison.runs.front();
    if (comparison.model.debt_kg > 0.0) {
        builder.add(SentenceKey::RampDebtLeft,
                    {whole("days", comparison.days),
                     number("left", Measure::Percent, 100.0 * run.days.back().debtLeft),
                     number("nothing", Measure::Percent, 100.0 * nothing.days.back().debtLeft)});
    }
    if (!run.endState || !nothing.endState) {
        return;
    }
    builder.add(SentenceKey::RampEndState,
                {oxygen("end", *run.endState), oxygen("nothing", *nothing.endState)});
    const double line = comparison.model.parameters.thresholds.stress;
    if (*run.endState < line) {
        builder.add(
            *nothing.endState < line ? SentenceKey::BothEndStatesBelow : SentenceKey::RampEndStateBelow,
            {oxygen("line", line)});
    }
    if (std::fabs(run.endDrift) > kSaidDrift) {
        builder.add(SentenceKey::EndStateDrift, {number("drift", Measure::Rate, run.endDrift)});
    }
}

void addRamp(const Comparison& comparison, const Ramp& ramp, const RampRun& run,
             const SentenceBuilder& builder) {
    addLow(comparison, run, builder);
    addChances(comparison, static_cast<std::size_t>(&run - comparison.runs.data()), builder);
    addDose(comparison, run, builder);
    addCap(comparison, ramp, run, builder);
    if (run.daysToContinuous) {
        builder.add(SentenceKey::RampContinuous, {whole("day", *run.daysToContinuous)});
    } else {
        builder.add(SentenceKey::RampNeverContinuous, {whole("days", comparison.days)});
    }
    if (run.cutMinutes > 0.0) {
        builder.add(SentenceKey::RampWindowCut, {number("minutes", Measure::Minutes, run.cutMinutes)});
    }
    const std::vector<int> held = ramp.weatherHold ? holdDays(comparison.model.pond) : std::vector<int>{};
    if (!held.empty()) {
        builder.add(SentenceKey::RampHolds, {whole("days", static_cast<int>(held.size()))});
    }
    addHabitat(comparison, run, builder);
    addToxicants(comparison, run, builder);
    addEnd(comparison, run, builder);
}

/// How far the ramps differ, which is what the choice among them is worth.
void addSpread(const Comparison& comparison, const SentenceBuilder& builder) {
    const RampRun* best = nullptr;
    const RampRun* worst = nullptr;
    for (std::size_t i = 1; i < comparison.runs.size(); ++i) {
        const RampRun& run = comparison.runs[i];
        if (run.end != RunEnd::Completed) {
            return;
        }
        if (warmNight(comparison.model, run, run.worst())) {
            continue;  // its low is none of oxygen
        }
        best = best == nullptr || run.worst().lowest > best->worst().lowest ? &run : best;
        worst = worst == nullptr || run.worst().lowest < worst->worst().lowest ? &run : worst;
    }
    if (best != worst) {
        const double high = best->worst().lowest, low = worst->worst().lowest;
        builder.add(SentenceKey::RampsApart,
                    {oxygen("gap", high - low), oxygen("high", high), oxygen("low", low),
                     text("best", best->name), text("worst", worst->name)});
    }
}

void addRamps(const Comparison& comparison, const SentenceBuilder& builder) {
    for (std::size_t i = 0; i < comparison.runs.size(); ++i) {
        const RampRun& run = comparison.runs[i];
        if (run.end == RunEnd::NotRun) {
            continue;  // stopped before its turn
        }
        if (run.end != RunEnd::Completed) {
            builder.add(SentenceKey::RampEndedEarly, {text("ramp", run.name), text("message", run.message)});
        } else if (i > 0 && comparison.runs.front().end == RunEnd::Completed) {
            addRamp(comparison, comparison.model.pond.ramps[i - 1], run, builder);
        }
    }
    addSpread(comparison, builder);
}

/// What the file's ramp comes to, in one sentence, and what its numbers still lack. Nothing was searched for,
/// so there is no kind of answer.
void addAnswer(const Comparison& comparison, const SentenceBuilder& builder) {
    const Advice advice = adviceOn(comparison, plannedRamp(comparison));
    const Sentence verdict = verdictOf(advice, comparison.model);
    builder.add(verdict.key, verdict.values);
    addProvisional(advice, builder);
}

/// The first and the last day with weather.
std::pair<Date, Date> weatherDays(const Weather& weather) {
    if (!weather.days.empty()) {
        return {weather.days.front().date, weather.days.back().date};
    }
    const auto dateOf = [](LocalTime at) { return Date(std::chrono::floor<std::chrono::days>(at)); };
    return {dateOf(weather.hours.front().start), dateOf(weather.hours.back().start)};
}

}  // namespace

std::vector<Sentence> sentencesOf(const Comparison& comparison) {
    std::vector<Sentence> out;
    const PondModel& model = comparison.model;
    const SentenceBuilder pond(out, SentencePart::Pond);
    pond.add(SentenceKey::Title,
             {title(model.pond), whole("days", comparison.days), day("date", *model.pond.place.firstDay)});
    if (runsCompleted(comparison)) {
        addAnswer(comparison, {out, SentencePart::Advice});
    }
    if (comparison.runs.front().end == RunEnd::Completed) {
        addNothing(comparison, {out, SentencePart::DoNothing});
    }
    addProfile(model.pond, {out, SentencePart::Profile});
    addTriage(model, comparison.runs.front().end == RunEnd::Completed ? &comparison.runs.front() : nullptr,
              {out, SentencePart::Triage});
    addBottomWater(model, pond);
    addThresholds(model, pond);
    addRamps(comparison, {out, SentencePart::Ramp});
    addAssumptions(comparison, {out, SentencePart::Assumption});
    append(out, sentencesOfGrounds(model.pond));
    addCautions(model, {out, SentencePart::Caution});
    return inUnitsOf(model.pond, std::move(out));
}

Sentence filesWritten(const std::string& folder) {
    return {SentencePart::Files, SentenceKey::FilesWritten, {text("folder", folder)}};
}

std::vector<Sentence> sentencesOf(const Pond& pond, const std::string& file, const Diagnostics& diagnostics) {
    std::vector<Sentence> out;
    const SentenceBuilder builder(out, SentencePart::File);
    builder.add(SentenceKey::FileTitle, {text("file", file), title(pond)});
    builder.add(SentenceKey::FileFirstDay, {day("date", *pond.place.firstDay)});
    const auto [first, last] = weatherDays(pond.weather);
    builder.add(SentenceKey::FileWeather, {day("first", first), day("last", last)});
    for (const Ramp& ramp : pond.ramps) {
        builder.add(SentenceKey::FileRamp, {text("ramp", ramp.name), term("kind", wordOf(ramp.kind))});
    }
    if (pond.ramps.empty()) {
        builder.add(SentenceKey::FileNoRamps);
    }
    builder.add(SentenceKey::FileWarnings, {whole("count", static_cast<int>(diagnostics.size()))});
    addProfile(pond, {out, SentencePart::Profile});
    const PondModel model = prepareUnbalanced(pond);
    const SentenceBuilder triage(out, SentencePart::Triage);
    addTriage(model, nullptr, triage);
    addBottomWater(model, triage);
    addDebt(model, triage);
    append(out, sentencesOfGrounds(pond));
    return inUnitsOf(pond, std::move(out));
}

}  // namespace engine
