#pragma once

namespace engine {

// The pH of fresh water by its alkalinity and inorganic carbon. What lives in the water takes up as many
// moles of carbon as it gives of oxygen, and the other way round, so that pH has its day with the oxygen.

/// The water whose pH is known.
struct KnownPh {
    double ph = 7.5;
    double alkalinity = 2.0;    ///< [mol/m^3 of charge]
    double oxygen = 8.0;        ///< [g/m^3]
    double temperature = 20.0;  ///< [degC]
};

/// Inorganic carbon of water [mol/m^3], 0 to 50 degC.
/// K1 and K2: Plummer and Busenberg (1982), Geochim. Cosmochim. Acta 46:1011-1040; ion product: Harned and
/// Owen (1958); all from memory, checked against printed values at 25 degC (tests/published/toxic_test.cpp).
/// @param alkalinity  [mol/m^3 of charge]
[[nodiscard]] double inorganicCarbon(double alkalinity, double ph, double temperature);

/// pH of water, 4 to 11. @param carbon  [mol/m^3]
[[nodiscard]] double phOf(double alkalinity, double carbon, double temperature);

/// pH of the same water with other oxygen [g/m^3] and at another temperature [degC].
[[nodiscard]] double phWith(const KnownPh& known, double oxygen, double temperature);

/// Dissociation constants of carbonic acid as pK [-].
[[nodiscard]] double carbonicFirst(double temperature);
[[nodiscard]] double carbonicSecond(double temperature);

}  // namespace engine
