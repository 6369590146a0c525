#pragma once

#include "engine/base/error.h"
#include "engine/ensemble/compare.h"
#include "engine/pond/pond.h"

#include <optional>
#include <string>
#include <vector>

namespace engine {

/// What a comparison, or a check of a pond file, has to say. The words stand in engine/wording/wording; which
/// numbers come with a key stands beside it there.
enum class SentenceKey {
    // What a pond file holds
    FileTitle,
    FileFirstDay,
    FileWeather,
    FileNoRamps,
    FileRamp,
    FileWarnings,
    // What the measured profile gives to doubt
    ProfileThinAir,
    ProfileSupersaturated,
    ProfileUnexplained,
    ProfileImpossible,
    ProfileSeaLevelMeter,
    ProfileInverted,
    ProfileHiddenSalt,
    ProfileUniformLayer,
    ProfileAeratedSample,
    ProfileRisingOxygen,
    // Before anything is run
    TriageNothingFirst,
    TriageOfTheStart,
    TriageMixed,
    TriageOnlyByTemperature,
    TriageLayered,
    TriageFirstDose,
    TriageFirstDoseTooLarge,
    TriageLiftsNothing,
    SeasonBest,
    SeasonCoolButPoor,
    SeasonLastResort,
    SeasonWarm,
    SeasonFreezing,
    // The pond
    Title,
    NothingWorst,
    NothingBelowStress,
    NothingBelowLethal,
    NothingAbove,
    NothingEndState,
    StressLine,
    StressLineOwn,
    LethalLine,
    LethalLineOwn,
    WarmWaterRaise,
    AltitudeCut,
    FishWaterShare,
    FishWaterTooWarm,
    Mixed,
    BottomByDensity,
    BottomByOxygen,
    SaltLayer,
    DebtRatio,
    DebtWithoutReserve,
    RatioLow,
    RatioRampRequired,
    RatioHigh,
    RatioDoNotStart,
    // A ramp
    RampWorst,
    AttributionNone,
    AttributionOne,
    AttributionTwo,
    AttributionThree,
    RampAbove,
    RampBelowStress,
    RampBelowLethal,
    RampLargestDose,
    RampLiftsNothing,
    RampContinuous,
    RampNeverContinuous,
    RampCapLifted,
    RampCapNotNeeded,
    RampCapNotLifted,
    RampCapHeld,
    RampWindowCut,
    RampDebtLeft,
    RampEndState,
    RampEndStateBelow,
    BothEndStatesBelow,
    EndStateDrift,
    WantOfCoolWater,
    HabitatLost,
    HabitatKept,
    AmmoniaPeak,
    SulfidePeak,
    AmmoniaPassed,
    SulfidePassed,
    RampHolds,
    RampEndedEarly,
    RampsApart,
    FilesWritten,
    // The answer
    AdviceCompared,
    AdviceAlone,
    AdviceStart,
    AdviceStartSurface,
    AdviceNoRamp,
    AdviceNoGain,
    AdviceNoGainAtAll,

    AdviceWait,
    AdviceWaitRamp,
    AdviceChance,
    AdviceChanceAlone,
    AdviceMore,
    AdviceFewer,
    AdviceSurfaceFails,
    UnmetLethal,
    UnmetAlone,
    UnmetAdded,
    UnmetDawn,
    UnmetAlgaecide,
    UnmetGases,
    UnmetMorning,
    UnmetStep,
    UnmetDose,
    UnmetEnd,
    UnmetFrost,
    AdviceWaitClimate,
    AdviceWaitPractice,
    AdviceUntilThen,
    AdviceLeastHarmful,
    AdviceEnd,
    AdviceHolds,
    AdviceNoHolds,
    AdviceReadingBelow,
    AdviceReadingAbove,
    AdviceReadingAny,
    ProvisionalDebt,
    ProvisionalProfile,
    ProvisionalDawns,
    ChangeTitle,
    ChangeField,
    ChangeNone,
    ChangePapers,
    ChangeInput,
    ChangeNoInput,
    // A plan
    PlanTitle,
    PlanNothingExceeds,
    PlanNothingWithin,
    PlanUnderWay,
    PlanDoNotStartLethal,
    PlanLeftAloneLethal,
    PlanDoNotStartWarm,
    PlanDoNotStartNoEnd,
    PlanDoNotStartNoWay,
    PlanDoNotStartBetter,
    PlanDoNotStartToxicants,
    PlanCourtesy,
    PlanRamp,
    PlanDay,
    PlanDayPulses,
    PlanDayHeld,
    PlanSustained,
    PlanBelowLine,
    PlanLiftsNothing,
    PlanContinuousKeeps,
    PlanContinuousFails,
    PlanContinuousBetter,
    PlanOwnDraws,
    PlanHeld,
    PlanHarmMeaning,
    PlanStartMeaning,
    EndStateRow,
    EndStateOfNothing,
    HoldOne,
    HoldsDoNotCount,
    HoldsNoOutlook,
    SensitivityPoint,
    SensitivityPointNoEnd,
    SensitivitySearched,
    SensitivitySlow,
    SensitivitySlowNever,
    StressWorst,
    MonthHarmless,
    MonthHarmful,
    MonthsMeaning,
    MonthsMissing,
    // One night, or the nights of one ramp
    NightBelowLethal,
    NightBelowStress,
    NightAbove,
    NightOfNothing,
    NightWithSelected,
    NightNothing,
    NightNothingBelow,
    NightElsewhere,
    NightsOfRamp,
    NightsOfNothing,
    // What to measure
    MeasureTitle,
    MeasureWorst,
    MeasureInput,
    MeasureNoInput,
    MeasureSharesDoNotAdd,
    MeasureVisit,
    MeasureNoVisit,
    MeasureQuality,
    // Assumptions
    Balance,
    BalanceWithDawn,
    BalanceUnusual,
    BalanceMiss,
    BalanceContrary,
    UsualDays,
    EndStateMeaning,
    GuessedProfile,
    GuessedFish,
    GuessedFishMass,
    GuessedDebt,
    DebtPutTogether,
    DebtWaysDisagree,
    DebtOfDays,
    DebtOfAge,
    DebtOfBottle,
    DebtOfSubstances,
    DebtBottleVoid,
    DebtGivenStands,
    AmmoniumIsSlow,
    GuessedSlowDebt,
    GuessedSedimentDemand,
    GuessedMuck,
    GuessedChlorophyll,
    GuessedWeeds,
    GuessedWindShelter,
    GuessedNonRecirculatedShare,
    GuessedBubbles,
    GuessedPh,
    GuessedSulfide,
    SulfideRaisesDemand,
    PlantsByTable,
    SurfaceAeratorRuns,
    NoPower,
    CentralRunOnly,
    MembersDrawn,
    MembersWeighed,
    MembersWeather,
    MembersObservedWeather,
    MembersAtFactorEnd,
    // The log
    LogTitle,
    LogReading,
    LogEvent,
    LogRows,
    LogFlag,
    LogNoFlags,
    LogFlagsMeaning,
    LogHeadIs,
    LogHeadMeaning,
    LogHeadSame,
    LogHeadAdded,
    LogHeadChanged,
    // A fit
    FitDone,
    FitAirRuns,
    FitAirOff,
    FitFlagged,
    FitOutside,
    FitAgrees,
    FitDisagrees,
    FitNarrowed,
    FitNight,
    FitNightChances,
    FitMeaning,
    FitWeather,
    // This morning
    TodayVerdict,
    TodayFishWater,
    TodayReason,
    TodayTonight,
    TodayDuskLine,
    TodayNoFit,
    TodayDose,
    TodayNoDose,
    TodayMixed,
    TodaySurfaceAir,
    TodayBottomAir,
    TodayStepDay,
    TodayRules,
    TodayRestart,
    TodayRestartDebt,
    // An incident
    IncidentTitle,
    IncidentPresent,
    IncidentOption,
    IncidentOptionNever,
    IncidentSurfaceAssumed,
    IncidentAdvice,
    IncidentStep,
    IncidentSign,
    IncidentCall,
    IncidentWrite,
    // The review
    ReviewTitle,
    ReviewStandsOut,
    ReviewNothing,
    ReviewTooFew,
    ReviewAfterStandsOut,
    ReviewAfterNothing,
    ReviewAfterTooFew,
    ReviewNotBought,
    ReviewNotSpent,
    ReviewKill,
    ReviewInParts,
    ReviewTreatment,
    ReviewNotAttributable,
    ReviewCopper,
    ReviewAlgaeBill,
    ReviewCost,
    ReviewVerdict,

    ReviewMeaning,
    StartChecked,
    StartsChecked,
    // Cautions
    CautionComparison,
    CautionReadings,
    CautionProfileAge,
    CautionPermits,
    CautionLifeSupport,
    CautionIce,
    Count  ///< Not a sentence.
};

/// Where a sentence stands.
enum class SentencePart {
    File,
    Profile,  ///< Doubts about the readings
    Triage,   ///< Before anything is run
    Pond,
    DoNothing,
    Ramp,
    Shares,  ///< Which input moves the worst low how much
    Visit,   ///< What to measure, cheapest certainty first
    Assumption,
    Caution,
    Files,
    Night,
    NightDetail,
    Advice,
    Log,
    Fit,
    Today,
    DaysAhead,
    Incident,
    IncidentSigns,
    IncidentSteps,
    Review,
    Treatments,
    Plan,
    EndStates,
    Holds,
    Sensitivity
};

/// What a number is, which decides how it is shown; always in house units.
enum class Measure {
    Text,        ///< As it is: a name the user gave.
    Term,        ///< A word of the pond file that the wording knows, such as "sport".
    Whole,       ///< A count, a day or a night.
    Oxygen,      ///< [g/m^3]
    Micrograms,  ///< [g/m^3], shown in ug/L
    Rate,        ///< [g/m^3/d]
    Depth,       ///< [m]
    Volume,      ///< [m^3]
    Mass,        ///< [kg]
    Degrees,     ///< [degC]
    Minutes,     ///< [min]
    Hours,       ///< [h]
    Percent,     ///< [%]
    Of100,       ///< A share, 0 to 1, as so many of 100 ponds.
    Plain,       ///< Two significant decimals: a ratio, a factor.
    Input,       ///< As a pond file would hold it: the shortest form.
    Clock,       ///< [s] after local midnight of day 1, shown as the time of day.
    Day          ///< Days since 1970-01-01, shown as a date.
};

struct SentenceValue {
    std::string name;  ///< Of the place in the template.
    Measure measure = Measure::Whole;
    double number = 0.0;
    std::string text;  ///< With Measure::Text and Measure::Term.
    bool operator==(const SentenceValue&) const = default;
};

struct Sentence {
    SentencePart part = SentencePart::Pond;
    SentenceKey key = SentenceKey::Count;
    std::vector<SentenceValue> values;
    std::optional<UnitSystem> units = std::nullopt;  ///< Which stand first; absent: by the user's locale
    bool operator==(const Sentence&) const = default;
};

/// All that a comparison says, in the order in which it is said: the pond without the new aerator first,
/// what the profile gives to doubt, triage, the pond, each ramp in the order of the file, what was assumed,
/// and the cautions.
[[nodiscard]] std::vector<Sentence> sentencesOf(const Comparison& comparison);

/// What one night is about: the lowest ramp, the selected one and do-nothing (part Night), and why that
/// ramp's worst night is as low as it is (part NightDetail; nothing as long as the attribution is not known).
/// @param night     1 to comparison.days.
/// @param selected  Index into comparison.runs; 0 is do-nothing.
[[nodiscard]] std::vector<Sentence> sentencesOfNight(const Comparison& comparison, int night,
                                                     std::size_t selected);

/// What all nights of one ramp come to, in the same parts.
[[nodiscard]] std::vector<Sentence> sentencesOfNights(const Comparison& comparison, std::size_t selected);

/// All that a plan says: do-nothing first where it alone exceeds the wanted share.
[[nodiscard]] std::vector<Sentence> sentencesOf(const struct Plan& plan);

/// Of 100 ponds like this one, how many go below each line under a ramp and left alone (part NightDetail);
/// nothing as long as there are no members of that ramp and of do-nothing.
[[nodiscard]] std::vector<Sentence> sentencesOfChances(const Comparison& comparison, std::size_t selected);

/// Where the tables went. @param folder  As it is shown.
[[nodiscard]] Sentence filesWritten(const std::string& folder);

/// What a good pond file holds, what its profile gives to doubt, and triage; runs nothing.
/// @param file         Its path as the user gave it.
/// @param diagnostics  Of its reading; none is an error.
[[nodiscard]] std::vector<Sentence> sentencesOf(const Pond& pond, const std::string& file,
                                                const Diagnostics& diagnostics);

}  // namespace engine
