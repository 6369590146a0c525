#include "engine/wording/wording_list.h"

#include <array>

namespace engine {
namespace {

using enum SentenceKey;

constexpr std::array kTemplates{
    Template{
        Balance,
        "Balance: photosynthesis is scaled by {photosynthesis}, breathing by {respiration} and the wind by "
        "{wind}, so that after one and two usual days without the new air the water is as near to the "
        "profile as can be. No dawn was read, so the profile may hardly move the breathing."},
    Template{
        BalanceWithDawn,
        "Balance: photosynthesis is scaled by {photosynthesis}, breathing by {respiration} and the wind by "
        "{wind}, so that the first night falls to the dawn reading and after one and two usual days without "
        "the new air the water is as near to the profile as can be."},
    Template{
        BalanceWithLogger,
        "Balance: photosynthesis is scaled by {photosynthesis}, breathing by {respiration} and the wind by "
        "{wind}, so that the water at {depth} m loses by dawn and gains by evening what the logger there "
        "mostly "
        "showed, and after one and two usual days without the new air the water is as near to the profile as "
        "can be."},
    Template{
        BalanceUnusual,
        "A balance factor outside 0.3 to 3 is unusual: the profile, the Secchi depth and the chlorophyll "
        "hardly go together. Measure them again before relying on this."},
    Template{BalanceMiss,
             "A usual day after the profile the computed water is off by {oxygen} mg/L and {degrees} degC "
             "where it is "
             "off most (computed minus measured)."},
    Template{BalanceContrary,
             "The profile and the weather do not fit each other: a usual day after the profile the computed "
             "water is off "
             "by {oxygen} mg/L and {degrees} degC where it is off most (computed minus measured). Read "
             "another profile "
             "or check the wind before relying on this."},
    Template{UsualDays,
             "Days before and after the weather table take the usual day, the mean of the table's days: "
             "{count} of the {total} days that the runs reach into."},
    Template{
        EndStateMeaning,
        "An end state is the mean of seven dawn lows when the schedule that a ramp ends in is run from day 1 "
        "through two weeks of this weather and 30 usual days."},
    Template{Ground, "{what} {better}"},
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
             "Every sentence but those of 100 ponds is of one run with every input at its value. The ponds "
             "like this "
             "one are {members} draws (seed {seed}) of how far each input may be off, the same for every "
             "ramp; their "
             "chances are of the whole run and of oxygen, not of survival. The pond's depths are the same in "
             "all."},
    Template{
        MembersWeighed,
        "Its fish are alive, so ponds whose fish would have died in nights like the past ones count for "
        "less: "
        "what is left tells as much as {effective} ponds that all count the same. Left alone {weighed} of "
        "100 go below the lethal line; {plain} would if all counted the same."},
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

    Template{CautionComparison,
             "This is a comparison of ramps under stated assumptions, not a prediction of survival."},
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

}  // namespace

std::span<const Template> templatesOfAssumptions() {
    return kTemplates;
}

}  // namespace engine
