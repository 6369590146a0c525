#pragma once

#include "engine/base/units.h"

namespace engine {

// What is toxic beside the lack of oxygen, and how much oxygen reduced substances take.
// All functions are total: they check no ranges and pass NaN on.

/// Share of total ammonia that is un-ionised NH3 [-], 0 to 1; rises with temperature and pH.
/// pKa = 0.09018 + 2729.92 / kelvin, 0 to 50 degC (one help page prints 2727.92, a slip).
/// Accuracy: within 1.5 % of the printed table at 25 degC, pH 6.5 to 8.5.
/// Source: Emerson et al. (1975), J. Fish. Res. Board Can. 32:2379-2383.
/// Tested: tests/published/toxic_test.cpp
[[nodiscard]] double unionisedAmmoniaShare(double temperature, double ph);

/// First dissociation constant of hydrogen sulfide in pure water as pK1 [-], 5 to 25 degC.
/// Source: Hershey, Plese & Millero (1988), Limnol. Oceanogr. 33:269-274.
[[nodiscard]] double sulfideDissociation(double temperature);

/// Share of total sulfide that is the toxic H2S [-], 0 to 1; falls with pH.
[[nodiscard]] double undissociatedSulfideShare(double temperature, double ph);

// Oxygen taken per mass of substance [g/g], from whole reactions and standard atomic masses.
inline constexpr double kNitrogenMass = 14.007;  ///< [g/mol]
inline constexpr double kCarbonMass = 12.011;    ///< [g/mol]
inline constexpr double kHydrogenMass = 1.008;   ///< [g/mol]
inline constexpr double kSulfurMass = 32.06;     ///< [g/mol]
inline constexpr double kIronMass = 55.845;      ///< [g/mol]

inline constexpr double kCalciumCarbonatePerCharge = 50.04;  ///< Alkalinity as CaCO3 [g/mol of charge]

inline constexpr double kOxygenPerSulfur = 2.0 * kOxygenMolarMass / kSulfurMass;  ///< H2S to SO4, per g S
inline constexpr double kOxygenPerAmmoniaNitrogen = 2.0 * kOxygenMolarMass / kNitrogenMass;  ///< NH4 to NO3
inline constexpr double kOxygenPerIron = 0.25 * kOxygenMolarMass / kIronMass;  ///< Fe2+ to Fe(OH)3
inline constexpr double kOxygenPerMethane =
    2.0 * kOxygenMolarMass / (kCarbonMass + 4.0 * kHydrogenMass);  ///< CH4 to CO2, per g CH4

}  // namespace engine
