#include "engine/follow_up/incident.h"

#include "engine/base/units.h"
#include "engine/follow_up/constants_follow_up.h"
#include "engine/follow_up/morning.h"
#include "engine/pond/local_time.h"
#include "engine/water/constants_exchange.h"
#include "engine/water/layering.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace engine {
namespace {

constexpr int kRunDays = 3;

OptionOutcome outcomeOf(IncidentOption option, PondModel model, const SurfaceAerator& surface,
                        double transfer, const RunControl& control) {
    const bool withAir = option == IncidentOption::AirOn || option == IncidentOption::AirAndSurfaceAir;
    const bool withSurface =
        option == IncidentOption::SurfaceAir || option == IncidentOption::AirAndSurfaceAir;
    if (withSurface) {
        model.pond.surfaceAerator = surface;
        model.parameters.surface.aeratorTransfer = transfer;
    } else {
        model.pond.surfaceAerator.reset();
    }
    RunRequest request;
    request.days = kRunDays;
    request.keepLayers = false;
    request.schedule.emplace();
    if (withAir) {
        const Aerator& aerator = *model.pond.aerator;
        request.schedule->push_back({model.startTime, (kRunDays + 1) * kDay,
                                     static_cast<int>(aerator.diffusers->value), aerator.depth->value, 1});
    }
    const Ramp any;
    const RampRun run = runRamp(model, &any, request, {control.stop, nullptr});
    OptionOutcome out;
    out.option = option;
    out.lowest = 1e300;
    double lastBelow = -1.0;
    for (const HourRow& row : run.hours) {
        const double hours = (row.time - model.startTime) / kHour;
        out.hours.push_back(hours);
        out.fishWater.push_back(row.fishWater);
        out.lowest = hours <= kIncidentAhead_h.value ? std::min(out.lowest, row.fishWater) : out.lowest;
        lastBelow = hours <= kLongestRecovery_h.value && row.fishWater < model.parameters.thresholds.stress
                        ? hours
                        : lastBelow;
    }
    if (lastBelow <= kLongestRecovery_h.value - kStaysAbove_h.value) {
        const auto after = std::upper_bound(out.hours.begin(), out.hours.end(), lastBelow);
        out.recovery_h = after != out.hours.end() ? std::optional(*after) : std::nullopt;
    }
    return out;
}

}  // namespace

Incident judgeIncident(const Pond& pond, const TodayOptions& options, const RunControl& control) {
    Incident out;
    const std::optional<LocalTime> at = options.at ? options.at : lastEntry(pond);
    Pond known = at ? knownAt(pond, *at) : Pond{};
    const std::optional<Profile> profile =
        at ? presentProfile(known, readingsInForce(known), *at) : std::nullopt;
    if (!profile) {
        out.message =
            "An incident needs readings of temperature and oxygen at two or more depths within the last 3 h.";
        return out;
    }
    out.at = *at;
    out.pond = std::move(known);
    if (!hasWeather(out.pond)) {
        out.message = "Less than half a day of weather was known by then.";
        return out;
    }
    const PondModel before = prepare(out.pond, options.resolution);
    const Pond now = presentPond(out.pond, *profile);
    out.model = prepareUnbalanced(now, options.resolution);
    out.model.parameters.growth.factor = before.parameters.growth.factor;
    out.model.parameters.respiration.factor = before.parameters.respiration.factor;
    out.line = before.parameters.thresholds.stress;
    out.model.parameters.thresholds = before.parameters.thresholds;
    out.surface = profile->oxygen.front();
    out.bottom = profile->oxygen.back();
    out.difference = profile->temperature.front() - profile->temperature.back();
    out.state = presentState(out.difference, out.surface - out.bottom, profile->temperature.front());

    SurfaceAerator surface = pond.surfaceAerator.value_or(SurfaceAerator{});
    surface.existing = true;
    surface.startTime.reset();
    surface.endTime.reset();
    out.surfaceIsGuess = !pond.surfaceAerator;
    if (out.surfaceIsGuess) {
        surface.transfer_kgPerH = Quantity(kEmergency_kWPerHa.value * kSurfaceAir_kgPerKWh.value * 1e-4 *
                                           out.model.basin.area(0.0));
    }
    out.surfaceTransfer_kgPerH = *surface.transfer_kgPerH;
    Pond withSurface = now;
    withSurface.surfaceAerator = surface;
    const double transfer = centralParameters(withSurface, *profile).surface.aeratorTransfer;
    for (int i = 0; i < kIncidentOptions; ++i) {
        const auto option = static_cast<IncidentOption>(i);
        const bool withAir = option == IncidentOption::AirOn || option == IncidentOption::AirAndSurfaceAir;
        if (!withAir || pond.aerator) {
            out.options.push_back(outcomeOf(option, out.model, surface, transfer, control));
        }
    }
    if (control.stop.stop_requested()) {
        out.message = "The incident was stopped before it was judged.";
        return out;
    }
    out.isJudged = true;
    return out;
}

}  // namespace engine
