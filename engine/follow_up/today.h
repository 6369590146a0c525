#pragma once

#include "engine/follow_up/dusk.h"
#include "engine/follow_up/fit.h"
#include "engine/follow_up/morning.h"
#include "engine/follow_up/present_state.h"
#include "engine/plan/dawn_rules.h"

#include <optional>
#include <string>
#include <vector>

namespace engine {

/// What a morning's decision is asked for. Members and layers are few, so that the answer is there in
/// seconds.
struct TodayOptions {
    std::optional<LocalTime> at;  ///< The last reading if there is none
    int members = 64;
    std::uint64_t seed = 1;
    int threads = 0;
    Resolution resolution{24, 720.0};
};

/// One day of the schedule from today on.
struct StepAhead {
    int day = 0;  ///< 1 is the pond's first day
    int minutes = 0;
    double start = 0.0;                  ///< [s after midnight of day 1]
    std::optional<double> dose_percent;  ///< Of the central run; nothing without bottom water
};

/// How a long stop changes the ramp.
struct RestartAdvice {
    double daysOff = 0.0;
    Restart restart{};
    RestartDebt accumulated;
    double share = 0.0;  ///< Of the debt of the first start
};

struct Today {
    std::string message;  ///< A sentence if there is no decision
    bool isDecided = false;
    PondModel model;  ///< Of the pond as it is known
    LocalTime at{};
    int day = 0;            ///< Number of today
    double debtLeft = 1.0;  ///< Share of the debt at the start, central run with the air of the log
    Morning morning;
    SpeciesGroup group{};
    DawnLimits limits;
    DawnDecision decision;
    PresentState state = PresentState::Unknown;  ///< By this morning's readings
    std::vector<StepAhead> steps;                ///< From today on
    std::optional<RestartAdvice> restart;
    std::optional<DuskLine> dusk;  ///< Of this evening; whichever is lower, it or the fit, is tonight's low
    std::optional<FitResult> fit;
    std::string fitMessage;  ///< Why there is no fit
};

/// This morning's decision, the schedule from today on and tonight's expected low. The schedule
/// is the ramp's own: the next step after go, the same minutes after hold, nothing today and half of the last
/// minutes from tomorrow on after back, nothing for five days and then a quarter after stop (all common
/// practice, no source); no day lifts more than the cap. In a pond that is mixed what runs stays on after
/// back and stop too, as in an incident.
[[nodiscard]] Today decideToday(const Pond& pond, const TodayOptions& options,
                                const RunControl& control = {});

}  // namespace engine
