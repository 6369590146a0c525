#include "engine/water/sky.h"

#include <algorithm>

namespace engine {
namespace {

constexpr double radians(double degrees) {
    return degrees * kPi / 180.0;
}

// Declination [rad] and equation of time [h] of Spencer (1971), Search 2(5):172, coefficients from memory and
// held by a test to an algorithm of the almanac.
struct SpencerSun {
    double declination;
    double equationOfTime_h;
};

SpencerSun spencerSun(int dayOfYear) {
    const double g = 2.0 * kPi * (dayOfYear - 1) / 365.0;
    const double declination = 0.006918 - 0.399912 * std::cos(g) + 0.070257 * std::sin(g) -
                               0.006758 * std::cos(2.0 * g) + 0.000907 * std::sin(2.0 * g) -
                               0.002697 * std::cos(3.0 * g) + 0.00148 * std::sin(3.0 * g);
    const double angle = 0.000075 + 0.001868 * std::cos(g) - 0.032077 * std::sin(g) -
                         0.014615 * std::cos(2.0 * g) - 0.040849 * std::sin(2.0 * g);
    return {declination, angle * 12.0 / kPi};
}

}  // namespace

double declination(int dayOfYear) {
    return 0.409 * std::sin(2.0 * kPi * dayOfYear / 365.0 - 1.39);
}

double inverseDistance(int dayOfYear) {
    return 1.0 + 0.033 * std::cos(2.0 * kPi * dayOfYear / 365.0);
}

double equationOfTime_h(int dayOfYear) {
    return spencerSun(dayOfYear).equationOfTime_h;
}

double solarHour(double longitude_deg, double utcOffset_h, int dayOfYear, double clock_h) {
    return clock_h + longitude_deg / 15.0 - utcOffset_h + equationOfTime_h(dayOfYear);
}

SunPath sunPath(double latitude_deg, double longitude_deg, double utcOffset_h, int dayOfYear) {
    const double latitude = radians(latitude_deg), delta = declination(dayOfYear);
    return {std::sin(latitude) * std::sin(delta), std::cos(latitude) * std::cos(delta),
            solarHour(longitude_deg, utcOffset_h, dayOfYear, 0.0), inverseDistance(dayOfYear)};
}

double sinElevation(const SunPath& path, double clock_h) {
    return path.sinSin + path.cosCos * std::cos(kPi / 12.0 * (clock_h + path.noonShift_h - 12.0));
}

SunTimes sunTimes(double latitude_deg, double longitude_deg, double utcOffset_h, int dayOfYear,
                  double height_deg) {
    const double latitude = radians(latitude_deg);
    const SpencerSun sun = spencerSun(dayOfYear);
    const double cosine = (std::sin(radians(height_deg)) - std::sin(latitude) * std::sin(sun.declination)) /
                          (std::cos(latitude) * std::cos(sun.declination));
    if (!(cosine >= -1.0 && cosine <= 1.0)) {
        return {};
    }
    const double halfDay_h = std::acos(cosine) * 12.0 / kPi;
    const double noon_h = 12.0 + utcOffset_h - longitude_deg / 15.0 - sun.equationOfTime_h;
    return {noon_h - halfDay_h, noon_h + halfDay_h};
}

double shortwaveFromCloud(double sinElevation, double distance, double cloudShare) {
    return kSolarConstant.value * distance * std::max(sinElevation, 0.0) *
           (kOvercastLight.value + kSunnyLight.value * (1.0 - cloudShare));
}

std::optional<double> cloudFromShortwave(double sinElevation, double distance, double shortwave) {
    if (!(sinElevation > kLeastSunForCloud.value)) {
        return std::nullopt;
    }
    const double open = kSolarConstant.value * distance * sinElevation;
    return std::clamp((kOvercastLight.value + kSunnyLight.value - shortwave / open) / kSunnyLight.value, 0.0,
                      1.0);
}

}  // namespace engine
