#include "engine/run/power_use.h"

#include "engine/base/units.h"
#include "engine/water/constants_exchange.h"

namespace engine {
namespace {

/// From one time of the day to another, which is of the next day if it is the earlier one [h].
double hoursBetween(double from, double until) {
    return (until > from ? until - from : until - from + kDay) / kHour;
}

}  // namespace

double powerOf_kW(const SurfaceAir& air) {
    return air.transfer * kHour / (kSurfaceAir_kgPerKWh.value * kGramPerKilogram);
}

std::optional<PowerUse> compressorUse(const PondModel& model, const RampRun& run) {
    if (!model.pond.aerator || !model.pond.aerator->power_kW || !(*model.pond.aerator->power_kW > 0.0)) {
        return std::nullopt;
    }
    const double power = *model.pond.aerator->power_kW;
    return PowerUse{power, run.energy_kWh / power};
}

std::optional<PowerUse> surfaceAirUse(const RampRun& run) {
    if (!(run.surfaceAir.transfer > 0.0)) {
        return std::nullopt;
    }
    return PowerUse{powerOf_kW(run.surfaceAir), static_cast<double>(run.days.size()) *
                                                    hoursBetween(run.surfaceAir.from, run.surfaceAir.until)};
}

std::optional<PowerUse> surfaceAeratorUse(const PondModel& model, const RampRun& run) {
    const auto& surface = model.pond.surfaceAerator;
    if (!surface || !surface->power_kW) {
        return std::nullopt;
    }
    const double from = surface->startTime ? surface->startTime->minutes * kMinute : 0.0,
                 until = surface->endTime ? surface->endTime->minutes * kMinute : from;
    return PowerUse{*surface->power_kW, static_cast<double>(run.days.size()) * hoursBetween(from, until)};
}

}  // namespace engine
