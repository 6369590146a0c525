#include "engine/base/units.h"
#include "engine/column/column.h"
#include "engine/water/water.h"
#include "tests/support/columns.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <string>
#include <vector>

// Plume and transport together against the energy that they have to raise: a pond of an acre and 3 m, 1.5 m
// of 28 degC over 1.5 m of 20 degC, one diffuser of 1 L/s on the bottom.

namespace {

using namespace engine;

constexpr double kAcre = 4046.86;  // [m^2]
constexpr double kPondDepth = 3.0;
constexpr double kAir = 1e-3;  // [m^3/s], free

/// Potential energy that the water has gained on its way to one density, per area [J/m^2]; 0 when it is
/// there.
double energyShort(const Grid& grid, const std::vector<double>& temperature) {
    double energy = 0.0;
    for (int i = 0; i < grid.layers(); ++i) {
        energy += kGravity * waterDensity(temperature[i], 0.0) * grid.volume[i] *
                  (grid.middle[i] - 0.5 * kPondDepth) / grid.faceArea[0];
    }
    return energy;
}

StartState<double> twoLayers(const Grid& grid) {
    StartState<double> start;
    for (const double z : grid.middle) {
        start.temperature.push_back(z < 0.5 * kPondDepth ? 28.0 : 20.0);
    }
    start.salinity.assign(grid.middle.size(), 0.0);
    start.oxygen.assign(grid.middle.size(), 8.0);
    start.chlorophyll = start.fast = start.medium = start.slow = start.salinity;
    start.sulfide = start.salinity;
    return start;
}

// g times density difference times h1 h2 / 2 = 21.8 J/m^2 by a separate script (density of Tanaka 2001).
// Tolerance 0.1: its last digit, and 0.1 % for our other density and gravity.
TEST(Destratification, EnergyToMix) {
    const Grid grid = test::evenTank(40, kPondDepth, kAcre);
    EXPECT_NEAR(energyShort(grid, twoLayers(grid).temperature), 21.8, 0.1);
}

// Isothermal work of 1 L/s of free air from 3 m: 25.8 W by the same script. Tolerance: its last digit.
double airPower() {
    return kStandardPressure * kAir * std::log(1.0 + 998.2 * kGravity * kPondDepth / kStandardPressure);
}
TEST(Destratification, WorkOfTheAir) {
    EXPECT_NEAR(airPower(), 25.8, 0.05);
}

// The share of the air's work that the water gains until nine tenths of the energy are raised, without wind,
// sun or cooling. Schladow (1993), J. Hydraul. Eng. 119:350-368, gives peaks of 5 to 12 % (from memory) for
// plumes tuned to their reservoir. Taken: 1 to 20 %. More than 20 % would raise more than any published
// plume; a pond's plume is short and surfaces with much of its work left, and half of what it draws in is
// drawn in again at once (the program's net share), so that a few per cent are likely, but under 1 % it would
// hardly mix a pond in the days that the trade sees.
TEST(Destratification, EfficiencyOfTheAirIsThatOfPlumes) {
    const Grid grid = test::evenTank(40, kPondDepth, kAcre);
    Parameters<double> parameters;
    parameters.site.latitude_deg = 36.0;
    AeratorSetup aerator;
    aerator.diffusers = 1;
    aerator.freeAir = kAir;
    ColumnSwitches switches;
    switches.heat = false;
    switches.mixing = false;
    Column<double> column(grid, parameters, aerator, BottomWater{}, twoLayers(grid), switches);
    const double before = energyShort(grid, column.temperatures(0));
    double time = 0.0, halfTime = 0.0, energy = before;
    while (energy > 0.1 * before && time < 20.0 * kDay) {
        column.step(300.0, Air<double>{}, Aeration{1, kPondDepth});
        time += 300.0;
        energy = energyShort(grid, column.temperatures(0));
        halfTime = energy > 0.5 * before ? time : halfTime;
    }
    const double efficiency = (before - energy) * kAcre / (airPower() * time);
    std::printf(
        "An acre of 3 m: half of the energy is raised in %.1f h (%.1f %% of the work of the air), nine "
        "tenths in "
        "%.1f h (%.1f %%).\n",
        halfTime / kHour, 50.0 * before * kAcre / (airPower() * halfTime), time / kHour, 100.0 * efficiency);
    RecordProperty("hours", std::to_string(time / kHour));
    RecordProperty("efficiency", std::to_string(efficiency));
    EXPECT_GE(efficiency, 0.01);
    EXPECT_LE(efficiency, 0.20);
}

}  // namespace
