#include "tests/property/measured_ponds.h"

#include "engine/base/text.h"
#include "engine/pond/local_time.h"
#include "engine/water/basin.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

namespace engine::test {
namespace {

using namespace std::chrono;

constexpr days kBefore{10}, kWeek{7};
constexpr double kLoggerDepth = 0.5;  // [m]
constexpr double kCastOffset = 0.3;   // [m] by which the scale of the casts reads too shallow

/// Without drops of more than 2 mg/L from one reading to the next, which are the sensor's.
std::vector<Reading> loggerOf(const std::filesystem::path& file) {
    constexpr double kStep = 2.0;  // [g/m^3]
    std::vector<Reading> readings;
    double last = 1e9;
    for (const TrialRow& row : trialRows(file)) {
        const auto oxygen = toNumber(row.at("oxygen_mg_per_l")), warm = toNumber(row.at("temperature_c"));
        if (!oxygen || !warm) {
            continue;
        }
        const bool isFault = last < 1e9 && *oxygen < last - kStep;
        last = *oxygen;
        if (!isFault) {
            Reading& reading = readings.emplace_back();
            reading.at = timeOf(row, "at");
            reading.depth = Quantity(kLoggerDepth);
            reading.temperature = Quantity(*warm);
            reading.oxygen = Quantity(*oxygen);
        }
    }
    return readings;
}

/// A cast goes on into the next minute or two.
std::map<LocalTime, Profile> castsOf(const std::filesystem::path& file) {
    constexpr minutes kLongest{5};
    std::map<LocalTime, Profile> casts;
    for (const TrialRow& row : trialRows(file)) {
        const LocalTime at = timeOf(row, "at");
        const auto oxygen = toNumber(row.at("oxygen_mg_per_l")), warm = toNumber(row.at("temperature_c"));
        if (!oxygen || !warm) {
            continue;
        }
        if (casts.empty() || at - casts.rbegin()->first > kLongest) {
            casts[at].at = at;
        }
        Profile& cast = casts.rbegin()->second;
        const double depth = numberOf(row, "depth_m") == 0.0 ? 0.0 : numberOf(row, "depth_m") + kCastOffset;
        if (cast.depth.empty() || depth > cast.depth.back()) {
            cast.depth.push_back(depth);
            cast.temperature.push_back(*warm);
            cast.oxygen.push_back(*oxygen);
        }
    }
    return casts;
}

/// The loggers drift away from the casts, by up to 4 mg/L in August. Each of their readings is brought to the
/// casts by the median difference of the casts within a week before or after it.
void bringToCasts(std::vector<Reading>& logger, const std::map<LocalTime, Profile>& casts) {
    constexpr minutes kNear{30};
    std::map<LocalTime, double> above;
    for (const auto& [at, cast] : casts) {
        const auto near =
            std::lower_bound(logger.begin(), logger.end(), at,
                             [](const Reading& reading, LocalTime time) { return *reading.at < time; });
        if (near != logger.end() && *near->at - at < kNear) {
            above[at] = *near->oxygen - interpolate(cast.depth, cast.oxygen, kLoggerDepth);
        }
    }
    for (Reading& reading : logger) {
        std::vector<double> some;
        for (auto it = above.lower_bound(*reading.at - kWeek);
             it != above.end() && it->first <= *reading.at + kWeek; ++it) {
            some.push_back(it->second);
        }
        if (!some.empty()) {
            const auto middle = some.begin() + std::ssize(some) / 2;
            std::nth_element(some.begin(), middle, some.end());
            reading.oxygen = Quantity(std::max(*reading.oxygen - *middle, 0.0));
        }
    }
}

/// The air over each hour of the mast, as readSmallPond says.
std::vector<WeatherHour> hoursOf(const std::filesystem::path& file, const std::vector<Reading>& logger) {
    std::map<local_days, std::pair<double, int>> water;
    for (const Reading& reading : logger) {
        auto& [sum, count] = water[floor<days>(*reading.at)];
        sum += *reading.temperature;
        ++count;
    }
    std::vector<WeatherHour> hours;
    for (const TrialRow& row : trialRows(file)) {
        WeatherHour hour;
        hour.start = timeOf(row, "hour_beginning");
        const local_days day = floor<days>(hour.start);
        const auto wind = toNumber(row.at("wind_at_4m_m_per_s")),
                   light = toNumber(row.at("par_umol_per_m2_s"));
        const auto found = water.find(day);
        if (!wind || !light || found == water.end()) {
            continue;
        }
        const double clock_h = duration<double, std::ratio<3600>>(hour.start - day).count() + 0.5;
        hour.air = found->second.first / found->second.second - 2.6 +
                   4.5 * std::cos((clock_h - 15.0) / 12.0 * std::numbers::pi);
        hour.humidity_percent = 75.0;
        hour.wind = *wind;
        hour.par_umolPerM2S = *light;
        hours.push_back(hour);
    }
    return hours;
}

}  // namespace

SmallPond readSmallPond(const std::filesystem::path& data, char name) {
    const std::string small(1, static_cast<char>(name - 'A' + 'a'));
    const std::filesystem::path folder = data / "ponds-2020";
    SmallPond out;
    out.name = name;
    for (const TrialRow& row : trialRows(data / "pond-c" / "contours.csv")) {
        out.contours.push_back({numberOf(row, "depth_m"), numberOf(row, "area_m2")});
    }
    out.logger = loggerOf(folder / ("readings-" + small + ".csv"));
    out.casts = castsOf(folder / ("casts-" + small + ".csv"));
    bringToCasts(out.logger, out.casts);
    out.hours = hoursOf(folder / "site.csv", out.logger);
    for (const TrialRow& row : trialRows(folder / "field.csv")) {
        if (const auto depth = toNumber(row.at("secchi_m"));
            depth && row.at("pond") == std::string(1, name)) {
            out.secchi[local_days(*parseDate(row.at("day")))] = *depth;
        }
    }
    return out;
}

Pond smallPondAt(const SmallPond& water, const Profile& cast, int ahead, bool withLogger) {
    const local_days day = floor<days>(*cast.at);
    Pond pond;
    pond.title = "a measured pond";
    pond.place = {42.11, -93.58, 315.0, {}, Date(day), -5.0, 1.0, {}};
    pond.basin.contours = water.contours;
    double sum = 0.0, count = 0.0;
    for (const auto& [when, depth] : water.secchi) {
        if (when <= day && when > day - kWeek) {
            sum += depth;
            count += 1.0;
        }
    }
    pond.water.secchi = Quantity(sum / count);
    if (water.name == 'C') {
        pond.water.weedsCover_percent = Quantity(50.0);  // plants below water dominate; how many is a guess
    }
    pond.profile = cast;
    pond.weather.file = "weather.csv";
    pond.weather.stamp = HourStamp::Start;
    pond.weather.observed = true;
    pond.weather.windHeight = 4.0;
    const LocalTime from(day - kBefore), until = LocalTime(day) + days(ahead + 1);
    std::copy_if(water.hours.begin(), water.hours.end(), std::back_inserter(pond.weather.hours),
                 [&](const WeatherHour& hour) { return hour.start >= from && hour.start < until; });
    if (withLogger) {
        std::copy_if(water.logger.begin(), water.logger.end(), std::back_inserter(pond.readings),
                     [&](const Reading& reading) { return *reading.at >= from && *reading.at <= *cast.at; });
    }
    return pond;
}

}  // namespace engine::test
