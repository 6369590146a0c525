#include "engine/base/text_file.h"
#include "engine/pond/local_time.h"
#include "engine/pond/pond_check.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

/// Water of the basin [m^3], exact as in engine/water/basin; nothing where the shape is not whole.
std::optional<double> volumeOf(const BasinShape& basin) {
    if (basin.contours.empty()) {
        return basin.area && basin.meanDepth ? std::optional(*basin.area * *basin.meanDepth) : std::nullopt;
    }
    double volume = 0.0;
    for (std::size_t i = 1; i < basin.contours.size(); ++i) {
        const Contour& above = basin.contours[i - 1];
        const Contour& below = basin.contours[i];
        volume += 0.5 * (above.area + below.area) * (below.depth - above.depth);
    }
    return volume;
}

/// A pond that is renewed within a day is a stream, or the flow is off by a factor of its unit.
void checkSpring(const Pond& pond, const PondFaults& faults) {
    const bool isBasinRead = !faults.isUnread("basin.area_m2") && !faults.isUnread("basin.mean_depth_m") &&
                             !faults.isUnread("basin.contour");
    if (!pond.spring || !pond.spring->flow_lPerS || !isBasinRead) {
        return;
    }
    constexpr double kSecondsPerDay = 86400.0;
    const double daily = *pond.spring->flow_lPerS * kSecondsPerDay / 1000.0;
    const std::optional<double> volume = volumeOf(pond.basin);
    if (volume && *volume > 0.0 && daily > *volume) {
        faults.add("spring.flow_l_per_s", "The spring brings " + shownNumber(daily) +
                                              " m3 a day, but must not bring more than the " +
                                              "pond holds, " + shownNumber(*volume) + " m3.");
    }
}

/// When the run starts: at the profile, or on the evening before the first day where there is none.
std::optional<LocalTime> startOf(const Pond& pond) {
    if (pond.profile) {
        return pond.profile->at;
    }
    if (!pond.place.firstDay || !isSaneYear(*pond.place.firstDay)) {
        return std::nullopt;
    }
    return LocalTime(std::chrono::local_days(*pond.place.firstDay)) - std::chrono::minutes(390);
}

void checkChanges(const Pond& pond, const PondFaults& faults) {
    const Water& water = pond.water;
    const auto start = faults.isUnread("profile") ? std::nullopt : startOf(pond);
    for (std::size_t i = 0; i < water.changes.size(); ++i) {
        const WaterChange& change = water.changes[i];
        const std::string path = itemPath("water.change", i);
        if (start && change.date.ok() && LocalTime(std::chrono::local_days(change.date)) <= *start) {
            faults.add(path + ".date", "The midnight at which " + formatDate(change.date) +
                                           " begins must come after the start of the run, " +
                                           formatLocalTime(*start) + ".");
        }
        // The table scales what is there at the start.
        if (change.weedsCover_percent && !faults.isUnread("water.weeds_cover_percent") &&
            (!water.weedsCover_percent || water.weedsCover_percent->value <= 0.0)) {
            faults.add(
                path + ".weeds_cover_percent",
                "The weeds at the start are scaled to this, so that [water] weeds_cover_percent must be "
                "given and above 0.");
        }
        if (change.chlorophyll_ugPerL && change.chlorophyll_ugPerL->value > 0.0 && water.chlorophyll_ugPerL &&
            water.chlorophyll_ugPerL->value <= 0.0) {
            faults.add(
                path + ".chlorophyll_ug_per_l",
                "The algae at the start are scaled to this, so that [water] chlorophyll_ug_per_l must be "
                "above 0.");
        }
    }
}

void checkDates(const Pond& pond, const PondFaults& faults) {
    if (!pond.place.firstDay || !isSaneYear(*pond.place.firstDay)) {
        return;
    }
    constexpr std::chrono::days kLongestRun{67};  // a capped ramp of 60 days and the week after it
    constexpr std::chrono::days kOldReading{60};
    const std::chrono::local_days first(*pond.place.firstDay);
    for (std::size_t i = 0; i < pond.weather.holdDays.size(); ++i) {
        const Date date = pond.weather.holdDays[i];
        const bool isSane = date.ok() && isSaneYear(date);
        const std::string path = itemPath("weather.hold_days", i);
        if (isSane && std::chrono::local_days(date) < first) {
            faults.warn(path, "The hold day " + formatDate(date) + " lies before the first day, " +
                                  formatDate(*pond.place.firstDay) + ", and holds nothing.");
        } else if (isSane && std::chrono::local_days(date) - first >= kLongestRun) {
            faults.warn(path, "The hold day " + formatDate(date) + " lies more than " +
                                  std::to_string(kLongestRun.count()) + " days after the first day, " +
                                  formatDate(*pond.place.firstDay) + ", where few runs get.");
        }
    }
    for (std::size_t i = 0; i < pond.readings.size(); ++i) {
        const auto& at = pond.readings[i].at;
        if (at && first - *at > kOldReading) {
            faults.warn(itemPath("reading", i) + ".at",
                        "The reading of " + formatLocalTime(*at) + " was taken more than " +
                            std::to_string(kOldReading.count()) + " days before the first day, " +
                            formatDate(*pond.place.firstDay) + ".");
        }
    }
}

void checkDewPoints(const Weather& weather, const PondFaults& faults) {
    for (std::size_t i = 0; i < weather.days.size(); ++i) {
        const WeatherDay& day = weather.days[i];
        if (day.dewPoint && day.airMax && day.dewPoint->value <= 40.0 &&
            day.dewPoint->value > day.airMax->value) {
            faults.warn(itemPath("weather.day", i) + ".dew_point_c",
                        "The dew point " + shownNumber(*day.dewPoint) + " degC is above the highest air " +
                            "temperature, " + shownNumber(*day.airMax) +
                            " degC; the air holds more than it can.");
        }
    }
}

/// Each month once, with one way to say how moist the air is.
void checkClimate(const Climate& climate, const PondFaults& faults) {
    for (std::size_t i = 0; i < climate.months.size(); ++i) {
        const ClimateMonth& month = climate.months[i];
        const std::string path = itemPath("climate.month", i);
        if (month.humidity_percent.has_value() == month.dewPoint.has_value()) {
            faults.add(path, "A month needs humidity_percent or dew_point_c, and not both.");
        }
        if (month.airMin && month.airMax && month.airMin->value > month.airMax->value) {
            faults.add(path + ".air_min_c", "The lowest air temperature " + shownNumber(*month.airMin) +
                                                " degC is above the highest, " + shownNumber(*month.airMax) +
                                                " degC.");
        }
        for (std::size_t j = 0; j < i; ++j) {
            if (month.month && climate.months[j].month && *month.month == *climate.months[j].month) {
                faults.add(path + ".month", "The month " + shownNumber(*month.month) + " comes twice.");
            }
        }
    }
}

/// What a slip of a sign or a year leaves behind.
void checkPlausible(const Pond& pond, const PondFaults& faults) {
    constexpr double kDegreesPerHour = 15.0, kMostOff_h = 2.5;
    const Place& place = pond.place;
    const bool isOnEarth = place.longitude_deg && std::fabs(*place.longitude_deg) <= 180.0 &&
                           place.utcOffset_h && *place.utcOffset_h >= -12.0 && *place.utcOffset_h <= 14.0;
    if (isOnEarth && std::fabs(*place.utcOffset_h - *place.longitude_deg / kDegreesPerHour) > kMostOff_h) {
        faults.warn("place.longitude_deg",
                    "At longitude " + shownNumber(*place.longitude_deg) + " the sun's own clock is " +
                        shownNumber(std::round(10.0 * *place.longitude_deg / kDegreesPerHour) / 10.0) +
                        " h from UTC, but utc_offset_h is " + shownNumber(*place.utcOffset_h) +
                        ": is a sign wrong? West and behind UTC are negative.");
    }
    const std::vector<WeatherDay>& days = pond.weather.days;
    if (!place.firstDay || !isSaneYear(*place.firstDay) || days.empty() ||
        !std::all_of(days.begin(), days.end(),
                     [](const WeatherDay& day) { return day.date.ok() && isSaneYear(day.date); }) ||
        days.back().date < days.front().date) {
        return;
    }
    constexpr std::chrono::days kWeek{7};
    const auto gap =
        std::chrono::local_days(pond.weather.days.front().date) - std::chrono::local_days(*place.firstDay);
    if (gap > kWeek ||
        std::chrono::local_days(pond.weather.days.back().date) < std::chrono::local_days(*place.firstDay)) {
        faults.warn("weather.day[1].date",
                    "The weather begins on " + formatDate(pond.weather.days.front().date) + " and ends on " +
                        formatDate(pond.weather.days.back().date) + ", away from the first day, " +
                        formatDate(*place.firstDay) + ".");
    }
    for (std::size_t i = 0; i < pond.weather.days.size(); ++i) {
        if (pond.weather.days[i].airMax && pond.weather.days[i].airMax->value < 0.0) {
            faults.warn(itemPath("weather.day", i) + ".air_max_c",
                        "The air stays below freezing on this day; ice is not computed.");
            return;
        }
    }
}

}  // namespace

void checkTogether(const Pond& pond, const PondFaults& faults) {
    checkSpring(pond, faults);
    checkChanges(pond, faults);
    checkDates(pond, faults);
    checkPlausible(pond, faults);
    checkDewPoints(pond.weather, faults);
    checkClimate(pond.climate, faults);
}

}  // namespace engine
