#pragma once

#include "engine/pond/pond.h"

#include <array>

namespace engine {

/// Where a climate is from.
enum class ClimateOrigin { Months, TypicalYear, Place };

/// Usual days of twelve months, January first; every field but dewPoint or humidity_percent (one of the two)
/// is set.
struct ClimateYear {
    std::array<ClimateMonth, 12> months;
    ClimateOrigin origin = ClimateOrigin::Place;
    double band = 0.0;  ///< Of the air's means, one standard deviation [K]
};

/// The climate of a pond from the best source that it has. The months of its file stand as they are. Those
/// that are not there come from the file of a typical year; without one they are estimated from the place and
/// shifted by what the months before and after differ from such an estimate. The origin is what fills: Months
/// where the typical year is not needed or not there, Place where nothing is given.
///
/// From the place alone: mean air of the latitude at sea level (Haurwitz & Austin 1944, Climatology, from
/// memory), less with the height; the year's range by Conrad's (1946) index of continentality, which rises
/// with the distance to the sea; later in the year, of smaller daily range, moister and windier by the sea;
/// cloud as usual anywhere. That is a guess with a wide band, 1 to 6 K: places of one latitude differ by that
/// much. It knows of no ocean current, mountain range, monsoon or desert.
/// @pre the pond passed its checks.
/// Tested: tests/published/climate_test.cpp
[[nodiscard]] ClimateYear climateOf(const Pond& pond);

}  // namespace engine
