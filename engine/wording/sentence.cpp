#include "engine/wording/sentence.h"

#include "engine/ensemble/chances.h"
#include "engine/pond/pond_words.h"
#include "engine/ramps/hold_rules.h"
#include "engine/wording/speaker.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

constexpr double kWarmForTrout = 18.0;  // [degC], design: above it the stress line is raised
constexpr double kWarmForOthers = 28.0;
constexpr double kSaidDrift = 0.1;  // [g/m^3/d], design

/// Night, clock and date of a night's low; clock and date agree on the minute they are rounded to.
std::vector<SentenceValue> nightOf(const Pond& pond, const DayRow& night) {
    const double time = std::round(night.lowestTime / kMinute) * kMinute;
    const int date = static_cast<int>(std::floor(time / kDay)) + 1;
    return {whole("night", night.day), number("clock", Measure::Clock, time),
            day("date", dateOfDay(pond, date)), oxygen("low", night.lowest)};
}

std::vector<SentenceValue> join(std::vector<SentenceValue> values, std::vector<SentenceValue> more) {
    values.insert(values.end(), more.begin(), more.end());
    return values;
}

/// How long a run is below a line and the first night on which it is.
std::vector<SentenceValue> below(const RampRun& run, double hours, double line) {
    const auto first = std::find_if(run.days.begin(), run.days.end(),
                                    [line](const DayRow& night) { return night.lowest < line; });
    return {number("hours", Measure::Hours, hours),
            number("total", Measure::Whole, static_cast<double>(run.days.size()) * kDay / kHour),
            whole("first", first != run.days.end() ? first->day : run.worst().day), oxygen("line", line)};
}

void sayNothing(const Comparison& comparison, const Speaker& speaker) {
    const RampRun& run = comparison.runs.front();
    const Lines& lines = comparison.model.parameters.lines;
    const auto night = nightOf(comparison.model.pond, run.worst());
    if (isBelow(run, run.hoursBelowStress, lines.stress)) {
        speaker.say(SentenceKey::NothingBelowStress,
                    join(night, below(run, run.hoursBelowStress, lines.stress)));
    } else {
        speaker.say(SentenceKey::NothingWorst, night);
        speaker.say(SentenceKey::NothingAbove, {oxygen("line", lines.stress)});
    }
    sayCauses(run, speaker);
    if (isBelow(run, run.hoursBelowLethal, lines.lethal)) {
        speaker.say(SentenceKey::NothingBelowLethal, below(run, run.hoursBelowLethal, lines.lethal));
    }
    sayNothingChances(comparison, speaker);
    sayHabitat(comparison, run, speaker);
    sayPoisons(comparison, run, speaker);
    if (run.endState) {
        speaker.say(SentenceKey::NothingEndState, {oxygen("end", *run.endState)});
        if (std::fabs(run.endDrift) > kSaidDrift) {
            speaker.say(SentenceKey::EndStateDrift, {number("drift", Measure::Rate, run.endDrift)});
        }
    }
}

void sayLines(const PondModel& model, const Speaker& speaker) {
    const Lines& lines = model.parameters.lines;
    const Limits& own = model.pond.limits;
    const SentenceValue group = term("group", wordOf(lines.group));
    speaker.say(own.stress ? SentenceKey::StressLineOwn : SentenceKey::StressLine,
                {oxygen("line", lines.stress), group});
    if (lines.warmWaterRaise) {
        const double limit = lines.group == SpeciesGroup::Trout ? kWarmForTrout : kWarmForOthers;
        speaker.say(SentenceKey::WarmWaterRaise, {number("limit", Measure::Degrees, limit)});
    }
    if (lines.altitudeCut) {
        speaker.say(SentenceKey::AltitudeCut);
    }
    speaker.say(own.lethal ? SentenceKey::LethalLineOwn : SentenceKey::LethalLine,
                {oxygen("line", lines.lethal), group});
    speaker.say(SentenceKey::FishWaterShare, {number("share", Measure::Percent, 100.0 * lines.fishShare)});
    if (lines.fishMax < 100.0) {
        speaker.say(SentenceKey::FishWaterTooWarm, {number("limit", Measure::Degrees, lines.fishMax)});
    }
}

/// What a ramp's night is without the new aerator.
const DayRow& sameNight(const RampRun& nothing, const DayRow& night) {
    return nothing.days[static_cast<std::size_t>(night.day - nothing.days.front().day)];
}

void sayCap(const Comparison& comparison, const Ramp& ramp, const RampRun& run, const Speaker& speaker) {
    if (ramp.kind != RampKind::Capped) {
        return;
    }
    const SentenceValue cap = number("cap", Measure::Input, *ramp.dose_percent);
    if (ramp.hold) {
        speaker.say(SentenceKey::RampCapHeld, {cap});
    } else if (!comparison.model.bottom.exists()) {
        speaker.say(SentenceKey::RampCapNotNeeded, {cap});
    } else if (run.capLiftedDay && *run.capLiftedDay <= comparison.days) {
        speaker.say(SentenceKey::RampCapLifted, {cap, whole("day", *run.capLiftedDay)});
    } else {
        speaker.say(SentenceKey::RampCapNotLifted, {cap, whole("days", comparison.days)});
    }
}

void sayDose(const Comparison& comparison, const RampRun& run, const Speaker& speaker) {
    if (!comparison.model.bottom.exists()) {
        return;
    }
    if (const DayRow* largest = run.largestDose()) {
        const double dose = 100.0 * largest->lifted / comparison.model.bottom.volume;
        speaker.say(SentenceKey::RampLargestDose,
                    {number("dose", Measure::Percent, dose), whole("day", largest->day),
                     number("minutes", Measure::Minutes, largest->runMinutes)});
    } else {
        speaker.say(SentenceKey::RampLiftsNothing);
    }
}

void sayLow(const Comparison& comparison, const RampRun& run, const Speaker& speaker) {
    const RampRun& nothing = comparison.runs.front();
    const Lines& lines = comparison.model.parameters.lines;
    const DayRow& worst = run.worst();
    speaker.say(SentenceKey::RampWorst,
                join(nightOf(comparison.model.pond, worst),
                     {text("ramp", run.name), oxygen("nothing", sameNight(nothing, worst).lowest)}));
    sayCauses(run, speaker);
    if (isBelow(run, run.hoursBelowStress, lines.stress)) {
        speaker.say(SentenceKey::RampBelowStress,
                    join(below(run, run.hoursBelowStress, lines.stress),
                         {number("nothing", Measure::Hours, nothing.hoursBelowStress)}));
    } else {
        speaker.say(SentenceKey::RampAbove, {oxygen("line", lines.stress)});
    }
    if (isBelow(run, run.hoursBelowLethal, lines.lethal)) {
        speaker.say(SentenceKey::RampBelowLethal,
                    join(below(run, run.hoursBelowLethal, lines.lethal),
                         {number("nothing", Measure::Hours, nothing.hoursBelowLethal)}));
    }
}

void sayEnd(const Comparison& comparison, const RampRun& run, const Speaker& speaker) {
    const RampRun& nothing = comparison.runs.front();
    if (comparison.model.debt_kg > 0.0) {
        speaker.say(SentenceKey::RampDebtLeft,
                    {whole("days", comparison.days),
                     number("left", Measure::Percent, 100.0 * run.days.back().debtLeft),
                     number("nothing", Measure::Percent, 100.0 * nothing.days.back().debtLeft)});
    }
    if (!run.endState || !nothing.endState) {
        return;
    }
    speaker.say(SentenceKey::RampEndState,
                {oxygen("end", *run.endState), oxygen("nothing", *nothing.endState)});
    const double line = comparison.model.parameters.lines.stress;
    if (*run.endState < line) {
        speaker.say(
            *nothing.endState < line ? SentenceKey::BothEndStatesBelow : SentenceKey::RampEndStateBelow,
            {oxygen("line", line)});
    }
    if (std::fabs(run.endDrift) > kSaidDrift) {
        speaker.say(SentenceKey::EndStateDrift, {number("drift", Measure::Rate, run.endDrift)});
    }
}

void sayRamp(const Comparison& comparison, const Ramp& ramp, const RampRun& run, const Speaker& speaker) {
    sayLow(comparison, run, speaker);
    sayRampChances(comparison, run, speaker);
    sayDose(comparison, run, speaker);
    sayCap(comparison, ramp, run, speaker);
    if (run.daysToContinuous) {
        speaker.say(SentenceKey::RampContinuous, {whole("day", *run.daysToContinuous)});
    } else {
        speaker.say(SentenceKey::RampNeverContinuous, {whole("days", comparison.days)});
    }
    if (run.cutMinutes > 0.0) {
        speaker.say(SentenceKey::RampWindowCut, {number("minutes", Measure::Minutes, run.cutMinutes)});
    }
    const std::vector<int> held = ramp.weatherHold ? holdDays(comparison.model.pond) : std::vector<int>{};
    if (!held.empty()) {
        speaker.say(SentenceKey::RampHolds, {whole("days", static_cast<int>(held.size()))});
    }
    sayHabitat(comparison, run, speaker);
    sayPoisons(comparison, run, speaker);
    sayEnd(comparison, run, speaker);
}

/// How far the ramps differ, which is what the choice among them is worth.
void saySpread(const Comparison& comparison, const Speaker& speaker) {
    const RampRun* best = nullptr;
    const RampRun* worst = nullptr;
    for (std::size_t i = 1; i < comparison.runs.size(); ++i) {
        const RampRun& run = comparison.runs[i];
        if (run.end != RunEnd::Completed) {
            return;
        }
        best = best == nullptr || run.worst().lowest > best->worst().lowest ? &run : best;
        worst = worst == nullptr || run.worst().lowest < worst->worst().lowest ? &run : worst;
    }
    if (best != worst) {
        const double high = best->worst().lowest, low = worst->worst().lowest;
        speaker.say(SentenceKey::RampsApart,
                    {oxygen("gap", high - low), oxygen("high", high), oxygen("low", low),
                     text("best", best->name), text("worst", worst->name)});
    }
}

void sayRamps(const Comparison& comparison, const Speaker& speaker) {
    for (std::size_t i = 0; i < comparison.runs.size(); ++i) {
        const RampRun& run = comparison.runs[i];
        if (run.end == RunEnd::NotRun) {
            continue;  // stopped before its turn
        }
        if (run.end != RunEnd::Completed) {
            speaker.say(SentenceKey::RampEndedEarly, {text("ramp", run.name), text("message", run.message)});
        } else if (i > 0 && comparison.runs.front().end == RunEnd::Completed) {
            sayRamp(comparison, comparison.model.pond.ramps[i - 1], run, speaker);
        }
    }
    saySpread(comparison, speaker);
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
    const Speaker pond(out, SentencePart::Pond);
    pond.say(SentenceKey::Title,
             {title(model.pond), whole("days", comparison.days), day("date", *model.pond.place.firstDay)});
    if (comparison.runs.front().end == RunEnd::Completed) {
        sayNothing(comparison, {out, SentencePart::DoNothing});
    }
    sayProfile(model.pond, {out, SentencePart::Profile});
    sayTriage(model, comparison.runs.front().end == RunEnd::Completed ? &comparison.runs.front() : nullptr,
              {out, SentencePart::Triage});
    sayBottomWater(model, pond);
    sayLines(model, pond);
    sayRamps(comparison, {out, SentencePart::Ramp});
    sayAssumptions(comparison, {out, SentencePart::Assumption});
    sayCautions(model, {out, SentencePart::Caution});
    return inUnitsOf(model.pond, std::move(out));
}

Sentence filesWritten(const std::string& folder) {
    return {SentencePart::Files, SentenceKey::FilesWritten, {text("folder", folder)}};
}

std::vector<Sentence> sentencesOf(const Pond& pond, const std::string& file, const Diagnostics& diagnostics) {
    std::vector<Sentence> out;
    const Speaker speaker(out, SentencePart::File);
    speaker.say(SentenceKey::FileTitle, {text("file", file), title(pond)});
    speaker.say(SentenceKey::FileFirstDay, {day("date", *pond.place.firstDay)});
    const auto [first, last] = weatherDays(pond.weather);
    speaker.say(SentenceKey::FileWeather, {day("first", first), day("last", last)});
    for (const Ramp& ramp : pond.ramps) {
        speaker.say(SentenceKey::FileRamp, {text("ramp", ramp.name), term("kind", wordOf(ramp.kind))});
    }
    if (pond.ramps.empty()) {
        speaker.say(SentenceKey::FileNoRamps);
    }
    speaker.say(SentenceKey::FileWarnings, {whole("count", static_cast<int>(diagnostics.size()))});
    sayProfile(pond, {out, SentencePart::Profile});
    const PondModel model = prepareUnbalanced(pond);
    const Speaker triage(out, SentencePart::Triage);
    sayTriage(model, nullptr, triage);
    sayBottomWater(model, triage);
    sayDebt(model, triage);
    return inUnitsOf(pond, std::move(out));
}

}  // namespace engine
