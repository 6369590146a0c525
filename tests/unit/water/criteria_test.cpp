#include "engine/water/criteria.h"

#include "engine/base/error.h"

#include <gtest/gtest.h>

#include <limits>
#include <vector>

namespace {

using namespace engine;

TEST(Criteria, ShortSeriesAreNotJudgedOnLongMeans) {
    const OxygenLows none = oxygenLows({});
    EXPECT_FALSE(none.minimum);
    const std::vector<double> sixDays(7 * 24 - 1, 1.0);
    const OxygenLows lows = oxygenLows(sixDays);
    EXPECT_EQ(lows.minimum, 1.0);
    EXPECT_FALSE(lows.mean7Days || lows.meanMinimum7Days || lows.mean30Days);
    EXPECT_EQ(brokenCriteria(lows, epa1986(WaterKind::Warm, LifeStage::Other)),
              CriteriaBroken{.minimum = true});
}

TEST(Criteria, MeanMinimumTakesEachDaysLowestHour) {
    // Eight days at 8 with one low hour a day: 1, 2, ... 8. The worst seven days have minima 1 to 7.
    std::vector<double> hourly(8 * 24, 8.0);
    for (std::size_t day = 0; day < 8; ++day) {
        hourly[day * 24 + 5] = static_cast<double>(day + 1);
    }
    const OxygenLows lows = oxygenLows(hourly);
    EXPECT_DOUBLE_EQ(lows.meanMinimum7Days.value(), 4.0);
    EXPECT_DOUBLE_EQ(lows.minimum.value(), 1.0);
    EXPECT_DOUBLE_EQ(lows.mean7Days.value(), 8.0 - (7 + 6 + 5 + 4 + 3 + 2 + 1) / 168.0);
}

TEST(Criteria, HoursAfterTheLastWholeDayCountForTheMinimumAlone) {
    std::vector<double> hourly(7 * 24, 6.0);
    hourly.push_back(2.0);
    const OxygenLows lows = oxygenLows(hourly);
    EXPECT_EQ(lows.minimum, 2.0);
    EXPECT_EQ(lows.meanMinimum7Days, 6.0);
}

TEST(Criteria, RefusesWhatIsNoConcentration) {
    const std::vector<double> hourly = {5.0, std::numeric_limits<double>::quiet_NaN()};
    EXPECT_THROW((void)oxygenLows(hourly), ArgumentError);
}

}  // namespace
