#include "engine/plan/surface_air_ramp.h"

#include "engine/base/units.h"
#include "engine/plan/constants_start.h"
#include "engine/plan/start_conditions.h"
#include "engine/ramps/hold_rules.h"
#include "engine/ramps/ramp_names.h"
#include "engine/ramps/weather.h"
#include "engine/run/air_days.h"
#include "engine/run/shares.h"
#include "engine/water/air_transfer.h"
#include "engine/water/constants_exchange.h"
#include "engine/water/priors.h"
#include "engine/water/water.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

constexpr std::string_view kWithSurfaceAir = " + surface air", kHoldDaysOut = ", no air on hold days";

}  // namespace

bool stepsOnHoldDay(const PondModel& model, const RampRun& run) {
    const std::vector<int> held = holdDays(model.pond);
    return std::any_of(held.begin(), held.end(), [&](int day) {
        return std::any_of(run.schedule.begin(), run.schedule.end(), [&](const RunBlock& block) {
            return block.day == day && liftsBottomWater(model, block.depth) && isStepUp(run, day);
        });
    });
}

Ramp withHoldDaysOut(const Pond& pond, std::size_t ramp) {
    Ramp out = pond.ramps[ramp];
    out.weatherHold = true;
    out.colour.reset();
    out.name = freeRampName(pond, out.name + std::string(kHoldDaysOut));
    return out;
}

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

Ramp withSurfaceAirOf(const PondModel& model, const Ramp& ramp, double power_kW) {
    Ramp out = ramp;
    out.surfaceAir_kW = Quantity(std::ceil(power_kW / kPowerStep_kW.value - 1e-9) * kPowerStep_kW.value);
    const WeatherSeries sun(model.pond, {true}, 0, 2);
    const double until_h = (sun.sunrise(1) / kHour) + kAfterSunrise_h.value;
    constexpr int kQuarter = 15;  // [min]
    const int until = static_cast<int>(std::ceil(until_h * 60.0 / kQuarter)) * kQuarter;
    out.surfaceAirWindow =
        ClockWindow{{static_cast<int>(kSurfaceAirFrom_h.value) * 60}, {until % kMinutesPerDay}};
    out.colour.reset();
    out.name = freeRampName(model.pond, ramp.name + std::string(kWithSurfaceAir));
    return out;
}

Ramp withSurfaceAir(const PondModel& model, const Ramp& ramp, int days, const std::stop_token& stop) {
    RunRequest request;
    request.days = days;
    request.keepLayers = false;
    const double refuge_kW = refugeAir_kW(model, runRamp(model, &ramp, request, {stop, {}}));
    for (const double times : {1.0, 1.5, 2.0, 3.0, kMostSurfaceAir.value}) {
        Ramp sized = withSurfaceAirOf(model, ramp, times * refuge_kW);
        const RampRun run = runRamp(model, &sized, request, {stop, {}});
        if (run.end == RunEnd::Completed && !haltedByMornings(model, run)) {
            return sized;
        }
    }
    return withSurfaceAirOf(model, ramp, refuge_kW);
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

std::string rampMadeOf(const Pond& pond, const std::string& name) {
    std::string out = name;
    for (const std::string_view suffix : {kWithSurfaceAir, kHoldDaysOut}) {
        const std::size_t end = out.rfind(suffix);
        if (!hasRamp(pond, out) && end != std::string::npos) {
            out.resize(end);
        }
    }
    return out;
}

}  // namespace engine
