#include "engine/plan/plan_season.h"

#include "engine/base/parallel.h"
#include "engine/plan/constants_plan.h"
#include "engine/plan/plan_members.h"

#include <algorithm>

namespace engine {
namespace {

constexpr int kRunDays = 14;

Pond inMonth(const Pond& pond, const ClimateMonth& month) {
    Pond out = pond;
    const auto year = pond.place.firstDay->year();
    out.place.firstDay = year / std::chrono::month(static_cast<unsigned>(month.month->value)) / 15;
    out.profile.reset();
    out.readings.clear();
    out.fileReadings.clear();
    out.water.changes.clear();
    out.weather = {};
    WeatherDay day;
    day.date = *out.place.firstDay;
    day.airMin = month.airMin;
    day.airMax = month.airMax;
    day.humidity_percent = month.humidity_percent;
    day.dewPoint = month.dewPoint;
    day.wind = month.wind;
    day.cloud_percent = month.cloud_percent;
    out.weather.days = {day};
    return out;
}

}  // namespace

std::vector<MonthStart> harmlessMonths(const PondModel& model, int threads, const std::stop_token& stop) {
    std::vector<MonthStart> months;
    std::vector<const ClimateMonth*> used;
    for (const ClimateMonth& month : model.pond.climate.months) {
        if (0.5 * (month.airMin->value + month.airMax->value) >= 0.0) {
            used.push_back(&month);
            months.push_back({static_cast<int>(month.month->value), 0.0, 0.0, false});
        }
    }
    static_cast<void>(forEachIndex(months.size(), threads, stop, [&](std::size_t i) {
        const PondModel there = prepare(inMonth(model.pond, *used[i]), model.resolution);
        RunRequest request;
        request.days = kRunDays;
        request.keepLayers = false;
        Ramp atOnce;
        atOnce.name = kPlannedRamp;
        const RampRun nothing = runRamp(there, nullptr, request, {stop, {}});
        const RampRun run = runRamp(there, &atOnce, request, {stop, {}});
        MonthStart& month = months[i];
        month.lowest = run.worst().lowest;
        month.nothing = nothing.worst().lowest;
        month.isHarmless = month.lowest >= model.parameters.thresholds.stress ||
                           (month.nothing < model.parameters.thresholds.stress &&
                            month.lowest >= month.nothing - kNoWorse.value);
    }));
    return months;
}

}  // namespace engine
