// The one answer of a pond, computed once from one comparison and read by everything that says something
// about it: the command line, the window, the papers, the calendar, the bundle. No page derives a verdict, an
// end state, a worst night or a chance of its own.
//
// adviceOn() puts together what a comparison says of one ramp. answered() judges that ramp by the conditions
// of a start (StartRules, engine/advice/constants_advice.h): where only oxygen stands against it, the same
// ramp is run once more with surface air at night, sized for the fish's refuge; where that does not do
// either, the answer is to wait, or that nothing is gained. Who only compares gets no kind of answer.
#pragma once

#include "engine/ensemble/compare.h"
#include "engine/plan/plan.h"

#include <optional>
#include <string>
#include <vector>

namespace engine {

/// What is advised.
enum class AdviceKind { Start, StartWithSurfaceAir, WaitUntil, NoRampNeeded, NoGain };
/// "start", "start_with_surface_air", ...
[[nodiscard]] std::string_view wordOf(AdviceKind kind);

/// What stands against a start.
enum class StartCondition {
    LethalWith,    ///< Of 100 ponds below the lethal line with the ramp
    LethalAlone,   ///< The same left alone
    LethalAdded,   ///< With the ramp minus left alone
    DawnReading,   ///< The last one, of the fish water [g/m^3]
    Algaecide,     ///< Days since a treatment
    Gases,         ///< Ammonia or sulfide above its limit, and further than without the ramp
    MorningRules,  ///< A computed low at which the ramp's own morning rule stops the air [g/m^3]
    EndState,      ///< Where the pond ends is lower than left alone [g/m^3]
    Frost          ///< Ice is not computed
};

/// A condition that is not met: what is, and what would have to be.
struct UnmetCondition {
    StartCondition condition{};
    double value = 0.0, limit = 0.0;
    int night = 0;  ///< Of MorningRules
};

/// Why an answer is provisional, and so what lifts that.
enum class ProvisionalReason {
    DebtGuessed,  ///< Nothing of the debt was measured
    OneProfile,   ///< No second profile, and no logger of 48 hours
    FewDawns      ///< Fewer than two dawns were read
};

/// Shares of ponds below a line, 0 to 1.
struct LineChance {
    double with = 0.0, alone = 0.0;
    [[nodiscard]] double added() const { return with - alone; }
};

/// A measurement that could change the answer.
struct TellingReading {
    std::string input, unit;
    std::optional<double>
        turns;             ///< From here on the answer is the other one; nothing: it stays whatever is read
    bool isBelow = false;  ///< Below it, else above
};

/// When to start instead.
struct WaitWindow {
    Date from{}, until{};
    bool isOfClimate = false;  ///< From the pond file's months; else common practice by latitude
};

/// All that a pond's pages say of one ramp.
struct Advice {
    std::optional<AdviceKind> kind;  ///< Nothing where no answer was asked for
    std::size_t run = 0;             ///< Place of the ramp in the comparison; 0 without one
    std::string ramp;
    Date firstDay{};
    std::optional<int> daysToSustained;        ///< First day of what goes on for good
    DayRow worst, worstAlone;                  ///< Worst nights, each its own
    std::optional<LineChance> lethal, stress;  ///< Nothing without members
    std::optional<double> plainLethalAlone;    ///< Left alone, if the past did not count
    double effective = 0.0;                    ///< Ponds of equal weight that tell as much
    std::optional<double> endState, endStateAlone;
    std::optional<double> debtLeft_percent;  ///< After the last night
    SurfaceAir surfaceAir;                   ///< That goes with the ramp
    double surfaceAir_kW = 0.0;
    std::optional<double> worstWithoutSurfaceAir;  ///< Of the same ramp [g/m^3]
    std::optional<WaitWindow> wait;
    std::vector<Date> holdDays;            ///< Of the forecast
    std::vector<TellingReading> readings;  ///< At most two, the one that tells most first
    std::vector<ProvisionalReason> provisional;
    int dawnsRead = 0;
    std::vector<UnmetCondition> unmet;
    std::string leastHarmful;  ///< Ramp to take if it must be today; empty without members
    LineChance leastHarmfulLethal;
    [[nodiscard]] bool mayStart() const {
        return kind == AdviceKind::Start || kind == AdviceKind::StartWithSurfaceAir ||
               kind == AdviceKind::NoRampNeeded;
    }
};

/// What a comparison says of a ramp, without a kind of answer.
/// @param run  Place in the comparison; completed, as is do-nothing.
[[nodiscard]] Advice adviceOn(const Comparison& comparison, std::size_t run);

/// An answer and the comparison that it is from: as it was, or with one ramp more, which has surface air.
struct Answered {
    Comparison comparison;
    Advice advice;
};
/// Judges a ramp. Without members chances are those of the central run, 0 or 1.
[[nodiscard]] Answered answered(Comparison comparison, std::size_t run, int threads = 0,
                                const RunControl& control = {});

/// The answer of a plan's search; a ramp that it found is judged as any other, on its fresh draws.
[[nodiscard]] Answered answered(const Plan& plan, int threads = 0, const RunControl& control = {});

}  // namespace engine
