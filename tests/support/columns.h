#pragma once

#include "engine/base/units.h"
#include "engine/column/column.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace engine::test {

/// A tank of equal layers with upright walls.
inline Grid evenTank(int layers, double depth, double area) {
    Grid grid;
    for (int i = 0; i <= layers; ++i) {
        grid.face.push_back(depth * i / layers);
        grid.faceArea.push_back(area);
        grid.distance.push_back(depth / layers);
    }
    for (int i = 0; i < layers; ++i) {
        grid.middle.push_back(0.5 * (grid.face[i] + grid.face[i + 1]));
        grid.thickness.push_back(depth / layers);
        grid.volume.push_back(area * depth / layers);
        grid.bottomArea.push_back(i + 1 < layers ? 0.0 : area);
    }
    return grid;
}

/// What a smooth, stratified, mucky pond needs for a column: 3.4 m deep, 8000 m^2.
struct MuckyPond {
    Grid grid;
    Parameters<double> parameters;
    AeratorSetup aerator{2, fromLitrePerMinute(45.0), 3e-3};
    BottomWater bottom;
    StartState<double> start;

    explicit MuckyPond(int layers)
        : grid(makeGrid(shape(), layers, 3.0, {}, {})),
          bottom{BottomWater::Cause::Density, 1.6, shape().volumeBelow(1.6)} {
        Parameters<double>& p = parameters;
        p.site.airPressure = 99.9e3;
        p.site.latitude_deg = 36.0;
        p.light.attenuationRest = 2.2;
        p.growth.rate = fromPerHour(0.008);
        p.weeds.mass = 20.0;
        p.weeds.cover = 0.1;
        p.weeds.photosynthesis = fromPerHour(0.004);
        p.weeds.respiration = fromPerHour(0.0008);
        p.respiration.base = fromPerHour(0.04);
        p.respiration.perChlorophyll = fromPerHour(0.0014);
        p.fish.stock = 360.0;
        p.sediment.demand = fromPerDay(2.5);
        p.muck.store = 480.0;
        for (const double z : grid.middle) {
            const double below = 0.5 + 0.5 * std::tanh((z - 1.6) / 0.4);
            start.temperature.push_back(28.0 - 8.0 * below);
            start.salinity.push_back(0.1);
            start.oxygen.push_back(8.0 - 7.9 * below);
            start.chlorophyll.push_back(70.0 - 45.0 * below);
            start.fast.push_back(7.7 * below);
            start.medium.push_back(6.3 * below);
            start.slow.push_back(3.5 * below);
            start.sulfide.push_back(1.5 * below);
        }
    }
    static Basin shape() { return Basin(BasinShape{{8000.0}, {3.4}, {1.7}, {}}); }
};

/// A fair afternoon.
inline Air<double> fairAfternoon() {
    return {500.0, 30.0, 2400.0, 1.5, 0.2};
}

/// Prescribed mixing and a plume that stays as it starts, for a right-hand side without jumps.
inline ColumnSwitches smoothSwitches() {
    ColumnSwitches switches;
    switches.heat = false;
    switches.freezePlume = true;
    switches.fixedDiffusivity = 1e-5;
    return switches;
}

/// Numbers of a layer in a state laid out in a row, layer after layer; the muck comes last.
inline constexpr int kNumbersOfLayer = 2 + kSolutes;

inline std::size_t sizeInARow(const State<double>& state) {
    return static_cast<std::size_t>(state.layers()) * kNumbersOfLayer + state.muck.size();
}

/// @param to  Of sizeInARow().
inline void layInARow(const State<double>& state, double* to) {
    for (int i = 0; i < state.layers(); ++i) {
        *to++ = state.heat[i][0];
        to = std::copy(state.solutes[i].begin(), state.solutes[i].end(), to);
        *to++ = state.mud[i];
    }
    std::copy(state.muck.begin(), state.muck.end(), to);
}

inline std::vector<double> inARow(const State<double>& state) {
    std::vector<double> out(sizeInARow(state));
    layInARow(state, out.data());
    return out;
}

/// @param state  Has the sizes that the row was made of.
inline void takeFromRow(const double* from, State<double>& state) {
    for (int i = 0; i < state.layers(); ++i) {
        state.heat[i][0] = *from++;
        std::copy_n(from, kSolutes, state.solutes[i].begin());
        from += kSolutes;
        state.mud[i] = *from++;
    }
    std::copy_n(from, state.muck.size(), state.muck.begin());
}

}  // namespace engine::test
