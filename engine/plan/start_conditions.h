#pragma once

#include "engine/ensemble/compare.h"

#include <optional>
#include <vector>

namespace engine {

/// What stands against a start.
enum class StartCondition {
    LethalWith,    ///< Of 100 ponds below the lethal line with the ramp
    LethalAlone,   ///< The same left alone
    LethalAdded,   ///< With the ramp minus left alone
    DawnReading,   ///< The last one, of the fish water [g/m^3]
    Algaecide,     ///< Days since a treatment
    FirstDose,     ///< Share of the bottom water that the first day lifts [%]
    Gases,         ///< Ammonia or sulfide above its limit, and further than without the ramp
    MorningStops,  ///< A computed low at which the ramp's own morning rule stops the air [g/m^3]
    MorningHolds,  ///< ... at which it forbids the next day's step [g/m^3]
    EndState,      ///< Where the pond ends is below the line and lower than left alone [g/m^3]
    Frost          ///< Ice is not computed
};

/// A condition that is not met: what is, and what would have to be.
struct UnmetCondition {
    StartCondition condition{};
    double value = 0.0, limit = 0.0;
    int night = 0;  ///< Of the morning rules
};

/// Limits of the conditions, as the pond file has them or by common practice.
struct StartLimits {
    double lethal_percent = 0.0, lethalAlone_percent = 0.0, lethalAdded_percent = 0.0;
    double daysAfterAlgaecide = 0.0;
};
[[nodiscard]] StartLimits startLimits(const Pond& pond);

/// What stands against starting a ramp, in the order of StartCondition; empty if nothing does. With surface
/// air what the pond does left alone is no reason. Without members chances are those of the central run, 0
/// or 1.
/// @param run  Place of the ramp in the comparison, above 0; completed, as is do-nothing.
[[nodiscard]] std::vector<UnmetCondition> unmetBy(const Comparison& comparison, std::size_t run);

/// The first computed night of a ramp on its way whose dawn its own morning rule would not let pass: under
/// the limit to go on before a step, under that of stopping on any night until the air is the same each day.
/// A plan like this cannot be followed.
[[nodiscard]] std::optional<UnmetCondition> haltedByMornings(const PondModel& model, const RampRun& run);

/// True if a ramp's end state is known, below the stress line, and lower than that of the pond left alone by
/// more than kNoWorse.
[[nodiscard]] bool endsLower(const PondModel& model, const RampRun& run, const RampRun& nothing);

/// True if more oxygen would lift it, as surface air gives it.
[[nodiscard]] bool isOfOxygen(StartCondition condition);

}  // namespace engine
