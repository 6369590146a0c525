#include "engine/run/usual_year.h"

#include "engine/run/constants_run.h"
#include "tests/scenario.h"
#include "tests/usual_month.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace engine {
namespace {

using test::scenario;

ClimateYear climateWith(double coldest, double warmest) {
    ClimateYear out;
    for (int i = 0; i < 12; ++i) {
        // January coldest, July warmest, evenly between.
        const double share = 1.0 - std::abs(i - 6) / 6.0, mean = coldest + share * (warmest - coldest);
        out.months[static_cast<std::size_t>(i)] = test::usualMonth(i + 1, mean - 5.0, mean + 5.0, 60.0 + i);
    }
    return out;
}

TEST(UsualYear, DaysGoEvenlyFromOneMiddleToTheNext) {
    const ClimateYear climate = climateWith(0.0, 24.0);
    const Date first = std::chrono::year(2026) / 12 / 15;
    const std::vector<WeatherDay> days = usualDays(climate, first, 32);
    ASSERT_EQ(days.size(), 32U);
    EXPECT_NEAR(days[0].airMin->value, climate.months[11].airMin->value, 1e-12);
    EXPECT_NEAR(days[31].airMin->value, climate.months[0].airMin->value, 1e-12) << "15 January";
    EXPECT_EQ(days[31].date, Date(std::chrono::year(2027) / 1 / 15));
    EXPECT_NEAR(days[16].airMax->value - days[15].airMax->value,
                (climate.months[0].airMax->value - climate.months[11].airMax->value) / 31.0, 1e-12);
    EXPECT_EQ(days[16].humidity_percent->value, 71.0) << "31 December has December's";
    EXPECT_EQ(days[17].humidity_percent->value, 60.0);
}

TEST(UsualYear, RunsFromTheThawToTheFrostAndLeavesTheIceOut) {
    const PondModel model = prepare(scenario("grandfathers-pond"), {16, 900.0});
    const std::vector<MonthState> months = usualYear(model, climateWith(-6.0, 27.0), {});
    ASSERT_EQ(months.size(), 12U);
    EXPECT_TRUE(months[0].isIcy);
    EXPECT_FALSE(months[3].isIcy);
    EXPECT_FALSE(months[10].isIcy);
    const MonthState &april = months[3], &july = months[6];
    EXPECT_GT(july.profile.temperature.front(), april.profile.temperature.front() + 5.0);
    // Summer lies in layers and its bottom is without oxygen.
    EXPECT_FALSE(july.isAired);
    EXPECT_LT(july.profile.oxygen.back(), 0.5);
    EXPECT_GT(july.profile.temperature.front(), july.profile.temperature.back() + 2.0);
    EXPECT_GT(july.debt, 0.0);
    for (const MonthState& month : months) {
        for (std::size_t i = 0; i < month.profile.oxygen.size(); ++i) {
            EXPECT_GE(month.profile.oxygen[i], 0.0);
            EXPECT_LT(month.profile.temperature[i], 40.0);
        }
    }
}

TEST(UsualYear, WithoutFrostThereIsAStateOfEveryMonth) {
    const PondModel model = prepare(scenario("new-clay"), {12, 1800.0});
    for (const MonthState& month : usualYear(model, climateWith(8.0, 26.0), {})) {
        EXPECT_FALSE(month.isIcy) << month.month;
        EXPECT_FALSE(month.profile.depth.empty()) << month.month;
    }
}

TEST(UsualYear, AFrozenYearHasNoOpenWater) {
    const PondModel model = prepare(scenario("new-clay"), {12, 1800.0});
    for (const MonthState& month : usualYear(model, climateWith(-20.0, -2.0), {})) {
        EXPECT_TRUE(month.isIcy) << month.month;
    }
}

TEST(UsualYear, OnTheDayOfItsProfileTheDebtIsThePondsWithinTheBound) {
    const Pond pond = scenario("grandfathers-pond");
    const ClimateYear climate = climateWith(-6.0, 27.0);
    const auto julyDebt = [&](double factor) {
        Pond more = pond;
        more.bottom.oxygenDebt = Quantity(factor * pond.bottom.oxygenDebt->value);
        return usualYear(prepareUnbalanced(more, {16, 900.0}), climate, {})[6].debt;
    };
    const double one = julyDebt(1.0);
    ASSERT_GT(one, 0.0);
    EXPECT_NEAR(julyDebt(1.2), 1.2 * one, 1e-9 * one);
    EXPECT_EQ(julyDebt(1000.0), julyDebt(2000.0)) << "no further than the bound";
}

TEST(UsualYear, APondInAMonthForgetsWhatWasReadOnOtherDays) {
    Pond pond = scenario("grandfathers-pond");
    Reading reading;
    reading.at = LocalTime(std::chrono::local_days(*pond.place.firstDay));
    pond.readings = {reading};
    const ClimateYear climate = climateWith(-6.0, 27.0);
    const std::vector<MonthState> months = usualYear(prepareUnbalanced(pond, {12, 1800.0}), climate, {});
    const Pond july = inMonth(pond, climate, months[6], 20);
    EXPECT_EQ(*july.place.firstDay, Date(pond.place.firstDay->year() / 7 / 15));
    EXPECT_TRUE(july.readings.empty());
    EXPECT_EQ(july.profile, months[6].profile);
    EXPECT_EQ(july.bottom.oxygenDebt->value, months[6].debt);
    EXPECT_NEAR(*july.bottom.oxygenDebt->high, kYearDebtBand.value * months[6].debt, 1e-12);
    EXPECT_LT(july.weather.days.front().date, *july.place.firstDay);
    EXPECT_GE(july.weather.days.back().date,
              Date(std::chrono::local_days(*july.place.firstDay) + std::chrono::days(19)));
}

}  // namespace
}  // namespace engine
