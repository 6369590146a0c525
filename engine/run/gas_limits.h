#pragma once

#include "engine/run/run.h"

namespace engine {

// What un-ionised ammonia and hydrogen sulfide fish may meet.

/// Most total ammonia that fish and mussels bear for an hour [g N/m^3], from pH and temperature [degC].
/// EPA 822-R-13-001 (2013), acute criterion: 17 at pH 7 and 20 degC with and without salmonids, as reports of
/// it print; the formula is from memory of that document and gives 16.8.
/// @param salmonids  Trout, salmon and char are there; below about 15 degC they bear less than the mussels.
[[nodiscard]] double acuteTotalAmmonia(double temperature, double ph, bool salmonids);

/// Limits where the fish are.
struct GasLimits {
    double ammonia = 0.0;      ///< Un-ionised, as nitrogen [g/m^3]
    double sulfide = 0.0;      ///< Undissociated, as sulfur, in any hour [g/m^3]
    double sulfideMean = 0.0;  ///< The same over four days
};

/// Ammonia: the un-ionised part of acuteTotalAmmonia(). Sulfide: 2 ug/L as H2S as the mean of four days,
/// EPA's Quality Criteria for Water (1986), from memory, which is meant to hold for long; in any hour five
/// times as much (judgement: bluegill lay no eggs at 2.2 ug/L, while half of the adults die within 96 h
/// at 44.8 ug/L, abstract of the toxicity study of its life stages).
[[nodiscard]] GasLimits gasLimits(SpeciesGroup group, double temperature, double ph);

/// One gas over a run's hours, against the limit of each hour. Of sulfide it is the hour or the mean of the
/// four days until then, whichever has the greater share of its limit.
struct GasPeak {
    double peak = 0.0;        ///< Of the hour with the greatest share of its limit [g/m^3]
    double limit = 0.0;       ///< Of that hour [g/m^3]
    double time = 0.0;        ///< Of that hour [s after midnight of day 1]
    double hoursAbove = 0.0;  ///< Hours whose value is above their limit
    [[nodiscard]] bool isPassed() const { return hoursAbove > 0.0; }
};
struct GasPeaks {
    GasPeak ammonia, sulfide;
};

/// Ammonia's limits follow the temperature and the pH of each hour where the fish are. Ammonia that the pond
/// file does not give is not followed and passes nothing; of sulfide an anoxic bottom has what is usual.
[[nodiscard]] GasPeaks gasPeaks(const PondModel& model, const RampRun& run);

/// Whether either gas goes above its limit at any hour of a run, which no plan may.
[[nodiscard]] bool passesGasLimits(const PondModel& model, const RampRun& run);

}  // namespace engine
