#pragma once

#include "engine/follow_up/present_state.h"
#include "engine/follow_up/today.h"

#include <optional>
#include <string>
#include <vector>

namespace engine {

/// What can be done at once.
enum class IncidentOption {
    AirOff,      ///< Bottom air off
    AirOn,       ///< Bottom air on
    SurfaceAir,  ///< Bottom air off, surface air on
    AirAndSurfaceAir
};
inline constexpr int kIncidentOptions = 4;

/// How an option goes on from the present profile, central run.
struct OptionOutcome {
    IncidentOption option{};
    double lowest = 0.0;  ///< Fish water within 24 h [g/m^3]
    std::optional<double>
        recovery_h;  ///< Until it is above the line and stays there up to 48 h; nothing if it does not
    std::vector<double> hours, fishWater;  ///< Hour by hour after now [h], [g/m^3]
};

struct Incident {
    std::string message;  ///< A sentence if it cannot be judged
    bool isJudged = false;
    Pond pond;  ///< As it was known
    LocalTime at{};
    double surface = 0.0, bottom = 0.0;  ///< Oxygen as read [g/m^3]
    double difference = 0.0;             ///< Top minus bottom [K]
    PresentState state{};
    double line = 0.0;  ///< Stress line [g/m^3]
    std::vector<OptionOutcome> options;
    double surfaceTransfer_kgPerH = 0.0;  ///< Taken for surface air
    bool surfaceIsGuess = false;
    PondModel model;  ///< Started from the present profile
};

/// Runs what can be done from the present profile: readings of the last 3 h at two or more depths with
/// temperatures. Where the file has no surface aerator one of 2.5 kW/ha is taken (common practice, no
/// source: 1.8 to 3.7 for emergencies) at 1.5 kg of oxygen a kWh in clean water (from memory, 1.2 to 2). The
/// balance's factors are those of the pond file.
[[nodiscard]] Incident judgeIncident(const Pond& pond, const TodayOptions& options,
                                     const RunControl& control = {});

}  // namespace engine
