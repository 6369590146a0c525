#include "engine/plan/start_calendar.h"

#include "engine/intake/usual_ramp.h"
#include "tests/scenario.h"
#include "tests/usual_month.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace engine {
namespace {

using test::scenario;

MonthOfStart monthOf(int year, unsigned month, bool mayStart) {
    MonthOfStart out;
    out.from = Date(std::chrono::year(year) / std::chrono::month(month) / 15);
    if (!mayStart) {
        out.unmet = {{StartCondition::LethalWith, 20.0, 5.0, 0}};
    }
    return out;
}

/// Hot summers, frost from December to February.
void setClimate(Pond& pond) {
    const double means[] = {-4.0, -1.0, 6.0, 13.0, 18.0, 24.0, 27.0, 26.0, 21.0, 14.0, 7.0, -2.0};
    pond.climate.months.clear();
    for (int i = 0; i < 12; ++i) {
        pond.climate.months.push_back(test::usualMonth(i + 1, means[i] - 6.0, means[i] + 6.0));
    }
}

CalendarOptions coarse(int members) {
    CalendarOptions options;
    options.members = members;
    options.resolution = {16, 900.0};
    return options;
}

TEST(StartCalendar, AWindowIsTheNextMonthsInARow) {
    StartCalendar calendar;
    calendar.months = {monthOf(2026, 6, true),  monthOf(2026, 7, false),  monthOf(2026, 10, true),
                       monthOf(2026, 11, true), monthOf(2026, 12, false), monthOf(2027, 4, true)};
    const Date today = std::chrono::year(2026) / 6 / 14;
    const auto window = nextWindow(calendar, today);
    ASSERT_TRUE(window);
    EXPECT_EQ(window->from, Date(std::chrono::year(2026) / 10 / 1)) << "June has begun before today";
    EXPECT_EQ(window->until, Date(std::chrono::year(2026) / 11 / 30));
    calendar.months.resize(2);
    EXPECT_FALSE(nextWindow(calendar, today));
    calendar.months[1].isIcy = true;
    calendar.months[1].unmet.clear();
    EXPECT_FALSE(nextWindow(calendar, today)) << "ice is not computed";
}

TEST(StartCalendar, EachMonthIsAPondOfItsOwn) {
    Pond pond = scenario("grandfathers-pond");
    setClimate(pond);
    const PondModel model = prepare(pond, {16, 900.0});
    const StartCalendar calendar =
        startCalendar(model, usualRamp(RampKind::Continuous, "at once"), coarse(1));
    ASSERT_EQ(calendar.months.size(), 12U);
    EXPECT_EQ(calendar.origin, ClimateOrigin::Months);
    EXPECT_EQ(calendar.months.front().from, Date(std::chrono::year(2026) / 6 / 15))
        << "the next middle of a month comes first";
    EXPECT_TRUE(std::is_sorted(calendar.months.begin(), calendar.months.end(),
                               [](const auto& a, const auto& b) { return a.from < b.from; }));
    for (const MonthOfStart& month : calendar.months) {
        const auto number = static_cast<unsigned>(month.from.month());
        EXPECT_EQ(month.isIcy, number == 12 || number <= 2) << number;
        if (month.isIcy) {
            continue;
        }
        // An old and mucky pond lies in layers over debt in summer and has turned over by November.
        if (number >= 6 && number <= 8) {
            EXPECT_FALSE(month.isAired) << number;
            EXPECT_GT(month.debt, 2.0) << number;
            EXPECT_FALSE(month.mayStart()) << number;
            EXPECT_LT(month.lowest, month.alone) << number;
        }
        if (number == 11) {
            EXPECT_TRUE(month.isAired);
            EXPECT_LT(month.debt, 0.2);
            EXPECT_GT(month.lowest, month.alone - 0.5);
        }
    }
}

TEST(StartCalendar, IsTheSameOnAnyNumberOfThreads) {
    Pond pond = scenario("new-clay");
    setClimate(pond);
    const PondModel model = prepare(pond, {12, 1800.0});
    const Ramp ramp = usualRamp(RampKind::Doubling, "doubling");
    CalendarOptions options = coarse(8);
    options.resolution = {12, 1800.0};
    options.threads = 1;
    const StartCalendar one = startCalendar(model, ramp, options);
    options.threads = 3;
    const StartCalendar three = startCalendar(model, ramp, options);
    ASSERT_EQ(one.months.size(), three.months.size());
    for (std::size_t i = 0; i < one.months.size(); ++i) {
        EXPECT_EQ(one.months[i].lowest, three.months[i].lowest);
        EXPECT_EQ(one.months[i].lethal, three.months[i].lethal);
        EXPECT_EQ(one.months[i].unmet.size(), three.months[i].unmet.size());
    }
}

TEST(StartCalendar, AStopLeavesNoHalfOfIt) {
    Pond pond = scenario("new-clay");
    setClimate(pond);
    std::stop_source source;
    source.request_stop();
    EXPECT_TRUE(startCalendar(prepareUnbalanced(pond, {12, 1800.0}),
                              usualRamp(RampKind::Doubling, "doubling"), coarse(1), source.get_token())
                    .months.empty());
}

}  // namespace
}  // namespace engine
