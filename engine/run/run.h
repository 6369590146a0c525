#pragma once

#include "engine/base/run_control.h"
#include "engine/column/column.h"
#include "engine/pond/pond.h"
#include "engine/ramps/schedule.h"
#include "engine/ramps/weather.h"
#include "engine/water/basin.h"
#include "engine/water/parameters.h"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace engine {

/// How finely a run is computed.
struct Resolution {
    int layers = 40;
    double largestStep = 600.0;  ///< [s]; shorter where the clock says so (engine/run/step_clock.h)
};

/// How the factors of photosynthesis and respiration were found.
struct BalanceResult {
    double photosynthesis = 1.0;
    double respiration = 1.0;
    double wind = 1.0;
    bool usedDawn = false;              ///< A dawn reading counted.
    std::optional<double> loggerDepth;  ///< Several nights of a logger at this depth did [m]
    /// What a usual day later is off by at its worst [g/m^3], [K]; model minus profile
    double missOxygen = 0.0, missTemperature = 0.0;
};

/// One pond made ready to run: what all its ramps share. A value without references into the pond file.
struct PondModel {
    Pond pond;
    Profile profile;
    bool profileIsGuess = false;
    Basin basin{BasinShape{{1.0}, {1.0}, {0.5}, {}}};
    BottomWater bottom;
    Grid grid;
    Resolution resolution;
    Parameters<double> parameters;
    StartState<double> start;
    AeratorSetup aerator;
    double startTime = 0.0;         ///< Of the run [s after midnight of day 1]
    double surfaceDepth = 0.5;      ///< Where "surface" columns are read [m]
    double bottomDepth = 0.0;       ///< Where "bottom" columns are read [m]
    double debt_kg = 0.0;           ///< Fast plus medium debt of the bottom water at the start
    double oxygenReserve_kg = 0.0;  ///< Oxygen above z_b at the start; of the whole pond without bottom water
    BalanceResult balance;
};

/// @param pond  Passed its checks.
[[nodiscard]] PondModel prepare(const Pond& pond, const Resolution& resolution = {});
/// The same without the balance: both factors 1.
[[nodiscard]] PondModel prepareUnbalanced(const Pond& pond, const Resolution& resolution = {});

enum class RunEnd { NotRun, Completed, Cancelled, NotFinite };

/// Instantaneous values at a whole hour (and at the start).
struct HourRow {
    double time = 0.0;                                                ///< [s after midnight of day 1]
    double surface = 0.0, fishWater = 0.0, bottom = 0.0, mean = 0.0;  ///< Oxygen [g/m^3]
    double surfaceTemperature = 0.0, bottomTemperature = 0.0;         ///< [degC]
    double running = 0.0;           ///< Share of the hour that follows, 0 to 1
    double unionisedAmmonia = 0.0;  ///< As nitrogen, where the fish are [g/m^3]
    double hydrogenSulfide = 0.0;   ///< As sulfur, where the fish are [g/m^3]
    double ph = 7.5;                ///< Where the fish are
    double warmth = 20.0;           ///< Where the fish are [degC]
    double habitat = 0.0;  ///< Share of the volume above the stress line and cool enough for the fish
};

/// One layer at one hour.
struct LayerRow {
    double temperature = 0.0, oxygen = 0.0, debt = 0.0;  ///< [degC], [g/m^3], fast plus medium [g/m^3]
};

/// A calendar day and the night that starts at its noon.
struct DayRow {
    int day = 0;
    double runMinutes = 0.0;                     ///< That ran, midnight to midnight
    double liftedVolume = 0.0;                   ///< Through z_b, net [m^3]
    double lowest = 0.0;                         ///< Of the fish water, noon to noon, at every step [g/m^3]
    double lowestTime = 0.0;                     ///< [s]
    double dawnSurface = 0.0, dawnBottom = 0.0;  ///< At sunrise of the next day [g/m^3]
    double dawnTopMinusBottom = 0.0;             ///< [K]
    double debtLeft = 0.0;  ///< Fast plus medium at the next midnight over that at the start (may pass 1)
};

/// Oxygen ledger of a calendar day, or of the part of it that was run [g].
struct BudgetRow {
    int day = 0;
    std::array<double, kTerms> terms{};  ///< Positive adds
    double storedChange = 0.0;
    std::array<double, kOrganicTerms> organic{};  ///< Of labile matter, all positive [g O2]
    double organicChange = 0.0;                   ///< Of what water and sediment hold of it [g O2]
    [[nodiscard]] double closingError() const;    ///< storedChange minus the sum of the terms
    [[nodiscard]] double throughput() const;      ///< Sum of the absolute terms
    /// organicChange minus what the terms make of it.
    [[nodiscard]] double organicClosingError() const;
};

/// The end state is found by so many usual days more, of which the last so many nights count (judgement).
inline constexpr int kEndStateDays = 30;
inline constexpr int kEndStateNights = 7;

/// How a plan's search runs a capped ramp, beside what the ramp itself says.
struct RoadRules {
    /// Each day's dose is what the trade allows under the debt that is left then (doseCap_percent,
    /// engine/run/triage.h), instead of the ramp's own, which is the most on the first day.
    bool risingDose = false;
    std::optional<double> until;  ///< By when a day's run ends as long as there is a dose [s after midnight]
    std::vector<int> held;        ///< Days without air besides those of the hold calendar
};

/// What a run is asked for.

struct RunRequest {
    int days = 14;
    WeatherPlan weather;
    ColumnSwitches switches;
    bool keepLayers = true;                ///< Fill `layers`
    bool endState = false;                 ///< Go on for kEndStateDays under the last schedule
    std::optional<Schedule> schedule;      ///< Instead of the ramp's own: a schedule resolved earlier
    std::optional<SurfaceAir> surfaceAir;  ///< Instead of the ramp's own
    std::optional<int> stopAfterNight;     ///< End at the noon that closes this night
    RoadRules road;                        ///< Of a capped ramp
};

/// One thing that a re-run leaves out.
enum class CauseKind {
    BottomDebt,        ///< Oxygen debt of the bottom water at the start
    BottomDeficit,     ///< That the bottom water holds less oxygen than the water above it
    StirredMuck,       ///< Muck stirred up by the diffusers
    SedimentDemand,    ///< Oxygen demand of the sediment
    AlgalRespiration,  ///< Respiration of algae and weeds
    Fish,              ///< Respiration of the fish
    Weather,           ///< This weather instead of the usual day
    Dying,             ///< Algae and weeds that change by the dated table
};
inline constexpr int kCauses = 8;

struct Cause {
    CauseKind kind{};
    double gain = 0.0;  ///< Oxygen gained at the worst low without it [g/m^3]
};

struct RampRun {
    RunEnd end = RunEnd::NotRun;
    std::string message;    ///< A sentence unless completed
    std::string name;       ///< "do-nothing" or the ramp's
    Schedule schedule;      ///< As it ran
    SurfaceAir surfaceAir;  ///< That went with it
    std::vector<HourRow> hours;
    std::vector<std::vector<LayerRow>> layers;  ///< One row of N layers an hour row; empty unless kept
    std::vector<DayRow> days;
    std::vector<BudgetRow> budget;
    double hoursBelowStress = 0.0, hoursBelowLethal = 0.0;  ///< Of nights 1 to N
    std::optional<int> daysToContinuous;
    std::optional<int> capLiftedDay;  ///< Day on which a capped ramp was let go
    double cutMinutes = 0.0;          ///< Run time cut off by the ramp's window
    double energy_kWh = 0.0;
    /// Mean of the last seven dawn lows after kEndStateDays more [g/m^3]; of a comparison's runs that of
    /// endStateOf() (engine/run/end_state.h).
    std::optional<double> endState;
    double endDrift = 0.0;           ///< Per day over those seven [g/m^3/d]
    std::vector<Cause> attribution;  ///< Of the worst night, the greatest gain first; empty unless asked for
    int usualDays = 0;               ///< Days outside the weather table
    double debtClosing = 0.0;        ///< Closing error of the debt over the run, over the debt moved
    long steps = 0, plumes = 0;

    /// Worst night; rows are never empty in a completed run.
    [[nodiscard]] const DayRow& worst() const;
    /// Day with the most water lifted; nothing if none was.
    [[nodiscard]] const DayRow* largestDose() const;
};

/// Runs a pond under a ramp; no ramp is do-nothing.
[[nodiscard]] RampRun runRamp(const PondModel& model, const Ramp* ramp, const RunRequest& request,
                              const RunControl& control = {});

}  // namespace engine
