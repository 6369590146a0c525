#include "engine/wording/sentence_advice.h"

#include "engine/ensemble/site_visit.h"
#include "engine/pond/local_time.h"
#include "engine/wording/sentence_builder.h"

#include <cmath>

namespace engine {
namespace {

/// Night, clock and low of a night that is the ramp's own worst, and the line that it goes below.
void addNight(const DayRow& night, const OxygenThresholds& thresholds, std::vector<SentenceValue>& values) {
    values.push_back(whole("night", night.day));
    values.push_back(number("clock", Measure::Clock, night.lowestTime));
    values.push_back(oxygen("low", night.lowest));
    values.push_back(crossing(night.lowest, thresholds));
}

/// More figures than two would promise what no search over a hundred ponds can know.
double twoFigures(double value) {
    if (value == 0.0) {
        return 0.0;
    }
    const double step = std::pow(10.0, std::floor(std::log10(std::fabs(value))) - 1.0);
    return step < 1.0 ? std::round(value / step) / std::round(1.0 / step) : std::round(value / step) * step;
}

SentenceKey keyOf(const Advice& advice) {
    if (advice.run == 0 && !advice.kind) {
        return advice.warm ? SentenceKey::AdviceAloneTooWarm : SentenceKey::AdviceAlone;
    }
    if (advice.warm && advice.run > 0 && !advice.mayStart()) {
        return !advice.kind                         ? SentenceKey::AdviceTooWarm
               : *advice.kind == AdviceKind::NoGain ? SentenceKey::AdviceNoGainTooWarm
                                                    : SentenceKey::AdviceWaitTooWarm;
    }
    if (!advice.kind) {
        return SentenceKey::AdviceCompared;
    }
    switch (*advice.kind) {
        case AdviceKind::Start:
            return SentenceKey::AdviceStart;
        case AdviceKind::StartWithSurfaceAir:
            return SentenceKey::AdviceStartSurface;
        case AdviceKind::NoRampNeeded:
            return SentenceKey::AdviceNoRamp;
        case AdviceKind::NoGain:
            return advice.run > 0 ? SentenceKey::AdviceNoGain : SentenceKey::AdviceNoGainAtAll;
        case AdviceKind::WaitUntil:
            return advice.run > 0 ? SentenceKey::AdviceWaitRamp : SentenceKey::AdviceWait;
    }
    return SentenceKey::AdviceCompared;
}

void addChance(const LineChance& chance, double line, const char* which, const SentenceBuilder& builder) {
    const double points = std::round(100.0 * chance.with) - std::round(100.0 * chance.alone);
    builder.add(points == 0.0  ? SentenceKey::AdviceChance
                : points > 0.0 ? SentenceKey::AdviceMore
                               : SentenceKey::AdviceFewer,
                {of100("with", chance.with), of100("alone", chance.alone), term("which", which),
                 oxygen("line", line), whole("count", static_cast<int>(std::fabs(points)))});
}

void addUnmet(const UnmetCondition& unmet, const SentenceBuilder& builder) {
    const SentenceValue ponds = whole("value", static_cast<int>(std::lround(unmet.value))),
                        most = number("limit", Measure::Input, unmet.limit);
    switch (unmet.condition) {
        case StartCondition::LethalWith:
            return builder.add(SentenceKey::UnmetLethal, {ponds, most});
        case StartCondition::LethalAlone:
            return builder.add(SentenceKey::UnmetAlone, {ponds, most});
        case StartCondition::LethalAdded:
            return builder.add(SentenceKey::UnmetAdded, {ponds, most});
        case StartCondition::DawnReading:
            return builder.add(SentenceKey::UnmetDawn,
                               {oxygen("value", unmet.value), oxygen("limit", unmet.limit)});
        case StartCondition::Algaecide:
            return builder.add(SentenceKey::UnmetAlgaecide, {ponds, most});
        case StartCondition::Gases:
            return builder.add(SentenceKey::UnmetGases);
        case StartCondition::FirstDose:
            return builder.add(SentenceKey::UnmetDose, {ponds, most});
        case StartCondition::MorningStops:
        case StartCondition::MorningHolds:
            return builder.add(
                unmet.condition == StartCondition::MorningStops ? SentenceKey::UnmetMorning
                                                                : SentenceKey::UnmetStep,
                {oxygen("value", unmet.value), oxygen("limit", unmet.limit), whole("night", unmet.night)});
        case StartCondition::EndState:
            return builder.add(SentenceKey::UnmetEnd,
                               {oxygen("value", unmet.value), oxygen("limit", unmet.limit)});
        case StartCondition::Frost:
            return builder.add(SentenceKey::UnmetFrost);
    }
}

/// A warm night is told without what the pond does left alone, which comes behind it.
void addAloneBesideWarm(const Advice& advice, const PondModel& model, const SentenceBuilder& builder) {
    if (!advice.warm || advice.run == 0 || advice.mayStart()) {
        return;
    }
    std::vector<SentenceValue> values;
    addNight(advice.worstAlone, model.parameters.thresholds, values);
    builder.add(advice.warmAlone ? SentenceKey::AdviceAloneTooWarm : SentenceKey::AdviceAlone,
                advice.warmAlone ? join(std::move(values), waterOf(*advice.warmAlone)) : values);
}

std::string holdDaysText(const std::vector<Date>& days) {
    std::string out;
    for (const Date& one : days) {
        out += (out.empty() ? "" : ", ") + formatDate(one);
    }
    return out;
}

}  // namespace

std::vector<SentenceValue> waterOf(const WarmNight& night) {
    return {number("cool", Measure::Percent, night.cool_percent),
            number("limit", Measure::Degrees, night.limit),
            number("need", Measure::Percent, night.need_percent),
            whole("hours", night.hours),
            number("depth", Measure::Depth, night.depth),
            number("coolest", Measure::Degrees, std::round(10.0 * night.coolest) / 10.0)};
}

Sentence holdWeather(const HoldRules& rules) {
    const auto days = [](double hours) { return static_cast<int>(std::ceil(hours / 24.0)); };
    return {SentencePart::Advice,
            SentenceKey::HoldWeather,
            {whole("dull", rules.overcastDays), whole("days", days(rules.outlook_h)),
             number("hot", Measure::Degrees, rules.hotAir), number("warm", Measure::Degrees, rules.warmAir),
             number("water", Measure::Degrees, rules.hotWater), whole("front", days(rules.front_h))}};
}

Sentence verdictOf(const Advice& advice, const PondModel& model) {
    std::vector<SentenceValue> values{text("ramp", advice.ramp), day("date", advice.firstDay)};
    addNight(advice.worst, model.parameters.thresholds, values);
    values.push_back(oxygen("alone", advice.worstAlone.lowest));
    values.push_back(day("airDate", *model.pond.place.firstDay));
    values.push_back(number("power", Measure::Input, advice.surfaceAir_kW));
    values.push_back(number("from", Measure::Clock, advice.surfaceAir.from));
    values.push_back(number("until", Measure::Clock, advice.surfaceAir.until));
    values.push_back(oxygen("end", advice.endState.value_or(0.0)));
    values.push_back(oxygen("endAlone", advice.endStateAlone.value_or(0.0)));
    if (advice.wait) {
        values.push_back(day("waitFrom", advice.wait->dates.from));
        values.push_back(day("waitUntil", advice.wait->dates.until));
    }
    if (advice.warm) {
        values = join(std::move(values), waterOf(*advice.warm));
    }
    return {SentencePart::Advice, keyOf(advice), std::move(values), model.pond.units};
}

std::vector<Sentence> chanceSentences(const Advice& advice, const PondModel& model) {
    std::vector<Sentence> out;
    const SentenceBuilder builder(out, SentencePart::Advice);
    const OxygenThresholds& thresholds = model.parameters.thresholds;
    if (advice.lethal && advice.stress) {
        if (advice.run == 0) {
            for (const auto& [chance, line, which] :
                 {std::tuple(*advice.lethal, thresholds.lethal, "line-lethal"),
                  std::tuple(*advice.stress, thresholds.stress, "line-stress")}) {
                builder.add(SentenceKey::AdviceChanceAlone,
                            {of100("alone", chance.alone), term("which", which), oxygen("line", line)});
            }
        } else {
            addChance(*advice.lethal, thresholds.lethal, "line-lethal", builder);
            addChance(*advice.stress, thresholds.stress, "line-stress", builder);
        }
    }
    return inUnitsOf(model.pond, std::move(out));
}

std::vector<Sentence> sentencesOf(const Advice& advice, const PondModel& model) {
    std::vector<Sentence> out{verdictOf(advice, model)};
    const SentenceBuilder builder(out, SentencePart::Advice);
    addAloneBesideWarm(advice, model, builder);
    append(out, chanceSentences(advice, model));
    if (advice.worstWithoutSurfaceAir) {
        builder.add(SentenceKey::AdviceSurfaceFails, {oxygen("low", *advice.worstWithoutSurfaceAir)});
    }
    if (advice.weakest) {
        builder.add(SentenceKey::AdviceWeakest,
                    {day("date", advice.weakest->from), oxygen("low", advice.weakest->lowest),
                     whole("night", advice.weakest->night),
                     crossing(advice.weakest->lowest, model.parameters.thresholds),
                     oxygen("alone", advice.weakest->alone)});
    }
    for (const UnmetCondition& unmet : advice.unmet) {
        addUnmet(unmet, builder);
    }
    if (advice.wait) {
        if (advice.wait->isComputed) {
            builder.add(SentenceKey::AdviceWaitComputed);
        } else if (!advice.calendar.months.empty()) {
            builder.add(SentenceKey::AdviceWaitPractice);
        }
        builder.add(SentenceKey::AdviceUntilThen);
    }
    if (advice.kind && !advice.mayStart() && !advice.leastHarmful.empty()) {
        builder.add(SentenceKey::AdviceLeastHarmful,
                    {text("ramp", advice.leastHarmful), of100("with", advice.leastHarmfulLethal.with),
                     of100("alone", advice.leastHarmfulLethal.alone)});
    }
    if (advice.run > 0 && advice.endState && advice.endStateAlone && advice.kind != AdviceKind::NoGain) {
        builder.add(SentenceKey::AdviceEnd,
                    {oxygen("end", *advice.endState), oxygen("alone", *advice.endStateAlone)});
    }
    if (advice.mayStart() && advice.holdDays.empty()) {
        builder.add(SentenceKey::AdviceNoHolds);
    } else if (advice.mayStart()) {
        builder.add(SentenceKey::AdviceHolds, {text("days", holdDaysText(advice.holdDays))});
    }
    if (advice.kind) {
        for (const TellingReading& reading : advice.readings) {
            if (reading.turns) {
                builder.add(
                    reading.isBelow ? SentenceKey::AdviceReadingBelow : SentenceKey::AdviceReadingAbove,
                    {text("input", inputWords(reading.input)),
                     number("value", Measure::Input, twoFigures(*reading.turns)),
                     text("unit", reading.unit == "1" ? "" : reading.unit),
                     term("turn", advice.mayStart() ? "turn-wait" : "turn-start")});
            } else {
                builder.add(SentenceKey::AdviceReadingAny, {text("input", inputWords(reading.input))});
            }
        }
    }
    addProvisional(advice, builder);
    return inUnitsOf(model.pond, std::move(out));
}

namespace {

std::string_view termOf(StartCondition condition) {
    switch (condition) {
        case StartCondition::LethalWith:
            return "against-lethal";
        case StartCondition::LethalAlone:
            return "against-alone";
        case StartCondition::LethalAdded:
            return "against-added";
        case StartCondition::FirstDose:
            return "against-dose";
        case StartCondition::Gases:
            return "against-gases";
        case StartCondition::MorningHolds:
            return "against-step";
        case StartCondition::EndState:
            return "against-end";
        case StartCondition::Frost:
            return "against-frost";
        case StartCondition::MorningStops:
        case StartCondition::DawnReading:  // nothing was read or treated in a month to come
        case StartCondition::Algaecide:
            return "against-morning";
    }
    return "";
}

}  // namespace

std::vector<Sentence> sentencesOf(const StartCalendar& calendar, const PondModel& model) {
    std::vector<Sentence> out;
    if (calendar.months.empty()) {
        return out;
    }
    const SentenceBuilder builder(out, SentencePart::Calendar);
    for (const MonthOfStart& month : calendar.months) {
        const std::string name = "month-" + std::to_string(static_cast<unsigned>(month.from.month()));
        if (month.isIcy) {
            builder.add(SentenceKey::CalendarIce, {term("month", name)});
            continue;
        }
        builder.add(
            month.mayStart() ? SentenceKey::CalendarMay : SentenceKey::CalendarNot,
            {term("month", name), term("water", month.isAired ? "water-aired" : "water-airless"),
             of100("with", month.lethal), of100("alone", month.lethalAlone), oxygen("low", month.lowest),
             term("why", month.unmet.empty() ? "" : termOf(month.unmet.front().condition))});
    }
    builder.add(calendar.origin == ClimateOrigin::Months        ? SentenceKey::CalendarOfMonths
                : calendar.origin == ClimateOrigin::TypicalYear ? SentenceKey::CalendarOfYear
                                                                : SentenceKey::CalendarOfPlace);
    builder.add(SentenceKey::CalendarMeaning);
    return inUnitsOf(model.pond, std::move(out));
}

void addProvisional(const Advice& advice, const SentenceBuilder& builder) {
    for (const ProvisionalReason reason : advice.provisional) {
        builder.add(reason == ProvisionalReason::DebtGuessed  ? SentenceKey::ProvisionalDebt
                    : reason == ProvisionalReason::OneProfile ? SentenceKey::ProvisionalProfile
                                                              : SentenceKey::ProvisionalDawns,
                    {whole("count", advice.dawnsRead)});
    }
}

}  // namespace engine
