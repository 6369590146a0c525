#include "engine/ramps/climate.h"

#include "engine/pond/pond_io.h"
#include "engine/ramps/constants_climate.h"
#include "tests/pond_texts.h"
#include "tests/usual_month.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

Pond plainPond() {
    return readPondText(test::kPlainPond, "plain.toml").pond.value();
}

Pond pondAt(double latitude_deg, double elevation, double sea_km) {
    Pond pond = plainPond();
    pond.place.latitude_deg = Quantity(latitude_deg);
    pond.place.elevation = Quantity(elevation);
    pond.place.sea_km = Quantity(sea_km);
    return pond;
}

double mean(const ClimateMonth& month) {
    return 0.5 * (*month.airMin + *month.airMax);
}

double yearsMean(const ClimateYear& year) {
    double sum = 0.0;
    for (const ClimateMonth& month : year.months) {
        sum += mean(month) / 12.0;
    }
    return sum;
}

std::size_t warmest(const ClimateYear& year) {
    const auto found =
        std::max_element(year.months.begin(), year.months.end(),
                         [](const ClimateMonth& a, const ClimateMonth& b) { return mean(a) < mean(b); });
    return static_cast<std::size_t>(found - year.months.begin());
}

double range(const ClimateYear& year) {
    double low = mean(year.months[0]), high = low;
    for (const ClimateMonth& month : year.months) {
        low = std::min(low, mean(month));
        high = std::max(high, mean(month));
    }
    return high - low;
}

ClimateMonth given(int number, double low, double high) {
    return test::usualMonth(number, low, high, 70.0, 50.0);
}

/// Every month is there, in its place, with numbers that could stand in a pond file.
void expectWhole(const ClimateYear& year) {
    Pond pond = plainPond();
    pond.climate.months.assign(year.months.begin(), year.months.end());
    const PondReading reading = readPondText(writePond(pond), "climate.toml");
    ASSERT_TRUE(reading.pond) << format(reading.diagnostics.front());
    for (std::size_t i = 0; i < year.months.size(); ++i) {
        EXPECT_EQ(year.months[i].month, Quantity(static_cast<double>(i + 1)));
    }
    EXPECT_GT(year.band, 0.0);
}

TEST(ClimateOfAPlace, IsWholeAnywhereOnEarth) {
    for (const double latitude_deg : {-66.0, -40.0, -5.0, 0.0, 10.0, 47.5, 66.0}) {
        for (const double elevation : {-400.0, 0.0, 5000.0}) {
            for (const double sea_km : {0.0, 3000.0}) {
                SCOPED_TRACE(std::to_string(latitude_deg) + " deg, " + std::to_string(elevation) + " m, " +
                             std::to_string(sea_km) + " km");
                const ClimateYear year = climateOf(pondAt(latitude_deg, elevation, sea_km));
                EXPECT_EQ(year.origin, ClimateOrigin::Place);
                expectWhole(year);
            }
        }
    }
}

TEST(ClimateOfAPlace, FollowsItsLatitudeHeightAndSea) {
    // Haurwitz & Austin's 40 degrees north at sea level; the course of a year takes nothing from its mean.
    EXPECT_NEAR(yearsMean(climateOf(pondAt(40.0, 0.0, 300.0))), 14.1, 1e-9);
    EXPECT_NEAR(yearsMean(climateOf(pondAt(-45.0, 0.0, 300.0))), 0.5 * (11.9 + 5.8), 1e-9);
    EXPECT_NEAR(yearsMean(climateOf(pondAt(40.0, 2000.0, 300.0))), 14.1 - 2.0 * kLapse.value, 1e-9);
    // Conrad's index gives 60 far inland: 1.7 A / sin 50 - 14. Months stand up to half a month from the
    // warmest day, by which their range is at most 4 % less.
    const double inland = (kContinentalityInland.value + 14.0) * std::sin(50.0 * 3.14159265 / 180.0) / 1.7;
    EXPECT_LE(range(climateOf(pondAt(40.0, 0.0, 3000.0))), inland);
    EXPECT_GE(range(climateOf(pondAt(40.0, 0.0, 3000.0))), 0.95 * inland);
    const ClimateYear coast = climateOf(pondAt(40.0, 0.0, 0.0)), far = climateOf(pondAt(40.0, 0.0, 2000.0));
    EXPECT_LT(range(coast), 0.5 * range(far));
    EXPECT_LT(*coast.months[0].airMax - *coast.months[0].airMin,
              *far.months[0].airMax - *far.months[0].airMin);
    EXPECT_GT(*coast.months[0].humidity_percent, *far.months[0].humidity_percent);
    EXPECT_EQ(warmest(coast), 7U) << "August by the sea";
    EXPECT_EQ(warmest(far), 6U) << "July inland";
    EXPECT_EQ(warmest(climateOf(pondAt(-40.0, 0.0, 2000.0))), 0U) << "January in the south";
    EXPECT_NEAR(range(climateOf(pondAt(0.0, 0.0, 300.0))), 0.0, 1e-9) << "no seasons at the equator";
}

TEST(ClimateOfAPlace, TakesAUsualDistanceWhereNoneIsToldAndIsLessSure) {
    Pond pond = pondAt(50.0, 200.0, kUsualSea_km.value);
    const ClimateYear told = climateOf(pond);
    pond.place.sea_km.reset();
    const ClimateYear untold = climateOf(pond);
    EXPECT_EQ(untold.months, told.months);
    EXPECT_GT(untold.band, told.band);
    EXPECT_GT(told.band, climateOf(pondAt(5.0, 200.0, 300.0)).band) << "the tropics differ less";
    EXPECT_GT(climateOf(pondAt(50.0, 2500.0, 300.0)).band, told.band) << "and heights more";
}

TEST(ClimateOfMonths, TwelveStandAsTheyAre) {
    Pond pond = plainPond();
    for (int number = 12; number >= 1; --number) {  // in any order
        pond.climate.months.push_back(given(number, number, number + 9.0));
    }
    const ClimateYear year = climateOf(pond);
    EXPECT_EQ(year.origin, ClimateOrigin::Months);
    EXPECT_EQ(year.band, kMonthsBand.value);
    for (std::size_t i = 0; i < 12; ++i) {
        EXPECT_EQ(year.months[i], pond.climate.months[11 - i]);
    }
}

TEST(ClimateOfMonths, OneShiftsTheWholeYear) {
    Pond pond = pondAt(45.0, 100.0, 300.0);
    const ClimateYear place = climateOf(pond);
    ClimateMonth july = place.months[6];
    july.airMin = Quantity(*july.airMin - 2.0);
    july.airMax = Quantity(*july.airMax - 4.0);
    july.wind = Quantity(*july.wind + 1.0);
    july.cloud_percent = Quantity(5.0);
    pond.climate.months = {july};
    const ClimateYear year = climateOf(pond);
    EXPECT_EQ(year.origin, ClimateOrigin::Months);
    EXPECT_EQ(year.months[6], july);
    EXPECT_GT(year.band, kMonthsBand.value);
    EXPECT_LT(year.band, place.band);
    EXPECT_NEAR(*year.months[0].airMin, *place.months[0].airMin - 2.0, 1e-9);
    EXPECT_NEAR(*year.months[0].airMax, *place.months[0].airMax - 4.0, 1e-9);
    EXPECT_NEAR(*year.months[11].wind, *place.months[11].wind + 1.0, 1e-9);
    EXPECT_NEAR(*year.months[11].cloud_percent, 5.0, 1e-9);
    expectWhole(year);
}

TEST(ClimateOfMonths, BetweenTwoTheDifferenceIsInterpolatedAroundTheYear) {
    Pond pond = pondAt(45.0, 100.0, 300.0);
    const ClimateYear place = climateOf(pond);
    ClimateMonth november = place.months[10], march = place.months[2];
    november.airMin = Quantity(*november.airMin + 4.0);
    november.airMax = Quantity(*november.airMax + 4.0);
    pond.climate.months = {march, november};
    const ClimateYear year = climateOf(pond);
    EXPECT_NEAR(mean(year.months[11]), mean(place.months[11]) + 3.0, 1e-9);
    EXPECT_NEAR(mean(year.months[0]), mean(place.months[0]) + 2.0, 1e-9);
    EXPECT_NEAR(mean(year.months[1]), mean(place.months[1]) + 1.0, 1e-9);
    EXPECT_NEAR(mean(year.months[6]), mean(place.months[6]) + 2.0, 1e-9) << "halfway from March to November";
}

TEST(ClimateOfMonths, ADewPointCountsAsItsHumidity) {
    Pond pond = pondAt(45.0, 100.0, 300.0);
    ClimateMonth july = given(7, 16.0, 24.0);
    july.humidity_percent.reset();
    july.dewPoint = Quantity(20.0);  // saturated at the mean
    pond.climate.months = {july};
    const ClimateYear year = climateOf(pond);
    EXPECT_EQ(year.months[6].dewPoint, Quantity(20.0));
    EXPECT_NEAR(*year.months[0].humidity_percent, 100.0, 1e-9);
}

TEST(ClimateOfATypicalYear, StandsBehindTheTable) {
    Pond pond = plainPond();
    for (int number = 1; number <= 12; ++number) {
        pond.climate.fileMonths.push_back(given(number, number, number + 9.0));
    }
    EXPECT_EQ(climateOf(pond).origin, ClimateOrigin::TypicalYear);
    EXPECT_EQ(climateOf(pond).band, kTypicalYearBand.value);
    EXPECT_EQ(climateOf(pond).months[3], pond.climate.fileMonths[3]);
    pond.climate.months = {given(4, -20.0, -10.0)};
    const ClimateYear year = climateOf(pond);
    EXPECT_EQ(year.origin, ClimateOrigin::TypicalYear);
    EXPECT_EQ(year.months[3], pond.climate.months[0]);
    EXPECT_EQ(year.months[4], pond.climate.fileMonths[4]);
}

}  // namespace
}  // namespace engine
