// The log of a pond as it counts. Entries are never changed: a correction is a new entry that names the time
// of the one it stands for, and only readingsInForce() and eventsInForce() leave the old one out. knownAt()
// is the one place that decides what was known when; everything that forecasts goes through it. The head of
// the log, by which later changes show, is in engine/follow_up/log_chain.h.
#pragma once

#include "engine/pond/pond.h"
#include "engine/ramps/schedule.h"

#include <optional>
#include <string>
#include <vector>

namespace engine {

/// Readings of the pond file and its CSV as they count, in the order of time: those that a later entry
/// corrects are left out here, never in the log itself.
[[nodiscard]] std::vector<Reading> readingsInForce(const Pond& pond);
/// The same of the events.
[[nodiscard]] std::vector<Event> eventsInForce(const Pond& pond);

/// Both, for what asks a log several times.
struct LogInForce {
    std::vector<Reading> readings;
    std::vector<Event> events;
};
[[nodiscard]] LogInForce logInForce(const Pond& pond);

/// The pond as it was known at a time: without later readings and events, with the weather of weatherKnownAt.
[[nodiscard]] Pond knownAt(const Pond& pond, LocalTime at);

/// Weather with one row a date, the last that was known by `at`; all rows if there is no time. Of an observed
/// table a row without known_at is known from 18:00 of its day, when its light, its lowest and its highest
/// temperature are past; of an observed hourly file the hours that have ended are. Gaps before the last known
/// day take the mean of the days known, marked as forecast. A table that is not observed was forecast before
/// its first day, so that its rows are known throughout.
[[nodiscard]] Weather weatherKnownAt(const Pond& pond, std::optional<LocalTime> at);

/// True if there are days or half a day of hours of weather, the least that a run can go by.
[[nodiscard]] bool hasWeather(const Pond& pond);

/// The time of the last reading or event; of the profile where there is none; nothing without all of these.
[[nodiscard]] std::optional<LocalTime> lastEntry(const Pond& pond);

/// The ramp that is meant: that of the last event of kind started that names one (in `ramp`, or alone in its
/// note), else chosen_ramp, else the only ramp of the file; null if none is.
[[nodiscard]] const Ramp* rampMeant(const Pond& pond);
/// @param events  Of that pond, in force.
[[nodiscard]] const Ramp* rampMeant(const Pond& pond, const std::vector<Event>& events);

/// What the air did and, by the ramp meant, will do.
struct LoggedAir {
    Schedule schedule;                   ///< Up to the end asked for
    bool isStarted = false;              ///< By an event; else nothing runs
    int firstDay = 1;                    ///< Day number of the ramp's day 1
    std::optional<double> stoppedSince;  ///< [s]; the air is off at the end of the log for good
};

/// The air of days 1 to `lastDay` by the log: a started event runs its ramp from its day on, runs stand for
/// the whole of their day's schedule, stops and power cuts end what runs. Without any such event nothing ran.
/// A capped ramp's runs are taken from `capped`, the schedule of its central run counted from day 1.
/// @param end  Runs end at the latest there [s after midnight of day 1].
[[nodiscard]] LoggedAir airOfLog(const Pond& pond, const Schedule* capped, int lastDay, double end);
/// @param events  Of that pond, in force.
[[nodiscard]] LoggedAir airOfLog(const Pond& pond, const std::vector<Event>& events, const Schedule* capped,
                                 int lastDay, double end);

/// One schedule up to a time and another from there on.
[[nodiscard]] Schedule joinedAt(const Schedule& before, const Schedule& after, double time);

}  // namespace engine
