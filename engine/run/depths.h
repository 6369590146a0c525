#pragma once

#include "engine/base/units.h"
#include "engine/run/backdrop.h"
#include "engine/run/run.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace engine {

// What a run has at an hour, and over depth where its layers were kept.

/// The first hour row that is no further from a time; null if there is none. @param time, within  [s]
[[nodiscard]] const HourRow* hourNear(const RampRun& run, double time, double within = kHour / 2);

/// Place of the hour row nearest to a night's sunrise; to six in the morning where the sun does not rise.
/// @pre the backdrop has that night, and the run has hours
[[nodiscard]] std::size_t dawnHour(const Backdrop& backdrop, const RampRun& run, int night);

/// How far down from the surface every layer has at least so much oxygen [m]; 0 if the first has not.
/// @param grid    That of the layers.
/// @param layers  One hour's.
/// @param level   [g/m^3]
[[nodiscard]] double enoughDownTo(const Grid& grid, const std::vector<LayerRow>& layers, double level);

/// Oxygen of a run on even depths, one column an hour.
struct OxygenField {
    std::vector<double> time;                 ///< [s after midnight of day 1]
    std::vector<double> fishWater;            ///< [g/m^3], same size
    std::vector<std::vector<double>> oxygen;  ///< Columns x rows, row 0 at the surface [g/m^3]
    double depth = 1.0;                       ///< Of the deepest row's lower edge [m]
};
/// Columns of the hours from one day to another, interpolated between the middles of the layers.
/// @param from, to  [days after midnight of day 1], with the hours at both ends
[[nodiscard]] OxygenField oxygenField(const Grid& grid, const RampRun& run, double from, double to, int rows);

}  // namespace engine
