#include "engine/wording/wording_list.h"

#include <array>

namespace engine {
namespace {

using enum SentenceKey;

// What the conditions of a start, the waiting and the readings rest on is common practice without a source.
constexpr std::array kTemplates{
    Template{
        AdviceCompared,
        "\"{ramp}\": lowest on night {night} at {clock}, {low} mg/L, {crosses}; left alone the lowest is "
        "{alone} mg/L."},
    Template{AdviceTooWarm,
             "\"{ramp}\": on night {night} at {clock} too little water is cool enough for the fish: "
             "{cool} % of the pond has {limit} degC or less, and the coolest, at {depth} m, has "
             "{coolest} degC."},
    Template{AdviceAloneTooWarm,
             "Left alone, on night {night} at {clock} too little water is cool enough for the fish: "
             "{cool} % of the pond has {limit} degC or less, and the coolest, at {depth} m, has "
             "{coolest} degC."},
    Template{AdviceAlone, "Left alone the pond is lowest on night {night} at {clock}, {low} mg/L."},
    Template{
        AdviceStart,
        "Start \"{ramp}\" on {date}. It is lowest on night {night} at {clock}, {low} mg/L, {crosses}; left "
        "alone the lowest is {alone} mg/L."},
    Template{AdviceStartSurface,
             "Start \"{ramp}\" on {date}, with surface air of {power} kW from {from} to {until} every night "
             "from {airDate} on. It is lowest on night {night} at {clock}, {low} mg/L, {crosses}; left alone "
             "the lowest is {alone} mg/L."},
    Template{
        AdviceNoRamp,
        "No ramp is needed. \"{ramp}\" is lowest on night {night} at {clock}, {low} mg/L, {crosses}; left "
        "alone the lowest is {alone} mg/L."},
    Template{
        AdviceNoGain,
        "Do not start: nothing is gained. \"{ramp}\" is lowest on night {night} at {clock}, {low} mg/L, "
        "{crosses}; left alone the lowest is {alone} mg/L. After 30 more days the dawn low is near {end} "
        "mg/L, left alone near {endAlone} mg/L."},
    Template{AdviceNoGainTooWarm,
             "Do not start: nothing is gained. With \"{ramp}\", on night {night} at {clock}, too little "
             "water is cool enough for the fish: {cool} % of the pond has {limit} degC or less, and "
             "the coolest, at {depth} m, has {coolest} degC."},
    Template{AdviceNoGainAtAll, "Do not start: nothing is gained by bottom air on this pond."},
    Template{
        AdviceWaitRamp,
        "Do not start \"{ramp}\" now: it is lowest on night {night} at {clock}, {low} mg/L, {crosses}; left "
        "alone the lowest is {alone} mg/L. Wait for the time between {waitFrom} and {waitUntil}, then read a "
        "new "
        "profile and plan again."},
    Template{AdviceWaitTooWarm,
             "Do not start \"{ramp}\" now: on night {night} at {clock} too little water is cool enough "
             "for the fish: {cool} % of the pond has {limit} degC or less, and the coolest, at {depth} "
             "m, has {coolest} degC. Wait for the time between {waitFrom} and {waitUntil}, then read a "
             "new profile and plan again."},
    Template{
        AdviceWait,
        "Do not start now. Wait for the time between {waitFrom} and {waitUntil}, then read a new profile and "
        "plan again."},
    Template{
        AdviceChance,
        "Of 100 ponds like this one, {with} go below the {which} of {line} mg/L with it, and {alone} left "
        "alone."},
    Template{AdviceChanceAlone, "Of 100 ponds like this one, {alone} go below the {which} of {line} mg/L."},
    Template{AdviceMore,
             "Of 100 ponds like this one, {with} go below the {which} of {line} mg/L with it, and {alone} "
             "left alone: {count} more."},
    Template{AdviceFewer,
             "Of 100 ponds like this one, {with} go below the {which} of {line} mg/L with it, and {alone} "
             "left alone: {count} fewer."},
    Template{AdviceSurfaceFails,
             "If the surface air fails, its low is {low} mg/L: a person has to watch it."},
    Template{
        AdviceWeakest,
        "Three dull, hot, calm days in a row would hurt most from {date} on: with the ramp the lowest would "
        "then be {low} mg/L on night {night}, {crosses}, and left alone {alone} mg/L that night."},
    Template{
        UnmetLethal,
        "Not yet: {value} of 100 ponds like this one go below the lethal line with it, and at most {limit} "
        "may."},
    Template{UnmetAlone,
             "Not yet: {value} of 100 ponds like this one go below the lethal line left alone, and at most "
             "{limit} "
             "may without surface air."},
    Template{
        UnmetAdded,
        "Not yet: the start puts {value} more of 100 ponds below the lethal line, and at most {limit} may."},
    Template{UnmetDawn,
             "Not yet: the last dawn reading was {value} mg/L, and it has to be {limit} mg/L or more."},
    Template{
        UnmetAlgaecide,
        "Not yet: the algae were treated {value} days before the start, and it has to be {limit} days or "
        "more."},
    Template{
        UnmetGases,
        "Not yet: ammonia or sulfide where the fish are goes above its limit, and further than left alone."},
    Template{
        UnmetMorning,
        "Not yet: on night {night} the computed low is {value} mg/L, under the {limit} mg/L at which the "
        "morning rule stops the air."},
    Template{
        UnmetStep,
        "Not yet: on night {night} the computed low is {value} mg/L, under the {limit} mg/L that the morning "
        "rule wants before the next step."},
    Template{UnmetDose,
             "Not yet: the first day lifts {value} % of the bottom water, and at most {limit} % is the rule "
             "here (common practice, no published source)."},
    Template{UnmetEnd,
             "Run on like this, the dawn low ends at {value} mg/L, lower than the {limit} mg/L left alone."},
    Template{UnmetFrost, "Not yet: the pond is near freezing, and ice is not computed."},
    Template{
        AdviceWaitComputed,
        "The dates are the next months in which this ramp meets every condition of a start in the pond's "
        "usual year."},
    Template{AdviceWaitPractice,
             "In no month of the pond's usual year does this ramp meet every condition of a start; the dates "
             "are the usual time of the autumn turnover (common practice, no published source)."},
    Template{AdviceUntilThen,
             "Until then: leave the bottom air off, have surface air ready for still, hot or dull nights, "
             "and feed "
             "less."},
    Template{
        AdviceLeastHarmful,
        "If it has to be today, \"{ramp}\" does the least harm: {with} of 100 go below the lethal line with "
        "it, and {alone} left alone."},
    Template{AdviceEnd, "Run on like this, the dawn low ends near {end} mg/L; left alone near {alone} mg/L."},
    Template{AdviceHolds,
             "Hold days in the forecast: {days}. The bottom air does not start or step up on them."},
    Template{AdviceNoHolds, "No hold days in the forecast."},
    // A part of sentences on papers; what HoldRules holds for, without what was done to the pond.
    Template{
        HoldWeather,
        "{dull} dull days in the next {days}; air of {hot} degC or more, or of {warm} degC without wind; "
        "water of {water} degC or more; a storm or a front within {front} days"},
    Template{AdviceReadingBelow, "Measure the {input}: below {value} {unit}, {turn}."},
    Template{AdviceReadingAbove, "Measure the {input}: above {value} {unit}, {turn}."},
    Template{
        AdviceReadingAny,
        "Measure the {input}: it says most about the answer, though no value of it alone would turn it."},
    Template{ProvisionalDebt,
             "Provisional until the oxygen debt is measured, for example with a bottle test."},
    Template{ProvisionalProfile,
             "Provisional until there is a second profile, or a logger has run for 48 hours."},
    Template{ProvisionalDawns, "Provisional until two dawns were read; so far {count}."},
    Template{CalendarMay,
             "{month}, {water}: a start may be. Of 100 ponds {with} go below the lethal line with the ramp, "
             "{alone} "
             "left alone; the lowest is {low} mg/L."},
    Template{CalendarNot,
             "{month}, {water}: no start: {why}. Of 100 ponds {with} go below the lethal line with the ramp, "
             "{alone} left "
             "alone; the lowest is {low} mg/L."},
    Template{CalendarIce, "{month}: ice, which is not computed."},
    Template{CalendarOfMonths, "The usual weather is that of the months in the pond file."},
    Template{CalendarOfYear, "The usual weather is that of the typical year in the pond file's climate."},
    Template{CalendarOfPlace,
             "The usual weather is a rough guess from latitude, height and distance to the sea; a climate in "
             "the pond file would better it."},
    Template{CalendarMeaning,
             "Each month starts from the water and the debt that the pond has in its usual year, with "
             "the algae of today. Usual weather has no bad spells: read a fresh profile and plan again "
             "before any start."},
};

constexpr std::array kTermWords{
    TermWord{"water-aired", "with oxygen down to the bottom"},
    TermWord{"water-airless", "with no oxygen at the bottom"},
    TermWord{"against-lethal", "too many ponds go below the lethal line"},
    TermWord{"against-alone", "too many ponds go below the lethal line left alone"},
    TermWord{"against-added", "the ramp takes too many ponds below the lethal line"},
    TermWord{"against-dose", "the first day lifts too much of the bottom water"},
    TermWord{"against-gases", "ammonia or sulfide goes above its limit"},
    TermWord{"against-morning", "its own morning rule would stop it"},
    TermWord{"against-step", "its own morning rule would not let it go on"},
    TermWord{"against-end", "the pond ends lower than left alone"},
    TermWord{"against-frost", "the water is near freezing"},
    TermWord{"month-1", "January"},
    TermWord{"month-2", "February"},
    TermWord{"month-3", "March"},
    TermWord{"month-4", "April"},
    TermWord{"month-5", "May"},
    TermWord{"month-6", "June"},
    TermWord{"month-7", "July"},
    TermWord{"month-8", "August"},
    TermWord{"month-9", "September"},
    TermWord{"month-10", "October"},
    TermWord{"month-11", "November"},
    TermWord{"month-12", "December"},
    TermWord{"turn-start", "few enough ponds go below the lethal line to start"},
    TermWord{"turn-wait", "too many ponds go below the lethal line to start"},
    TermWord{"crosses-none", "above the stress line"},
    TermWord{"crosses-stress", "below the stress line"},
    TermWord{"crosses-stress-just", "just below the stress line"},
    TermWord{"crosses-lethal", "below the lethal line"},
    TermWord{"crosses-lethal-just", "just below the lethal line"},
    TermWord{"line-lethal", "lethal line"},
    TermWord{"line-stress", "stress line"},
};

}  // namespace

std::span<const Template> templatesOfAdvice() {
    return kTemplates;
}

std::span<const TermWord> termsOfAdvice() {
    return kTermWords;
}

}  // namespace engine
