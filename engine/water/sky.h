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

// Heat of the surface. Laws and numbers with their sources stand in engine/water/constants_heat.h.

/// Longwave from the sky that enters the water [W/m^2], positive into the water: Swinbank's form, part of it
/// reflected; clouds raise it by 1 + 0.17 cloud^2.
/// @param airTemperature  [degC]
/// @param cloudShare      0 to 1
template <class Real>
[[nodiscard]] Real longwaveIn(Real airTemperature, Real cloudShare) {
    const Real kelvin = airTemperature + kKelvinOffset;
    const Real square = kelvin * kelvin;
    return (kStefanBoltzmann.value * kSkyAbsorbed.value * kClearSky_perK2.value) * square * square * square *
           (1.0 + kCloudLongwave.value * cloudShare * cloudShare);
}

/// Longwave from the water [W/m^2], positive out of the water.
template <class Real>
[[nodiscard]] Real longwaveOut(Real waterTemperature) {
    const Real kelvin = waterTemperature + kKelvinOffset;
    const Real square = kelvin * kelvin;
    return (kWaterEmissivity.value * kStefanBoltzmann.value) * square * square;
}

/// Temperature of dry air as heavy as moist air [K].
template <class Real>
[[nodiscard]] Real virtualTemperature(Real temperature, Real vapourPressure) {
    return (temperature + kKelvinOffset) /
           (1.0 - (kVapourLightness.value / kStandardPressure) * vapourPressure);
}

/// Heat that evaporation, conduction and convection take [W/m^2], positive out of the water; dew and warm air
/// bring it. Ryan, Harleman and Stolzenbach's: wind, and air that rises from water warmer than it.
/// @param waterTemperature, airTemperature  [degC]
/// @param vapourPressureAir                 [Pa]
/// @param wind2                             At 2 m [m/s]
template <class Real>
[[nodiscard]] Real turbulentLoss(Real waterTemperature, Real airTemperature, Real vapourPressureAir,
                                 Real wind2) {
    using std::cbrt;
    using std::max;
    const Real vapour = vapourPressureKernel(waterTemperature);
    const Real lighter =
        virtualTemperature(waterTemperature, vapour) - virtualTemperature(airTemperature, vapourPressureAir);
    const Real wind = 0.01 * (kFreeEvaporation.value * cbrt(max(lighter, Real(0.0))) +
                              kWindyEvaporation.value * wind2);  // [W/m^2/Pa]
    return wind * (vapour - vapourPressureAir + kBowen.value * (waterTemperature - airTemperature));
}

}  // namespace engine
