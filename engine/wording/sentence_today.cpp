#include "engine/wording/sentence_today.h"

#include "engine/base/units.h"
#include "engine/follow_up/constants_follow_up.h"
#include "engine/pond/pond_words.h"
#include "engine/wording/sentence_builder.h"

namespace engine {
namespace {

std::string_view wordOfVerdict(DawnVerdict verdict) {
    switch (verdict) {
        case DawnVerdict::Go:
            return "go";
        case DawnVerdict::Hold:
            return "hold";
        case DawnVerdict::Back:
            return "back";
        case DawnVerdict::Stop:
            return "stop";
    }
    return "";
}

std::string_view termOf(DawnReason reason) {
    switch (reason) {
        case DawnReason::FishWaterGood:
            return "fish-water-good";
        case DawnReason::FishWaterHold:
            return "fish-water-hold";
        case DawnReason::FishWaterBack:
            return "fish-water-back";
        case DawnReason::FishWaterStop:
            return "fish-water-stop";
        case DawnReason::FallHold:
            return "fall-hold";
        case DawnReason::FallBack:
            return "fall-back";
        case DawnReason::SmellFaint:
            return "smell-faint";
        case DawnReason::SmellStrong:
            return "smell-strong";
        case DawnReason::FishOffFeed:
            return "fish-off-feed";
        case DawnReason::FishPiping:
            return "fish-piping";
        case DawnReason::WeatherHold:
            return "weather-hold";
        case DawnReason::DoseTooLarge:
            return "dose-too-large";
        case DawnReason::ThreeHolds:
            return "three-holds";
        case DawnReason::NoMorningRise:
            return "no-morning-rise";
        case DawnReason::NightBelowLine:
            return "night-below-line";
    }
    return "";
}

std::string_view termOf(Restart restart) {
    switch (restart) {
        case Restart::GoOn:
            return "restart-go-on";
        case Restart::ReducedStart:
            return "restart-reduced";
        case Restart::WholeRamp:
            return "restart-whole";
        case Restart::Formality:
            return "restart-formality";
    }
    return "";
}

void addRestart(const RestartAdvice& advice, bool hasBottomWater, const SentenceBuilder& builder) {
    builder.add(SentenceKey::TodayRestart,
                {number("days", Measure::Plain, advice.daysOff), term("restart", termOf(advice.restart))});
    if (hasBottomWater) {
        builder.add(SentenceKey::TodayRestartDebt,
                    {oxygen("debt", advice.accumulated.debt), oxygen("oxygen", advice.accumulated.oxygen),
                     number("share", Measure::Percent, 100.0 * advice.share)});
    }
}

/// The verdict, why, and the dose that goes with it.
void addVerdict(const Today& today, const SentenceBuilder& builder) {
    const std::string verdict(wordOfVerdict(today.decision.verdict));
    builder.add(SentenceKey::TodayVerdict, {term("verdict", verdict), term("meaning", verdict + "-means")});
    builder.add(SentenceKey::TodayFishWater,
                {oxygen("oxygen", today.decision.fishWater), term("group", wordOf(today.group)),
                 oxygen("go", today.limits.go), oxygen("hold", today.limits.hold),
                 oxygen("back", today.limits.back)});
    for (const DawnReason reason : today.decision.reasons) {
        // It asks for surface air, which is said further down, and decides nothing here.
        if (reason == DawnReason::NightBelowLine) {
            continue;
        }
        builder.add(SentenceKey::TodayReason, {term("reason", termOf(reason))});
    }
    if (today.decision.doseCap_percent && today.morning.nextDose_percent) {
        builder.add(SentenceKey::TodayDose,
                    {number("dose", Measure::Percent, *today.morning.nextDose_percent),
                     number("cap", Measure::Percent, *today.decision.doseCap_percent)});
    } else {
        builder.add(SentenceKey::TodayNoDose);
    }
    if (today.decision.isMixed && today.decision.verdict == DawnVerdict::Go) {
        builder.add(SentenceKey::TodayMixed);
    }
}

/// The coming night by the fit, or why there is no fit.
void addTonight(const Today& today, const SentenceBuilder& builder) {
    if (today.fit) {
        for (const NightAhead& night : today.fit->nights) {
            if (night.night == today.day) {
                builder.add(SentenceKey::TodayTonight,
                            {oxygen("low", night.low.p50), number("clock", Measure::Clock, night.lowTime),
                             oxygen("from", night.low.p05), oxygen("to", night.low.p95)});
            }
        }
        if (today.fit->oxygen.ratio > kBeyondNoise.value) {
            builder.add(SentenceKey::FitDisagrees,
                        {number("mean", Measure::Rate, today.fit->oxygen.mean),
                         number("ratio", Measure::Plain, today.fit->oxygen.ratio)});
        }
    } else {
        builder.add(SentenceKey::TodayNoFit, {text("message", today.fitMessage)});
    }
}

}  // namespace

std::vector<Sentence> sentencesOf(const Today& today) {
    std::vector<Sentence> out;
    const SentenceBuilder builder(out, SentencePart::Today);
    addVerdict(today, builder);
    addTonight(today, builder);
    if (today.dusk) {
        builder.add(
            SentenceKey::TodayDuskLine,
            {oxygen("first", today.dusk->first), oxygen("second", today.dusk->second),
             number("firstClock", Measure::Clock, today.dusk->firstTime),
             number("secondClock", Measure::Clock, today.dusk->secondTime), oxygen("dawn", today.dusk->dawn),
             oxygen("low", today.dusk->low), oxygen("high", today.dusk->high)});
    }
    if (today.decision.wantsSurfaceAir) {
        builder.add(SentenceKey::TodaySurfaceAir,
                    {term("reason",
                          termOf(today.decision.verdict >= DawnVerdict::Back ? today.decision.reasons.front()
                                                                             : DawnReason::NightBelowLine))});
    }
    if (today.decision.verdict >= DawnVerdict::Back) {
        builder.add(SentenceKey::TodayBottomAir, {term("advice", termOf(bottomAirIn(today.state)))});
    }
    if (today.restart) {
        addRestart(*today.restart, today.model.bottom.exists(), builder);
    }
    const SentenceBuilder ahead(out, SentencePart::DaysAhead);
    for (const StepAhead& step : today.steps) {
        ahead.add(
            SentenceKey::TodayStepDay,
            {day("date", dateOfDay(today.model.pond, step.day)),
             number("minutes", Measure::Minutes, step.minutes), number("clock", Measure::Clock, step.start),
             number("dose", Measure::Percent, step.dose_percent.value_or(0.0))});
    }
    SentenceBuilder(out, SentencePart::Assumption).add(SentenceKey::TodayRules);
    addCautions(today.model, SentenceBuilder(out, SentencePart::Caution));
    return inUnitsOf(today.model.pond, std::move(out));
}

}  // namespace engine
