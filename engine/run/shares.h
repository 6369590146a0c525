#pragma once

#include "engine/run/run.h"

#include <optional>

namespace engine {

// What a run lifts and a pond holds, as shares.

/// Share of the bottom water that is lifted out of it [%]; nothing without bottom water.
/// @param liftedVolume  [m^3]
[[nodiscard]] std::optional<double> dosePercent(const BottomWater& bottom, double liftedVolume);

/// Dose of a day; 0 without bottom water [%].
[[nodiscard]] inline double doseOf(const PondModel& model, const DayRow& row) {
    return dosePercent(model.bottom, row.liftedVolume).value_or(0.0);
}

/// Dose of the day on which a run lifts most [%]; nothing without bottom water or if nothing is lifted.
[[nodiscard]] std::optional<double> largestDosePercent(const PondModel& model, const RampRun& run);

/// Oxygen debt left at the end of a run [% of that at its start]. @pre the run has days
[[nodiscard]] double debtLeftPercent(const RampRun& run);

/// Oxygen debt of the bottom water over the oxygen above it; nothing where there is no such oxygen.
[[nodiscard]] std::optional<double> debtToReserve(const PondModel& model);
/// True if the bottom water owes more oxygen than the water above it holds.
[[nodiscard]] bool owesMoreThanReserve(const PondModel& model);

/// True if a diffuser at a depth [m] hangs in the bottom water, so that it lifts some.
[[nodiscard]] inline bool liftsBottomWater(const PondModel& model, double depth) {
    return model.bottom.exists() && depth > model.bottom.depth;
}

/// Share of the pond's volume that is bottom water [%]; nothing without bottom water.
[[nodiscard]] std::optional<double> bottomPercent(const PondModel& model);
/// Share of the pond's volume that lies below a depth [%]. @param depth  [m]
[[nodiscard]] double percentBelow(const Basin& basin, double depth);

/// How often a day's rate of lifting would turn the pond over in 24 hours.
/// @pre the air ran on that day
[[nodiscard]] double turnoversPerDay(const PondModel& model, const DayRow& row);

/// Pressure of the water alone at a depth, of 1,000 kg/m^3 [Pa]. @param depth  [m]
[[nodiscard]] double waterPressure(double depth);

/// [ug/L] in [g/m^3].
inline constexpr double kMicrogramsPerMilligram = 1000.0;

/// Highest of what is toxic beside the lack of oxygen, where the fish are [ug/L].
struct ToxicPeaks {
    double ammonia_ugPerL = 0.0;  ///< Un-ionised, as nitrogen
    double sulfide_ugPerL = 0.0;  ///< Hydrogen sulfide, as sulfur
    [[nodiscard]] bool isAny() const { return ammonia_ugPerL + sulfide_ugPerL > 0.0; }
};
/// Over all hours of a run.
[[nodiscard]] ToxicPeaks toxicPeaks(const RampRun& run);

}  // namespace engine
