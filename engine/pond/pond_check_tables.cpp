#include "engine/base/text.h"
#include "engine/base/text_file.h"
#include "engine/pond/local_time.h"
#include "engine/pond/pond_check.h"
#include "engine/pond/pond_keys.h"
#include "engine/pond/pond_words.h"
#include "engine/pond/time_zone.h"

#include <algorithm>
#include <cmath>
#include <string_view>
#include <vector>

namespace engine {
namespace {

bool hasControlCharacter(std::string_view text) {
    return std::any_of(text.begin(), text.end(),
                       [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; });
}

void checkPlainText(const std::string& path, std::string_view text, const PondFaults& faults) {
    if (hasControlCharacter(text)) {
        faults.add(path,
                   "The text " + shownText(text) + " must not hold line breaks or other control characters.");
    }
}

void checkContours(const std::vector<Contour>& contours, const PondFaults& faults) {
    if (contours.size() == 1) {
        faults.add("basin.contour", "There is one contour, but at least two are needed.");
    }
    for (std::size_t i = 0; i < contours.size(); ++i) {
        const std::string path = itemPath("basin.contour", i);
        const double depth = contours[i].depth;
        const double area = contours[i].area;
        if (i == 0 && depth != 0.0) {
            faults.add(path + ".depth_m", "The first contour is the surface, so that its depth must be 0 m.");
        }
        if (i == 0 && area >= 0.0 && area < kLeastArea) {
            faults.add(path + ".area_m2", "The area of the surface is " + shownNumber(area) +
                                              " m2, but must be at least " + shownNumber(kLeastArea) +
                                              " m2.");
        }
        if (i == 0 || faults.isUnread(itemPath("basin.contour", i - 1) + ".depth_m") ||
            faults.isUnread(itemPath("basin.contour", i - 1) + ".area_m2")) {
            continue;
        }
        if (depth <= contours[i - 1].depth) {
            faults.add(path + ".depth_m", "The depth " + shownNumber(depth) +
                                              " m must be below that of the contour before, " +
                                              shownNumber(contours[i - 1].depth) + " m.");
        }
        const bool isSurfaceBad = i == 1 && contours[0].area < kLeastArea;
        if (area > contours[i - 1].area && !isSurfaceBad) {
            faults.add(path + ".area_m2", "The area " + shownNumber(area) +
                                              " m2 must not be larger than that of the contour above, " +
                                              shownNumber(contours[i - 1].area) + " m2.");
        }
    }
}

void checkThreeNumbers(const BasinShape& basin, const PondFaults& faults) {
    if (!basin.area) {
        faults.missing("basin.area_m2");
    }
    if (!basin.maxDepth) {
        faults.missing("basin.max_depth_m");
    }
    if (!basin.meanDepth) {
        faults.missing("basin.mean_depth_m");
    }
    if (!basin.maxDepth || !basin.meanDepth) {
        return;
    }
    // A(z) = A0 (1 - z/zmax)^p with p = zmax/zmean - 1; beyond these p there are no ponds.
    constexpr double kLeastPower = 0.05;
    constexpr double kMostPower = 4.0;
    const double deepest = *basin.maxDepth;
    const double mean = *basin.meanDepth;
    const double power = deepest / mean - 1.0;
    if (mean > 0.0 && deepest > 0.0 && !(power >= kLeastPower && power <= kMostPower)) {
        const std::string least = fixed(std::ceil(100.0 * deepest / (kMostPower + 1.0)) / 100.0, 2);
        const std::string most = fixed(std::floor(100.0 * deepest / (kLeastPower + 1.0)) / 100.0, 2);
        faults.add("basin.mean_depth_m", "The mean depth is " + shownNumber(mean) +
                                             " m, but with a deepest point of " + shownNumber(deepest) +
                                             " m it must be from " + least + " to " + most + " m.");
    }
}

void checkBasin(const BasinShape& basin, const PondFaults& faults) {
    if (faults.hasFile() && !faults.isWritten("basin")) {
        return;
    }
    const bool hasNumbers = basin.area || basin.maxDepth || basin.meanDepth;
    if (basin.contours.empty() && !faults.isUnread("basin.contour")) {
        checkThreeNumbers(basin, faults);
    } else if (hasNumbers) {
        faults.add(
            basin.area       ? "basin.area_m2"
            : basin.maxDepth ? "basin.max_depth_m"
                             : "basin.mean_depth_m",
            "The basin has contours, so that area_m2, max_depth_m and mean_depth_m must not be given.");
    }
    checkContours(basin.contours, faults);
}

void checkWater(const Water& water, const PondFaults& faults) {
    for (std::size_t i = 0; i < water.changes.size(); ++i) {
        const std::string path = itemPath("water.change", i);
        const WaterChange& change = water.changes[i];
        if (!change.chlorophyll_ugPerL && !change.weedsCover_percent) {
            faults.add(path, "A change needs chlorophyll_ug_per_l or weeds_cover_percent.");
        }
        if (i > 0 && change.date.ok() && water.changes[i - 1].date.ok() &&
            change.date <= water.changes[i - 1].date) {
            faults.add(path + ".date", "The date " + formatDate(change.date) +
                                           " must come after the one before, " +
                                           formatDate(water.changes[i - 1].date) + ".");
        }
    }
}

void checkDepths(const std::vector<double>& depth, std::optional<double> deepest, const PondFaults& faults) {
    if (depth.size() == 1) {
        faults.add("profile.depth_m", "There is one depth, but at least two are needed.");
    }
    for (std::size_t i = 0; i < depth.size(); ++i) {
        const std::string path = itemPath("profile.depth_m", i);
        if (i > 0 && depth[i] <= depth[i - 1]) {
            faults.add(path, "The depths must rise from the surface down, but " + shownNumber(depth[i]) +
                                 " m follows " + shownNumber(depth[i - 1]) + " m.");
        }
        if (deepest && depth[i] > *deepest && std::isfinite(depth[i])) {
            faults.add(path, "The depth " + shownNumber(depth[i]) + " m lies below the bottom, which is at " +
                                 shownNumber(*deepest) + " m.");
        }
    }
}

void checkSize(const char* path, const std::vector<double>& values, std::size_t wanted,
               const PondFaults& faults) {
    if (!values.empty() && values.size() != wanted && wanted > 0 && !faults.isUnread("profile.depth_m")) {
        faults.add(
            path,
            "There are " + std::to_string(values.size()) + " values for " + std::to_string(wanted) +
                " depths; each depth needs one" +
                (values.size() > wanted ? ". A decimal comma counts as two numbers; write a point." : "."));
    }
}

void checkProfile(const Pond& pond, const PondFaults& faults) {
    if (!pond.profile) {
        return;
    }
    const Profile& profile = *pond.profile;
    const bool isBasinRead = !faults.isUnread("basin.max_depth_m") && !faults.isUnread("basin.contour");
    checkDepths(profile.depth, isBasinRead ? deepestPoint(pond.basin) : std::nullopt, faults);
    checkSize("profile.temperature_c", profile.temperature, profile.depth.size(), faults);
    checkSize("profile.oxygen_mg_per_l", profile.oxygen, profile.depth.size(), faults);
    checkSize("profile.salinity", profile.salinity, profile.depth.size(), faults);
    if (profile.at && pond.place.firstDay && isSaneYear(*pond.place.firstDay)) {
        const LocalTime midnight = std::chrono::local_days(*pond.place.firstDay);
        const auto after = *profile.at - midnight;
        if (after < -std::chrono::days(3) || after > std::chrono::hours(24)) {
            faults.add(
                "profile.at",
                "The profile of " + formatLocalTime(*profile.at) +
                    " must be from 3 days before to 24 hours after the midnight at which the first day, " +
                    formatDate(*pond.place.firstDay) + ", begins.");
        }
    }
}

void checkWeatherDay(const Weather& weather, std::size_t i, const PondFaults& faults) {
    const std::string path = itemPath("weather.day", i);
    const WeatherDay& day = weather.days[i];
    const bool isHumidityRead =
        !faults.isUnread(path + ".humidity_percent") && !faults.isUnread(path + ".dew_point_c");
    if (day.humidity_percent && day.dewPoint) {
        faults.add(path + ".dew_point_c", "A day has humidity_percent or dew_point_c, not both.");
    } else if (!day.humidity_percent && !day.dewPoint && isHumidityRead) {
        faults.add(path, "A day needs humidity_percent or dew_point_c.");
    }
    if (day.airMin && day.airMax && day.airMin->value > day.airMax->value) {
        faults.add(path + ".air_min_c", "The lowest air temperature " + shownNumber(*day.airMin) +
                                            " degC is above the highest, " + shownNumber(*day.airMax) +
                                            " degC.");
    }
    if (i == 0 || !day.date.ok() || !weather.days[i - 1].date.ok()) {
        return;
    }
    const Date before = weather.days[i - 1].date;
    const auto step = std::chrono::local_days(day.date) - std::chrono::local_days(before);
    const std::optional<LocalTime> knownBefore = weather.days[i - 1].knownAt;
    if (step.count() == 0 && day.knownAt && (!knownBefore || *day.knownAt > *knownBefore)) {
        return;  // what was known of the day later on
    }
    if (step.count() == 0) {
        faults.add(path + ".date", "The day " + formatDate(day.date) + " comes twice.");
    } else if (step.count() < 0) {
        faults.add(path + ".date", "The days must be in order, but " + formatDate(day.date) + " follows " +
                                       formatDate(before) + ".");
    } else if (step.count() > 1) {
        const Date next(std::chrono::local_days(before) + std::chrono::days(1));
        faults.add(path + ".date",
                   "The day " + formatDate(next) + " is missing before " + formatDate(day.date) + ".");
    }
}

void checkWeather(const Weather& weather, const PondFaults& faults) {
    const bool hasDays = !weather.days.empty() || faults.isUnread("weather.day");
    const bool hasFile = !weather.file.empty() || faults.isWritten("weather.file");
    if (faults.isWritten("weather.file") && weather.file.empty()) {
        faults.add("weather.file", "The text must not be empty.");
    } else if (hasDays && hasFile) {
        faults.add("weather.file",
                   "The weather comes from a file or from [[weather.day]] tables, not from both.");
    } else if (!hasDays && !hasFile && (!faults.hasFile() || faults.isWritten("weather"))) {
        faults.add("weather", "There is no weather: give [[weather.day]] tables or an hourly file.");
    }
    if (hasFile && !weather.stamp) {
        faults.add(
            "weather.stamp",
            "This key is missing; an hourly file needs stamp = \"start\" or \"end\", which says at which end "
            "of its hour a row is stamped.");
    } else if (!hasFile && weather.stamp) {
        faults.add("weather.stamp", "This key belongs to an hourly file, and no file is given.");
    }
    checkPlainText("weather.file", weather.file, faults);
    for (std::size_t i = 0; i < weather.days.size(); ++i) {
        checkWeatherDay(weather, i, faults);
    }
}

void checkBottleTest(const Pond& pond, const PondFaults& faults) {
    if (pond.bottleTest && pond.bottleTest->readings.empty() && !faults.isUnread("bottle_test.reading")) {
        faults.add("bottle_test", "A bottle test needs a [[bottle_test.reading]] at least.");
    }
}

void checkInflows(const Pond& pond, const PondFaults& faults) {
    for (std::size_t i = 0; i < pond.inflows.size(); ++i) {
        const Inflow& inflow = pond.inflows[i];
        if (inflow.from && inflow.until && *inflow.until <= *inflow.from) {
            faults.add(itemPath("inflow", i) + ".until", "The end " + formatLocalTime(*inflow.until) +
                                                             " must come after the start, " +
                                                             formatLocalTime(*inflow.from) + ".");
        }
    }
}

/// A ramp's window of surface air says when its air runs, and not how much.
void checkSurfaceAir(const Pond& pond, const PondFaults& faults) {
    for (std::size_t i = 0; i < pond.ramps.size(); ++i) {
        const std::string path = itemPath("ramp", i);
        if (pond.ramps[i].surfaceAirWindow && !pond.ramps[i].surfaceAir_kW &&
            !faults.isUnread(path + ".surface_air_kw")) {
            faults.add(path + ".surface_air_window", "This key needs surface_air_kw beside it.");
        }
    }
}

void checkSurfaceAerator(const Pond& pond, const PondFaults& faults) {
    if (!pond.surfaceAerator || faults.isUnread("surface_aerator.start_time") ||
        faults.isUnread("surface_aerator.end_time")) {
        return;
    }
    if (pond.surfaceAerator->startTime.has_value() != pond.surfaceAerator->endTime.has_value()) {
        faults.add("surface_aerator", "The start_time and the end_time must be given together.");
    }
}

void checkLimits(const Limits& limits, const PondFaults& faults) {
    if (limits.stress && limits.lethal && limits.lethal->value > limits.stress->value) {
        faults.add("limits.lethal_mg_per_l", "The lethal line " + shownNumber(*limits.lethal) +
                                                 " mg/L must not be above the stress line, " +
                                                 shownNumber(*limits.stress) + " mg/L.");
    }
}

void checkReading(const Reading& reading, const std::string& path, std::optional<double> deepest,
                  const PondFaults& faults) {
    const bool hasWaterValue = reading.temperature || reading.oxygen;
    if (!hasWaterValue && !reading.secchi && !reading.smell && reading.note.empty()) {
        faults.add(path, "A reading needs temperature_c, oxygen_mg_per_l, secchi_m, smell or note.");
    }
    if (hasWaterValue && !reading.depth) {
        faults.add(path + ".depth_m",
                   "This key is missing; a temperature or an oxygen value needs its depth.");
    }
    if (reading.depth && deepest && reading.depth->value > *deepest && std::isfinite(reading.depth->value)) {
        faults.add(path + ".depth_m", "The depth " + shownNumber(*reading.depth) +
                                          " m lies below the bottom, which is at " + shownNumber(*deepest) +
                                          " m.");
    }
}

/// What only one kind of event can have.
void checkEvent(const Pond& pond, std::size_t i, const PondFaults& faults) {
    const Event& event = pond.events[i];
    const std::string path = itemPath("event", i);
    checkPlainText(path + ".kind", event.kind, faults);
    if (!event.kind.empty() && !hasControlCharacter(event.kind) && !eventKind(event.kind)) {
        std::vector<std::string_view> words;
        for (const auto& word : kEventWords) {
            words.push_back(word.text);
        }
        const std::string near = nearest(event.kind, words);
        faults.warn(path + ".kind", "The kind " + shownText(event.kind) +
                                        " is kept in the log, but nothing is computed from it" +
                                        (near.empty() ? "." : "; is it " + shownText(near) + "?"));
    }
    if (event.until && event.at && *event.until < *event.at) {
        faults.add(path + ".until", "The end " + formatLocalTime(*event.until) +
                                        " must not come before the start, " + formatLocalTime(*event.at) +
                                        ".");
    }
    if (event.until && event.minutes) {
        faults.add(path + ".minutes", "An event has an end or minutes, not both.");
    }
    const bool isRamp = std::any_of(pond.ramps.begin(), pond.ramps.end(),
                                    [&](const Ramp& ramp) { return ramp.name == event.ramp; });
    if (!event.ramp.empty() && !isRamp) {
        faults.add(path + ".ramp", "There is no ramp named " + shownText(event.ramp) + ".");
    }
}

}  // namespace

void checkTables(const Pond& pond, const PondFaults& faults) {
    const bool isBasinRead = !faults.isUnread("basin.max_depth_m") && !faults.isUnread("basin.contour");
    const auto deepest = isBasinRead ? deepestPoint(pond.basin) : std::nullopt;
    checkPlainText("title", pond.title, faults);
    checkBasin(pond.basin, faults);
    checkWater(pond.water, faults);
    checkBottleTest(pond, faults);
    checkInflows(pond, faults);
    checkSurfaceAir(pond, faults);
    checkPlainText("place.time_zone", pond.place.timeZone, faults);
    if (!pond.place.timeZone.empty() && !isTimeZone(pond.place.timeZone)) {
        faults.add("place.time_zone", "The system has no time zone of the name " +
                                          shownText(pond.place.timeZone) + "; one is \"America/Chicago\".");
    }
    for (std::size_t i = 0; i < pond.fish.size(); ++i) {
        checkPlainText(itemPath("fish", i) + ".kind", pond.fish[i].kind, faults);
    }
    checkProfile(pond, faults);
    checkWeather(pond.weather, faults);
    checkSurfaceAerator(pond, faults);
    checkLimits(pond.limits, faults);
    if (faults.isWritten("readings") && pond.readingsFile.name.empty()) {
        faults.add("readings.file", faults.isWritten("readings.file") ? "The text must not be empty."
                                                                      : "This key is missing.");
    }
    checkPlainText("readings.file", pond.readingsFile.name, faults);
    if (faults.isWritten("climate.file") && pond.climate.file.empty()) {
        faults.add("climate.file", "The text must not be empty.");
    }
    checkPlainText("climate.file", pond.climate.file, faults);
    for (std::size_t i = 0; i < pond.readings.size(); ++i) {
        checkReading(pond.readings[i], itemPath("reading", i), deepest, faults);
    }
    for (std::size_t i = 0; i < pond.events.size(); ++i) {
        checkEvent(pond, i, faults);
    }
}

}  // namespace engine
