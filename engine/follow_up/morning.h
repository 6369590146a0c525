#pragma once

#include "engine/follow_up/known_pond.h"
#include "engine/ramps/weather.h"

#include <optional>
#include <vector>

namespace engine {

/// Oxygen of the readings of one morning, and what else they say.
struct MorningReadings {
    std::optional<double> surface, middle, bottom;                ///< [g/m^3]
    std::optional<double> temperatureSurface, temperatureBottom;  ///< [degC]
    std::optional<Smell> smell;
    std::optional<FishBehaviour> fish;
    /// The middle one lies in the bottom water, over kStratified colder than the surface: fish do not breathe
    /// there, and of a pond in layers it would stop every start.
    bool isMiddleBelow = false;
    /// Worst of the upper two, of which the middle one counts unless it is below.
    [[nodiscard]] std::optional<double> fishWater() const;
};

/// The readings of a span of time [s after midnight of day 1], the last of each depth: the shallowest is
/// "surface", the deepest "bottom" if it lies in the deeper half of the pond, the one nearest half way
/// "middle".
/// @param log  Of the model's pond.
[[nodiscard]] MorningReadings readingsBetween(const PondModel& model, const JudgedLog& log, double from,
                                              double to);
/// The same within 3 h of a sunrise.
[[nodiscard]] MorningReadings readingsAtDawn(const PondModel& model, const JudgedLog& log, double sunrise);
/// The same of the last 3 h before a time.
[[nodiscard]] MorningReadings lastReadings(const PondModel& model, const JudgedLog& log, double time);

/// The last readings of each depth within 3 h before a time, as a profile; nothing of it where fewer than two
/// depths have both values.
/// @param readings  Of that pond, in force.
[[nodiscard]] std::optional<Profile> presentProfile(const Pond& pond, const std::vector<Reading>& readings,
                                                    LocalTime at);
/// A pond that starts with that profile, on its day, with no ramps.
[[nodiscard]] Pond presentPond(const Pond& pond, const Profile& profile);

}  // namespace engine
