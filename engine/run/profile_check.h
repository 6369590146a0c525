#pragma once

#include "engine/pond/pond.h"

#include <vector>

namespace engine {

/// What a measured profile gives to doubt, or to know, before anything is run.
enum class ProfileDoubt {
    ThinAir,         ///< No doubt: the altitude takes a tenth or more of what water can hold
    Supersaturated,  ///< More oxygen than saturation by a fifth, with plants and sun to make it
    Unexplained,     ///< The same without plants, or before the sun
    Impossible,      ///< More than two and a half times saturation
    SeaLevelMeter,   ///< At altitude, what saturation would be at sea level
    Inverted,        ///< Lighter water under denser water
    HiddenSalt,      ///< The same where oxygen shows a layer and no salinity is given
    UniformLayer,    ///< One temperature, a step of oxygen, and no salinity given
    AeratedSample,   ///< Sulfide below, and yet oxygen at every depth
    RisingOxygen     ///< Oxygen that comes back with depth in water that had none
};

/// One finding. What a number means depends on the doubt; oxygen in [g/m^3], temperatures in [degC].
struct ProfileFinding {
    ProfileDoubt doubt{};
    double depth = 0.0;       ///< [m], of the reading, or of the upper one of two
    double below = 0.0;       ///< [m], of the lower one of two
    double first = 0.0;       ///< The reading at `depth`
    double second = 0.0;      ///< The reading at `below`
    double saturation = 0.0;  ///< At `depth`, at the pond's altitude [g/m^3]
    double seaLevel = 0.0;    ///< The same at sea level [g/m^3]
};

/// Looks at the measured profile of a pond that passed its checks; nothing without one. Thresholds are
/// judgement, made of the meters' errors (common practice, no source): a finding is a question to put to the
/// reading, not a fault of the file.
[[nodiscard]] std::vector<ProfileFinding> profileFindings(const Pond& pond);

}  // namespace engine
