// The one answer of a pond, computed once from one comparison and read by everything that says something
// about it: the command line, the window, the papers, the calendar, the bundle. No page derives a verdict, an
// end state, a worst night or a chance of its own.
//
// adviceOn() puts together what a comparison says of one ramp. answered() judges that ramp by the conditions
// of a start (engine/plan/start_conditions.h). A ramp that would start or step up on a hold day is run once
// more with the hold days out; where only oxygen stands against it, once more with surface air at night;
// where that does not do either, the answer is to wait, or that nothing is gained. Who only compares gets no
// kind of answer.
#pragma once

#include "engine/ensemble/compare.h"
#include "engine/plan/plan.h"
#include "engine/plan/start_calendar.h"
#include "engine/plan/start_conditions.h"
#include "engine/run/warm_night.h"

#include <optional>
#include <string>
#include <vector>

namespace engine {

/// What is advised.
enum class AdviceKind { Start, StartWithSurfaceAir, WaitUntil, NoRampNeeded, NoGain };
/// "start", "start_with_surface_air", ...
[[nodiscard]] std::string_view wordOf(AdviceKind kind);

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
    StartWindow dates;
    bool isComputed = false;  ///< From the calendar; else common practice by latitude
};

/// A ramp under three dull, hot, calm days where they do most.
struct WeakestMoment {
    Date from{};                       ///< First of the days
    double lowest = 0.0, alone = 0.0;  ///< Of the ramp's worst night then, and left alone that night [g/m^3]
    int night = 0;
};

/// All that a pond's pages say of one ramp.
struct Advice {
    std::optional<AdviceKind> kind;  ///< Nothing where no answer was asked for
    std::size_t run = 0;             ///< Place of the ramp in the comparison; 0 without one
    std::string ramp;
    Date firstDay{};                     ///< With air from the bottom
    std::optional<int> daysToSustained;  ///< From firstDay on, to the first day of what goes on for good
    DayRow worst, worstAlone;            ///< Worst nights, each its own
    std::optional<WarmNight> warm, warmAlone;  ///< If these are of warmth, not of oxygen
    std::optional<LineChance> lethal, stress;  ///< Nothing without members
    std::optional<double> plainLethalAlone;    ///< Left alone, if the past did not count
    double effective = 0.0;                    ///< Ponds of equal weight that tell as much
    std::optional<double> endState, endStateAlone;
    std::optional<double> debtLeft_percent;  ///< After the last night
    SurfaceAir surfaceAir;                   ///< That goes with the ramp
    double surfaceAir_kW = 0.0;
    std::optional<double> worstWithoutSurfaceAir;  ///< Of the same ramp [g/m^3]
    std::optional<WeakestMoment> weakest;          ///< Nothing where no answer was asked for
    std::optional<WaitWindow> wait;
    StartCalendar calendar;                ///< Of the ramp; empty where no answer was asked for
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

/// An answer and the comparison that it is from: as it was, or with the ramp that was made of the one asked
/// about, which has the hold days out or surface air.
struct Answered {
    Comparison comparison;
    Advice advice;
};
/// Judges a ramp. Without members chances are those of the central run, 0 or 1.
[[nodiscard]] Answered answered(Comparison comparison, std::size_t run, int threads = 0,
                                const RunControl& control = {});

/// Place of the ramp that a plan speaks of: the one that it found, else a ramp of the file that may start,
/// else the least harmful one; 0 where every ramp ends lower than the pond left alone.
[[nodiscard]] std::size_t spokenOf(const Plan& plan);

/// The answer of a plan's search; a ramp that it found is judged as any other, on its fresh draws.
[[nodiscard]] Answered answered(const Plan& plan, int threads = 0, const RunControl& control = {});

}  // namespace engine
