#pragma once

#include "engine/plan/constants_plan.h"
#include "engine/pond/pond.h"
#include "engine/water/parameters.h"

#include <optional>
#include <vector>

namespace engine {

struct PondModel;

/// What a dawn reading says of the next step of a ramp, from the mildest to the gravest.
enum class DawnVerdict {
    Go,    ///< Next step
    Hold,  ///< The same minutes again
    Back,  ///< Skip a day, resume at half; surface air at night
    Stop   ///< No air from the bottom; incident sheet
};

/// Why; a verdict is that of its gravest reason.
enum class DawnReason {
    FishWaterGood,  ///< Go
    FishWaterHold,  ///< Oxygen between the limits of hold and go
    FishWaterBack,  ///< ... of back and hold
    FishWaterStop,  ///< Under the limit of back
    FallHold,       ///< Fell by more than the first limit since before the start
    FallBack,       ///< ... in one night by more than the second
    SmellFaint,     ///< Faint smell in the boil: hold
    SmellStrong,    ///< Strong smell: back
    FishOffFeed,    ///< Back
    FishPiping,     ///< Stop
    WeatherHold,    ///< The hold calendar names today, as one on which nobody reads among them
    DoseTooLarge,   ///< Tomorrow's step would lift more than the cap allows: hold
    ThreeHolds,     ///< Three holds in a row: review, since a ramp can be too slow as well
    NoMorningRise,  ///< Surface oxygen has not risen since dawn by 10:00: no run today
    NightBelowLine  ///< Tonight is expected below the line: surface air before midnight
};
[[nodiscard]] DawnVerdict verdictOf(DawnReason reason);

/// Limits of a species group; common practice without a published source, editable in [dawn_rules].
struct DawnLimits {
    double go = kSportGo.value;         ///< Fish water at least [g/m^3]
    double hold = kSportHold.value;     ///< [g/m^3]
    double back = kSportBack.value;     ///< [g/m^3]; under it: stop
    double fallHold = kFallHold.value;  ///< Fall against the reading before the start [g/m^3]
    double fallBack = kFallBack.value;  ///< Fall in one night [g/m^3]
    /// Most of the bottom water a day [%] while the debt-to-pool ratio is above 0.5
    double doseHigh = kDoseHigh_percent.value;
    double doseMiddle = kDoseMiddle_percent.value;  ///< ... from 0.15 to 0.5; below that there is no cap
    double morningRise = kMorningRise.value;        ///< Surface oxygen from dawn to 10:00 [g/m^3]
    bool operator==(const DawnLimits&) const = default;
};

/// Limits of the trade by group: sport and percid 5, 4, 3; catfish and carp 4, 3, 2.5; koi 6, 5, 4
/// (judgement, the trade names only their 6); trout 7, 6, 5. No go limit is above 80 % of saturation, which
/// high or warm water can hardly pass; the others go down with it. What the file's [dawn_rules] say stands as
/// it is.
/// @param saturation  Of the fish water [g/m^3].
[[nodiscard]] DawnLimits dawnLimits(SpeciesGroup group, double saturation,
                                    const std::optional<DawnRules>& own);

/// The same of a pond at its own air pressure. @param temperature  Of the fish water [degC].
[[nodiscard]] DawnLimits dawnLimits(const PondModel& model, double temperature);

/// This morning, as far as it is known.
struct Morning {
    std::optional<double> surface, middle, bottom;  ///< Oxygen [g/m^3]
    std::optional<double> beforeStart;              ///< Fish water of the last dawn before the start
    std::optional<double> yesterday;                ///< Fish water at the dawn before
    std::optional<double> temperatureSurface, temperatureBottom;  ///< [degC]
    std::optional<double> midMorning;                             ///< Surface oxygen about 10:00
    std::optional<Smell> smell;
    std::optional<FishBehaviour> fish;
    bool weatherHolds = false;
    int holdsBefore = 0;                     ///< Mornings in a row that said hold
    std::optional<double> nextDose_percent;  ///< That the next step would lift
    double debtRatio = 0.0;                  ///< Debt-to-pool ratio
    std::optional<double> tonight;           ///< Low that is expected tonight [g/m^3]
    bool isStarted = false;
};

struct DawnDecision {
    DawnVerdict verdict = DawnVerdict::Hold;
    std::vector<DawnReason> reasons;  ///< The gravest first
    double fishWater = 0.0;           ///< Worst of the upper two [g/m^3]
    std::optional<double> doseCap_percent;
    bool isMixed = false;  ///< Surface and bottom within 1 degC, bottom above 2 mg/L: full in two steps
    bool runsToday = true;
    bool wantsSurfaceAir = false;
};

/// The decision by the rules of the trade (common practice): fish water is the worst of the upper two
/// readings; every rule speaks, the gravest decides.
/// @pre a surface or a middle reading
[[nodiscard]] DawnDecision decideAtDawn(const Morning& morning, const DawnLimits& limits);

/// Adds to a decision what is expected of tonight: surface air where the low comes under the hold limit. The
/// verdict stands.
/// @param tonight  [g/m^3]; the decision's morning had none.
void heedTonight(DawnDecision& decision, double tonight, const DawnLimits& limits);

/// The most of the bottom water that a day may lift [%], or nothing if any dose may be.
[[nodiscard]] std::optional<double> doseCap(double debtRatio, bool isMixed, const DawnLimits& limits);

/// How much of a ramp a stop asks for again.
enum class Restart {
    GoOn,          ///< Off for so short that no demand has accumulated
    ReducedStart,  ///< Fresh start at a reduced dose
    WholeRamp,     ///< As at the first start
    Formality      ///< Mixed and cool: two to three days are enough
};

/// @param daysOff      Days without air.
/// @param bottomWater  Temperature of the bottom water [degC]; under 12 debt gathers slowly, as at a
/// cool start.
/// @param isMixed      Surface and bottom within 1 degC and 1.5 mg/L.
[[nodiscard]] Restart restartAfter(double daysOff, double bottomWater, bool isMixed);

/// Demand that has accumulated in the bottom water since the air went off [g/m^3 of bottom water], by the
/// sediment's own law (engine/water/sediment.h): it takes the oxygen that was there and gives debt back.
/// @param temperature  Of the bottom water [degC].
struct RestartDebt {
    double debt = 0.0;    ///< [g/m^3]
    double oxygen = 0.0;  ///< Left of what the bottom water held [g/m^3]
};
[[nodiscard]] RestartDebt demandAccumulated(const SedimentParameters<double>& sediment, double temperature,
                                            double daysOff, double thickness, double oxygenBefore);

}  // namespace engine
