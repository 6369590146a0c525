#include "engine/wording/wording_list.h"

#include <array>

namespace engine {
namespace {

using enum SentenceKey;

constexpr std::array kTemplates{
    Template{PlanTitle,
             "{title}: a plan from {date}, so that of ponds like this one at most {chance} % are taken below "
             "{line} mg/L."},
    Template{PlanNothingExceeds,
             "Left alone {count} of 100 ponds like this one go below {line} mg/L within {days} days, more "
             "than the "
             "wanted {chance}; {lethal} go below the lethal line of {lethalLine} mg/L."},
    Template{PlanNothingWithin,
             "Left alone {count} of 100 ponds like this one go below {line} mg/L within {days} days; "
             "{lethal} go below "
             "the lethal line of {lethalLine} mg/L."},
    Template{PlanUnderWay, "{order}."},
    Template{PlanLeftAloneLethal,
             "No ramp was searched for: left alone the fish water of this pond falls to {low} mg/L on night "
             "{night}, below the lethal line of {lethalLine} mg/L. Have surface air at hand now."},
    Template{
        PlanDoNotStartLethal,
        "No ramp was found, with surface air or without: left alone the fish water of this pond falls to "
        "{low} mg/L on night {night}, below the lethal line of {lethalLine} mg/L. Have surface air at "
        "hand now."},
    Template{
        PlanDoNotStartWarm,
        "No ramp was searched for: left alone this pond has too little water of at most {limit} degC, worst "
        "on "
        "night {night}. The fish lack cool water, not oxygen; turning the pond over warms what is left."},
    Template{PlanDoNotStartNoEnd,
             "No schedule for good was found: under none does this pond settle above {line} mg/L in this "
             "season, or by "
             "more than {worse} mg/L higher than left alone."},
    Template{PlanDoNotStartNoWay,
             "No ramp was found: the pond could settle above {line} mg/L, but every way there that was tried "
             "harms "
             "more than {chance} of 100 ponds like this one."},
    Template{
        PlanDoNotStartBetter,
        "No ramp was found: this pond settles above {line} mg/L under no schedule, and the ways to those "
        "under "
        "which it would settle higher than left alone harm more than {chance} of 100 ponds like this one."},
    Template{
        PlanDoNotStartToxicants,
        "No ramp was found: the best way brings ammonia or sulfide where the fish are above its limit, and "
        "further than left alone."},
    Template{PlanCourtesy,
             "No ramp is needed; a shorter first day is a courtesy (common practice, no published source)."},
    Template{PlanRamp, "The standing schedule begins on day {days}; before it:"},
    Template{PlanDay, "Day {day}: {minutes} min from {clock}, {diffusers} of {all} diffusers at {depth} m."},
    Template{PlanDayPulses,
             "Day {day}: {minutes} min in {pulses} equal runs, the first at {clock}, {diffusers} of {all} "
             "diffusers at "
             "{depth} m."},
    Template{PlanDayHeld, "Day {day}: no air."},
    Template{PlanSustained,
             "Standing schedule: {kind}, {minutes} min a day from {clock}, {diffusers} of {all} diffusers "
             "at {depth} m; "
             "its end state is a dawn low of {end} mg/L, left alone {nothing} mg/L."},
    Template{PlanBelowLine,
             "That end state is below {line} mg/L, though higher than left alone: no schedule keeps this "
             "pond above its "
             "line in this season."},
    Template{
        PlanLiftsNothing,
        "Its diffusers hang above the bottom water, which begins at {depth} m: they lift none of it, and "
        "its debt stays."},
    Template{PlanContinuousKeeps,
             "Run day and night at the file's depth, this pond would settle at a dawn low of {end} mg/L in "
             "this season, "
             "above the line of {line} mg/L. This is about where it settles, not about the way there."},
    Template{PlanContinuousFails,
             "Do not run it day and night at this depth in this season: it would settle at a dawn low of "
             "{end} mg/L, "
             "under the line of {line} mg/L; left alone at {nothing} mg/L."},
    Template{PlanContinuousBetter,
             "Run day and night at the file's depth, this pond would settle at a dawn low of {end} mg/L in "
             "this season, "
             "under the line of {line} mg/L, but higher than the {nothing} mg/L left alone."},
    Template{PlanOwnDraws,
             "The search tried it on draws of its own, which tell as much as {members} ponds: {count} went "
             "below the lethal line, so of all ponds like this one at most {upper} % (95 % sure)."},
    Template{PlanHeld,
             "The search held it on {members} draws of its own: {count} ponds harmed, at most {upper} %."},
    Template{PlanHarmMeaning,
             "A pond counts as harmed if the ramp takes it below either line that it keeps left alone, "
             "or, on any night below {line} mg/L, lower than left alone by more than {worse} mg/L; "
             "the latter where do-nothing fails too, so that the added chance says nothing."},
    Template{
        PlanStartMeaning,
        "A ramp may start only where its conditions hold: few enough ponds below the lethal line, with it "
        "and left alone; at most the wanted share of ponds above {line} mg/L left alone taken below it; no "
        "computed dawn at which its own morning rule would stop or hold it; gases no worse than left "
        "alone."},
    Template{EndStateRow,
             "{kind}, {minutes} min from {clock} at {depth} m: a dawn low of {end} mg/L{verdict}."},
    Template{EndStateOfNothing, "Left alone: a dawn low of {end} mg/L."},
    Template{HoldOne, "Hold on day {day}, {date}: {reason}."},
    Template{
        HoldsDoNotCount,
        "The hold days do not stop this ramp, since it lifts no bottom water on top of a natural turnover."},
    Template{
        HoldsNoOutlook,
        "The outlook ends on day {day}; what comes after it is unknown and held by nothing: make the plan "
        "again then."},
    Template{SensitivityPoint,
             "{ramp}: around the clock from day {days}; {added} of {members} ponds that are above {line} "
             "mg/L left alone are pushed below "
             "it; {left} % of the debt left on the last day."},
    Template{SensitivityPointNoEnd,
             "{ramp}: not around the clock in this time; {added} of {members} ponds that are above {line} "
             "mg/L left "
             "alone are pushed below it; {left} % of the debt left on the last day."},
    Template{SensitivitySearched,
             "Growing evenly to the standing schedule on day {days}: {added} of {members} ponds; {left} % of "
             "the debt left."},
    Template{SensitivitySlow,
             "Too slow: under usual days {minutes} min a day or more bring the debt below {cleared} % within "
             "{days} days; {less} min a day leave {left} %."},
    Template{SensitivitySlowNever,
             "Too slow: under usual days no daily run brings the debt below {cleared} % within {days} days, "
             "since the mud makes it anew: {less} min a day leave {left} %, around the clock {all} %."},
    Template{StressWorst,
             "Of every day of the ramp overcast and calm, or with a cold front, the worst is {kind} on day "
             "{day}: {low} mg/L on night {night} with the ramp, {nothing} mg/L left alone."},
};

constexpr std::array kTermWords{
    TermWord{"go-by-morning", "No schedule from here; go by the morning's readings"},
    TermWord{"leave-off", "Leave the air from below off for now"},
    TermWord{"standing-continuous", "around the clock"},
    TermWord{"standing-raised", "around the clock, diffusers raised"},
    TermWord{"standing-by-day", "by day only"},
    TermWord{"standing-by-night", "by night only"},
    TermWord{"standing-part-time", "part of the day"},
    TermWord{"end-keeps", ", which keeps the line"},
    TermWord{"end-better", ", below the line, but higher than left alone"},
    TermWord{"end-fails", ", which does not keep the line"},
    TermWord{"stress-overcast", "an overcast, calm day"},
    TermWord{"stress-front", "a cold front"},
    TermWord{"hold-dull", "dull days ahead"},
    TermWord{"hold-heat", "heat ahead"},
    TermWord{"hold-calm", "heat without wind ahead"},
    TermWord{"hold-front", "a storm or a front ahead"},
    TermWord{"hold-fall", "a front on that day"},
    TermWord{"hold-algaecide", "algae were treated within two weeks, or three if heavily"},
    TermWord{"hold-bloom", "the bloom has changed its colour"},
    TermWord{"hold-own", "the pond file names it"},
};

}  // namespace

std::span<const Template> templatesOfPlans() {
    return kTemplates;
}

std::span<const TermWord> termsOfPlans() {
    return kTermWords;
}

}  // namespace engine
