// The ramp that is found instead of compared. makePlan(pond, options, control) gives a value, Plan, in four
// steps:
// 1. End states of the central run, held from day 1: continuous, raised, by day, by night, part-time
//    (SustainedKind). One that keeps the line is wanted; where do-nothing's end state does not keep it
//    either, one that is higher by more than kNoWorse will do, and the sentences say so.
// 2. Before the start: roads (engine/plan/plan_road.h) to these schedules, those that lift bottom water
// before
//    those that keep the layers, without surface air and with it. The shortest that meets the conditions of a
//    start (engine/plan/start_conditions.h) on the search's draws is the plan.
//    Under way, and before the start where the mornings of a ramp are given: a climb on kSearchDraws members,
//    kScouts of them as scouts, on fewer layers and longer steps than usual: along a ladder of daily actions
//    (minutes; depths; one diffuser; pulses) it tries each day the sustained schedule from then on, else
//    takes the highest level that is good when repeated for three days, which is how long a constant dose
//    takes to show itself. Then it drops days and shortens runs as long as the whole holds. PlanMembers runs
//    members on from any midnight (Column::keep, Column::resume; the same bits as one run). It keeps to what
//    the morning leaves it (PlanMornings): the days of the verdict as it has them, and on no day more of the
//    bottom water than the dawn rules' cap in the central run.
// 3. The check of a climb, on kOwnDraws members of the same seed at the resolution asked for: the upper 95 %
// bound
//    (Clopper, Pearson) of the harmed is held to the wanted share, else the search is repeated with half the
//    budget.
// 4. The report on fresh draws (another scramble) by compare(), beside do-nothing and the file's ramps.
//
// Harm of a climb is more than added chance: below the stress or the lethal line and not so in do-nothing, or
// on any night below the stress line and lower than do-nothing by more than kNoWorse. Where do-nothing fails
// in most ponds, added chance alone would allow anything. A plan may not pass the limits of ammonia and
// sulfide either, unless do-nothing passes them too.
//
// The search is limited by members times days, never by seconds, so that a plan is the same on any machine
// and any number of threads. Hold days stop a plan only if it lifts bottom water. The rules are the value
// HoldRules; weather.hold_days of the pond file takes their place.
#pragma once

#include "engine/ensemble/compare.h"
#include "engine/plan/dawn_rules.h"
#include "engine/ramps/hold_rules.h"

#include <cstdint>
#include <functional>
#include <limits>
#include <optional>
#include <string>
#include <vector>

namespace engine {

/// What the air does on one day of a plan.
struct DayAction {
    int minutes = 0;      ///< Of air, 0 to 1440
    int diffusers = 0;    ///< Open
    double depth = 0.0;   ///< Of the diffusers [m]
    int pulses = 1;       ///< Equal runs, evenly spaced over the day
    bool isHold = false;  ///< No air because the hold calendar says so
    bool operator==(const DayAction&) const = default;
};

/// What a pond may run once its ramp is over.
enum class SustainedKind {
    Continuous,  ///< Around the clock at the file's depth
    Raised,      ///< Around the clock with the diffusers higher
    ByDay,       ///< Twelve hours from 08:00
    ByNight,     ///< Twelve hours from 20:00
    PartTime     ///< Fewer hours, from 10:00
};

/// How an end state stands to the line.
enum class EndVerdict {
    Keeps,   ///< At or above the line
    Better,  ///< Below it, and so is do-nothing's, but by more than kNoWorse higher than that
    Fails    ///< Below the line and not worth a start
};

/// One row of the table of end states, of the central run.
struct SustainedSchedule {
    SustainedKind kind{};
    DayAction action;
    ClockTime start;
    double endState = 0.0;  ///< Dawn low after 30 more usual days [g/m^3]
    double endDrift = 0.0;  ///< [g/m^3/d]
    EndVerdict verdict = EndVerdict::Fails;
    bool isTried = false;  ///< A candidate for it was looked for
};

/// Some of some members, with the upper 95 % bound on the chance behind them: one-sided, of Clopper and
/// Pearson (1934), Biometrika 26:404-413, which is too wide rather than too narrow and the more so for even
/// draws.
struct CountedChance {
    int count = 0, members = 0;
    [[nodiscard]] double share() const;
    [[nodiscard]] double upper() const;
};

/// The most of `members` that can be counted with the upper bound still within a share; nothing if even none
/// is too many.
[[nodiscard]] std::optional<int> largestCount(int members, double share);
/// The fewest members of which none shows that a chance is within a share.
[[nodiscard]] int fewestMembers(double share);

enum class PlanVerdict {
    AtOnce,     ///< The sustained schedule from day 1
    Ramp,       ///< A ramp leads to it
    DoNotStart  ///< See PlanReason
};

/// Why a plan says not to start.
enum class PlanReason {
    None,
    NothingBelowLethal,  ///< Do-nothing's central run itself falls below the lethal line
    NothingTooWarm,      ///< The same, but for want of water that is cool enough for the fish
    NoEndState,          ///< No schedule's end state keeps the line or is better than do-nothing's
    NoSafeWay,   ///< There are end states that keep the line, but no way to one harms few enough ponds
    BetterHarms  ///< None keeps the line, and the ways to those that are better harm too many
};

/// A ramp's days against what it adds: one point of the trade-off.
struct TradeOffPoint {
    std::string name;         ///< Of a ramp of the file, or empty: a search point
    std::optional<int> days;  ///< To the first day after whose start the air never stops
    CountedChance added;
    double debtLeft = 0.0;  ///< Share of the debt at the start, central run, end of the last day
    bool isPlanned = false;
};

/// How far a constant daily run brings the debt down, central run under the usual day.
struct SlowPoint {
    int minutes = 0;        ///< A day
    double debtLeft = 0.0;  ///< After kSlowDays days
};
inline constexpr int kSlowDays = 60;

enum class StressKind {
    OvercastAndCalm,
    ColdFront,
    DullSpell  ///< kDullSpellDays days in a row without sun or wind, and hot
};

/// A ramp under other weather from one day on, central run.
struct StressCase {
    StressKind kind{};
    int day = 0;                                              ///< On which the weather is worse, or the first
    double lowest = std::numeric_limits<double>::infinity();  ///< Worst night's low with the ramp [g/m^3]
    int worstNight = 0;
    double nothing = 0.0;  ///< That of do-nothing under the same weather
};

/// What the mornings of a ramp that is under way leave a plan.
struct PlanMornings {
    std::vector<int> firstDays;  ///< Minutes of the days that this morning's verdict speaks for
    std::optional<int> most;     ///< Minutes of the first day after them at most; nothing: any
    DawnLimits limits;           ///< Their caps on what a day may lift
    bool isUnderWay = false;     ///< The air has run before
};

/// What a search has before it is done.
struct PlanSoFar {
    std::vector<DayAction> days;  ///< Day 1 to the first of the sustained schedule
    Ramp ramp;
    /// Ponds below the lethal line, or of a climb those harmed, on the search's draws; nothing where it was
    /// not tried on them yet.
    std::optional<CountedChance> harm;
};

struct PlanOptions {
    std::optional<double> line;  ///< Instead of the pond's stress line [g/m^3]
    double chance = 0.05;        ///< Wanted share of ponds that a plan harms at most, above 0 to 1
    int members = 1000;          ///< Fresh draws for the report
    std::uint64_t seed = 1;
    int threads = 0;  ///< 0: as many as cores
    Resolution resolution;
    HoldRules holds;
    std::optional<PlanMornings> mornings;  ///< Of a ramp under way; nothing before the start
    /// For an answer within seconds: a third of the search, and no trade-off but that of the file's ramps and
    /// no sensitivity to slow runs.
    bool isBrief = false;
    /// Called with the first way that the search finds, and with the one that it takes, before that is
    /// reported on fresh draws; on the thread of makePlan().
    std::function<void(const PlanSoFar&)> soFar;
};

enum class PlanEnd { NotRun, Completed, Cancelled, NotFinite };

/// The answer of `makePlan`, a value.
struct Plan {
    PlanEnd end = PlanEnd::NotRun;
    std::string message;  ///< A sentence unless completed

    double line = 0.0;    ///< The stress line it is made for [g/m^3]
    double chance = 0.0;  ///< Wanted
    PlanVerdict verdict = PlanVerdict::DoNotStart;
    PlanReason reason = PlanReason::None;
    bool isClimb = false;     ///< Searched along this morning's verdict, not by roads from the first day
    bool isUnderWay = false;  ///< The air has run before; not to start is then to leave it off
    std::vector<SustainedSchedule> sustainedSchedules;  ///< The table of end states; the continuous one first
    double nothingEndState = 0.0;
    std::optional<std::size_t> chosen;  ///< In `sustainedSchedules`, unless not to start
    std::vector<DayAction> days;        ///< Day 1 to the first of the sustained schedule
    std::vector<HoldDay> holds;         ///< Calendar of the outlook
    bool heedsHolds = false;            ///< The calendar counts: the plan lifts bottom water
    std::optional<Ramp> ramp;           ///< As the pond file writes it
    /// On the search's draws: of a road the ponds below the lethal line, by their effective number; of a
    /// climb those harmed, held to the share.
    CountedChance ownHarm;
    /// Do-nothing, the file's ramps and, last, the planned one, on fresh draws.
    Comparison comparison;
    CountedChance added, addedLethal;  ///< Of the planned ramp, fresh draws
    std::vector<TradeOffPoint> tradeOff;
    std::vector<SlowPoint> slow;      ///< Empty without debt
    std::vector<StressCase> stress;   ///< Empty unless there is a ramp
    bool toxicantsFound = false;      ///< The last candidate brought toxicants above their limits
    double searchedMemberDays = 0.0;  ///< Members times days run by the search
};

/// Name of the ramp that a plan adds.
inline constexpr const char* kPlannedRamp = "planned";

/// What is wrong with options for a pond, as sentences; empty if nothing is.
[[nodiscard]] std::vector<std::string> planFaults(const Pond& pond, const PlanOptions& options);

/// Finds the fewest days to a sustained schedule under which no more ponds than the wanted share are harmed
/// (engine/plan/plan_members.h), on draws of its own, and reports it on fresh ones.
/// @pre planFaults() has nothing to say.
[[nodiscard]] Plan makePlan(const Pond& pond, const PlanOptions& options, const RunControl& control = {});

}  // namespace engine
