// A summer of three small measured ponds (measured_waters.h says where the data are from): oxygen half a
// metre down every half hour, and a cast by hand about every day.
#pragma once

#include "tests/property/measured_waters.h"

#include <chrono>
#include <filesystem>
#include <map>
#include <vector>

namespace engine::test {

/// What is known of one of the ponds A to C.
struct SmallPond {
    char name = 'A';
    std::vector<Contour> contours;
    std::vector<WeatherHour> hours;                    ///< Air a guess from the water, see readSmallPond
    std::vector<Reading> logger;                       ///< By time, without the steps of a faulty sensor
    std::map<LocalTime, Profile> casts;                ///< By their first minute, at their true depths
    std::map<std::chrono::local_days, double> secchi;  ///< [m]
};

/// Wind and light are of the ponds' own mast. Nobody kept the air: it is taken as the day's mean of the water
/// less 2.6 K, 4.5 K warmer at 15:00 and colder at 03:00, with a humidity of 75 %, as they were in the eight
/// days whose air is known (pond-c/weather.csv).
[[nodiscard]] SmallPond readSmallPond(const std::filesystem::path& data, char name);

/// The pond as it was known at a cast: Secchi depth of the week before, weather and logger of the ten days
/// before. @param days  Of weather after it. @param withLogger  Hands over what the logger read before the
/// cast.
[[nodiscard]] Pond smallPondAt(const SmallPond& water, const Profile& cast, int days, bool withLogger);

}  // namespace engine::test
