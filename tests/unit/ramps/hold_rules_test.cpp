#include "engine/ramps/hold_rules.h"

#include "engine/pond/local_time.h"
#include "engine/ramps/weather.h"
#include "tests/scenario.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace engine {
namespace {

using test::scenario;

/// Fair days from 1 to `count`, of which a test spoils one.
std::vector<OutlookDay> fairDays(int count) {
    std::vector<OutlookDay> days;
    for (int day = 0; day <= count; ++day) {
        days.push_back({day, 26.0, 3.0, 20.0});
    }
    return days;
}

std::vector<int> heldDays(const std::vector<HoldDay>& held, HoldReason reason) {
    std::vector<int> days;
    for (const HoldDay& one : held) {
        if (std::find(one.reasons.begin(), one.reasons.end(), reason) != one.reasons.end()) {
            days.push_back(one.day);
        }
    }
    return days;
}

using Days = std::vector<int>;

TEST(HoldRules, FairDaysHoldNothing) {
    EXPECT_TRUE(heldByRules(fairDays(8), 24.0, {}, {}).empty());
    EXPECT_TRUE(holdCalendar(scenario("new-clay")).empty());
}

TEST(HoldRules, EachRuleHoldsTheDaysBeforeWhatItFears) {
    auto days = fairDays(8);
    days[5].cloud_percent = 90.0;
    EXPECT_TRUE(heldByRules(days, 24.0, {}, {}).empty()) << "one dull day is none";
    days[6].cloud_percent = 90.0;
    EXPECT_EQ(heldDays(heldByRules(days, 24.0, {}, {}), HoldReason::DullDays), (Days{4, 5}));

    days = fairDays(8);
    days[5].airMax = 35.0;
    EXPECT_EQ(heldDays(heldByRules(days, 24.0, {}, {}), HoldReason::Heat), (Days{3, 4, 5}));
    EXPECT_EQ(heldDays(heldByRules(fairDays(8), 30.0, {}, {}), HoldReason::Heat), (Days{1}))
        << "of the water only today is known";

    days = fairDays(8);
    days[5].wind = 1.0;
    EXPECT_TRUE(heldByRules(days, 24.0, {}, {}).empty()) << "calm alone does not hold";
    days[5].airMax = 30.0;
    EXPECT_EQ(heldDays(heldByRules(days, 24.0, {}, {}), HoldReason::CalmHeat), (Days{3, 4, 5}));

    days = fairDays(8);
    days[5].airMax = 20.0;
    EXPECT_TRUE(heldByRules(days, 24.0, {}, {}).empty()) << "a dry fall is no front";
    days[5].cloud_percent = 80.0;
    const auto front = heldByRules(days, 24.0, {}, {});
    EXPECT_EQ(heldDays(front, HoldReason::ColdFront), (Days{3, 4}));
    EXPECT_EQ(heldDays(front, HoldReason::SharpFall), (Days{5}));
}

TEST(HoldRules, AlgaecideHoldsTwoWeeksAndNotLongerAndThreeIfHeavy) {
    const std::vector<HeldSpan> treated{{-10, 14, HoldReason::Algaecide}};
    EXPECT_EQ(heldDays(heldByRules(fairDays(8), 24.0, treated, {}), HoldReason::Algaecide), (Days{1, 2, 3}));
    Pond pond = scenario("grandfathers-pond");
    pond.events.clear();
    Event& copper = pond.events.emplace_back();
    copper.at = parseLocalTime("2026-06-14 12:00");
    copper.kind = "treatment";
    copper.what = "copper";
    copper.area_percent = Quantity(25.0);
    const auto daysHeld = [&](const HoldRules& rules) { return heldByEvents(pond, rules).at(0).days; };
    EXPECT_EQ(daysHeld({}), 14);
    EXPECT_EQ(heldByEvents(pond).at(0).first, 1);
    copper.area_percent = Quantity(60.0);
    EXPECT_EQ(daysHeld({}), 21);
    copper.area_percent.reset();
    EXPECT_EQ(daysHeld({}), 21) << "without an area it is the whole pond";
    HoldRules own;
    own.heavyAlgaecide_d = 28;
    EXPECT_EQ(daysHeld(own), 28) << "the table is editable";
    copper.what = "dye";
    EXPECT_TRUE(heldByEvents(pond).empty());
}

TEST(HoldRules, ABloomThatChangesItsColourHoldsThreeDays) {
    Pond pond = scenario("grandfathers-pond");
    pond.events.clear();
    Event& change = pond.events.emplace_back();
    change.at = parseLocalTime("2026-06-15 12:00");
    change.kind = "bloom_change";
    EXPECT_EQ(heldDays(heldByRules(fairDays(8), 24.0, heldByEvents(pond), {}), HoldReason::BloomChange),
              (Days{2, 3, 4}));
}

TEST(HoldRules, WhatIsNotKnownHoldsNothing) {
    std::vector<OutlookDay> days(3);
    for (int i = 0; i < 3; ++i) {
        days[static_cast<std::size_t>(i)].day = i + 1;
    }
    EXPECT_TRUE(heldByRules(days, 24.0, {}, {}).empty());
}

TEST(HoldRules, APondFilesOwnDaysTakeTheRulesPlace) {
    Pond pond = scenario("grandfathers-pond");
    ASSERT_FALSE(holdCalendar(pond).empty()) << "overcast on day 4, calm heat on day 5, a storm on day 6";
    pond.weather.holdDays = {dateOfDay(pond, 3)};
    EXPECT_EQ(holdDays(pond), (Days{3}));
}

/// Eight days of the headline pond under a ramp that heeds the weather.
RampRun heedingRun(Ramp ramp) {
    ramp.weatherHold = true;
    Pond pond = scenario("grandfathers-pond");
    pond.ramps = {ramp};
    RunRequest request;
    request.days = 8;
    return runRamp(prepareUnbalanced(pond, {12, 1800.0}), &pond.ramps.front(), request);
}

TEST(HoldRules, ARampThatHeedsTheWeatherSkipsThem) {
    const std::vector<int> held = holdDays(scenario("grandfathers-pond"));
    for (const DayRow& day : heedingRun(test::minutesEachDay(60.0)).days) {
        const bool isHeld = std::find(held.begin(), held.end(), day.day) != held.end();
        EXPECT_NEAR(day.runMinutes, isHeld ? 0.0 : 60.0, 1e-6) << "day " << day.day;
    }
}

TEST(HoldRules, SoDoesOneThatIsHeldToADose) {
    const std::vector<int> held = holdDays(scenario("grandfathers-pond"));
    ASSERT_FALSE(held.empty());
    for (const DayRow& day : heedingRun(test::cappedRamp(5.0, true)).days) {
        const bool isHeld = std::find(held.begin(), held.end(), day.day) != held.end();
        EXPECT_EQ(day.runMinutes == 0.0, isHeld) << "day " << day.day;
    }
}

}  // namespace
}  // namespace engine
