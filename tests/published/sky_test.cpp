#include "engine/water/sky.h"

#include "engine/base/units.h"
#include "engine/water/water.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

namespace {

using namespace engine;

// The light of a whole day [J/m^2] by the midpoint rule over our hourly function: this ties what the
// engine steps through to the published daily sums.
double dailySum(double latitude_deg, int dayOfYear, double cloudShare) {
    const SunPath path = sunPath(latitude_deg, 0.0, 0.0, dayOfYear);
    constexpr int kSteps = 24 * 60;
    double sum = 0.0;
    for (int i = 0; i < kSteps; ++i) {
        const double clock_h = (i + 0.5) / 60.0;
        sum += kMinute * shortwaveFromCloud(sinElevation(path, clock_h), path.distance, cloudShare);
    }
    return sum;
}

/// Half the day as an angle of the earth's turn [rad]: from the highest sun to where our elevation is 0.
double sunsetHourAngle(double latitude_deg, int dayOfYear) {
    const SunPath path = sunPath(latitude_deg, 0.0, 0.0, dayOfYear);
    const double noon_h = 12.0 - path.noonShift_h;
    double up_h = 0.0, down_h = 12.0;
    for (int i = 0; i < 60; ++i) {
        const double middle = 0.5 * (up_h + down_h);
        (sinElevation(path, noon_h + middle) > 0.0 ? up_h : down_h) = middle;
    }
    return kPi / 12.0 * up_h;
}

double daylight_h(double latitude_deg, int dayOfYear) {
    return 24.0 / kPi * sunsetHourAngle(latitude_deg, dayOfYear);
}

/// Light on a level plane above the air [J/m^2 per day]: that of our clear sky, which is 0.75 of it (FAO-56,
/// eq 35), from sunrise to sunset by Simpson's rule.
double extraterrestrialDaily(double latitude_deg, int dayOfYear) {
    const SunPath path = sunPath(latitude_deg, 0.0, 0.0, dayOfYear);
    const double half_h = 0.5 * daylight_h(latitude_deg, dayOfYear),
                 rise_h = 12.0 - path.noonShift_h - half_h;
    constexpr int kSteps = 1000;
    double sum = 0.0;
    for (int i = 0; i <= kSteps; ++i) {
        const double weight = i == 0 || i == kSteps ? 1.0 : i % 2 == 1 ? 4.0 : 2.0;
        const double clock_h = rise_h + 2.0 * half_h * i / kSteps;
        sum += weight / 3.0 * shortwaveFromCloud(sinElevation(path, clock_h), path.distance, 0.0);
    }
    return sum * 2.0 * half_h * kHour / kSteps / 0.75;
}

// FAO-56 (Allen et al. 1998), Examples 8 and 9: 20 S, 3 September (day 246). Tolerance: the last digit.
TEST(Sky, FaoExamples8And9) {
    EXPECT_NEAR(inverseDistance(246), 0.985, 5e-4);
    EXPECT_NEAR(declination(246), 0.120, 5e-4);
    EXPECT_NEAR(sunsetHourAngle(-20.0, 246), 1.527, 5e-4);
    EXPECT_NEAR(extraterrestrialDaily(-20.0, 246) / 1e6, 32.2, 0.05);
    EXPECT_NEAR(extraterrestrialDaily(-20.0, 246) / 2.45e6, 13.1, 0.05);  // [mm], at 2.45 MJ/kg
    EXPECT_NEAR(daylight_h(-20.0, 246), 11.7, 0.05);
}

// FAO-56, Example 10: 22 deg 54' S, 15 May (day 135), 220 h of sun in the 31 days: Ra 25.1, N 10.9,
// Rs 14.5 MJ/m^2/d, which NCL's radsol2_fao56 gives as 14.456. Tolerance 0.01 on the last.
TEST(Sky, FaoExample10) {
    const double daylight = daylight_h(-22.9, 135);
    EXPECT_NEAR(extraterrestrialDaily(-22.9, 135) / 1e6, 25.1, 0.05);
    EXPECT_NEAR(daylight, 10.9, 0.05);
    const double cloudShare = 1.0 - 220.0 / 31.0 / daylight;
    EXPECT_NEAR(dailySum(-22.9, 135, cloudShare) / 1e6, 14.456, 0.01);
}

// The test of an open irrigation library (day 202, 23.7951 S). Tolerance: the last digit, and for day
// length and light what half a digit of its latitude does.
TEST(Sky, PrintedLibraryCase) {
    EXPECT_NEAR(inverseDistance(202), 0.968842, 1e-6);
    EXPECT_NEAR(declination(202), 0.355653, 1e-6);
    EXPECT_NEAR(sunsetHourAngle(-23.7951, 202), 1.406265, 1e-6);
    EXPECT_NEAR(daylight_h(-23.7951, 202), 10.743074, 3e-6);
    EXPECT_NEAR(extraterrestrialDaily(-23.7951, 202) / 1e6, 23.618220, 2e-5);
}

// FAO-56, Annex 2, Table 2.6, 40 N, the 15th of each month (row from memory). Tolerance 0.2 MJ/m^2/d.
TEST(Sky, FaoTableOfRadiationAt40North) {
    constexpr std::array<int, 12> kDays = {15, 46, 74, 105, 135, 166, 196, 227, 258, 288, 319, 349};
    constexpr std::array<double, 12> kTable = {15.0, 20.4, 27.2, 34.7, 39.7, 41.9,
                                               40.8, 36.7, 30.0, 22.5, 16.3, 13.6};
    for (std::size_t i = 0; i < kDays.size(); ++i) {
        EXPECT_NEAR(extraterrestrialDaily(40.0, kDays[i]) / 1e6, kTable[i], 0.2) << "day " << kDays[i];
    }
}

// The sun over our hours sums to the closed daily integral of FAO-56 eq 21 (clear: 0.75 of it).
TEST(Sky, HourlyLightSumsToTheDay) {
    for (const double latitude : {-60.0, -20.0, 0.0, 33.0, 52.0, 66.0}) {
        for (int day = 1; day <= 365; day += 26) {
            const double phi = latitude * kPi / 180.0, delta = declination(day);
            const double omega = std::acos(std::clamp(-std::tan(phi) * std::tan(delta), -1.0, 1.0));
            const double expected =
                0.75 * kDay / kPi * 0.0820e6 / kMinute * inverseDistance(day) *
                (omega * std::sin(phi) * std::sin(delta) + std::cos(phi) * std::cos(delta) * std::sin(omega));
            EXPECT_NEAR(dailySum(latitude, day, 0.0), expected, 1e3 + 1e-4 * expected)
                << latitude << " deg, day " << day;
        }
    }
}

constexpr double radians(double degrees) {
    return degrees * kPi / 180.0;
}

// Declination [rad] and equation of time [h] after Meeus, Astronomical Algorithms (1998), ch. 25 and 28, low
// accuracy (coefficients from memory), at noon UTC of a day of 2026.
struct Meeus {
    double declination;
    double equationOfTime_h;
};

Meeus meeus(int dayOfYear) {
    const double t = (2461041.5 + dayOfYear - 0.5 - 2451545.0) / 36525.0;  // 2026 January 0.0 is JD 2461040.5
    const double meanLongitude = radians(280.46646 + 36000.76983 * t);
    const double anomaly = radians(357.52911 + 35999.05029 * t);
    const double eccentricity = 0.016708634 - 0.000042037 * t;
    const double centre = radians(1.914602 * std::sin(anomaly) + 0.019993 * std::sin(2.0 * anomaly));
    const double obliquity = radians(23.4393 - 0.0130 * t);
    const double y = std::pow(std::tan(obliquity / 2.0), 2);
    const double eot = y * std::sin(2.0 * meanLongitude) - 2.0 * eccentricity * std::sin(anomaly) +
                       4.0 * eccentricity * y * std::sin(anomaly) * std::cos(2.0 * meanLongitude) -
                       0.5 * y * y * std::sin(4.0 * meanLongitude) -
                       1.25 * eccentricity * eccentricity * std::sin(2.0 * anomaly);
    return {std::asin(std::sin(obliquity) * std::sin(meanLongitude + centre)), eot * 12.0 / kPi};
}

// The sun time that the light follows (Spencer 1971) against the same algorithm. Tolerance 1 min: Spencer's
// own claim is 35 s (from memory), and leap years add 8 s.
TEST(Sky, SunTimeAgreesWithTheAlmanacWithinAMinute) {
    for (int day = 1; day <= 365; day += 7) {
        const double ahead_h = solarHour(-91.5, -6.0, day, 12.0) - 12.0;
        EXPECT_NEAR(ahead_h, -0.1 + meeus(day).equationOfTime_h, 1.0 / 60.0) << "day " << day;
    }
}

// Sunrise and sunset against the almanac's algorithm. Tolerance 5 min: leap years shift the sun by up to 0.2
// deg of declination, which is 1 min at 45 and 2 min at 60 deg, and Spencer's equation of time is good to 0.6
// min.
TEST(Sky, SunriseAgreesWithTheAlmanacWithinFiveMinutes) {
    for (const double latitude : {-60.0, -35.0, 0.0, 32.0, 45.0, 60.0}) {
        for (int day = 1; day <= 365; day += 7) {
            const Meeus sun = meeus(day);
            const double cosine =
                (std::sin(radians(-0.833)) - std::sin(radians(latitude)) * std::sin(sun.declination)) /
                (std::cos(radians(latitude)) * std::cos(sun.declination));
            const double half_h = std::acos(cosine) * 12.0 / kPi;
            const double noon_h = 12.0 - sun.equationOfTime_h;
            const SunTimes times = sunTimes(latitude, -90.0, -6.0, day);
            ASSERT_TRUE(times.rise_h && times.set_h);
            EXPECT_NEAR(*times.rise_h, noon_h - half_h, 5.0 / 60.0) << latitude << " deg, day " << day;
            EXPECT_NEAR(*times.set_h, noon_h + half_h, 5.0 / 60.0) << latitude << " deg, day " << day;
        }
    }
}

// Swinbank (1963) printed the sky's radiation as 5.31e-14 T^6 in mW/cm^2, which is 5.31e-13 T^6 in W/m^2
// (from memory); three figures, so 0.1 %. At 20 degC 337 W/m^2, 3 % reflected; full cloud adds 17 %.
TEST(Sky, Swinbank) {
    EXPECT_NEAR(kStefanBoltzmann.value * kClearSky_perK2.value, 5.31e-13, 0.001 * 5.31e-13);
    EXPECT_NEAR(longwaveIn(20.0, 0.0) / 0.97, 5.31e-13 * std::pow(293.15, 6), 0.5);
    EXPECT_NEAR(longwaveIn(20.0, 1.0) / longwaveIn(20.0, 0.0), 1.17, 1e-12);
}

// Ryan, Harleman and Stolzenbach (1974), (2.7 dT^(1/3) + 3.2 W) W/m^2 and mbar, conduction by 0.61 mbar/K
// (from memory), worked by hand: water of 30 degC under air of 20 degC that holds 10 mbar. FAO-56's vapour is
// 42.43 mbar; virtual temperatures are 308.03 and 294.25 K, so that the cube root is 2.398. With 2 m/s at 2
// m: (6.474 + 6.4) (32.43 + 6.1) = 496 W/m^2; without wind 249. Rounding of the hand: 1.
TEST(Sky, HeatedWaterLosesHeat) {
    EXPECT_NEAR(turbulentLoss(30.0, 20.0, 1000.0, 2.0), 496.0, 1.0);
    EXPECT_NEAR(turbulentLoss(30.0, 20.0, 1000.0, 0.0), 249.5, 1.0);
}

}  // namespace
