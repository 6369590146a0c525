#pragma once

#include "engine/base/units.h"
#include "engine/water/constants_heat.h"
#include "engine/water/water.h"

#include <cmath>
#include <optional>

namespace engine {

// The sun, the light it sends and the heat that leaves the water. Days of the year count from 1;
// clock hours are of the pond's own fixed clock and may lie outside 0..24; latitude is positive
// north, longitude positive east. Source unless another stands there: FAO Irrigation and Drainage
// Paper 56 (Allen et al. 1998), chapter 3, by equation number.

/// Declination of the sun [rad], eq 24.
[[nodiscard]] double declination(int dayOfYear);

/// Inverse relative distance between earth and sun [-], squared as the flux needs it, eq 23.
[[nodiscard]] double inverseDistance(int dayOfYear);

/// Sun time minus mean time [h], -0.24 to 0.27 over the year.
/// Accuracy: within a minute of the almanac's algorithm, where eq 33 is not (December).
/// Source: Spencer (1971), Search 2(5):172. Tested: tests/published/sky_test.cpp
[[nodiscard]] double equationOfTime_h(int dayOfYear);

/// Sun time [h], 12 when the sun stands highest, of a clock hour; eq 31 with Spencer's seasonal
/// correction.
[[nodiscard]] double solarHour(double longitude_deg, double utcOffset_h, int dayOfYear, double clock_h);

/// The sun's path over a place on one day.
struct SunPath {
    double sinSin = 0.0, cosCos = 0.0;  ///< Of latitude and declination
    double noonShift_h = 0.0;           ///< Sun time minus clock [h]
    double distance = 1.0;              ///< inverseDistance() [-]
};
[[nodiscard]] SunPath sunPath(double latitude_deg, double longitude_deg, double utcOffset_h, int dayOfYear);

/// Sine of the height of the sun's centre over the horizon [-]; negative at night. No refraction.
[[nodiscard]] double sinElevation(const SunPath& path, double clock_h);

/// Clock hours of sunrise and sunset; empty where the sun does not cross the horizon that day.
struct SunTimes {
    std::optional<double> rise_h;
    std::optional<double> set_h;
};

/// When the sun's centre passes a height, with the declination of the whole day; by default sunrise and
/// sunset. Hours may lie outside 0..24 where the clock's offset does not fit the longitude.
/// Spencer's declination, not eq 24, with which sunset is more than 5 min off in October at 45 deg.
/// Accuracy: within 5 min of the almanac's algorithm between 60 S and 60 N.
/// Source: Spencer (1971), Search 2(5):172. Tested: tests/published/sky_test.cpp
[[nodiscard]] SunTimes sunTimes(double latitude_deg, double longitude_deg, double utcOffset_h, int dayOfYear,
                                double height_deg = kSunriseHeight_deg.value);

/// Shortwave light on a level plane [W/m^2], 0 while the sun is down: eq 35 with the Angstrom values
/// and the sunny share taken as 1 - cloudShare.
/// @param distance    inverseDistance() [-].
/// @param cloudShare  0 (clear) to 1 (overcast).
[[nodiscard]] double shortwaveFromCloud(double sinElevation, double distance, double cloudShare);

/// The cloud share (0 to 1) at which shortwaveFromCloud() gives `shortwave` [W/m^2]; light beyond
/// either end gives that end. Empty where the sun stands so low that the ratio says nothing
/// (kLeastSunForCloud).
[[nodiscard]] std::optional<double> cloudFromShortwave(double sinElevation, double distance,
                                                       double shortwave);

// Heat of the surface after Chapra (1997), Surface Water-Quality Modeling, chapter 30.

/// Longwave from the sky that enters the water [W/m^2], positive into the water: Brunt's form, part of it
/// reflected; clouds raise it by 1 + 0.17 cloud^2.
/// @param airTemperature     [degC]
/// @param vapourPressureAir  [Pa], >= 0
/// @param cloudShare         0 to 1
template <class Real>
[[nodiscard]] Real longwaveIn(Real airTemperature, Real vapourPressureAir, Real cloudShare) {
    using std::sqrt;
    const Real kelvin = airTemperature + kHeatKelvin.value;
    const Real square = kelvin * kelvin;
    const Real emissivity =
        kBruntConstant.value + kBruntVapour.value * sqrt(vapourPressureAir / kPascalPerMmHg);
    return kStefanBoltzmann.value * kSkyAbsorbed.value * square * square * emissivity *
           (1.0 + kCloudLongwave.value * cloudShare * cloudShare);
}

/// Longwave from the water [W/m^2], positive out of the water.
template <class Real>
[[nodiscard]] Real longwaveOut(Real waterTemperature) {
    const Real kelvin = waterTemperature + kHeatKelvin.value;
    const Real square = kelvin * kelvin;
    return (kWaterEmissivity.value * kStefanBoltzmann.value) * square * square;
}

/// What wind makes of a difference in vapour pressure [W/m^2/Pa]; wind at 7 m [m/s].
template <class Real>
[[nodiscard]] constexpr Real windFunction(Real wind7) {
    return (kStillEvaporation.value + kWindyEvaporation.value * wind7 * wind7) *
           (kWattPerLangleyDay / kPascalPerMmHg);
}

/// Heat of evaporation [W/m^2], positive out of the water; negative while dew falls.
/// @param vapourPressureAir  [Pa];  @param wind7  wind at 7 m [m/s]
template <class Real>
[[nodiscard]] Real evaporativeLoss(Real waterTemperature, Real vapourPressureAir, Real wind7) {
    return windFunction(wind7) * (vapourPressureKernel(waterTemperature) - vapourPressureAir);
}

/// Heat of conduction and convection [W/m^2], positive out of the water (water warmer than air).
/// @param airTemperature  [degC];  @param wind7  wind at 7 m [m/s]
template <class Real>
[[nodiscard]] Real conductiveLoss(Real waterTemperature, Real airTemperature, Real wind7) {
    constexpr double kBowen = kBowen_mmHgPerK.value * kPascalPerMmHg;  // [Pa/K]
    return (kBowen * windFunction(wind7)) * (waterTemperature - airTemperature);
}

}  // namespace engine
