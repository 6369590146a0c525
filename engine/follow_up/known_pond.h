#pragma once

#include "engine/follow_up/sensor_faults.h"
#include "engine/ramps/log.h"
#include "engine/run/run.h"

#include <vector>

namespace engine {

/// A log in force and what is wrong with its readings.
struct JudgedLog {
    LogInForce inForce;
    std::vector<SensorFault> faults;  ///< One a reading
};
/// @param model  Of the log's pond.
[[nodiscard]] JudgedLog judgedLog(LogInForce log, const PondModel& model);

/// A pond as it was known at a time, with what every question about it needs. A question is answered from one
/// such value, so that nothing of it is prepared twice.
struct KnownPond {
    LocalTime at{};
    double time = 0.0;  ///< The same [s after midnight of day 1]
    PondModel model;    ///< Of the pond as it was known then, balanced
    JudgedLog log;      ///< In force then
};
/// @param known  As it was known at that time (knownAt()), with weather (hasWeather()).
[[nodiscard]] KnownPond preparedPond(const Pond& known, LocalTime at, const Resolution& resolution);

/// The runs of the ramp meant over so many days, by the central run, if it is a capped one; else none.
[[nodiscard]] Schedule cappedRuns(const KnownPond& known, int days, const RunControl& control);

/// The air of days 1 to `lastDay` by the log, as airOfLog() has it.
/// @param capped  Runs of the ramp meant if it is a capped one, else empty.
[[nodiscard]] LoggedAir airOfLog(const KnownPond& known, const Schedule& capped, int lastDay, double end);

}  // namespace engine
