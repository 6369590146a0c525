#include "engine/run/power_use.h"

#include "engine/base/units.h"
#include "engine/run/air_clock.h"
#include "tests/made_up_comparison.h"

#include <gtest/gtest.h>

namespace engine {
namespace {

/// Hours in which a clock lets surface air run from the first noon to the last, minute by minute.
double hoursByClock(const PondModel& model, const Ramp& ramp, int days) {
    RunRequest request;
    request.days = days;
    const AirClock clock(model, &ramp, request, days * kDay + kDay / 2);
    int minutes = 0;
    for (double time = kDay / 2; time < days * kDay + kDay / 2; time += kMinute) {
        minutes += clock.at(time).surfaceTransfer > 0.0 ? 1 : 0;
    }
    return minutes / 60.0;
}

TEST(PowerUse, OfSurfaceAirIsItsPowerTimesTheHoursThatItRuns) {
    const Comparison comparison = test::madeUpComparison();
    Ramp ramp = comparison.model.pond.ramps.front();
    ramp.surfaceAir_kW = Quantity(2.5);
    // By default, into the morning, and over noon.
    for (const auto& window :
         {std::optional<ClockWindow>(), std::optional(ClockWindow{{21 * 60}, {9 * 60 + 30}}),
          std::optional(ClockWindow{{9 * 60}, {14 * 60}})}) {
        ramp.surfaceAirWindow = window;
        RampRun run = comparison.runs[1];
        run.surfaceAir = surfaceAirOf(ramp);
        const auto use = surfaceAirUse(run);
        ASSERT_TRUE(use);
        EXPECT_NEAR(use->power_kW, 2.5, 1e-12);
        EXPECT_NEAR(use->hours, hoursByClock(comparison.model, ramp, comparison.days), 1e-9);
        EXPECT_NEAR(use->energy_kWh(), 2.5 * use->hours, 1e-9);
    }
    EXPECT_FALSE(surfaceAirUse(comparison.runs[1])) << "a ramp without surface air";
}

TEST(PowerUse, OfTheCompressorIsTheEnergyOfTheRun) {
    Comparison comparison = test::madeUpComparison();
    comparison.model.pond.aerator->power_kW = Quantity(0.5);
    const auto use = compressorUse(comparison.model, comparison.runs[1]);
    ASSERT_TRUE(use);
    EXPECT_DOUBLE_EQ(use->energy_kWh(), comparison.runs[1].energy_kWh);
    EXPECT_DOUBLE_EQ(use->hours, comparison.runs[1].energy_kWh / 0.5);
    comparison.model.pond.aerator->power_kW.reset();
    EXPECT_FALSE(compressorUse(comparison.model, comparison.runs[1]));
}

TEST(PowerUse, OfThePondsOwnSurfaceAeratorGoesByItsClock) {
    Comparison comparison = test::madeUpComparison();
    EXPECT_FALSE(surfaceAeratorUse(comparison.model, comparison.runs[1]));
    SurfaceAerator surface;
    comparison.model.pond.surfaceAerator = surface;
    EXPECT_FALSE(surfaceAeratorUse(comparison.model, comparison.runs[1])) << "its power is not given";
    comparison.model.pond.surfaceAerator->power_kW = Quantity(1.5);
    EXPECT_DOUBLE_EQ(surfaceAeratorUse(comparison.model, comparison.runs[1])->hours, 48.0) << "always on";
    comparison.model.pond.surfaceAerator->startTime = ClockTime{20 * 60};
    comparison.model.pond.surfaceAerator->endTime = ClockTime{8 * 60};
    EXPECT_DOUBLE_EQ(surfaceAeratorUse(comparison.model, comparison.runs[1])->energy_kWh(), 36.0);
}

}  // namespace
}  // namespace engine
