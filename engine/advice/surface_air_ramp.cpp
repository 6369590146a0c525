#include "engine/advice/surface_air_ramp.h"

#include "engine/advice/constants_advice.h"
#include "engine/base/units.h"
#include "engine/ramps/weather.h"
#include "engine/water/air_transfer.h"
#include "engine/water/constants_exchange.h"
#include "engine/water/priors.h"
#include "engine/water/water.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

constexpr std::string_view kWithSurfaceAir = " + surface air";

bool hasRamp(const Pond& pond, std::string_view name) {
    return std::any_of(pond.ramps.begin(), pond.ramps.end(),
                       [&](const Ramp& one) { return one.name == name; });
}

}  // namespace

double refugeAir_kW(const PondModel& model, const RampRun& run) {
    const DayRow& worst = run.worst();
    const OxygenThresholds& thresholds = model.parameters.thresholds;
    double demand = 0.0;  // of the whole pond [kg/h]
    for (const BudgetRow& row : run.budget) {
        if (row.day == worst.day) {
            for (const int term : {kRespiration, kFishTerm, kSediment, kDebtTerm}) {
                demand -= row.terms[static_cast<std::size_t>(term)] / kGramPerKilogram / 24.0;
            }
        }
    }
    const double refuge = thresholds.fishShare * model.basin.volume();
    const double deficit = std::max(thresholds.stress - worst.lowest, 0.0) * refuge / kGramPerKilogram;
    const double need = std::max(demand, 0.0) * thresholds.fishShare + deficit / kRefuge_h.value;
    const double surface = model.profile.temperature.front();
    const double salinity = model.profile.salinity.empty() ? 0.0 : model.profile.salinity.front();
    const double saturation = oxygenSaturation(
        std::clamp(surface, 0.0, 40.0), std::clamp(salinity, 0.0, 42.0), model.parameters.site.airPressure);
    const double target = transferTarget(saturation, kAeratorBeta.value);
    const double field = transferRate(1.0, surface, kAeratorAlpha.value, kStandardSaturation.value) *
                         std::max(target - thresholds.stress, 0.1 * target);
    const double power = need / (kSurfaceAir_kgPerKWh.value * field);
    return std::max(std::ceil(power / kPowerStep_kW.value - 1e-9), 1.0) * kPowerStep_kW.value;
}

Ramp withSurfaceAir(const Comparison& comparison, const Advice& advice) {
    const PondModel& model = comparison.model;
    Ramp ramp = model.pond.ramps[advice.run - 1];
    ramp.surfaceAir_kW = Quantity(refugeAir_kW(model, comparison.runs[advice.run]));
    const WeatherSeries sun(model.pond, {true}, 0, 2);
    const double until_h = (sun.sunrise(1) / kHour) + kAfterSunrise_h.value;
    constexpr int kQuarter = 15;  // [min]
    const int until = static_cast<int>(std::ceil(until_h * 60.0 / kQuarter)) * kQuarter;
    ramp.surfaceAirWindow =
        ClockWindow{{static_cast<int>(kSurfaceAirFrom_h.value) * 60}, {until % kMinutesPerDay}};
    ramp.colour.reset();
    const std::string wanted = ramp.name + std::string(kWithSurfaceAir);
    ramp.name = wanted;
    for (int number = 2; hasRamp(model.pond, ramp.name); ++number) {
        ramp.name = wanted + " " + std::to_string(number);
    }
    return ramp;
}

std::optional<double> worstWithoutAir(const Comparison& comparison, std::size_t run) {
    Ramp bare = comparison.model.pond.ramps[run - 1];
    bare.surfaceAir_kW.reset();
    bare.surfaceAirWindow.reset();
    for (std::size_t i = 1; i < comparison.runs.size(); ++i) {
        const Ramp& other = comparison.model.pond.ramps[i - 1];
        bare.name = other.name;
        bare.colour = other.colour;
        if (i != run && bare == other) {
            return comparison.runs[i].worst().lowest;
        }
    }
    return {};
}

std::string rampWithoutSurfaceAir(const Pond& pond, const std::string& name) {
    const std::size_t end = name.rfind(kWithSurfaceAir);
    return hasRamp(pond, name) || end == std::string::npos ? name : name.substr(0, end);
}

}  // namespace engine
