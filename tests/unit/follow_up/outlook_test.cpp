#include "engine/follow_up/outlook.h"

#include "tests/made_up_comparison.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace engine {
namespace {

using namespace std::chrono_literals;

/// A pond with daily weather of 14 and 15 June 2026.
Pond twoDays() {
    return test::madeUpComparison().model.pond;
}

LocalTime at(unsigned day, int hour) {
    return LocalTime(std::chrono::local_days(Date(2026y / 6 / std::chrono::day(day)))) +
           std::chrono::hours(hour);
}

const WeatherDay& rowOf(const Pond& pond, unsigned day) {
    const Date date(2026y / 6 / std::chrono::day(day));
    return *std::find_if(pond.weather.days.begin(), pond.weather.days.end(),
                         [date](const WeatherDay& row) { return row.date == date; });
}

TEST(Outlook, ChangesCloudOfTodayAndTomorrowAndWindOnlyIfCalm) {
    const Pond pond = twoDays();
    const Pond clear = withOutlook(pond, Outlook::Clear, at(14, 6));
    EXPECT_EQ(rowOf(clear, 14).cloud_percent->value, 10.0);
    EXPECT_EQ(rowOf(clear, 15).cloud_percent->value, 10.0);
    EXPECT_EQ(rowOf(clear, 15).wind->value, 1.5) << "as the table has it";
    EXPECT_TRUE(rowOf(clear, 15).forecast);
    EXPECT_EQ(rowOf(withOutlook(pond, Outlook::HalfCloudy, at(14, 6)), 14).cloud_percent->value, 50.0);
    EXPECT_EQ(rowOf(withOutlook(pond, Outlook::Dull, at(14, 6)), 14).cloud_percent->value, 95.0);
    const Pond calm = withOutlook(pond, Outlook::DullAndCalm, at(14, 6));
    EXPECT_EQ(rowOf(calm, 14).cloud_percent->value, 95.0);
    EXPECT_EQ(rowOf(calm, 14).wind->value, 1.0);
    EXPECT_TRUE(withOutlook(pond, Outlook::AsTheTable, at(14, 6)) == pond);
}

TEST(Outlook, ADayWithoutARowTakesTheNearestOne) {
    const Pond pond = twoDays();
    const std::size_t rows = pond.weather.days.size();
    const Pond dull = withOutlook(pond, Outlook::Dull, at(15, 6));
    const Date last = pond.weather.days.back().date;
    const Pond later =
        withOutlook(pond, Outlook::Dull, LocalTime(std::chrono::local_days(last)) + std::chrono::hours(6));
    EXPECT_EQ(later.weather.days.size(), rows + 1);
    EXPECT_EQ(later.weather.days.back().airMax->value, pond.weather.days.back().airMax->value);
    EXPECT_EQ(later.weather.days.back().cloud_percent->value, 95.0);
    EXPECT_EQ(rowOf(dull, 14).cloud_percent->value, 10.0) << "yesterday stays";
}

TEST(Outlook, WithoutDaysThereIsNothingToChange) {
    Pond pond = twoDays();
    pond.weather.days.clear();
    EXPECT_TRUE(withOutlook(pond, Outlook::Clear, at(14, 6)) == pond);
}

}  // namespace
}  // namespace engine
