#pragma once

#include "engine/run/run.h"

#include <optional>
#include <stop_token>

namespace engine {

/// What an aerator does day after day.
struct SustainedAir {
    Schedule day;  ///< Runs of one day, from its midnight on; may pass the next one
    bool isContinuous =
        false;  ///< The air never stops; `day` has one run, of which depth and diffusers count
    SurfaceAir surfaceAir;
    bool operator==(const SustainedAir&) const = default;
};

/// What a run leads to: its last day, or air that never stops. Empty for do-nothing.
[[nodiscard]] SustainedAir sustainedAirOf(const RampRun& run);

/// Where a pond ends under sustained air.
struct EndState {
    double low = 0.0;    ///< Mean of the last kEndStateNights dawn lows [g/m^3]
    double drift = 0.0;  ///< Per day over those [g/m^3/d]
};

/// The end state, always found in the same way, so that all pages have the same: the air held from day 1 on
/// (from 10:00 if it never stops) over two weeks of the pond's weather and kEndStateDays usual days. Null is
/// do-nothing.
/// @return nothing after a stop, or if the run ended early.
[[nodiscard]] std::optional<EndState> endStateOf(const PondModel& model, const SustainedAir* air,
                                                 const std::stop_token& stop = {});

}  // namespace engine
