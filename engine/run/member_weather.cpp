#include "engine/run/member_weather.h"

#include "engine/base/error.h"
#include "engine/base/units.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

namespace engine {
namespace {

// Design 2.1, after the errors of a point forecast (common practice, no source).
constexpr WeatherScatter kForecast{1.5, 0.30010459245033816, 0.20};  // the middle one is ln 1.35
constexpr int kGrownDay = 6;
constexpr double kCalm = 0.1;  // [m/s]; the logarithm of less says nothing

struct DayMean {
    double air = 0.0, logWind = 0.0, cloud = 0.0;
};

std::vector<DayMean> meansOfTable(const std::vector<WeatherDay>& days) {
    std::vector<DayMean> means;
    for (const WeatherDay& day : days) {
        means.push_back({0.5 * (*day.airMin + *day.airMax), std::log(std::max(day.wind->value, kCalm)),
                         0.01 * *day.cloud_percent});
    }
    return means;
}

/// Of the calendar days that the file holds in full. Where it has light and no clouds, clouds are taken from
/// how the day's light compares with the brightest day's, which has none.
std::vector<DayMean> meansOfHours(const Pond& pond) {
    struct Sums {
        int hours = 0;
        double air = 0.0, wind = 0.0, cloud = 0.0, light = 0.0;
    };
    std::map<int, Sums> sums;
    for (const WeatherHour& hour : pond.weather.hours) {
        Sums& day = sums[static_cast<int>(std::floor(secondsOf(pond, hour.start) / kDay))];
        ++day.hours;
        day.air += hour.air / 24.0;
        day.wind += hour.wind / 24.0;
        day.cloud += hour.cloud_percent.value_or(0.0) / 2400.0;
        day.light += hour.shortwave ? *hour.shortwave : hour.par_umolPerM2S.value_or(0.0);
    }
    double brightest = 0.0;
    for (const auto& [number, day] : sums) {
        brightest = std::max(brightest, day.light);
    }
    std::vector<DayMean> means;
    for (const auto& [number, day] : sums) {
        if (day.hours == 24) {
            const double cloud = brightest > 0.0
                                     ? std::clamp((1.0 - day.light / brightest) * 0.75 / 0.5, 0.0, 1.0)
                                     : day.cloud;
            means.push_back({day.air, std::log(std::max(day.wind, kCalm)), cloud});
        }
    }
    return means;
}

double deviation(const std::vector<DayMean>& days, double DayMean::*field) {
    if (days.size() < 2) {
        return 0.0;
    }
    double mean = 0.0, square = 0.0;
    for (const DayMean& day : days) {
        mean += day.*field / static_cast<double>(days.size());
    }
    for (const DayMean& day : days) {
        square += (day.*field - mean) * (day.*field - mean);
    }
    return std::sqrt(square / static_cast<double>(days.size() - 1));
}

}  // namespace

std::vector<WeatherScatter> weatherScatter(const Pond& pond, int firstDay, int lastDay) {
    ensure(lastDay >= firstDay, "weather spans at least a day");
    std::vector<WeatherScatter> out(static_cast<std::size_t>(lastDay - firstDay + 1));
    if (pond.weather.observed) {
        return out;
    }
    const std::vector<DayMean> days =
        pond.weather.days.empty() ? meansOfHours(pond) : meansOfTable(pond.weather.days);
    const WeatherScatter usual{std::max(kForecast.air, deviation(days, &DayMean::air)),
                               std::max(kForecast.logWind, deviation(days, &DayMean::logWind)),
                               std::max(kForecast.cloud, deviation(days, &DayMean::cloud))};
    for (int number = firstDay; number <= lastDay; ++number) {
        const double share = std::clamp((number - 1) / static_cast<double>(kGrownDay - 1), 0.0, 1.0);
        const auto between = [share](double from, double to) { return from + share * (to - from); };
        out[number - firstDay] = {between(kForecast.air, usual.air),
                                  between(kForecast.logWind, usual.logWind),
                                  between(kForecast.cloud, usual.cloud)};
    }
    return out;
}

std::vector<WeatherOffset> weatherOffsets(std::span<const WeatherScatter> scatter,
                                          std::span<const double> scores, double windFactor) {
    ensure(scores.size() == kWeatherScores * scatter.size(), "each day has a score for air, wind and cloud");
    const double news = std::sqrt(1.0 - kDayToDay * kDayToDay);
    std::vector<WeatherOffset> out;
    std::array<double, kWeatherScores> now{};
    for (std::size_t day = 0; day < scatter.size(); ++day) {
        for (int k = 0; k < kWeatherScores; ++k) {
            const double score = scores[kWeatherScores * day + k];
            now[k] = day == 0 ? score : kDayToDay * now[k] + news * score;
        }
        out.push_back({scatter[day].air * now[0], windFactor * std::exp(scatter[day].logWind * now[1]),
                       scatter[day].cloud * now[2]});
    }
    return out;
}

}  // namespace engine
