#include "engine/wording/wording.h"

#include "engine/base/error.h"
#include "engine/base/text.h"
#include "engine/base/units.h"
#include "engine/pond/local_time.h"
#include "engine/wording/wording_list.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>

namespace engine {
namespace {

using enum SentenceKey;

constexpr std::array kTemplates{
    Template{FileTitle, "{file}: {title}"},
    Template{FileFirstDay, "Day 1 is {date}."},
    Template{FileWeather, "The weather covers {first} to {last}."},
    Template{FileNoRamps, "There is no ramp in it."},
    Template{FileRamp, "Ramp \"{ramp}\": {kind}."},
    Template{FileWarnings, "Warnings: {count}."},

    Template{Title, "{title}: {days} days from {date}."},
    Template{NothingBelowStress,
             "This pond goes below its stress line by itself, without the new aerator: first on night "
             "{first}; the worst is night {night}, at {clock} on {date}, {low} mg/L in the fish water; in "
             "all it spends {hours} of {total} h below the stress line of {line} mg/L. That is neither to "
             "the credit nor to the blame of the aerator."},
    Template{NothingWorst, "The worst is night {night}, at {clock} on {date}, {low} mg/L in the fish water."},
    Template{NothingBelowLethal,
             "It spends {hours} of {total} h below the lethal line of {line} mg/L, first on night {first}."},
    Template{AttributionNone,
             "No single thing makes that low: none of them gains 0.1 mg/L when it is left out."},
    Template{AttributionOne, "What makes that low (mg/L gained if it were not there): {first} {firstGain}."},
    Template{AttributionTwo,
             "What makes that low (mg/L gained if it were not there): {first} {firstGain}; {second} "
             "{secondGain}."},
    Template{AttributionThree,
             "What makes that low (mg/L gained if it were not there): {first} {firstGain}; {second} "
             "{secondGain}; {third} {thirdGain}."},
    Template{
        WantOfCoolWater,
        "That low is for want of cool water, not of oxygen: water above {limit} degC counts as having none, "
        "and the whole pond then holds {mean} mg/L on average."},
    Template{HabitatLost,
             "Cold water for the fish, at most {limit} degC with {line} mg/L or more, is under 1 % of the "
             "volume for "
             "{hours} h; without the new aerator for {nothing} h."},
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
    Template{GuessedPh, "No pH is given: {value} is taken for the poisons."},
    Template{
        SulfideRaisesDemand,
        "The sulfide needs more oxygen than the oxygen debt holds in its fast part, so the debt is raised."},
    Template{PlantsByTable,
             "Algae and weeds follow the dated table; what dies becomes oxygen debt where it stood."},
    Template{SurfaceAeratorRuns, "The surface aerator of the pond file runs in every ramp{existing}."},
    Template{NothingAbove, "It stays above the stress line of {line} mg/L on every night."},
    Template{
        NothingChances,
        "Of ten ponds like this one, {stress} would go below the stress line of {line} mg/L by themselves at "
        "some time of the {days} days, and {lethal} below the lethal line of {lethalLine} mg/L."},
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
        "{ramp}: the worst is night {night}, at {clock} on {date}, {low} mg/L in the fish water; without "
        "the new aerator that night's low is {nothing} mg/L."},
    Template{RampAbove, "It stays above the stress line of {line} mg/L on every night."},
    Template{RampBelowStress,
             "It spends {hours} of {total} h below the stress line of {line} mg/L, first on night {first}; "
             "without the new aerator {nothing} h."},
    Template{RampBelowLethal,
             "It spends {hours} of {total} h below the lethal line of {line} mg/L, first on night {first}; "
             "without the new aerator {nothing} h."},
    Template{RampChances,
             "Of ten ponds like this one, {stress} would go below the stress line of {line} mg/L at some "
             "time of the "
             "{days} days; without the new aerator {nothing}; {added} with this ramp that would not without, "
             "which is "
             "what a ramp can control."},
    Template{
        RampChancesLethal,
        "Of ten ponds like this one, {lethal} would go below the lethal line of {line} mg/L; without the new "
        "aerator {nothing}."},
    Template{RampLargestDose,
             "The largest dose is {dose} % of the bottom water, on day {day} with {minutes} min of air."},
    Template{RampLiftsNothing, "It lifts no bottom water."},
    Template{RampContinuous, "The air runs around the clock from day {day} on."},
    Template{RampNeverContinuous, "The air does not come to run around the clock within {days} days."},
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
    Template{RampDebtLeft,
             "After {days} days {left} % of the pond's debt is left; without the new aerator {nothing} %."},
    Template{RampEndState,
             "Its end state is a dawn low of {end} mg/L; without the new aerator {nothing} mg/L."},
    Template{RampEndStateBelow,
             "That end state is below the stress line of {line} mg/L: what this ramp leads to holds this "
             "pond below its line in this season, however gentle the ramp."},
    Template{BothEndStatesBelow,
             "Both end states are below the stress line of {line} mg/L: in this season the pond keeps above "
             "it neither with this schedule nor without the aerator."},
    Template{EndStateDrift, "It has not settled: the dawn low still changes by {drift} mg/L a day."},
    Template{RampEndedEarly, "{ramp}: the run ended early. {message}"},
    Template{
        RampsApart,
        "The worst nights of the ramps lie {gap} mg/L apart: {high} mg/L with \"{best}\", {low} mg/L with "
        "\"{worst}\"."},
    Template{FilesWritten, "The tables are in {folder}."},

    Template{NightBelowLethal,
             "Night {night}: \"{ramp}\" falls to {low} mg/L at {clock}, below the lethal line."},
    Template{NightBelowStress,
             "Night {night}: \"{ramp}\" falls to {low} mg/L at {clock}, below the stress line."},
    Template{NightAbove,
             "Night {night}: no ramp goes below the stress line; the lowest is \"{ramp}\" with {low} mg/L at "
             "{clock}."},
    Template{NightOfNothing, "Night {night}: the low is {low} mg/L at {clock}, without a new aerator."},
    Template{NightWithSelected, "With \"{ramp}\": {low} mg/L."},
    Template{NightNothing, "Without the new aerator: {low} mg/L."},
    Template{NightNothingBelow, "Without the new aerator: {low} mg/L, below the stress line as well."},
    Template{NightElsewhere, "The worst night of \"{ramp}\" is night {night}, {low} mg/L at {clock}."},
    Template{
        NightsOfRamp,
        "\"{ramp}\": the worst is night {night}, {low} mg/L at {clock}. Without the new aerator that night's "
        "low is {nothing} mg/L."},
    Template{NightsOfNothing, "Without the new aerator the worst is night {night}, {low} mg/L at {clock}."},

    Template{Balance,
             "Balance: photosynthesis is scaled by {photosynthesis} and respiration by {respiration}, so "
             "that under the usual day the fish water holds as much oxygen 24 h after the profile as at the "
             "profile. There is no dawn reading to scale respiration to."},
    Template{BalanceWithDawn,
             "Balance: respiration is scaled by {respiration}, so that the night falls to the dawn reading, "
             "and photosynthesis by {photosynthesis}, so that under the usual day the fish water holds as "
             "much oxygen 24 h after the profile as at the profile."},
    Template{
        BalanceUnusual,
        "A balance factor outside 0.3 to 3 is unusual: the profile, the Secchi depth and the chlorophyll "
        "hardly go together. Measure them again before relying on this."},
    Template{
        BalanceMiss,
        "The factor of {which} came to the end of its range, {factor}: the model remains {miss} mg/L off "
        "(model minus measured)."},
    Template{UsualDays,
             "Days before and after the weather table take the usual day, the mean of the table's days: "
             "{count} of the {total} days that the runs reach into."},
    Template{
        EndStateMeaning,
        "An end state is the mean of the last seven dawn lows when the last schedule is held for 30 more "
        "usual days under the sun of the last date."},
    Template{
        GuessedProfile,
        "There is no measured profile: temperature and oxygen at the start are guessed from season, depth, "
        "Secchi depth and age."},
    Template{
        GuessedFish,
        "No fish are given: {stock} kg/ha of {mass} g each are taken, a usual stock of such a pond, and the "
        "lines of {group}."},
    Template{GuessedFishMass, "No mean mass is given for the {kind}: {mass} g is taken."},
    Template{GuessedSlowDebt, "No slow debt is given: {debt} mg/L is taken, a quarter of the oxygen debt."},
    Template{
        GuessedSedimentDemand,
        "No sediment demand is given: {demand} g/m2/d at 20 degC is taken, usual for a pond of this age, "
        "muck and smell."},
    Template{GuessedMuck,
             "No muck depth is given: {muck} m is taken, usual for a pond of this age and smell."},
    Template{
        GuessedChlorophyll,
        "No chlorophyll is given: {chlorophyll} ug/L is taken from the Secchi depth, as for water clouded "
        "by algae alone."},
    Template{GuessedWeeds, "No weed cover is given: none is taken."},
    Template{GuessedWindShelter,
             "No wind shelter is given: {shelter} % of the wind is taken to reach the pond."},
    Template{GuessedNonRecirculatedShare,
             "No net share is given: {share} % of what the plume lifts is taken to stay up, the rest to be "
             "drawn in "
             "again at once."},
    Template{GuessedBubbles, "No bubble size is given: {bubble} mm is taken."},
    Template{NoPower, "The aerator's power is not given, so its energy is left empty."},
    Template{CentralRunOnly,
             "Every input stands at its value, in one run; how far it may be off is not computed, and the "
             "chances in summary.csv are 0 or 1."},
    Template{MembersDrawn,
             "Every sentence but those of ten ponds is of one run with every input at its value. The ponds "
             "like this "
             "one are {members} draws (seed {seed}) of how far each input may be off, the same for every "
             "ramp; their "
             "chances are of the whole run and of oxygen, not of survival. The pond's depths are the same in "
             "all."},
    Template{
        MembersWeather,
        "The weather of those ponds scatters about the table: air by 1.5 degC, wind by a factor of 1.35 and "
        "cloud "
        "by 20 points (1 sigma) on day 1, by as much as the table's days about their mean from day 6 on."},
    Template{MembersObservedWeather, "The weather is observed and the same for all of those ponds."},
    Template{MembersAtFactorEnd,
             "In {count} of {members} of those ponds a balance factor came to the end of its range, so that "
             "the pond "
             "does not meet the readings it was led to."},
    Template{NoBubblingOut, "Bubbling-out of supersaturated gas is left out."},

    Template{CautionComparison,
             "This is a comparison of plans under stated assumptions, not a prediction of survival."},
    Template{CautionReadings, "Readings override the model."},
    Template{
        CautionProfileAge,
        "It is valid for the profile of {date}; run it again when that is more than seven days old or the "
        "weather has changed."},
    Template{CautionPermits,
             "Local codes and permits apply, and electrical work is for a licensed electrician."},
    Template{CautionLifeSupport, "It is not for the life support of high-value stock."},
    Template{CautionIce, "Aeration that runs in winter makes thin ice: mark it and keep people off."},
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
    TermWord{"and-nothing", " and without the new aerator"},
    TermWord{"not-nothing", " but not without the new aerator"},
    TermWord{"photosynthesis", "photosynthesis"},
    TermWord{"respiration", "respiration"},
    TermWord{"untitled", "a pond without a title"},
};

/// Fixed decimals, or "under LIMIT" for a positive number that they would show as nothing.
std::string orUnder(double value, int decimals, std::string_view limit) {
    std::string text = fixed(value, decimals);
    const bool isNothing = text.find_first_not_of("0.") == std::string::npos;
    return value > 0.0 && isNothing ? "under " + std::string(limit) : text;
}

/// Three figures are enough for kilograms and factors; small ones keep two decimals.
std::string figures(double value) {
    const double magnitude = std::fabs(value);
    return value == 0.0 ? "0" : fixed(value, magnitude >= 99.95 ? 0 : magnitude >= 9.995 ? 1 : 2);
}

/// A share as so many of ten, without showing what is rare as never or what is frequent as always.
std::string ofTen(double share) {
    const double ten = 10.0 * share;
    return share <= 0.0   ? "none"
           : share >= 1.0 ? "all"
           : ten <= 0.5   ? "fewer than one"
           : ten >= 9.5   ? "more than nine"
                          : fixed(std::round(ten), 0);
}

std::string clockOf(double seconds) {
    const auto minutes = static_cast<long>(std::lround(seconds / kMinute));
    const long day = std::lround(kDay / kMinute);
    return formatClock(ClockTime{static_cast<int>((minutes % day + day) % day)});
}

/// A unit as templates have it behind a value, and what stands before it for readers of US units.
struct UsUnit {
    Measure measure{};
    std::string_view metric, us;
    double factor = 1.0, offset = 0.0;  ///< us = factor * metric + offset
};
constexpr std::array kUsUnits{UsUnit{Measure::Depth, " m", " ft", 1.0 / kMetrePerFoot, 0.0},
                              UsUnit{Measure::Degrees, " degC", " degF", 1.8, 32.0}};

/// @param behind  Of the template, from behind the value on.
const UsUnit* usUnitOf(Measure measure, std::string_view behind) {
    for (const UsUnit& unit : kUsUnits) {
        const bool isWhole = behind.size() <= unit.metric.size() ||
                             !std::isalnum(static_cast<unsigned char>(behind[unit.metric.size()]));
        if (unit.measure == measure && behind.starts_with(unit.metric) && isWhole) {
            return &unit;
        }
    }
    return nullptr;
}

}  // namespace

std::string_view englishTemplate(SentenceKey key) {
    for (const std::span<const Template> list :
         {std::span<const Template>(kTemplates), templatesBeforeRuns(), templatesOfMeasuring(),
          templatesOfLog(), templatesOfPlans()}) {
        const auto found =
            std::find_if(list.begin(), list.end(), [key](const Template& one) { return one.key == key; });
        if (found != list.end()) {
            return found->text;
        }
    }
    ensure(false, "every sentence has its words");
    return {};
}

std::string_view englishTerm(std::string_view term) {
    for (const std::span<const TermWord> list :
         {std::span<const TermWord>(kTermWords), termsOfMeasuring(), termsOfLog(), termsOfPlans()}) {
        const auto found =
            std::find_if(list.begin(), list.end(), [term](const TermWord& one) { return one.term == term; });
        if (found != list.end()) {
            return found->text;
        }
    }
    return term;
}

std::string_view englishHeading(SentencePart part) {
    switch (part) {
        case SentencePart::File:
        case SentencePart::Files:
        case SentencePart::Night:
        case SentencePart::NightDetail:
            return "";
        case SentencePart::Plan:
            return "The plan";
        case SentencePart::EndStates:
            return "End states, held from day 1";
        case SentencePart::Holds:
            return "Weather";
        case SentencePart::Sensitivity:
            return "Too fast, too slow";
        case SentencePart::Profile:
            return "The profile";
        case SentencePart::Shares:
            return "What moves the worst low";
        case SentencePart::Visit:
            return "What to measure, cheapest first";
        case SentencePart::Triage:
            return "Triage";
        case SentencePart::DoNothing:
            return "Without the new aerator (do-nothing)";
        case SentencePart::Pond:
            return "The pond";
        case SentencePart::Ramp:
            return "The ramps";
        case SentencePart::Assumption:
            return "What is assumed";
        case SentencePart::Caution:
            return "Cautions";
        case SentencePart::Log:
        case SentencePart::Fit:
        case SentencePart::Today:
        case SentencePart::Incident:
        case SentencePart::Review:
            return "";
        case SentencePart::DaysAhead:
            return "From today";
        case SentencePart::IncidentSigns:
            return "What it looks like";
        case SentencePart::IncidentSteps:
            return "What to do and write down";
        case SentencePart::Treatments:
            return "What was put in";
    }
    return "";
}

std::string shownValue(const SentenceValue& value) {
    switch (value.measure) {
        case Measure::Text:
            return value.text;
        case Measure::Term:
            return std::string(englishTerm(value.text));
        case Measure::Whole:
        case Measure::Minutes:
        case Measure::Volume:
            return fixed(value.number, 0);
        case Measure::Micrograms:
            return figures(1000.0 * value.number);
        case Measure::Oxygen:
        case Measure::Depth:
            return fixed(value.number, 1);
        case Measure::Rate:
            return std::string(value.number > 0.0 ? "+" : "").append(fixed(value.number, 1));
        case Measure::Hours:
            return orUnder(value.number, 1, "0.1");
        case Measure::OfTen:
            return ofTen(value.number);
        case Measure::Percent:
            return orUnder(value.number, 0, "1");
        case Measure::Mass:
        case Measure::Plain:
            return figures(value.number);
        case Measure::Degrees:
        case Measure::Input:
            return shortest(value.number);
        case Measure::Clock:
            return clockOf(value.number);
        case Measure::Day:
            return formatDate(std::chrono::sys_days(std::chrono::days(std::lround(value.number))));
    }
    return "";
}

std::string filled(std::string_view pattern, const std::vector<SentenceValue>& values,
                   const std::function<std::string(const SentenceValue&)>& shown, UnitSystem units) {
    std::string text;
    while (!pattern.empty()) {
        const std::size_t open = pattern.find('{');
        text += pattern.substr(0, open);
        if (open == std::string_view::npos) {
            break;
        }
        const std::size_t close = pattern.find('}', open);
        ensure(close != std::string_view::npos, "a place in a template is closed");
        const std::string_view name = pattern.substr(open + 1, close - open - 1);
        const auto value = std::find_if(values.begin(), values.end(),
                                        [name](const SentenceValue& one) { return one.name == name; });
        ensure(value != values.end(), "every place in a template has its value");
        pattern.remove_prefix(close + 1);
        const UsUnit* us = units == UnitSystem::Us ? usUnitOf(value->measure, pattern) : nullptr;
        if (us == nullptr) {
            text += shown(*value);
            continue;
        }
        SentenceValue other = *value;
        other.number = std::round(10.0 * (us->factor * value->number + us->offset)) / 10.0;
        text.append(shown(other)).append(us->us).append(" (");
        text.append(shown(*value)).append(us->metric).append(")");
        pattern.remove_prefix(us->metric.size());
    }
    return text;
}

std::string english(const Sentence& sentence) {
    return filled(englishTemplate(sentence.key), sentence.values, shownValue,
                  sentence.units.value_or(UnitSystem::Metric));
}

std::string englishText(const std::vector<Sentence>& sentences) {
    std::string text;
    std::optional<SentencePart> part;
    for (const Sentence& sentence : sentences) {
        const std::string_view heading = englishHeading(sentence.part);
        const bool isLead = sentence.key == Title || sentence.key == FileTitle ||
                            sentence.key == MeasureTitle || sentence.key == PlanTitle ||
                            sentence.key == FilesWritten;
        if (!isLead && sentence.part != part && !heading.empty()) {
            text.append("\n").append(heading).append("\n");
            part = sentence.part;
        }
        const bool startsBlock = sentence.part != SentencePart::Ramp || sentence.key == RampWorst ||
                                 sentence.key == RampEndedEarly || sentence.key == RampsApart;
        text += sentence.key == FilesWritten ? "\n" : isLead ? "" : startsBlock ? "  " : "    ";
        text += english(sentence) + '\n';
    }
    return text;
}

}  // namespace engine
