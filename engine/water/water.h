#pragma once

#include "engine/base/lane_math.h"
#include "engine/base/units.h"
#include "engine/water/constants_water.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace engine {

// Water and the air over it: saturation, density, vapour pressure, solubility. Functions named
// ...Kernel and all templates are total: they check no ranges, continue their formula outside them,
// pass NaN on, and take `double` or a pack of doubles.

/// Air pressure of the US Standard Atmosphere 1976 [Pa] at a height above sea level [m]
/// (geopotential; in plain height about 13 Pa less than the standard's at 3000 m).
/// Other common formulas differ: at 1800 m the isothermal one of Metcalf & Eddy by 0.4 %.
/// @throws ArgumentError unless -500 <= elevation <= 7000.
/// Source: p = 101325 (1 - 2.25577e-5 z)^5.25588, as in APHA 4500-O.
[[nodiscard]] double airPressure(double elevation);

/// Dissolved oxygen in equilibrium with moist air [g/m^3]; falls with temperature and salinity,
/// rises with pressure.
/// @param temperature  Of the water [degC], -2 to 45; the published fit ends at 0 and 40.
/// @param salinity     Practical salinity [-], 0 to 42.
/// @param pressure     Of the air over the water [Pa], 40e3 to 115e3.
/// @throws ArgumentError naming the first input out of range or not finite.
/// Accuracy: within 0.002 g/m^3 of the table of APHA as printed by Metcalf & Eddy, 0 to 40 degC and
///   81 to 101 kPa, fresh water.
/// Source: Benson & Krause (1984), Limnol. Oceanogr. 29:620-632; vapour pressure of APHA 4500-O.
/// Tested: tests/published/saturation_test.cpp
[[nodiscard]] double oxygenSaturation(double temperature, double salinity, double pressure);

/// Vapour pressure of saturated air over water [Pa], FAO-56 eq 11.
/// @throws ArgumentError unless -60 <= temperature <= 60 [degC].
[[nodiscard]] double vapourPressure(double temperature);

/// vapourPressure() without range checks, for any lane type.
template <class Real>
[[nodiscard]] Real vapourPressureKernel(Real temperature) {
    using std::exp;
    return 610.8 * exp(17.27 * temperature / (temperature + 237.3));
}

/// Benson & Krause's polynomial in 1/T about 20 degC: as published its terms are up to 800 and cancel to 2,
/// which single precision would feel.
inline constexpr std::array<double, 5> kSaturationAt20 = [] {
    constexpr std::array<double, 5> kPublished{-139.34411, 1.575701e5, -6.642308e7, 1.243800e10,
                                               -8.621949e11};
    constexpr double kOrigin = 1.0 / (20.0 + kKelvinOffset);
    // Horner's scheme over and over moves the origin.
    std::array<double, 5> moved = kPublished;
    for (std::size_t from = 0; from < moved.size(); ++from) {
        for (std::size_t i = moved.size() - 1; i-- > from;) {
            moved[i] += kOrigin * moved[i + 1];
        }
    }
    return moved;
}();

/// oxygenSaturation() without range checks, for any lane type; one pressure [Pa] for all lanes.
template <class Real>
[[nodiscard]] Real oxygenSaturationKernel(Real temperature, Real salinity, double pressure) {
    using std::exp;
    const Real x = 1.0 / (temperature + kKelvinOffset);
    const double p = pressure / kStandardPressure;  // [atm]
    const Real d = (20.0 - temperature) * x * (1.0 / (20.0 + kKelvinOffset));
    const auto& c = kSaturationAt20;
    const Real fresh = c[0] + d * (c[1] + d * (c[2] + d * (c[3] + d * c[4])));
    const Real salting = salinity * (0.017674 + x * (-10.754 + 2140.7 * x));
    const Real theta = 0.000975 + temperature * (-1.426e-5 + 6.436e-8 * temperature);
    const Real vapour = exp(11.8571 - x * (3840.70 + 216961.0 * x));  // [atm]
    return exp(fresh - salting) * (p - vapour) * (1.0 - theta * p) / ((1.0 - vapour) * (1.0 - theta));
}

/// What densityOverOrigin() counts from [kg/m^3].
inline constexpr double kDensityOrigin = 1000.0;

/// Density of water at the surface pressure over kDensityOrigin [kg/m^3], UNESCO 1983 (EOS-80), with
/// salinity >= 0 (practical salinity [-]; below 0 the term in S^1.5 is dropped). From this origin, since what
/// moves water are differences of 1e-4 kg/m^3 and less, which single precision does not hold beside 1000.
/// The equation is written in temperatures of IPTS-68; `temperature` is of ITS-90 [degC], as meters
/// read it, and is converted here. Largest near 4 degC in fresh water.
/// Source: UNESCO technical papers in marine science 44 (1983). Tested: tests/published/density_test.cpp
template <class Real>
[[nodiscard]] Real densityOverOrigin(Real temperature, Real salinity) {
    using std::max;
    using std::sqrt;
    const Real t = kIpts68PerIts90.value * temperature;
    const Real pure =
        (999.842594 - kDensityOrigin) +
        t * (6.793952e-2 + t * (-9.095290e-3 + t * (1.001685e-4 + t * (-1.120083e-6 + 6.536332e-9 * t))));
    const Real a = 0.824493 + t * (-4.0899e-3 + t * (7.6438e-5 + t * (-8.2467e-7 + 5.3875e-9 * t)));
    const Real b = -5.72466e-3 + t * (1.0227e-4 - 1.6546e-6 * t);
    return pure + salinity * (a + b * sqrt(max(salinity, Real(0.0))) + 4.8314e-4 * salinity);
}

/// Density [kg/m^3]: densityOverOrigin() and its origin.
template <class Real>
[[nodiscard]] Real waterDensity(Real temperature, Real salinity) {
    return kDensityOrigin + densityOverOrigin(temperature, salinity);
}

/// Schmidt number of oxygen in fresh water [-], 0 to 40 degC, Wanninkhof (2014), Limnol. Oceanogr.
/// Methods 12:351-362. (His fit of 1992 is 4 % higher at 20 degC.)
template <class Real>
[[nodiscard]] Real schmidtOxygen(Real t) {
    return 1745.1 + t * (-124.34 + t * (4.8055 + t * (-0.10115 + 0.00086842 * t)));
}

/// Coefficients of a solubility in the form of Weiss, ln H = a + b 100/T + c ln(T/100), H the Bunsen
/// coefficient.
struct WeissFit {
    double a = 0.0, b = 0.0, c = 0.0;
    template <class Real>
    [[nodiscard]] Real logOf(const Real& hundredOverT, const Real& logOfT) const {
        return a + b * hundredOverT + c * logOfT;
    }
};
/// Weiss (1970), Deep-Sea Res. 17:721-735, coefficients as used in Boehrer et al. (2021).
inline constexpr WeissFit kWeissOxygen{-58.3877, 85.8079, 23.8439};
inline constexpr WeissFit kWeissNitrogen{-59.6274, 85.7661, 24.3696};
/// 986.9 / 22391 turns the Bunsen coefficient into mol/L/bar; 1e-2 turns that into mol/m^3/Pa.
inline constexpr double kBunsenToMolar = 1e-2 * 986.9 / 22391.0;

/// Henry's constants in fresh water [mol/m^3/Pa]: concentration over partial pressure.
template <class Real>
struct HenryConstants {
    Real oxygen = 0.0, nitrogen = 0.0;
};

/// Both at a temperature [degC], for layers side by side, with one logarithm.
template <class Real>
[[nodiscard]] HenryConstants<Real> henryConstants(const Real& temperature) {
    const Real hundreds = 0.01 * (temperature + kKelvinOffset);
    const Real inverse = 1.0 / hundreds, logarithm = layerLog(hundreds);
    return {kBunsenToMolar * layerExp(kWeissOxygen.logOf(inverse, logarithm)),
            kBunsenToMolar * layerExp(kWeissNitrogen.logOf(inverse, logarithm))};
}

/// Factor on a rate known at 20 degC: theta^(temperature - 20) [-].
/// @pre theta > 0.
template <class Real>
[[nodiscard]] Real temperatureFactor(double theta, Real temperature) {
    using std::exp;
    return exp(std::log(theta) * (temperature - 20.0));
}

}  // namespace engine
