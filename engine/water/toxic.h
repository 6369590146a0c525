#pragma once

#include "engine/base/units.h"

namespace engine {

// What is toxic beside the lack of oxygen, how fast reduced substances take oxygen, and how much.
// All functions are total: they check no ranges and pass NaN on. [mol/L] and [mol/kg] are left in the
// units of the rate laws; they count as equal in fresh water.

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

/// Rate constant k [kg/mol/s] of d[sulfide]/dt = -k [sulfide] [O2], no metals and no bacteria.
/// log10 of k in kg/mol/h = 10.50 + 0.16 pH - 3000/kelvin + 0.44 sqrt(I). The constant 11.78 also seen
/// already holds pH 8; both together would be 19 times too fast. Ponds are faster than this: metals
/// and bacteria help.
/// @param temperature    [degC], published for 5 to 65.
/// @param ph             Clamped to the published 4 to 8.
/// @param ionicStrength  [mol/kg], 0 to 6; below 0 counts as 0.
/// Source: Millero et al. (1987), Environ. Sci. Technol. 21:439-443.
[[nodiscard]] double sulfideOxidation(double temperature, double ph, double ionicStrength);

/// One standard deviation of log10 of sulfideOxidation(), as its source prints it.
inline constexpr double kSulfideOxidationSpread_log10 = 0.18;

/// First-order rate [1/s] at which oxygen turns Fe(II) to Fe(III) near 20 degC; 100 times faster per pH
/// unit. In natural water ligands can make it independent of pH below 7.3.
/// @param hydroxide_molPerL   [OH-]; 10^(pH - 14) where nothing better is known.
/// @param oxygenPressure_atm  Partial pressure of oxygen.
/// Source: Singer & Stumm (1970), Science 167:1121-1123, as in PHREEQC's example 9.
[[nodiscard]] double ironOxidation(double hydroxide_molPerL, double oxygenPressure_atm);

// Oxygen taken per mass of substance [g/g], from whole reactions and standard atomic masses.
inline constexpr double kNitrogenMass = 14.007;   ///< [g/mol]
inline constexpr double kCarbonMass = 12.011;     ///< [g/mol]
inline constexpr double kHydrogenMass = 1.008;    ///< [g/mol]
inline constexpr double kSulfurMass = 32.06;      ///< [g/mol]
inline constexpr double kIronMass = 55.845;       ///< [g/mol]
inline constexpr double kManganeseMass = 54.938;  ///< [g/mol]

inline constexpr double kOxygenPerSulfur = 2.0 * kOxygenMolarMass / kSulfurMass;  ///< H2S to SO4, per g S
inline constexpr double kOxygenPerAmmoniaNitrogen = 2.0 * kOxygenMolarMass / kNitrogenMass;  ///< NH4 to NO3
inline constexpr double kOxygenPerIron = 0.25 * kOxygenMolarMass / kIronMass;           ///< Fe2+ to Fe(OH)3
inline constexpr double kOxygenPerManganese = 0.5 * kOxygenMolarMass / kManganeseMass;  ///< Mn2+ to MnO2
inline constexpr double kOxygenPerMethane =
    2.0 * kOxygenMolarMass / (kCarbonMass + 4.0 * kHydrogenMass);                  ///< CH4 to CO2, per g CH4
inline constexpr double kOxygenPerOrganicCarbon = kOxygenMolarMass / kCarbonMass;  ///< to CO2, per g C
inline constexpr double kOxygenPerIronSulfide =
    2.25 * kOxygenMolarMass / (kIronMass + kSulfurMass);  ///< FeS to Fe(OH)3 and SO4, per g FeS

}  // namespace engine
