#pragma once

#include <optional>
#include <string_view>

namespace engine {

/// How the water stands, by what was read at top and bottom.
enum class PresentState {
    Stratified,  ///< More than 2 degC from top to bottom
    Between,
    Mixed,   ///< At most 1 degC, oxygen within 1.5 mg/L
    Ice,     ///< At most kIceWater at the top; what ice does is not computed
    Unknown  ///< Not read
};

/// @param topMinusBottom  [K]. @param oxygenApart  Top minus bottom [g/m^3]. @param top  [degC]
[[nodiscard]] PresentState presentState(double topMinusBottom, double oxygenApart, double top);

/// What to do with bottom air while fish are short of oxygen: one rule for the morning, the incident and the
/// papers (common practice, no source).
enum class BottomAir {
    Off,       ///< Layers are there: what is below stays below
    KeepOn,    ///< Mixed: the debt is out, and stopping would stop the renewal at the surface
    ReadFirst  ///< Neither: off if the top is over 2 degC warmer than the bottom
};
[[nodiscard]] BottomAir bottomAirIn(PresentState state);

/// Their terms, for sentences.
[[nodiscard]] std::string_view termOf(PresentState state);
[[nodiscard]] std::string_view termOf(BottomAir air);

}  // namespace engine
