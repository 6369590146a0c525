#include "engine/wording/wording_list.h"

#include <array>

namespace engine {
namespace {

using enum SentenceKey;

// The thresholds of triage are common practice without a published source, and said to be.
constexpr std::array kTemplates{
    Template{ProfileThinAir,
             "At {elevation} m of altitude water of this temperature holds {saturation} mg/L of oxygen at "
             "saturation, where it would hold {seaLevel} mg/L at sea level; the reading at {depth} m is "
             "{percent} % of what it can hold here."},
    Template{
        ProfileSupersaturated,
        "The {oxygen} mg/L at {depth} m are {percent} % of saturation: what algae and weeds make by day, "
        "they and all else take again by night."},
    Template{ProfileUnexplained,
             "The {oxygen} mg/L at {depth} m are {percent} % of saturation, which neither the hour nor the "
             "algae and weeds of the pond file explain: check the meter's calibration and read again."},
    Template{ProfileImpossible,
             "The {oxygen} mg/L at {depth} m are {percent} % of saturation, which no pond holds: check that "
             "the number is mg/L and not percent, and the meter."},
    Template{
        ProfileSeaLevelMeter,
        "The {oxygen} mg/L at {depth} m are what a meter set for sea level shows in water that is only "
        "saturated: {saturation} mg/L here, {seaLevel} mg/L at sea level. Calibrate it at the pond's own "
        "air pressure, not at one reduced to sea level; otherwise every reading is {excess} % too high."},
    Template{ProfileInverted,
             "The water at {below} m ({second} degC) is lighter than that at {depth} m ({first} degC) and "
             "would not stay under it: read both again, or the pond was turning over."},
    Template{
        ProfileHiddenSalt,
        "The water at {below} m ({second} degC) is warmer than that at {depth} m ({first} degC), and yet "
        "oxygen shows a layer that stays: salt may hold it, and no salinity is given. Measure it before "
        "anyone calls this pond mixed."},
    Template{
        ProfileUniformLayer,
        "Temperature is the same from top to bottom, and yet oxygen falls from {first} mg/L at {depth} m "
        "to {second} mg/L at {below} m: salt may hold a layer there, and no salinity is given. Measure "
        "it before anyone calls this pond mixed."},
    Template{
        ProfileAeratedSample,
        "The least oxygen is {oxygen} mg/L, at {depth} m, although there is sulfide, which does not last "
        "beside oxygen: a sample drawn up in a plain bottle takes on 0.5 to 2 mg/L. Read it in place."},
    Template{ProfileRisingOxygen,
             "Oxygen comes back with depth, from {first} mg/L at {depth} m to {second} mg/L at {below} m: a "
             "sample drawn up in a plain bottle takes on 0.5 to 2 mg/L, and so does a meter's slow cap. Read "
             "it in place, and wait until it stands still."},

    Template{TriageNothingFirst,
             "Left alone this pond falls below its stress line. The ratings below are rules of thumb about "
             "the start only."},
    Template{
        TriageOfTheStart,
        "The ratings below are rules of thumb about the start, from the profile alone. What the pond does, "
        "with air or left alone, takes a run, and what is computed goes before them."},
    Template{
        TriageMixed,
        "Surface and bottom are mixed already, by temperature, oxygen and salt; the trade takes a ramp for a "
        "formality then (common practice, no published source)."},
    Template{
        TriageOnlyByTemperature,
        "Surface and bottom differ by only {degrees} degC, but by {oxygen} mg/L of oxygen and {salinity} "
        "in salinity: this pond is not mixed, whatever the thermometer says."},
    Template{
        TriageLayered,
        "Surface and bottom differ by {degrees} degC and {oxygen} mg/L of oxygen: this pond is not mixed."},
    Template{TriageFirstDose,
             "The first {minutes} min with all diffusers at {depth} m lift {bottom} % of the bottom water."},
    Template{TriageFirstDoseTooLarge,
             "That is more than the {cap} % a day that goes with such a ratio (common practice, no published "
             "source): {minutes} min would lift that, or fewer diffusers, less air or a higher place."},
    Template{TriageLiftsNothing,
             "Diffusers at {depth} m lift no bottom water at the start: they hang above it, or their plume "
             "lets go below it."},
    Template{SeasonBest,
             "The season is the best for a start: cool water with oxygen from top to bottom; the trade takes "
             "two or "
             "three days of ramp then (common practice, no published source)."},
    Template{
        SeasonCoolButPoor,
        "The water is cool, but its bottom is short of oxygen; after it has turned over a start asks for "
        "less (common practice, no published source)."},
    Template{SeasonLastResort,
             "The pond is old, warm and in layers: a start asks for the most care now, and for less after "
             "the autumn "
             "turnover, or with the diffusers hung at {depth} m, where the bottom water begins, and lowered "
             "by 0.3 to "
             "0.5 m a step (common practice, no published source). Whether it can start now takes a run."},
    Template{SeasonWarm,
             "The pond is warm and layered; in early spring or after the autumn turnover a start asks for "
             "less (common practice, no published source)."},
    Template{
        SeasonFreezing,
        "The surface is colder than 4 degC and the warmest water lies below, where the fish rest: mixing "
        "to the bottom takes it from them, so hang the diffusers shallow (common practice, no published "
        "source)."},

    Template{DebtRatio,
             "The oxygen debt of the bottom water is {debt} kg and the oxygen above it {pool} kg: a "
             "debt-to-pool ratio of {ratio}."},
    Template{
        DebtWithoutReserve,
        "The oxygen debt of the bottom water is {debt} kg, and there is no oxygen above it to pay with."},
    Template{RatioLow,
             "That is low (under 0.15); the trade does without a ramp then (common practice, no published "
             "source)."},
    Template{RatioRampRequired,
             "That is neither low nor high (0.15 to 0.5); the trade takes a ramp then (common practice, no "
             "published source)."},
    Template{RatioHigh,
             "That is high (0.5 to 1); the trade takes a long ramp then, with surface aeration standing by "
             "(common "
             "practice, no published source)."},
    Template{
        RatioDoNotStart,
        "That is more debt than oxygen (above 1); the trade then waits for the cool season or raises the "
        "diffusers (common practice, no published source)."},

    Template{AmmoniaPassed,
             "Un-ionised ammonia where the fish are ({group}) goes above what EPA's acute criterion of 2013 "
             "allows for {hours} h, left alone for {nothing} h: at its worst, at {clock} on "
             "{date}, it is {peak} ug/L as nitrogen where {limit} are allowed."},
    Template{SulfidePassed,
             "Hydrogen sulfide where the fish are ({group}) is above its limit for {hours} h, left alone for "
             "{nothing} "
             "h: at its worst, at {clock} on {date}, it is {peak} ug/L as sulfur where {limit} are allowed "
             "(EPA's 2 "
             "ug/L as the mean of four days, five times that in any hour). Half of grown bluegill die within "
             "four days "
             "at 42."},
    Template{
        GuessedDebt,
        "No oxygen debt is given: {debt} mg/L of bottom water is taken, usual for a pond of this age, muck "
        "and smell. It is the least known and most decisive input; a bottle test measures it."},
    Template{
        DebtPutTogether,
        "No oxygen debt is given: {debt} mg/L of bottom water is taken, in nine of ten such ponds {low} to "
        "{high}, put together from the ways that follow, each by how sure it is."},
    Template{DebtWaysDisagree,
             "They lie further apart than each by itself allows, so the band was widened {factor} times: "
             "measure again before relying on it."},
    Template{DebtOfDays,
             "By {days} days without oxygen below: {debt} mg/L ({low} to {high}; what mud like this gives "
             "back in that "
             "time, over the thickness of the bottom water)."},
    Template{DebtOfAge,
             "By age, muck and smell: {debt} mg/L ({low} to {high}; common practice, no published source)."},
    Template{DebtOfBottle,
             "By the bottle test, after {minutes} min: {taken} mg/L were taken, give or take {error}, which "
             "stands for a debt of {debt} mg/L ({low} to {high})."},
    Template{
        DebtOfSubstances,
        "By what was measured of sulfide, iron and methane, which need {sum} mg/L: {debt} mg/L ({low} to "
        "{high}; what they are of the whole is judgement)."},
    Template{DebtBottleVoid,
             "The bottle test is void: its oxygen fell under 1 mg/L, so that the debt is at least {taken} "
             "mg/L. Repeat it with one part of bottom water in nine of surface water."},
    Template{DebtGivenStands,
             "The oxygen debt of the pond file stands, {debt} mg/L; what else it tells of the debt comes to "
             "{other} mg/L ({low} to {high})."},
    Template{
        AmmoniumIsSlow,
        "No slow debt is given: the ammonium measured needs {debt} mg/L, which is taken. It is slow, and "
        "in no debt-to-pool ratio."},
};

}  // namespace

std::span<const Template> templatesBeforeRuns() {
    return kTemplates;
}

}  // namespace engine
