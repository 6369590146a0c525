// What runs and rains into a pond.
#include "engine/ramps/inflow.h"

#include "engine/base/units.h"
#include "engine/run/run.h"
#include "engine/water/exchange.h"
#include "engine/water/water.h"
#include "tests/scenario.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

namespace engine::test {
namespace {

Inflow storm(const Pond& pond, double flow) {
    Inflow out;
    out.from = LocalTime(std::chrono::local_days(*pond.place.firstDay)) + std::chrono::hours(14);
    out.until = *out.from + std::chrono::hours(6);
    out.flow_lPerS = Quantity(flow);
    return out;
}

TEST(Inflow, RunsInItsHoursAndTakesWhatTheFileLeavesOutFromTheAir) {
    Pond pond = scenario("grandfathers-pond");
    pond.inflows = {storm(pond, 20.0)};
    Forcing now;
    now.air = 18.0;
    const InflowTable table(pond);
    EXPECT_EQ(table.at(13.9 * kHour, now).flow, 0.0);
    const InflowingWater water = table.at(14.5 * kHour, now);
    EXPECT_DOUBLE_EQ(water.flow, 0.02);
    EXPECT_EQ(water.temperature, 18.0);
    EXPECT_NEAR(water.oxygen, 9.4, 0.2) << "saturated at 18 degC";
    EXPECT_EQ(table.at(20.0 * kHour, now).flow, 0.0);
}

TEST(Inflow, SeveralAreMixed) {
    Pond pond = scenario("grandfathers-pond");
    pond.inflows = {storm(pond, 30.0), storm(pond, 10.0)};
    pond.inflows[0].temperature = Quantity(12.0);
    pond.inflows[1].temperature = Quantity(20.0);
    pond.inflows[1].organic = Quantity(8.0);
    const InflowingWater water = InflowTable(pond).at(15.0 * kHour, {});
    EXPECT_DOUBLE_EQ(water.flow, 0.04);
    EXPECT_DOUBLE_EQ(water.temperature, 14.0);
    EXPECT_DOUBLE_EQ(water.labile, 2.0);
}

TEST(Inflow, ADaysRainFallsEvenlyAndSnowIsColdWater) {
    Pond pond = scenario("grandfathers-pond");
    pond.weather.days.front().rain_mm = Quantity(24.0);
    const int day = dayNumber(pond, pond.weather.days.front().date);
    const WeatherSeries rain(pond, {}, day - 1, day + 1);
    const Forcing now = rain.at((day - 0.5) * kDay);
    EXPECT_NEAR(now.rain, 1e-3 / kHour, 1e-12) << "a millimetre an hour";
    EXPECT_LT(now.rainTemperature, now.air);
    EXPECT_GT(now.rainTemperature, 0.0);
    pond.weather.days.front().rain_mm.reset();
    pond.weather.days.front().snow_mm = Quantity(24.0);
    EXPECT_NEAR(WeatherSeries(pond, {}, day - 1, day + 1).at((day - 0.5) * kDay).rainTemperature, -79.7,
                1e-9);
    EXPECT_EQ(WeatherSeries(pond, {true}, day - 1, day + 1).at((day - 0.5) * kDay).rain, 0.0)
        << "a usual day";
}

/// A run with something changed.
template <class Change>
RampRun changed(const Change& change) {
    Pond pond = scenario("grandfathers-pond");
    change(pond);
    RunRequest request;
    request.days = 2;
    return runRamp(prepareUnbalanced(pond, {24, 600.0}), nullptr, request);
}

TEST(Inflow, BooksCloseWithIt) {
    const RampRun run = changed([](Pond& pond) {
        pond.inflows = {storm(pond, 60.0)};
        pond.inflows[0].temperature = Quantity(14.0);
        pond.inflows[0].organic = Quantity(10.0);
        for (WeatherDay& day : pond.weather.days) {
            day.rain_mm = Quantity(40.0);
        }
    });
    ASSERT_EQ(run.end, RunEnd::Completed);
    for (const BudgetRow& row : run.budget) {
        EXPECT_LE(std::fabs(row.closingError()), 1e-9 * row.throughput()) << row.day;
        const double moved = std::accumulate(row.organic.begin(), row.organic.end(), 0.0);
        EXPECT_LE(std::fabs(row.organicClosingError()), 1e-9 * moved) << row.day;
    }
    EXPECT_LE(std::fabs(run.debtClosing), 1e-9);
    EXPECT_GT(std::fabs(run.budget[1].terms[kInflow]), 0.0);
}

TEST(Inflow, ColdWaterSinksAndWarmWaterStaysOnTop) {
    const auto bottomAfter = [](double temperature) {
        const RampRun run = changed([&](Pond& pond) {
            pond.inflows = {storm(pond, 60.0)};
            pond.inflows[0].temperature = Quantity(temperature);
            pond.inflows[0].oxygen = Quantity(9.0);
        });
        return run.hours.back().bottom;
    };
    const double still = changed([](Pond&) {}).hours.back().bottom;
    EXPECT_GT(bottomAfter(10.0), still + 0.5);
    EXPECT_NEAR(bottomAfter(32.0), still, 0.2);
}

// Ho and others (1997): 10 mm/h add 6.6 cm/h at Schmidt number 600, 1.6 m a day.
TEST(Inflow, RainAiresTheSurface) {
    const double schmidt = schmidtOxygen(20.0);
    EXPECT_NEAR(pistonVelocityRain(20.0, 10e-3 / kHour) * kDay * std::sqrt(schmidt / 600.0), 1.6, 0.02);
    EXPECT_EQ(pistonVelocityRain(20.0, 0.0), 0.0);
    EXPECT_EQ(pistonVelocityRain(20.0, 1.0), pistonVelocityRain(20.0, 0.2 / kHour))
        << "no more than 200 mm/h";
}

}  // namespace
}  // namespace engine::test
