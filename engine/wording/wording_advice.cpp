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
    Template{AdviceNoGainAtAll, "Do not start: nothing is gained by bottom air on this pond."},
    Template{
        AdviceWaitRamp,
        "Do not start \"{ramp}\" now: it is lowest on night {night} at {clock}, {low} mg/L, {crosses}; left "
        "alone the lowest is {alone} mg/L. Wait for the time between {waitFrom} and {waitUntil}, then read a "
        "new "
        "profile and plan again."},
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
    Template{AdviceWaitClimate, "The dates are those of the first cool month of the pond file's climate."},
    Template{AdviceWaitPractice,
             "The dates are the usual time of the autumn turnover (common practice, no published source)."},
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
};

constexpr std::array kTermWords{
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
