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

void worsen(WeatherDay& day, StressKind kind) {
    if (kind == StressKind::OvercastAndCalm) {
        day.airMax = Quantity(
            std::max(day.airMax->value - kOvercastCooler.value, day.airMin->value + kLeastSwing.value));
        day.cloud_percent = Quantity(std::max(day.cloud_percent->value, kOvercastCloud_percent.value));
        day.wind = Quantity(std::min(day.wind->value, kOvercastWind.value));
    } else {
        day.airMin = Quantity(day.airMin->value - kFrontCooler.value);
        day.airMax = Quantity(day.airMax->value - kFrontCooler.value);
        if (day.dewPoint) {
            day.dewPoint = Quantity(std::min(day.dewPoint->value, day.airMin->value));
        }
        day.cloud_percent = Quantity(std::max(day.cloud_percent->value, kFrontCloud_percent.value));
        day.wind = Quantity(std::max(day.wind->value, kFrontWind.value));
    }
}

void worsen(WeatherHour& hour, StressKind kind) {
    const bool isCalm = kind == StressKind::OvercastAndCalm;
    hour.wind = isCalm ? std::min(hour.wind, kOvercastWind.value) : std::max(hour.wind, kFrontWind.value);
    hour.air -= isCalm ? 0.0 : kFrontCooler.value;
    const double light = isCalm ? kOvercastOverClear.value : kFrontLight.value;
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
            std::max(*hour.cloud_percent, isCalm ? kOvercastCloud_percent.value : kFrontCloud_percent.value);
    }
}

}  // namespace

Pond withWorseDay(const Pond& pond, StressKind kind, int day, int runDays) {
    Pond out = pond;
    for (WeatherHour& hour : out.weather.hours) {
        if (static_cast<int>(std::floor(secondsOf(pond, hour.start) / kDay)) + 1 == day) {
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
        if (dayNumber(pond, one.date) == day) {
            worsen(one, kind);
        }
    }
    return out;
}

std::vector<StressCase> stressTest(const PondModel& model, const Schedule& schedule, int days, int threads,
                                   const std::stop_token& stop) {
    std::vector<StressCase> cases(2 * static_cast<std::size_t>(days));
    const Ramp any = [&] {
        Ramp ramp;
        ramp.name = kPlannedRamp;
        return ramp;
    }();
    static_cast<void>(forEachIndex(cases.size(), threads, stop, [&](std::size_t i) {
        StressCase& one = cases[i];
        one.kind = i % 2 == 0 ? StressKind::OvercastAndCalm : StressKind::ColdFront;
        one.day = static_cast<int>(i / 2) + 1;
        PondModel worse = model;
        worse.pond = withWorseDay(model.pond, one.kind, one.day, days);
        RunRequest request;
        request.days = days;
        request.keepLayers = false;
        const RampRun nothing = runRamp(worse, nullptr, request, {stop, {}});
        request.schedule = schedule;
        const RampRun run = runRamp(worse, &any, request, {stop, {}});
        if (run.end == RunEnd::Completed && nothing.end == RunEnd::Completed) {
            one.lowest = run.worst().lowest;
            one.worstNight = run.worst().day;
            one.nothing = nothing.days[static_cast<std::size_t>(one.worstNight - 1)].lowest;
        }
    }));
    std::stable_sort(cases.begin(), cases.end(),
                     [](const StressCase& a, const StressCase& b) { return a.lowest < b.lowest; });
    return cases;
}

}  // namespace engine
