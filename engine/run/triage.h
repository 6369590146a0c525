#pragma once

#include "engine/run/run.h"

#include <optional>

namespace engine {

/// Bands of the debt-to-pool ratio; common practice, no published source.
enum class RatioBand {
    Low,           ///< Under 0.15
    RampRequired,  ///< 0.15 to 0.5
    High,          ///< 0.5 to 1
    DoNotStart     ///< Above 1, or no oxygen reserve
};
[[nodiscard]] RatioBand ratioBand(double ratio);

/// The daily dose that the trade allows under a ratio [% of the bottom water]; nothing where it sets no
/// limit.
[[nodiscard]] std::optional<double> doseCap_percent(RatioBand band);

/// What the first minutes of air lift out of the water as it stands at the start.
struct FirstDose {
    double minutes = 30.0;
    double depth = 0.0;             ///< Of the diffusers [m]
    double ofBottom_percent = 0.0;  ///< Net, of the bottom water
    double ofPond_percent = 0.0;    ///< Net, of the whole pond
};

/// Surface against bottom, each read at its own depth.
struct Layering {
    enum class Kind {
        Mixed,              ///< By temperature, oxygen and salt
        OnlyByTemperature,  ///< Temperature alone would say mixed; oxygen or salt does not
        Layered
    };
    Kind kind = Kind::Mixed;
    double temperature = 0.0;  ///< Surface minus bottom [K]
    double oxygen = 0.0;       ///< Surface minus bottom [g/m^3]
    double salinity = 0.0;     ///< Bottom minus surface [-]
};

/// What the season says about a start; common practice, no published source.
enum class StartSeason {
    Best,         ///< Cool water with oxygen from top to bottom
    CoolButPoor,  ///< Cool water, but the bottom is short of oxygen
    LastResort,   ///< Warm, layered, old
    Warm,         ///< Warm and layered
    Freezing      ///< Colder than 4 degC: the warm water is below
};

/// What can be told about a start before anything is run. It judges the start, not the pond's nights: where
/// do-nothing itself falls below the line, that stands above all of this.
struct Triage {
    std::optional<double> ratio;    ///< Debt to oxygen reserve; nothing in a mixed pond or without a reserve
    std::optional<RatioBand> band;  ///< Nothing in a mixed pond
    std::optional<FirstDose> firstDose;  ///< Nothing without aerator or bottom water
    Layering layering;
    std::optional<StartSeason> season;  ///< Nothing where the season makes no difference
};

/// Runs nothing but one plume. @param model  Needs no balance.
[[nodiscard]] Triage triageOf(const PondModel& model);

}  // namespace engine
