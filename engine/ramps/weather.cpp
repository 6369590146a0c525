#include "engine/ramps/weather.h"

#include "engine/base/error.h"
#include "engine/base/units.h"
#include "engine/pond/local_time.h"
#include "engine/ramps/constants_weather.h"
#include "engine/water/exchange.h"
#include "engine/water/light.h"
#include "engine/water/priors.h"
#include "engine/water/sky.h"
#include "engine/water/water.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace engine {
namespace {

std::chrono::local_days localDays(const Date& date) {
    return std::chrono::local_days(date);
}

struct PlainDay {
    double airMin = 0.0, airMax = 0.0, vapourPressure = 0.0, wind = 0.0, cloud = 0.0;
    double rain = 0.0, snow = 0.0;  // [m/s]
};

double metresPerSecond(double millimetres, double seconds) {
    return 1e-3 * millimetres / seconds;
}

/// Puts rain and snow of so much into a forcing that has the rest of the hour.
void addRain(double rain, double snow, Forcing& now) {
    now.rain = rain + snow;
    if (!(now.rain > 0.0)) {
        return;
    }
    // The wet bulb lies about a third of the way from the air to the dew point.
    constexpr double kTowardsDewPoint = 1.0 / 3.0;
    const double logs = std::log(std::max(now.vapourPressure, 1.0) / 610.8);
    const double dewPoint = std::min(237.3 * logs / (17.27 - logs), now.air);
    const double wetBulb = std::max(now.air - kTowardsDewPoint * (now.air - dewPoint), 0.0);
    now.rainTemperature = (rain * wetBulb - snow * kMeltingCools.value) / now.rain;
}

PlainDay plain(const WeatherDay& day) {
    PlainDay out;
    out.airMin = *day.airMin;
    out.airMax = *day.airMax;
    out.vapourPressure = day.dewPoint
                             ? vapourPressure(*day.dewPoint)
                             : 0.01 * *day.humidity_percent * vapourPressure(0.5 * (out.airMin + out.airMax));
    out.wind = *day.wind;
    out.cloud = 0.01 * *day.cloud_percent;
    out.rain = metresPerSecond(day.rain_mm ? day.rain_mm->value : 0.0, kDay);
    out.snow = metresPerSecond(day.snow_mm ? day.snow_mm->value : 0.0, kDay);
    return out;
}

/// Mean of the table's days, column by column, without their rain; where both humidity and dew points occur,
/// of their vapour pressures.
PlainDay usualDay(const std::vector<WeatherDay>& days) {
    PlainDay mean;
    for (const WeatherDay& day : days) {
        const PlainDay one = plain(day);
        mean.airMin += one.airMin / static_cast<double>(days.size());
        mean.airMax += one.airMax / static_cast<double>(days.size());
        mean.vapourPressure += one.vapourPressure / static_cast<double>(days.size());
        mean.wind += one.wind / static_cast<double>(days.size());
        mean.cloud += one.cloud / static_cast<double>(days.size());
    }
    return mean;
}

double halfCosine(double from, double to, double share) {
    return from + (to - from) * 0.5 * (1.0 - std::cos(kPi * share));
}

constexpr double kAsBefore = -1.0;  // marks a cloud as that of the last hour that is known

/// Puts the cloud of the last known hour before it in the place of each unknown one, and kUnknownCloud where
/// no hour is known.
void fillClouds(std::vector<Forcing>& hours) {
    double cloud = kUnknownCloud.value;
    for (const Forcing& hour : hours) {
        if (hour.cloud >= 0.0) {
            cloud = hour.cloud;
            break;
        }
    }
    for (Forcing& hour : hours) {
        cloud = hour.cloud >= 0.0 ? hour.cloud : cloud;
        hour.cloud = cloud;
    }
}

/// Means of the hours of a file by hour of the day.
/// @param firstHour  Of `given`, counted from midnight of day 1.
std::array<Forcing, 24> usualHours(const std::vector<Forcing>& given, int firstHour) {
    std::array<Forcing, 24> usual{};
    std::array<int, 24> count{};
    for (Forcing& hour : usual) {
        hour.air = 0.0;
    }
    for (std::size_t i = 0; i < given.size(); ++i) {
        const int clock = ((firstHour + static_cast<int>(i)) % 24 + 24) % 24;
        usual[clock].air += given[i].air;
        usual[clock].shortwave += given[i].shortwave;
        usual[clock].vapourPressure += given[i].vapourPressure;
        usual[clock].wind10 += given[i].wind10;
        usual[clock].cloud += given[i].cloud;
        ++count[clock];
    }
    for (int h = 0; h < 24; ++h) {
        for (double* value : {&usual[h].air, &usual[h].shortwave, &usual[h].vapourPressure, &usual[h].wind10,
                              &usual[h].cloud}) {
            *value /= std::max(count[h], 1);
        }
    }
    // The checks of a pond file demand a whole day of rows; what was known at some time may be less, and then
    // an hour without a mean takes that of the hour before.
    for (int h = 0; h < 48; ++h) {
        const int clock = h % 24, before = (h + 23) % 24;
        if (count[clock] == 0 && count[before] > 0) {
            usual[clock] = usual[before];
            count[clock] = 1;
        }
    }
    return usual;
}

/// The days of the table whose mean is the usual day.
std::vector<WeatherDay> daysToMean(const Pond& pond, const WeatherPlan& plan) {
    std::vector<WeatherDay> past;
    for (const WeatherDay& day : pond.weather.days) {
        if (plan.usualBeforeDay && dayNumber(pond, day.date) < *plan.usualBeforeDay) {
            past.push_back(day);
        }
    }
    return static_cast<double>(past.size()) >= kPastDays.value ? past : pond.weather.days;
}

}  // namespace

int dayNumber(const Pond& pond, const Date& date) {
    return static_cast<int>((localDays(date) - localDays(*pond.place.firstDay)).count()) + 1;
}

Date dateOfDay(const Pond& pond, int day) {
    return Date(localDays(*pond.place.firstDay) + std::chrono::days(day - 1));
}

double secondsOf(const Pond& pond, LocalTime time) {
    return static_cast<double>((time - LocalTime(localDays(*pond.place.firstDay))).count());
}

WeatherSeries::WeatherSeries(const Pond& pond, const WeatherPlan& plan, int firstDay, int lastDay)
    : m_firstDay(firstDay) {
    ensure(lastDay >= firstDay, "weather spans at least a day");
    const double height = pond.weather.windHeight ? pond.weather.windHeight->value : kWindHeight.value;
    const double shelter = pond.place.windShelter ? pond.place.windShelter->value : kWindShelter.value;
    m_windScale = shelter * windAtTen(1.0, height);
    const double latitude = *pond.place.latitude_deg, longitude = *pond.place.longitude_deg;
    const double offset = *pond.place.utcOffset_h;

    const bool fromDays = !pond.weather.days.empty();
    const PlainDay usual = fromDays ? usualDay(daysToMean(pond, plan)) : PlainDay{};
    const int tableFirst = fromDays ? dayNumber(pond, pond.weather.days.front().date) : 0;
    // One day more on each side, for the half cosines that reach over midnight.
    for (int number = firstDay - 1; number <= lastDay + 1; ++number) {
        const bool held = plan.usualAfterDay && number > *plan.usualAfterDay;
        PlainDay values = usual;
        if (fromDays) {
            const int row = number - tableFirst;
            const bool inTable = row >= 0 && row < static_cast<int>(pond.weather.days.size());
            if (inTable && !held && !plan.usualThroughout) {
                values = plain(pond.weather.days[row]);
            } else if (!inTable && number >= 1 && number <= lastDay && !held) {
                ++m_usualDays;
            }
        }
        Day day;
        day.dayOfYear = dayOfYear(dateOfDay(pond, held ? *plan.usualAfterDay : number));
        day.airMin = values.airMin;
        day.airMax = values.airMax;
        day.vapourPressure = values.vapourPressure;
        day.wind = values.wind;
        day.cloud = values.cloud;
        day.rain = values.rain;
        day.snow = values.snow;
        day.sun = sunPath(latitude, longitude, offset, day.dayOfYear);
        day.rise_h =
            sunTimes(latitude, longitude, offset, day.dayOfYear).rise_h.value_or(kSunriseWithoutSun_h.value);
        m_days.push_back(day);
    }
    if (!fromDays) {
        buildHours(pond, plan, firstDay, lastDay);
    }
}

const WeatherSeries::Day& WeatherSeries::day(int number) const {
    const int last = static_cast<int>(m_days.size()) - 1;
    return m_days[std::clamp(number - m_firstDay + 1, 0, last)];
}

double WeatherSeries::sunrise(int number) const {
    return (number - 1) * kDay + day(number).rise_h * kHour;
}

double WeatherSeries::tableAir(int number, double clock_h) const {
    const Day& today = day(number);
    if (clock_h < today.rise_h) {
        const double span = today.rise_h + 24.0 - kWarmestHour.value;
        return halfCosine(day(number - 1).airMax, today.airMin, (clock_h + 24.0 - kWarmestHour.value) / span);
    }
    if (clock_h < kWarmestHour.value) {
        return halfCosine(today.airMin, today.airMax,
                          (clock_h - today.rise_h) / (kWarmestHour.value - today.rise_h));
    }
    const Day& next = day(number + 1);
    return halfCosine(today.airMax, next.airMin,
                      (clock_h - kWarmestHour.value) / (24.0 - kWarmestHour.value + next.rise_h));
}

Forcing WeatherSeries::at(double time) const {
    const int number = static_cast<int>(std::floor(time / kDay)) + 1;
    const double clock_h = (time - (number - 1) * kDay) / kHour;
    const Day& today = day(number);
    if (!m_hours.empty()) {
        const int hour = (number - m_firstDay) * 24 + static_cast<int>(clock_h);
        return m_hours[std::clamp(hour, 0, static_cast<int>(m_hours.size()) - 1)];
    }
    Forcing now;
    now.shortwave = shortwaveFromCloud(sinElevation(today.sun, clock_h), today.sun.distance, today.cloud);
    now.air = tableAir(number, clock_h);
    now.vapourPressure = today.vapourPressure;
    now.wind10 = m_windScale * today.wind *
                 (1.0 + kWindSwing.value * std::cos(kPi / 12.0 * (clock_h - kWarmestHour.value)));
    now.cloud = today.cloud;
    addRain(today.rain, today.snow, now);
    return now;
}

Forcing WeatherSeries::forcingOf(const Pond& pond, const WeatherHour& row) const {
    const double start = secondsOf(pond, row.start);
    const int number = static_cast<int>(std::floor(start / kDay)) + 1;
    const double clock_h = (start - (number - 1) * kDay) / kHour + 0.5;
    const Day& today = day(number);
    const double elevation = sinElevation(today.sun, clock_h);
    Forcing now;
    now.air = row.air;
    now.vapourPressure =
        row.dewPoint ? vapourPressure(*row.dewPoint) : 0.01 * *row.humidity_percent * vapourPressure(row.air);
    now.wind10 = m_windScale * row.wind;
    addRain(metresPerSecond(row.rain_mm.value_or(0.0), kHour),
            metresPerSecond(row.snow_mm.value_or(0.0), kHour), now);
    if (row.cloud_percent) {
        now.cloud = 0.01 * *row.cloud_percent;
        now.shortwave = shortwaveFromCloud(elevation, today.sun.distance, now.cloud);
    } else {
        now.shortwave = row.shortwave ? *row.shortwave : shortwaveFromPar(*row.par_umolPerM2S);
        // Too low a sun says nothing of the clouds.
        now.cloud = cloudFromShortwave(elevation, today.sun.distance, now.shortwave).value_or(kAsBefore);
    }
    return now;
}

void WeatherSeries::buildHours(const Pond& pond, const WeatherPlan& plan, int firstDay, int lastDay) {
    const auto& rows = pond.weather.hours;
    ensure(!rows.empty(), "an hourly weather file has rows");
    std::vector<Forcing> given;
    for (const WeatherHour& row : rows) {
        given.push_back(forcingOf(pond, row));
    }
    fillClouds(given);
    const int firstHour = static_cast<int>(std::floor(secondsOf(pond, rows.front().start) / kHour));
    // The hours of whole days before the one that is asked for, if there are enough.
    const int pastHours = plan.usualBeforeDay ? (*plan.usualBeforeDay - 1) * 24 - firstHour : 0;
    const bool isPast = pastHours >= 24.0 * kPastDays.value && pastHours <= static_cast<int>(given.size());
    const std::array<Forcing, 24> usual =
        isPast ? usualHours({given.begin(), given.begin() + pastHours}, firstHour)
               : usualHours(given, firstHour);
    for (int number = firstDay; number <= lastDay; ++number) {
        const bool held = plan.usualThroughout || (plan.usualAfterDay && number > *plan.usualAfterDay);
        bool missing = false;
        for (int h = 0; h < 24; ++h) {
            const int row = (number - 1) * 24 + h - firstHour;
            const bool inFile = row >= 0 && row < static_cast<int>(given.size());
            m_hours.push_back(inFile && !held ? given[row] : usual[h]);
            missing = missing || (!inFile && !held);
        }
        m_usualDays += missing && number >= 1 ? 1 : 0;
    }
}

}  // namespace engine
