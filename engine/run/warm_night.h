#pragma once

#include "engine/run/run.h"

#include <optional>

namespace engine {

/// A night that is low for want of cool water, and not of oxygen: it is told in degrees and metres, since its
/// low [g/m^3] only says that warm water is no fish water.
struct WarmNight {
    double limit = 0.0;         ///< Warmest water that the fish take [degC]
    double need_percent = 0.0;  ///< Of the volume that has to be no warmer
    double cool_percent = 0.0;  ///< Of the volume that is no warmer, at the hour of the low
    double coolest = 0.0;       ///< Coolest water then [degC]
    double depth = 0.0;         ///< ... and where it is [m]
    int hours = 0;              ///< Of the run on which less is so cool than has to be
    bool operator==(const WarmNight&) const = default;
};

/// What a night lacks if it is that; nothing where its low is one of oxygen, or where fish take any warmth.
/// Of a run without its layers only the water off the bottom is looked at.
/// @param night  Of that run.
[[nodiscard]] std::optional<WarmNight> warmNight(const PondModel& model, const RampRun& run,
                                                 const DayRow& night);

}  // namespace engine
