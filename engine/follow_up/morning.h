#pragma once

#include "engine/run/run.h"

#include <optional>

namespace engine {

/// Oxygen of the readings of one morning, and what else they say.
struct MorningReadings {
    std::optional<double> surface, middle, bottom;                ///< [g/m^3]
    std::optional<double> temperatureSurface, temperatureBottom;  ///< [degC]
    std::optional<Smell> smell;
    std::optional<FishBehaviour> fish;
    [[nodiscard]] std::optional<double> fishWater() const;  ///< Worst of the upper two
};

/// The readings of a day within 3 h of its sunrise, the last of each depth: the shallowest is "surface", the
/// deepest "bottom" if it lies in the deeper half of the pond, the one nearest half way "middle".
/// @param day  1 is the first day.
[[nodiscard]] MorningReadings morningOf(const PondModel& model, int day);
/// The same of a span of time [s after midnight of day 1].
[[nodiscard]] MorningReadings readingsBetween(const PondModel& model, double from, double to);
/// The same of the last 3 h before a time.
[[nodiscard]] MorningReadings lastReadings(const PondModel& model, double time);

/// The last readings of each depth within 3 h before a time, as a profile; nothing of it where fewer than two
/// depths have both values.
[[nodiscard]] std::optional<Profile> presentProfile(const Pond& pond, LocalTime at);
/// A pond that starts with that profile, on its day, with no ramps.
[[nodiscard]] Pond presentPond(const Pond& pond, const Profile& profile);

}  // namespace engine
