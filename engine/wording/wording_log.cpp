#include "engine/wording/wording_list.h"

#include <array>

namespace engine {
namespace {

using enum SentenceKey;

// Rules without a source beside them are common practice.
constexpr std::array kLogTemplates{
    Template{LogTitle,
             "The log of {title}: {readings} readings, {events} events, {rows} rows of the readings file."},
    Template{LogReading, "{at}: {text}"},
    Template{LogEvent, "{at}: {text}"},
    Template{LogRows, "Rows of the readings file from {first} to {last}: {count}."},
    Template{LogFlag, "Flagged: {count} readings at {depth} m as {fault}, the first on {date} at {clock}."},
    Template{LogNoFlags, "No reading looks like a fault of its sensor."},
    Template{
        LogFlagsMeaning,
        "Flagged readings stay in the log; a fit leaves them out. A drift that no second meter sees is not "
        "found."},
    Template{LogHeadIs, "Head of the log: {head}"},
    Template{
        LogHeadMeaning,
        "The head shows whether an entry was changed, taken out or put between after it was printed. It "
        "cannot "
        "show that what was written is true, who wrote it or when, nor a change made before it was printed."},
    Template{LogHeadSame, "The log is the one that this head was printed of."},
    Template{LogHeadAdded, "The log is the one that this head was printed of, with entries added since."},
    Template{
        LogHeadChanged,
        "The log is not the one that this head was printed of: an entry of it was changed, taken out or put "
        "between."},

    Template{FitDone,
             "{title}: fitted to {oxygens} values of oxygen and {temperatures} of temperature up to {date}, "
             "{clock}, "
             "with {members} ponds like this one."},
    Template{FitAirRuns, "The air is taken to run as the log and the ramp \"{ramp}\" have it."},
    Template{FitAirOff, "By the log no air has run, so none is taken to run."},
    Template{FitFlagged, "{count} readings are left out because their sensor looks faulty."},
    Template{FitOutside, "{count} readings from before the profile are left out."},
    Template{FitAgrees,
             "Pond and model agree within what meter and model are expected to be off: the readings lie "
             "{mean} mg/L "
             "from the fitted model on average, {ratio} times the expected scatter about it."},
    Template{FitDisagrees,
             "Warning: pond and model disagree beyond noise. The readings lie {mean} mg/L from the fitted "
             "model on "
             "average, with {ratio} times the expected scatter. Something acts in this pond that the file "
             "does not "
             "hold, or a meter is off; look for it before relying on what follows."},
    Template{FitNarrowed, "{input}: before {priorLow} to {priorHigh}, now {low} to {high} (5 to 95 %)."},
    Template{FitNight,
             "The low of the night of {date} is expected at {low} mg/L in the fish water, about {clock}; "
             "{from} to "
             "{to} mg/L (5 to 95 %)."},
    Template{
        FitNightChances,
        "Of 100 ponds that fit these readings, {stress} go below the stress line of {line} mg/L that night."},
    Template{FitMeaning,
             "Ensemble smoother with multiple data assimilation (Emerick and Reynolds 2013); a meter is "
             "taken to be "
             "off by 0.2 mg/L, the model by 0.5 mg/L with errors that last (judgement)."},
    Template{FitWeather,
             "Nothing later than that time is used, nor weather that the file says was not known then; days "
             "without "
             "weather take the mean of those known."},

    Template{TodayVerdict, "{verdict}: {meaning}"},
    Template{TodayFishWater,
             "Fish water this morning, the worst of the upper two readings: {oxygen} mg/L; limits of "
             "{group}: go from "
             "{go}, hold from {hold}, back from {back} mg/L."},
    Template{TodayReason, "Because {reason}."},
    Template{
        TodayTonight,
        "Tonight's low is expected at {low} mg/L in the fish water, about {clock}; {from} to {to} mg/L (5 to "
        "95 %)."},
    Template{
        TodayDuskLine,
        "The line through this evening's readings, {first} mg/L at {firstClock} and {second} mg/L at "
        "{secondClock}, comes to {dawn} mg/L at 07:00; {low} to {high} mg/L by the meter's error alone (5 "
        "to 95 %)."},
    Template{TodayNoFit, "Tonight's low is not computed: {message}"},
    Template{TodayDose, "The next step would lift {dose} % of the bottom water; the cap is {cap} % a day."},
    Template{
        TodayMixed,
        "Surface and bottom are within 1 degC and the bottom holds more than 2 mg/L: once that is so, the "
        "trade goes to air around the clock in two steps at most."},
    Template{TodayNoDose, "No cap on the dose applies: the pond is mixed, or its bottom water owes little."},
    Template{TodaySurfaceAir, "Have surface air running before midnight; {reason}."},
    Template{TodayBottomAir, "{advice}"},
    Template{TodayStepDay, "{date}: {minutes} min from {clock}, about {dose} % of the bottom water."},
    Template{TodayRules,
             "The rules are common practice without a published source; [dawn_rules] in the pond file "
             "changes their "
             "limits. Readings override the model."},
    Template{TodayRestart, "The air has been off for {days} days: {restart}."},
    Template{TodayRestartDebt,
             "Since then the bottom water has gathered about {debt} mg/L of oxygen debt and may hold "
             "{oxygen} mg/L "
             "of oxygen; about {share} % of the first ramp's debt is there again."},

    Template{IncidentTitle, "{title}: fish in distress, {date}, {clock}."},
    Template{IncidentPresent,
             "Now {surface} mg/L above, {bottom} mg/L below, {difference} degC between them: the pond is "
             "{state}."},
    Template{IncidentOption,
             "{option}: lowest {low} mg/L in the fish water within 24 h; above {line} mg/L to stay "
             "after {hours} h."},
    Template{IncidentOptionNever,
             "{option}: lowest {low} mg/L in the fish water within 24 h; it does not stay above {line} mg/L "
             "within 48 h."},
    Template{
        IncidentSurfaceAssumed,
        "The pond file has no surface aerator. For surface air one of {power} kW a hectare is taken, which "
        "brings {transfer} kg of oxygen an hour into clean water (common practice for emergencies, from "
        "memory); a smaller one does less."},
    Template{IncidentAdvice, "{advice}"},
    Template{IncidentStep, "{step}"},
    Template{IncidentSign, "{sign}"},
    Template{IncidentCall, "Call: owner, insurer, state fishery agency, veterinarian or laboratory."},
    Template{IncidentWrite,
             "Write down: the time, oxygen and temperature at three depths, what ran and since when, "
             "weather, which "
             "fish of which size, what was put in lately; photographs with the time."},

    Template{ReviewTitle,
             "{title}: {days} days from {date}, with the aerator as the log has it and without it, under the "
             "weather "
             "that came."},
    Template{ReviewStandsOut,
             "{what} stands out of the noise: read {reading}, {without} {low} to {high} (5 to 95 %)."},
    Template{
        ReviewNothing,
        "{what} does not stand out of the noise: read {reading}, {without} {low} to {high} (5 to 95 %)."},
    Template{ReviewTooFew, "{what}: too few readings to tell; {count} are there, and {needed} are needed."},
    Template{ReviewAfterStandsOut,
             "{what} after {treatment} on {date} stands out of the noise: read {reading}, {without} {low} to "
             "{high} (5 to 95 %)."},
    Template{ReviewAfterNothing,
             "{what} after {treatment} on {date} does not stand out of the noise: read {reading}, {without} "
             "{low} to {high} (5 to 95 %)."},
    Template{
        ReviewAfterTooFew,
        "{what} after {treatment} on {date}: too few readings to tell; {count} are there, and {needed} are "
        "needed."},
    Template{ReviewNotBought, "{date}: {what} was offered and not bought."},
    Template{ReviewNotSpent, "Not spent on what was offered and left out: {cost} in the owner's money."},
    Template{
        ReviewKill,
        "Had all algae been killed at noon of {date}, the lowest dawn of the upper water since then would "
        "have been {all} mg/L ({allLow} to {allHigh}); had a quarter of them been, {quarter} mg/L "
        "({quarterLow} to {quarterHigh}); left alone, the model has {alone} mg/L ({low} to {high}): the "
        "middle and nine of ten ponds like this one that fit the readings, under the weather that came."},
    Template{ReviewTreatment, "{date}: {what}, {area} % of the area."},
    Template{ReviewNotAttributable,
             "{date}: {what} came within {days} days of another change, so that nothing seen after it can be "
             "put down "
             "to either."},
    Template{ReviewCopper, "Copper: {gate}"},
    Template{ReviewAlgaeBill,
             "Killing all algae would cost {low} to {high} mg/L of oxygen over a week or two (8 to 13 mg/L "
             "for each "
             "100 ug/L of chlorophyll, after Boyd 1973); the upper water held {mean} mg/L at the last dawn."},
    Template{ReviewInParts,
             "Whatever these numbers are: treat a quarter to a third of the area at a time, {days} days "
             "apart; never "
             "the whole pond in hot or cloudy weather, or where the dawn is below {line} mg/L."},
    Template{ReviewCost, "Spent on treatments: {cost} in the owner's money."},
    Template{ReviewVerdict, "{verdict}"},
    Template{
        StartChecked,
        "Held against {dawns} dawn readings, what was computed for \"{ramp}\" was {miss} mg/L off on average "
        "(computed minus read); without the sign {distance} mg/L."},
    Template{
        StartsChecked,
        "Starts in the ledger: {starts}. On average they were {distance} mg/L off, and the papers say so."},
    Template{
        ReviewMeaning,
        "A change stands out where the mean of what was read after it, up to the next change, lies outside "
        "what nine of ten ponds like this one would have done without it. That is no proof of what caused "
        "it."},
};

constexpr std::array kLogTerms{
    TermWord{"go", "GO"},
    TermWord{"hold", "HOLD"},
    TermWord{"back", "BACK"},
    TermWord{"stop", "STOP"},
    TermWord{"go-means", "next step."},
    TermWord{"hold-means", "the same minutes again."},
    TermWord{"back-means", "skip a day, then go on with half; surface air at night."},
    TermWord{"stop-means",
             "surface air on, no feed, call; the incident sheet says what to do with bottom air."},
    TermWord{"fish-water-good", "the fish water is at the go limit or above"},
    TermWord{"fish-water-hold", "the fish water is under the go limit"},
    TermWord{"fish-water-back", "the fish water is under the hold limit"},
    TermWord{"fish-water-stop", "the fish water is under the stop limit"},
    TermWord{"fall-hold", "it is down by more than the limit since before the start or the last dawn"},
    TermWord{"fall-back", "it has fallen by more than the second limit in one night"},
    TermWord{"smell-faint", "there is a faint smell"},
    TermWord{"smell-strong", "there is a strong smell"},
    TermWord{"fish-off-feed", "the fish are off their feed"},
    TermWord{"fish-piping", "the fish are piping at the surface"},
    TermWord{"weather-hold", "the weather or the calendar says hold"},
    TermWord{"dose-too-large", "tomorrow's step would lift more of the bottom water than its cap"},
    TermWord{"three-holds",
             "this is the third hold in a row: review the ramp, since it can be too slow as well"},
    TermWord{"no-morning-rise", "oxygen has not risen since dawn: no run today"},
    TermWord{"night-below-line", "tonight is expected under the hold limit"},
    TermWord{"restart-go-on", "go on where the ramp stood"},
    TermWord{"restart-reduced", "take it as a fresh start at a reduced dose, a quarter of what ran last"},
    TermWord{"restart-whole", "run the whole ramp again"},
    TermWord{"restart-formality", "the pond is mixed, so that two to three days are enough"},
    TermWord{"mixed", "mixed"},
    TermWord{"stratified", "still stratified"},
    TermWord{"between", "neither mixed nor clearly stratified"},
    TermWord{"ice", "near freezing, and what ice does is not computed"},
    TermWord{"not-read", "not read at two depths"},
    TermWord{"option-stop", "Air off"},
    TermWord{"option-run", "Air on"},
    TermWord{"option-surface", "Air off and surface air on"},
    TermWord{"option-both", "Air and surface air on"},
    TermWord{"advice-stratified",
             "The pond is in layers: bottom air off. Surface air on in one corner, drawing from the surface, "
             "never from the bottom."},
    TermWord{"advice-mixed",
             "The pond is mixed: bottom air that runs stays on, since stopping it would stop the renewal at "
             "the surface. Add surface air."},
    TermWord{"advice-between",
             "Start surface air and read top and bottom: bottom air that runs goes off only if the top is "
             "over 2 degC warmer than the bottom. Do not start it."},
    TermWord{"sign-oxygen",
             "Low oxygen: large fish first, at night or early in the morning, oxygen below 2 and mostly "
             "below 1 "
             "mg/L, pH 6 to 7.5, brown, grey or black water, dying algae."},
    TermWord{"sign-toxic",
             "More likely an algal toxin: small fish first, in bright daylight, oxygen high, pH 9.5 or more. "
             "Then it is not the "
             "aerator (signs after the USFWS field manual on fish kills)."},
    TermWord{"step-feed", "No feed, no handling, no chemicals."},
    TermWord{"step-inflow", "Fresh water with oxygen in it, if there is any."},
    TermWord{"step-chase", "No permanganate or peroxide as a reflex."},
    TermWord{"step-samples",
             "Fish that still move on ice for the laboratory, water samples from top and bottom; count by "
             "kind and "
             "size; who took what stays with the person on site."},
    TermWord{"step-dead", "Take dead fish out; what rots uses oxygen."},
    TermWord{"step-again",
             "Read every 2 h until oxygen is above 4 mg/L for two dawns; resume with a quarter of the dose "
             "after five "
             "to seven days at the earliest."},
    TermWord{"dawn-low", "The dawn oxygen above (mg/L)"},
    TermWord{"bottom-oxygen", "The oxygen at the bottom (mg/L)"},
    TermWord{"secchi", "The Secchi depth (m)"},
    TermWord{"without-aerator", "left alone"},
    TermWord{"without-treatment", "with the aerator and without any treatment"},
    TermWord{"before-change", "as read before it"},
    TermWord{"gate-unknown",
             "not before the alkalinity is measured; without it nobody can tell what copper does here."},
    TermWord{"gate-low", "not here, the alkalinity is below 50 mg/L."},
    TermWord{"gate-open", "the alkalinity allows it by itself; the label and local rules come first."},
    TermWord{"verdict-wait",
             "Wait: 30 days have not passed since the last change, and nothing can be judged before."},
    TermWord{"verdict-leave",
             "Add nothing: what could be read is better, or no worse, than if the pond had been left alone."},
    TermWord{"verdict-one",
             "One targeted thing at most, on a quarter to a third of the area, then wait 30 to 60 days and "
             "read again."},
};

}  // namespace

std::span<const Template> templatesOfLog() {
    return kLogTemplates;
}

std::span<const TermWord> termsOfLog() {
    return kLogTerms;
}

}  // namespace engine
