#include "engine/plan/plan_weather.h"

#include "engine/base/parallel.h"
#include "engine/base/units.h"
#include "engine/plan/constants_plan.h"
#include "engine/ramps/weather.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

/// The mean of the table's days as a day of the table; humidity as such, dew point as such.
WeatherDay usualDay(const std::vector<WeatherDay>& days) {
    WeatherDay mean = days.front();
    const auto average = [&](MaybeQuantity WeatherDay::*field) {
        double sum = 0.0;
        int count = 0;
        for (const WeatherDay& day : days) {
            if (day.*field) {
                sum += (day.*field)->value;
                ++count;
            }
        }
        mean.*field = count > 0 ? MaybeQuantity(Quantity(sum / count)) : MaybeQuantity();
    };
    for (const auto field : {&WeatherDay::airMin, &WeatherDay::airMax, &WeatherDay::humidity_percent,
                             &WeatherDay::dewPoint, &WeatherDay::wind, &WeatherDay::cloud_percent}) {
        average(field);
    }
    if (mean.humidity_percent && mean.dewPoint) {
        mean.dewPoint.reset();
    }
    return mean;
}

bool isCalm(StressKind kind) {
    return kind != StressKind::ColdFront;
}

/// By which the air is warmer all day [K].
double warmer(StressKind kind) {
    return kind == StressKind::ColdFront   ? -kFrontCooler.value
           : kind == StressKind::DullSpell ? kDullSpellWarmer.value
                                           : 0.0;
}

void worsen(WeatherDay& day, StressKind kind) {
    const double more = warmer(kind);
    day.airMin = Quantity(day.airMin->value + more);
    day.airMax = Quantity(day.airMax->value + more);
    if (kind == StressKind::OvercastAndCalm) {
        day.airMax = Quantity(
            std::max(day.airMax->value - kOvercastCooler.value, day.airMin->value + kLeastSwing.value));
    }
    if (day.dewPoint) {
        day.dewPoint = Quantity(std::min(day.dewPoint->value, day.airMin->value));
    }
    if (isCalm(kind)) {
        day.cloud_percent = Quantity(std::max(day.cloud_percent->value, kOvercastCloud_percent.value));
        day.wind = Quantity(std::min(day.wind->value, kOvercastWind.value));
    } else {
        day.cloud_percent = Quantity(std::max(day.cloud_percent->value, kFrontCloud_percent.value));
        day.wind = Quantity(std::max(day.wind->value, kFrontWind.value));
    }
}

void worsen(WeatherHour& hour, StressKind kind) {
    const bool calm = isCalm(kind);
    hour.wind = calm ? std::min(hour.wind, kOvercastWind.value) : std::max(hour.wind, kFrontWind.value);
    hour.air += warmer(kind);
    const double light = calm ? kOvercastOverClear.value : kFrontLight.value;
    if (hour.dewPoint) {
        hour.dewPoint = std::min(*hour.dewPoint, hour.air);
    }
    if (hour.shortwave) {
        hour.shortwave = *hour.shortwave * light;
    }
    if (hour.par_umolPerM2S) {
        hour.par_umolPerM2S = *hour.par_umolPerM2S * light;
    }
    if (hour.cloud_percent) {
        hour.cloud_percent =
            std::max(*hour.cloud_percent, calm ? kOvercastCloud_percent.value : kFrontCloud_percent.value);
    }
}

/// Days of worse weather in a row.
int daysOf(StressKind kind) {
    return kind == StressKind::DullSpell ? static_cast<int>(kDullSpellDays.value) : 1;
}

/// A run's air under worse weather to the end of a night, and do-nothing where it is asked for.
StressCase underWorse(const PondModel& model, const RampRun& run, StressKind kind, int day, int lastNight,
                      bool withNothing, const std::stop_token& stop) {
    StressCase out;
    out.kind = kind;
    out.day = day;
    PondModel worse = model;
    worse.pond = withWorseWeather(model.pond, kind, day, static_cast<int>(run.days.size()));
    RunRequest request;
    request.days = static_cast<int>(run.days.size());
    request.keepLayers = false;
    request.stopAfterNight = lastNight;
    std::optional<RampRun> nothing;
    if (withNothing) {
        nothing = runRamp(worse, nullptr, request, {stop, {}});
    }
    Ramp any;
    any.name = run.name;
    request.schedule = run.schedule;
    request.surfaceAir = run.surfaceAir;
    const RampRun aired = runRamp(worse, &any, request, {stop, {}});
    if (aired.end == RunEnd::Completed && (!nothing || nothing->end == RunEnd::Completed)) {
        const auto worst =
            std::min_element(aired.days.begin(), aired.days.begin() + lastNight,
                             [](const DayRow& a, const DayRow& b) { return a.lowest < b.lowest; });
        out.lowest = worst->lowest;
        out.worstNight = worst->day;
        out.nothing = nothing ? nothing->days[static_cast<std::size_t>(worst->day - 1)].lowest : 0.0;
    }
    return out;
}

bool isLower(const StressCase& a, const StressCase& b) {
    return a.lowest < b.lowest;
}

}  // namespace

Pond withWorseWeather(const Pond& pond, StressKind kind, int day, int runDays) {
    const auto isWorse = [&](int one) { return one >= day && one < day + daysOf(kind); };
    Pond out = pond;
    for (WeatherHour& hour : out.weather.hours) {
        if (isWorse(static_cast<int>(std::floor(secondsOf(pond, hour.start) / kDay)) + 1)) {
            worsen(hour, kind);
        }
    }
    std::vector<WeatherDay>& days = out.weather.days;
    if (days.empty()) {
        return out;
    }
    WeatherDay usual = usualDay(days);
    for (int next = dayNumber(pond, days.back().date) + 1; next <= runDays + 1; ++next) {
        usual.date = dateOfDay(pond, next);
        days.push_back(usual);
    }
    for (WeatherDay& one : days) {
        if (isWorse(dayNumber(pond, one.date))) {
            worsen(one, kind);
        }
    }
    return out;
}

std::vector<StressCase> stressTest(const PondModel& model, const RampRun& run, int threads,
                                   const std::stop_token& stop) {
    const int days = static_cast<int>(run.days.size());
    std::vector<StressCase> cases(2 * run.days.size());
    static_cast<void>(forEachIndex(cases.size(), threads, stop, [&](std::size_t i) {
        const StressKind kind = i % 2 == 0 ? StressKind::OvercastAndCalm : StressKind::ColdFront;
        cases[i] = underWorse(model, run, kind, static_cast<int>(i / 2) + 1, days, true, stop);
    }));
    std::stable_sort(cases.begin(), cases.end(), isLower);
    return cases;
}

std::optional<StressCase> weakestMoment(const PondModel& model, const RampRun& run, int threads,
                                        const std::stop_token& stop) {
    const int days = static_cast<int>(run.days.size());
    const int spell = daysOf(StressKind::DullSpell), last = days - spell + 1;
    if (last < 1 || (model.pond.weather.days.empty() && model.pond.weather.hours.empty())) {
        return std::nullopt;
    }
    std::vector<StressCase> cases(static_cast<std::size_t>(last));
    static_cast<void>(forEachIndex(cases.size(), threads, stop, [&](std::size_t i) {
        const int day = static_cast<int>(i) + 1;
        const int night = std::min(day + spell - 1 + static_cast<int>(kAfterDullSpell.value), days);
        cases[i] = underWorse(model, run, StressKind::DullSpell, day, night, false, stop);
    }));
    const StressCase& least = *std::min_element(cases.begin(), cases.end(), isLower);
    const StressCase out = underWorse(model, run, StressKind::DullSpell, least.day, days, true, stop);
    return out.worstNight > 0 ? std::optional(out) : std::nullopt;
}

}  // namespace engine
