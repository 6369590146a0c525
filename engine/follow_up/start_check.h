#pragma once

#include "engine/pond/pond.h"
#include "engine/run/run.h"

#include <string>

namespace engine {

/// A start held against what was read after it.
struct StartCheck {
    std::string message;  ///< A sentence if it cannot be held against anything
    std::string pond;     ///< Title
    Date firstDay{};      ///< Of the air
    std::string ramp;
    int dawns = 0;          ///< That were read
    double miss = 0.0;      ///< Mean of computed minus read [g/m^3]
    double distance = 0.0;  ///< Mean of the distance [g/m^3]
    [[nodiscard]] bool isChecked() const { return message.empty(); }
};

/// Runs the ramp that the log says was started on the pond as it was known then, weather and all, and holds
/// the low of each night against the dawn reading that ended it (worst of the upper two depths). The run sees
/// no reading after the start: it says what a plan was worth, and not what a fit can do. A ramp that was
/// begun later than the pond file's first day, by seven days at most, runs from its day on, from the same
/// profile.
[[nodiscard]] StartCheck checkStart(const Pond& pond, const RunControl& control = {});

}  // namespace engine
