#include "engine/wording/wording_list.h"

#include <array>

namespace engine {
namespace {

using enum SentenceKey;

constexpr std::array kTemplates{
    Template{FileTitle, "{file}: {title}"},
    Template{FileFirstDay, "Day 1 is {date}."},
    Template{FileWeather, "The weather covers {first} to {last}."},
    Template{FileNoRamps, "There is no ramp in it."},
    Template{FileRamp, "Ramp \"{ramp}\": {kind}."},
    Template{FileWarnings, "Number of warnings: {count}."},

    Template{Title, "{title}: {days} days from {date}."},
    Template{NothingBelowStress,
             "Left alone this pond goes below its stress line of {line} mg/L, first on night {first}, for "
             "{hours} of "
             "{total} h. It is lowest on night {night} at {clock} on {date}, {low} mg/L in the fish water."},
    Template{NothingWorst,
             "It is lowest on night {night} at {clock} on {date}, {low} mg/L in the fish water."},
    Template{NothingTooWarm,
             "Left alone, on night {night} at {clock} on {date}, too little water is cool enough for "
             "the fish: {cool} % of the pond has {limit} degC or less, and the coolest, at {depth} m, "
             "has {coolest} degC. Less than {need} % is so cool for {hours} h in all."},
    Template{NothingBelowLethal,
             "It spends {hours} of {total} h below the lethal line of {line} mg/L, first on night {first}."},
    Template{AttributionNone, "No single thing makes that low: none takes away 0.1 mg/L."},
    Template{AttributionOne, "Main cause, and what it takes away (mg/L): {first} {firstGain}."},
    Template{AttributionTwo,
             "Main causes, and what each takes away (mg/L): {first} {firstGain}; {second} {secondGain}."},
    Template{
        AttributionThree,
        "Main causes, and what each takes away (mg/L): {first} {firstGain}; {second} {secondGain}; {third} "
        "{thirdGain}."},
    Template{HabitatLost,
             "Cold water for the fish, at most {limit} degC with {line} mg/L or more, is under 1 % of the "
             "volume for "
             "{hours} h; left alone for {nothing} h."},
    Template{HabitatKept,
             "Cold water for the fish, at most {limit} degC with {line} mg/L or more, never falls under "
             "{share} % of the volume."},
    Template{AmmoniaPeak, "Un-ionised ammonia where the fish are reaches {peak} ug/L as nitrogen."},
    Template{SulfidePeak, "Hydrogen sulfide where the fish are reaches {peak} ug/L as sulfur."},
    Template{
        SaltLayer,
        "Salt holds the layers ({top} above, {bottom} below), not temperature: a thermometer alone would "
        "call this pond mixed."},
    Template{RampHolds, "It skips {days} hold days for the weather."},
    Template{GuessedPh, "No pH is given: {value} is taken for ammonia and sulfide."},
    Template{
        GuessedSulfide,
        "No sulfide was measured: up to {sulfide} mg/L as sulfur is taken for the bottom water; it may be "
        "{times} times as much."},
    Template{
        SulfideRaisesDemand,
        "The sulfide needs more oxygen than the oxygen debt holds in its fast part, so the debt is raised."},
    Template{PlantsByTable,
             "Algae and weeds follow the dated table; what dies becomes oxygen debt where it stood."},
    Template{SurfaceAeratorRuns, "The surface aerator of the pond file runs in every ramp{existing}."},
    Template{NothingAbove, "It stays above the stress line of {line} mg/L on every night."},
    Template{NothingEndState, "Its end state is a dawn low of {end} mg/L."},
    Template{StressLine, "The stress line is {line} mg/L, that of {group}."},
    Template{StressLineOwn, "The stress line is {line} mg/L, as given in the pond file."},
    Template{LethalLine, "The lethal line is {line} mg/L, that of {group}."},
    Template{LethalLineOwn, "The lethal line is {line} mg/L, as given in the pond file."},
    Template{WarmWaterRaise,
             "The stress line is raised by 1 mg/L because the surface water is above {limit} degC."},
    Template{
        AltitudeCut,
        "The stress line is cut to 80 % of saturation, since water at this altitude and temperature cannot "
        "hold more for long."},
    Template{FishWaterShare, "Fish water is the best-oxygenated {share} % of the volume."},
    Template{FishWaterTooWarm, "Water above {limit} degC is no fish water."},
    Template{
        Mixed,
        "The pond is mixed: it has no bottom water by density or by oxygen, so there are no doses and there "
        "is no debt-to-pool ratio."},
    Template{BottomByDensity,
             "Bottom water begins at {depth} m, where density is half-way between surface and bottom; it is "
             "{share} % of the pond's volume."},
    Template{
        BottomByOxygen,
        "Bottom water begins at {depth} m, where oxygen first falls under 2 mg/L; it is {share} % of the "
        "pond's volume."},

    Template{
        RampWorst,
        "{ramp}: lowest on night {night} at {clock} on {date}, {low} mg/L in the fish water; left alone that "
        "night's low is {nothing} mg/L."},
    Template{RampTooWarm,
             "{ramp}: on night {night} at {clock} on {date} too little water is cool enough for the "
             "fish: {cool} % of the pond has {limit} degC or less, and the coolest, at {depth} m, has "
             "{coolest} degC. Less than {need} % is so cool for {hours} h in all."},
    Template{RampAbove, "It stays above the stress line of {line} mg/L on every night."},
    Template{RampBelowStress,
             "It spends {hours} of {total} h below the stress line of {line} mg/L, first on night {first}; "
             "left alone "
             "{nothing} h."},
    Template{RampBelowLethal,
             "It spends {hours} of {total} h below the lethal line of {line} mg/L, first on night {first}; "
             "left alone "
             "{nothing} h."},
    Template{RampLargestDose,
             "The largest dose is {dose} % of the bottom water, on day {day} with {minutes} min of air."},
    Template{RampLiftsNothing, "It lifts no bottom water."},
    Template{RampContinuous, "The air runs around the clock from day {day} on."},
    Template{RampNeverContinuous, "It does not run around the clock within {days} days."},
    Template{
        RampCapLifted,
        "The cap of {cap} % a day is lifted on day {day}: at the dawn before, surface and bottom differed by "
        "less than 1 degC and the bottom held more than 2 mg/L."},
    Template{RampCapNotNeeded,
             "There is no bottom water to cap, so the cap of {cap} % a day is lifted on day 1."},
    Template{RampCapNotLifted,
             "The cap of {cap} % a day is not lifted within {days} days: at no dawn do surface and bottom "
             "differ by less than 1 degC with more than 2 mg/L at the bottom."},
    Template{RampCapHeld, "The cap of {cap} % a day is held throughout, as the pond file asks."},
    Template{RampWindowCut, "Its window of the clock cuts off {minutes} min of air in all."},
    Template{RampDebtLeft, "After {days} days {left} % of the pond's debt is left; left alone {nothing} %."},
    Template{RampEndState, "Its end state is a dawn low of {end} mg/L; left alone {nothing} mg/L."},
    Template{RampEndStateBelow,
             "That end state is below the stress line of {line} mg/L, however gentle the ramp."},
    Template{BothEndStatesBelow, "Both end states are below the stress line of {line} mg/L in this season."},
    Template{EndStateDrift, "It has not settled: the dawn low still changes by {drift} mg/L a day."},
    Template{RampEndedEarly, "{ramp}: the run ended early. {message}"},
    Template{
        RampsApart,
        "The worst nights of the ramps lie {gap} mg/L apart: {high} mg/L with \"{best}\", {low} mg/L with "
        "\"{worst}\"."},
    Template{FilesWritten, "The tables are in {folder}."},

    Template{NightOfRamp, "Night {night}: \"{ramp}\" goes down to {low} mg/L at {clock}, {crosses}."},
    Template{NightOfNothing,
             "Night {night}: left alone the pond goes down to {low} mg/L at {clock}, {crosses}."},
    Template{NightTooWarm,
             "Night {night}: with \"{ramp}\" too little water is cool enough for the fish: {cool} % of "
             "the pond has {limit} degC or less, and the coolest, at {depth} m, has {coolest} degC, at "
             "{clock}."},
    Template{NightNothingTooWarm,
             "Night {night}: left alone too little water is cool enough for the fish: {cool} % of the "
             "pond has {limit} degC or less, and the coolest, at {depth} m, has {coolest} degC, at "
             "{clock}."},
    Template{NightLowest, "The lowest ramp is \"{ramp}\" with {low} mg/L, {crosses}."},
    Template{NightNothing, "Left alone that night: {low} mg/L, {crosses}."},
    Template{NightElsewhere, "The worst night of \"{ramp}\" is night {night}, {low} mg/L at {clock}."},
    Template{NightsOfRamp,
             "\"{ramp}\": lowest on night {night}, {low} mg/L at {clock}. Left alone that night's low is "
             "{nothing} "
             "mg/L."},
    Template{NightsOfNothing, "Left alone the lowest is night {night}, {low} mg/L at {clock}."},
};

constexpr std::array kTermWords{
    TermWord{"sport", "sport fish"},
    TermWord{"catfish", "catfish"},
    TermWord{"carp", "carp"},
    TermWord{"koi", "koi"},
    TermWord{"trout", "trout"},
    TermWord{"percid", "perch, walleye and pike"},
    TermWord{"continuous", "continuous from the first day"},
    TermWord{"doubling", "run time multiplied from day to day"},
    TermWord{"linear", "the same minutes added every day"},
    TermWord{"capped", "a cap on the daily dose"},
    TermWord{"table", "a table of minutes"},
    TermWord{"cause-debt", "oxygen debt of the bottom water"},
    TermWord{"cause-deficit", "lack of oxygen in the bottom water"},
    TermWord{"cause-muck", "muck stirred up"},
    TermWord{"cause-mud", "oxygen demand of the mud"},
    TermWord{"cause-algae", "breathing of algae and weeds"},
    TermWord{"cause-fish", "breathing of the fish"},
    TermWord{"cause-weather", "this weather instead of usual days"},
    TermWord{"cause-dying", "dying algae and weeds"},
    TermWord{"and-nothing", " and left alone"},
    TermWord{"not-nothing", " but not left alone"},
    TermWord{"photosynthesis", "photosynthesis"},
    TermWord{"respiration", "respiration"},
    TermWord{"untitled", "a pond without a title"},
};

}  // namespace

std::span<const Template> templatesOfRuns() {
    return kTemplates;
}

std::span<const TermWord> termsOfRuns() {
    return kTermWords;
}

}  // namespace engine
