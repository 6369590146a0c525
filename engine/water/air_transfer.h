#pragma once

#include "engine/base/units.h"
#include "engine/water/water.h"

namespace engine {

// From the oxygen an aerator gives in the standard test (clean water without oxygen, 20 degC, 1 atm) to
// what it gives in a pond. Positive adds oxygen; above saturation the air takes oxygen away.

/// Saturation of the standard test [g/m^3]: fresh water, 20 degC, 1 atm.
inline constexpr double kStandardSaturation = 9.0924;
/// Rise of the transfer coefficient per degC [-].
inline constexpr double kTransferTheta = 1.024;

/// Share of the standard transfer that a surface aerator gives [-]: alpha (beta Cs - C) theta^(T-20) / 9.09,
/// the form of the aquaculture literature (Boyd 1998, Aquacult. Eng. 18:9-40).
/// @param temperature  Of the water [degC].
/// @param oxygen       C, of the water [g/m^3].
/// @param saturation   Cs, at the pond's temperature and air pressure [g/m^3].
/// @param alpha        Transfer in this water over clean water [-], ponds 0.90 to 0.95.
/// @param beta         Saturation of this water over clean water [-], ponds 0.95 to 0.99; 1 where
///                     `saturation` already knows the salinity.
template <class Real>
[[nodiscard]] Real surfaceTransferShare(Real temperature, Real oxygen, Real saturation, double alpha,
                                        double beta) {
    return (alpha / kStandardSaturation) * (beta * saturation - oxygen) *
           temperatureFactor(kTransferTheta, temperature);
}

/// A diffuser in a tank or pond, ASCE/EWRI 2-06 in the notation of Metcalf & Eddy (5th ed., chapter 5).
struct DiffusedAirSite {
    double temperature = 20.0;                      ///< Of the water [degC]
    double oxygen = 0.0;                            ///< C, of the water [g/m^3]
    double deepSaturation20 = kStandardSaturation;  ///< C*inf20, see deepSaturation() [g/m^3]
    double saturationRatio = 1.0;  ///< tau: saturation at T over that at 20 degC, both at 1 atm [-]
    double pressureRatio = 1.0;    ///< Omega: see pressureRatio() [-]
    double alpha = 1.0;            ///< Transfer in this water over clean water [-]
    double beta = 1.0;             ///< Saturation of this water over clean water [-]
    double fouling = 1.0;          ///< F: transfer of the used diffuser over the new one [-]
};

/// Share of the standard transfer that a diffuser gives at a site [-]:
/// alpha F theta^(T-20) (beta tau Omega C*inf20 - C) / C*inf20.
[[nodiscard]] double diffusedTransferShare(const DiffusedAirSite& site);

/// Saturation [g/m^3] at 20 degC and 1 atm that bubbles from a diffuser work towards, ASCE/EWRI 2-06:
/// Cs (1 + weight of water x effective depth / (1 atm - vapour pressure)).
/// @param effectiveDepth  [m], 0.25 to 0.45 of the diffuser's depth.
[[nodiscard]] double deepSaturation(double effectiveDepth);

/// The same as Metcalf & Eddy write it, saturation20 (1 + effectiveDepth / 10.33 m), without the vapour
/// pressure; 0.3 % lower at 1.2 m.
[[nodiscard]] double deepSaturationColumn(double saturation20, double effectiveDepth);

/// Omega of a deep diffuser [-]: the gas pressure at the effective depth [m] under `pressure` [Pa] over that
/// under 1 atm, water vapour at `temperature` [degC] left out.
[[nodiscard]] double pressureRatio(double pressure, double effectiveDepth, double temperature);

}  // namespace engine
