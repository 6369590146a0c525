#include "engine/run/member_weather.h"

#include "engine/ensemble/draws.h"
#include "engine/run/run.h"
#include "engine/water/water.h"
#include "tests/scenario.h"

#include <gtest/gtest.h>

#include <cmath>

namespace engine {
namespace {

using test::scenario;

constexpr int kMembers = 4096;
// What a standard deviation and a correlation of so many independent draws are off by (1 sigma: 1.1 and 1.6
// %), four times over.
constexpr double kDeviationOff = 0.045;
constexpr double kCorrelationOff = 0.06;

/// Offsets of one kind, members x days.
struct Scattered {
    std::vector<std::vector<WeatherOffset>> members;

    explicit Scattered(const std::vector<WeatherScatter>& scatter) {
        const int row = kWeatherScores * static_cast<int>(scatter.size());
        const std::vector<double> scores = normalScores(kMembers, row, 5);
        for (int i = 0; i < kMembers; ++i) {
            members.push_back(weatherOffsets(scatter, std::span(scores).subspan(i * row, row), 1.0));
        }
    }
    template <class Of>
    double mean(std::size_t day, Of of) const {
        double sum = 0.0;
        for (const auto& member : members) {
            sum += of(member[day]);
        }
        return sum / kMembers;
    }
    template <class A, class B>
    double covariance(std::size_t dayA, A a, std::size_t dayB, B b) const {
        const double meanA = mean(dayA, a), meanB = mean(dayB, b);
        double sum = 0.0;
        for (const auto& member : members) {
            sum += (a(member[dayA]) - meanA) * (b(member[dayB]) - meanB);
        }
        return sum / kMembers;
    }
    template <class Of>
    double deviation(std::size_t day, Of of) const {
        return std::sqrt(covariance(day, of, day, of));
    }
};

const auto kAir = [](const WeatherOffset& offset) { return offset.air; };
const auto kLogWind = [](const WeatherOffset& offset) { return std::log(offset.windFactor); };
const auto kCloud = [](const WeatherOffset& offset) { return offset.cloud; };

TEST(MemberWeather, ScatterOfDay1IsAForecasts) {
    // Design 2.1: air +-1.5 degC, wind times or over 1.35, cloud +-20 points (1 sigma), day to day 0.6.
    const auto scatter = weatherScatter(scenario("grandfathers-pond"), 0, 10);
    const Scattered found(scatter);
    EXPECT_NEAR(found.deviation(1, kAir), 1.5, 1.5 * kDeviationOff);
    EXPECT_NEAR(found.deviation(1, kLogWind), std::log(1.35), std::log(1.35) * kDeviationOff);
    EXPECT_NEAR(found.deviation(1, kCloud), 0.20, 0.20 * kDeviationOff);
    EXPECT_NEAR(found.mean(1, kAir), 0.0, 1.5 * kDeviationOff);
    for (std::size_t day = 1; day < 9; ++day) {
        const auto correlation = [&](auto of, std::size_t later) {
            return found.covariance(day, of, later, of) /
                   (found.deviation(day, of) * found.deviation(later, of));
        };
        EXPECT_NEAR(correlation(kAir, day + 1), 0.6, kCorrelationOff);
        EXPECT_NEAR(correlation(kLogWind, day + 1), 0.6, kCorrelationOff);
        EXPECT_NEAR(correlation(kCloud, day + 1), 0.6, kCorrelationOff);
        EXPECT_NEAR(correlation(kAir, day + 2), 0.36, kCorrelationOff);
        EXPECT_NEAR(found.covariance(day, kAir, day, kCloud) / (scatter[day].air * scatter[day].cloud), 0.0,
                    kCorrelationOff);
    }
}

TEST(MemberWeather, ItGrowsToTheUsualDaysScatterByDay6) {
    Pond pond = scenario("grandfathers-pond");
    // Three days of mean air 20, 25 and 30 degC: 5 degC about their mean; wind and cloud the same on all.
    pond.weather.days.resize(3);
    for (int i = 0; i < 3; ++i) {
        WeatherDay& day = pond.weather.days[i];
        day.airMin = Quantity(15.0 + 5.0 * i);
        day.airMax = Quantity(25.0 + 5.0 * i);
        day.wind = Quantity(2.0);
        day.cloud_percent = Quantity(40.0);
    }
    const auto scatter = weatherScatter(pond, -1, 14);
    const auto on = [&](int day) { return scatter[static_cast<std::size_t>(day + 1)]; };
    EXPECT_EQ(on(-1).air, 1.5);
    EXPECT_EQ(on(1).air, 1.5);
    EXPECT_NEAR(on(2).air, 1.5 + 0.2 * 3.5, 1e-12);
    EXPECT_NEAR(on(6).air, 5.0, 1e-12);
    EXPECT_NEAR(on(14).air, 5.0, 1e-12);
    // Days that are all alike say little of the days to come: never surer than the forecast.
    EXPECT_NEAR(on(6).logWind, std::log(1.35), 1e-12);
    EXPECT_EQ(on(6).cloud, 0.20);
}

TEST(MemberWeather, HoursAreTakenByDay) {
    Pond pond = scenario("grandfathers-pond");
    pond.weather.days.clear();
    for (int hour = 0; hour < 72; ++hour) {
        WeatherHour row;
        row.start = LocalTime(std::chrono::local_days(*pond.place.firstDay)) + std::chrono::hours(hour);
        row.air = 10.0 + 5.0 * (hour / 24) + (hour % 24 < 12 ? -3.0 : 3.0);  // means 10, 15 and 20
        row.wind = 3.0;
        row.cloud_percent = hour / 24 == 1 ? 100.0 : 0.0;
        pond.weather.hours.push_back(row);
    }
    const auto scatter = weatherScatter(pond, 6, 6);
    EXPECT_NEAR(scatter[0].air, 5.0, 1e-12);
    EXPECT_NEAR(scatter[0].cloud, std::sqrt(1.0 / 3.0), 1e-12);
    EXPECT_NEAR(scatter[0].logWind, std::log(1.35), 1e-12);
}

TEST(MemberWeather, ObservedWeatherHasNone) {
    Pond pond = scenario("grandfathers-pond");
    pond.weather.observed = true;
    const auto scatter = weatherScatter(pond, 0, 3);
    const std::vector<double> scores(12, 2.0);
    for (const WeatherOffset& offset : weatherOffsets(scatter, scores, 0.8)) {
        EXPECT_EQ(offset.air, 0.0);
        EXPECT_EQ(offset.windFactor, 0.8) << "sheltering is no weather";
        EXPECT_EQ(offset.cloud, 0.0);
    }
}

TEST(MemberWeather, AForcingIsSetOffAsItSays) {
    Forcing central;
    central.shortwave = 700.0;
    central.air = 25.0;
    central.vapourPressure = 0.6 * vapourPressure(25.0);
    central.wind10 = 2.0;
    central.cloud = 0.1;
    const PackOffset<double> day{0.0, 1.5, 0.4};
    const MemberForcing<double> member = memberForcing(central, day, 2.0);
    EXPECT_EQ(member.air, 27.0);
    EXPECT_EQ(member.wind10, 3.0);
    EXPECT_NEAR(member.cloud, 0.5, 1e-15);
    // FAO-56: 0.25 + 0.5 of the open share, 0.5 here and 0.9 before.
    EXPECT_NEAR(member.shortwave, 700.0 * 0.5 / 0.7, 1e-9);
    // The relative humidity stays, to what a tangent is off by over 2 degC.
    EXPECT_NEAR(member.vapourPressure / vapourPressure(27.0), 0.6, 0.002);
    const MemberForcing<double> clear = memberForcing(central, {0.0, 1.0, -0.5}, 0.0);
    EXPECT_EQ(clear.cloud, 0.0);
    EXPECT_EQ(memberForcing(central, {0.0, 1.0, 2.0}, 0.0).cloud, 1.0);
    const MemberForcing<double> same = memberForcing(central, {0.0, 1.0, 0.0}, 0.0);
    EXPECT_NEAR(same.shortwave, 700.0, 1e-12);
    EXPECT_EQ(same.vapourPressure, central.vapourPressure);
}

}  // namespace
}  // namespace engine
