#include "engine/run/backdrop.h"

#include "engine/base/units.h"
#include "engine/pond/local_time.h"
#include "engine/run/constants_run.h"
#include "engine/water/sky.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

NightSky nightSky(const Pond& pond, int night) {
    const auto passing = [&](int day, double height_deg) {
        return sunTimes(*pond.place.latitude_deg, *pond.place.longitude_deg, *pond.place.utcOffset_h,
                        dayOfYear(dateOfDay(pond, day)), height_deg);
    };
    const auto evening = [&](double height_deg) -> std::optional<double> {
        const auto set = passing(night, height_deg).set_h;
        return set ? std::optional((night - 1) * kDay + *set * kHour) : std::nullopt;
    };
    const auto morning = [&](double height_deg) -> std::optional<double> {
        const auto rise = passing(night + 1, height_deg).rise_h;
        return rise ? std::optional(night * kDay + *rise * kHour) : std::nullopt;
    };
    return {night,
            evening(kSunriseHeight_deg.value),
            evening(kCivilHeight_deg.value),
            evening(kNauticalHeight_deg.value),
            morning(kNauticalHeight_deg.value),
            morning(kCivilHeight_deg.value),
            morning(kSunriseHeight_deg.value)};
}

int lastWeatherDay(const Pond& pond, int days) {
    const Weather& weather = pond.weather;
    if (weather.days.empty() && weather.hours.empty()) {
        return 0;
    }
    const Date last = weather.days.empty()
                          ? Date(std::chrono::floor<std::chrono::days>(weather.hours.back().start))
                          : weather.days.back().date;
    return std::clamp(dayNumber(pond, last), 0, days);
}

}  // namespace

Backdrop backdropOf(const PondModel& model, int days) {
    Backdrop backdrop;
    for (int night = 1; night <= days; ++night) {
        backdrop.nights.push_back(nightSky(model.pond, night));
    }
    const double end = days * kDay + kDay / 2;
    const int firstDay = static_cast<int>(std::floor(model.startTime / kDay));
    const WeatherSeries weather(model.pond, {}, firstDay, days + 1);
    for (double time = std::floor(model.startTime / kHour) * kHour; time < end; time += kHour) {
        const Forcing air = weather.at(time + 0.5 * kHour);
        backdrop.hours.push_back({time, air.air, air.wind10, air.cloud, air.shortwave});
    }
    backdrop.lastWeatherDay = lastWeatherDay(model.pond, days);
    return backdrop;
}

}  // namespace engine
