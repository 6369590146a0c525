#pragma once

#include "engine/ensemble/chances.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace engine {

// What each ramp adds to the chance that a pond goes below a line, and how fast the ramp is.

/// Which line the chances are about.
enum class RiskLine { Stress, Lethal };

/// One ramp.
struct RampRisk {
    std::size_t run = 0;  ///< Place in the comparison
    std::optional<int> daysToContinuous;
    Chances chances;

    /// Share of ponds below the line.
    [[nodiscard]] double below(RiskLine line) const;
    /// That minus the share left alone; 0 where that is not known.
    [[nodiscard]] double added(RiskLine line) const;
};

/// The line that tells ramps apart: where more than nine ponds of ten go below the stress line by themselves,
/// a ramp can add nothing there, and only the lethal line is left.
[[nodiscard]] RiskLine riskLine(const Comparison& comparison);

/// Share of ponds below a line with nothing done; nothing without members.
[[nodiscard]] std::optional<double> belowByItself(const Comparison& comparison, RiskLine line);

/// Completed ramps that have members, in the order of the file.
[[nodiscard]] std::vector<RampRisk> rampRisks(const Comparison& comparison);

/// Places of the ramps that add least and most: the first of those that add least, the last of those that add
/// most.
struct RiskEnds {
    std::size_t least = 0, most = 0;
};
/// @pre there is a ramp
[[nodiscard]] RiskEnds riskEnds(const std::vector<RampRisk>& risks, RiskLine line);

}  // namespace engine
