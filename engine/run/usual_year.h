#pragma once

#include "engine/ramps/climate.h"
#include "engine/run/run.h"

#include <array>
#include <stop_token>
#include <vector>

namespace engine {

/// A pond left alone in the middle of a month of its usual year.
struct MonthState {
    int month = 1;         ///< 1 for January
    bool isIcy = false;    ///< The usual air is below freezing, or ice has just gone: not computed
    bool isAired = false;  ///< Oxygen down to the bottom (kThinOxygen): no debt lies there
    Profile profile;       ///< On the evening of the 14th; empty with ice
    double debt = 0.0;     ///< Fast plus medium, mean of the bottom water [g/m^3]
};

/// The usual weather of some days by date: months' usual days, each in the middle of its month and evenly
/// from one to the next in between; humidity is that of the month.
[[nodiscard]] std::vector<WeatherDay> usualDays(const ClimateYear& climate, Date first, int days);

/// A pond through its usual year, left alone: one run with the balance of the model, from water that is mixed
/// to the bottom, at the air's temperature and saturated (spring, when ice has gone; without frost in the
/// coldest month), to the next frost or a year later. Algae and weeds stay as they are at the model's
/// start. Debt gathers in the run as everywhere; all of it is scaled by one factor, so that on the date of
/// the model's own profile it is the model's (kYearScale at most, up or down), but to no more than the
/// model's own or what the run makes, whichever is more.
/// @return  Twelve, January first; nothing after a stop or where a run does not end.
[[nodiscard]] std::vector<MonthState> usualYear(const PondModel& model, const ClimateYear& climate,
                                                const std::stop_token& stop);

/// The pond on the 15th of a month: the water as the usual year has it, usual weather from a week before,
/// its debt with a wide band (kYearDebtBand), and nothing of what was read or happened on other days.
/// @pre no ice
[[nodiscard]] Pond inMonth(const Pond& pond, const ClimateYear& climate, const MonthState& state, int days);

}  // namespace engine
