#pragma once

#include "engine/base/units.h"
#include "engine/water/constants_exchange.h"
#include "engine/water/water.h"

#include <algorithm>
#include <cmath>

namespace engine {

// How fast oxygen crosses the surface. The flux is velocity x (saturation - concentration),
// positive into the water.

inline constexpr double kMetrePerSecondOfCmPerHour = 0.01 / kHour;  ///< 1 cm/h [m/s]

/// Wind [m/s] at height `to` [m] of a wind [m/s] at height `from` [m] over open water: log profile.
/// @throws ArgumentError unless both heights are 0.5 to 100 m and wind is 0 to 150 m/s.
/// Source: Amorocho & DeVries (1980), J. Geophys. Res. 85:433-442.
[[nodiscard]] double windAt(double wind, double from, double to);

/// Wind [m/s] at 10 m of a wind [m/s] at `height` [m]; see windAt().
[[nodiscard]] double windAtTen(double wind, double height);

/// The part of the piston velocity at Schmidt number 600 that wind and the calm floor give [m/s]: the floor
/// of Emerson (1975), and 0.215 U^1.7 cm/h, Cole & Caraco (1998) without their constant of 2.07 cm/h, which
/// already holds the calm-weather part that pistonVelocity600() takes apart.
/// @param wind10  Wind at 10 m over the pond, shelter included [m/s], >= 0.
template <class Real>
[[nodiscard]] Real pistonVelocityWind600(Real wind10) {
    using std::max;
    using std::pow;
    return kCalmExchange_mPerDay.value / kDay + kWindExchange_cmPerHour.value * kMetrePerSecondOfCmPerHour *
                                                    pow(max(wind10, Real(0.0)), kWindExchangePower.value);
}

/// Piston velocity [m/s] at Schmidt number 600.
/// sqrt((floor + wind part)^2 + convection^2), the last by surface renewal,
/// 0.29 (epsilon nu)^(1/4) 600^(-1/2) with epsilon the buoyancy flux while the surface cools.
/// The form is that of Zappa et al. (2007), Geophys. Res. Lett. 34, L10601; adding in squares is judgement.
/// @param wind10        Wind at 10 m over the pond [m/s], >= 0.
/// @param buoyancyFlux  Buoyancy lost at the surface [m^2/s^3], positive while it cools.
template <class Real>
[[nodiscard]] Real pistonVelocity600(Real wind10, Real buoyancyFlux) {
    using std::max;
    using std::sqrt;
    const Real steady = pistonVelocityWind600(wind10);
    const Real renewal = sqrt(kWaterViscosity.value * max(buoyancyFlux, Real(0.0)));  // (epsilon nu)^(1/2)
    constexpr double kConvection =
        kConvectiveExchange.value * kConvectiveExchange.value / kReferenceSchmidt.value;
    return sqrt(steady * steady + kConvection * renewal);
}

/// Piston velocity of oxygen [m/s]: pistonVelocity600() times (Sc/600)^(-1/2), fresh water, 0 to 40 degC.
/// @param temperature  Of the surface water [degC].
template <class Real>
[[nodiscard]] Real pistonVelocityOxygen(Real temperature, Real wind10, Real buoyancyFlux) {
    using std::sqrt;
    return pistonVelocity600(wind10, buoyancyFlux) *
           sqrt(kReferenceSchmidt.value / schmidtOxygen(temperature));
}

/// What rain adds to the piston velocity of oxygen [m/s]: 0.679 R - 0.0015 R^2 cm/h at Schmidt number 600
/// with R in mm/h, Ho et al. (1997), Tellus B 49:149-158, from memory, without their constant, which is water
/// at rest; it is linear with the wind's, Ho et al. (2007), J. Mar. Syst. 66:150-160.
/// @param temperature  Of the surface water [degC]. @param rain  [m/s]; above 200 mm/h it adds no more.
template <class Real>
[[nodiscard]] Real pistonVelocityRain(Real temperature, double rain) {
    using std::sqrt;
    if (!(rain > 0.0)) {
        return Real(0.0);
    }
    constexpr double kMillimetresPerHour = 3.6e6;  // of 1 m/s
    const double fall = std::min(rain * kMillimetresPerHour, kMostRain_mmPerHour.value);
    const double steady = (kRainExchange.value + kRainExchangeSquare.value * fall) * fall;  // [cm/h]
    return steady * kMetrePerSecondOfCmPerHour * sqrt(kReferenceSchmidt.value / schmidtOxygen(temperature));
}

}  // namespace engine
