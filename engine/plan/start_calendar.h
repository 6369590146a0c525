#pragma once

#include "engine/plan/start_conditions.h"
#include "engine/pond/pond.h"
#include "engine/ramps/climate.h"
#include "engine/run/usual_year.h"

#include <cstdint>
#include <optional>
#include <stop_token>
#include <vector>

namespace engine {

/// A start with one ramp in the middle of a month.
struct MonthOfStart {
    Date from{};                       ///< The 15th
    bool isIcy = false;                ///< Not computed; all that follows is 0
    bool isAired = false;              ///< Oxygen down to the bottom
    double debt = 0.0;                 ///< Of the bottom water [g/m^3]
    double lowest = 0.0, alone = 0.0;  ///< Worst nights, with the ramp and left alone, central runs [g/m^3]
    double lethal = 0.0, lethalAlone = 0.0;  ///< Shares of ponds below the lethal line, 0 to 1
    std::vector<UnmetCondition> unmet;       ///< What stands against a start, as of any other
    [[nodiscard]] bool mayStart() const { return !isIcy && unmet.empty(); }
};

/// The twelve months that come, by one ramp.
struct StartCalendar {
    ClimateOrigin origin = ClimateOrigin::Place;
    std::vector<MonthOfStart> months;  ///< The next middle of a month first; empty after a stop
};

struct CalendarOptions {
    static constexpr int mostMembers = 64;
    int members = mostMembers;  ///< 1: central runs alone
    std::uint64_t seed = 1;
    int threads = 0;  ///< 0: as many as cores
    Resolution resolution{24, 600.0};
};

/// Each month is a pond of its own: the water and the debt of the pond's usual year (engine/run/usual_year.h)
/// under the usual weather of its climate (engine/ramps/climate.h), where the ramp is judged by the
/// conditions of a start. Usual weather has no spells: a start's own forecast decides, as ever. Rough, on
/// fewer layers.
[[nodiscard]] StartCalendar startCalendar(const PondModel& model, const Ramp& ramp,
                                          const CalendarOptions& options, const std::stop_token& stop = {});

/// Days in which a start may be.
struct StartWindow {
    Date from{}, until{};
};
/// The first months in a row that begin after a day and in which a start may be, from the first of the first
/// to the last of the last.
[[nodiscard]] std::optional<StartWindow> nextWindow(const StartCalendar& calendar, Date after);

}  // namespace engine
