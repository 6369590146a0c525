#include "engine/ramps/schedule.h"

#include "engine/base/units.h"

#include <gtest/gtest.h>

#include <vector>

namespace {

using namespace engine;

Aerator twoDiffusers() {
    Aerator aerator;
    aerator.diffusers = 2.0;
    aerator.depth = 3.0;
    return aerator;
}

Ramp ramp(RampKind kind) {
    Ramp out;
    out.kind = kind;
    return out;
}

Ramp doubling(double first) {
    Ramp out = ramp(RampKind::Doubling);
    out.first_min = first;
    return out;
}

Ramp table(std::vector<double> minutes) {
    Ramp out = ramp(RampKind::Table);
    out.minutes = std::move(minutes);
    return out;
}

constexpr int kDays = 14;
constexpr double kEnd = kDays * kDay + kDay / 2;

struct Made {
    Schedule schedule;
    double cut = 0.0;
    explicit Made(const Ramp& r, const std::vector<int>& hold = {}) {
        schedule = scheduleOf(r, twoDiffusers(), kDays + 1, kEnd, hold, cut);  // to noon after the last day
    }
    [[nodiscard]] double minutesOn(int day) const {
        return runningBetween(schedule, (day - 1) * kDay, day * kDay) / kMinute;
    }
    [[nodiscard]] std::optional<int> continuous() const { return daysToContinuous(schedule, kEnd); }
};

double clock(int day, double hour) {
    return (day - 1) * kDay + hour * kHour;
}

TEST(Schedule, RuleMinutes) {
    const std::vector<int> wanted = {30, 60, 120, 240, 480, 960, 1440, 1440};
    for (int day = 1; day <= 8; ++day) {
        EXPECT_EQ(ruleMinutes(doubling(30), day), wanted[day - 1]) << day;
    }
    Ramp slower = doubling(30);
    slower.factor = 1.5;
    EXPECT_EQ(ruleMinutes(slower, 2), 45);
    EXPECT_EQ(ruleMinutes(slower, 3), 68);  // 67.5
    Ramp linear = ramp(RampKind::Linear);
    linear.first_min = 20.0;
    linear.add_minPerDay = 40.0;
    EXPECT_EQ(ruleMinutes(linear, 1), 20);
    EXPECT_EQ(ruleMinutes(linear, 5), 180);
    EXPECT_EQ(ruleMinutes(linear, 100), 1440);
    EXPECT_EQ(ruleMinutes(ramp(RampKind::Continuous), 1), 1440);
    EXPECT_EQ(ruleMinutes(table({120, 720}), 1), 120);
    EXPECT_EQ(ruleMinutes(table({120, 720}), 2), 720);
    EXPECT_EQ(ruleMinutes(table({120, 720}), 9), 720);  // keeps its last value
}

// The trade's rule, common practice: 30 minutes doubled daily runs without a break from day 7, 20 minutes
// from day 8.
TEST(Schedule, DoublingTurnsContinuous) {
    EXPECT_EQ(Made(doubling(30)).continuous(), 7);
    EXPECT_EQ(Made(doubling(20)).continuous(), 8);
    EXPECT_EQ(Made(ramp(RampKind::Continuous)).continuous(), 1);
    EXPECT_EQ(Made(table({120, 720, 1440})).continuous(), 3);
    EXPECT_EQ(Made(table({120, 720})).continuous(), std::nullopt);
    EXPECT_EQ(daysToContinuous({}, kEnd), std::nullopt);
}

TEST(Schedule, StartsAtTenUnlessTold) {
    EXPECT_EQ(Made(doubling(30)).schedule.front(), (RunBlock{clock(1, 10), clock(1, 10.5), 2, 3.0, 1}));
    Ramp evening = doubling(30);
    evening.startTime = ClockTime{20 * 60};
    EXPECT_EQ(Made(evening).schedule.front().start, clock(1, 20));
    EXPECT_EQ(Made(ramp(RampKind::Continuous)).schedule.front().start, clock(1, 10));
}

// A run belongs to the day it starts on and may end after midnight; minutes that ran go by the calendar.
TEST(Schedule, RunsPassMidnight) {
    const Made made(doubling(30));
    EXPECT_EQ(made.minutesOn(6), 840);  // 960 from 10:00 to 02:00
    EXPECT_EQ(made.minutesOn(7), 120 + 840);
    EXPECT_EQ(made.minutesOn(8), 1440);
    EXPECT_EQ(made.schedule[5], (RunBlock{clock(6, 10), clock(7, 2), 2, 3.0, 6}));
    EXPECT_EQ(made.schedule.back(), (RunBlock{clock(7, 10), kEnd, 2, 3.0, 7}));
}

TEST(Schedule, PulsesSpreadOverTheDay) {
    Ramp pulsed = table({120});
    pulsed.pulses = ByDay{{4}, false};
    const Schedule schedule = Made(pulsed).schedule;
    for (int k = 0; k < 4; ++k) {
        EXPECT_EQ(schedule[k].start, clock(1, 10 + 6 * k)) << k;
        EXPECT_EQ(schedule[k].end, clock(1, 10.5 + 6 * k)) << k;
        EXPECT_EQ(schedule[k].day, 1) << k;
    }
}

TEST(Schedule, PulsesSpreadOverTheWindow) {
    Ramp pulsed = table({60});
    pulsed.pulses = ByDay{{3}, false};
    pulsed.window = ClockWindow{{10 * 60}, {16 * 60}};
    const Made made(pulsed);
    for (int k = 0; k < 3; ++k) {
        EXPECT_NEAR(made.schedule[k].start, clock(1, 10 + 2 * k), 1e-6) << k;
        EXPECT_NEAR(made.schedule[k].end, clock(1, 10 + 2 * k + 1.0 / 3.0), 1e-6) << k;
    }
    EXPECT_EQ(made.cut, 0.0);
}

TEST(Schedule, PulsesOfAWholeDayAreContinuous) {
    Ramp pulsed = ramp(RampKind::Continuous);
    pulsed.pulses = ByDay{{6}, false};
    EXPECT_EQ(Made(pulsed).continuous(), 1);
    EXPECT_EQ(Made(pulsed).schedule.size(), 1u);
}

TEST(Schedule, WindowCutsAndSaysSo) {
    Ramp cut = ramp(RampKind::Continuous);
    cut.window = ClockWindow{{10 * 60}, {16 * 60}};
    const Made made(cut);
    EXPECT_EQ(made.minutesOn(3), 360);
    EXPECT_EQ(made.cut, (kDays + 1) * 1080.0);
    EXPECT_EQ(made.continuous(), std::nullopt);
    cut.startTime = ClockTime{14 * 60};
    EXPECT_EQ(Made(cut).minutesOn(3), 120);
}

TEST(Schedule, WindowOverMidnight) {
    Ramp night = table({300, 1440});
    night.window = ClockWindow{{22 * 60}, {6 * 60}};
    const Made made(night);
    EXPECT_EQ(made.schedule[0], (RunBlock{clock(1, 22), clock(2, 3), 2, 3.0, 1}));
    EXPECT_EQ(made.schedule[1], (RunBlock{clock(2, 22), clock(3, 6), 2, 3.0, 2}));
}

TEST(Schedule, HoldDaysWait) {
    const Made made(doubling(30), {2, 3});
    EXPECT_EQ(made.minutesOn(1), 30);
    EXPECT_EQ(made.minutesOn(2), 0);
    EXPECT_EQ(made.minutesOn(3), 0);
    EXPECT_EQ(made.minutesOn(4), 60);
    EXPECT_EQ(made.continuous(), 9);
}

TEST(Schedule, DiffusersAndDepthByDay) {
    Ramp stepping = ramp(RampKind::Continuous);
    stepping.diffusers = ByDay{{1, 2}, true};
    stepping.depth = ByDay{{1.5, 2.0, 3.0}, true};
    const Made made(stepping);
    ASSERT_EQ(made.schedule.size(), 3u);
    EXPECT_EQ(made.schedule[0], (RunBlock{clock(1, 10), clock(2, 10), 1, 1.5, 1}));
    EXPECT_EQ(made.schedule[1], (RunBlock{clock(2, 10), clock(3, 10), 2, 2.0, 2}));
    EXPECT_EQ(made.schedule[2], (RunBlock{clock(3, 10), kEnd, 2, 3.0, 3}));
    EXPECT_EQ(made.continuous(), 1);  // blocks that meet are one run
    stepping.diffusers = ByDay{{0, 2}, true};
    EXPECT_EQ(Made(stepping).continuous(), 2);
}

TEST(Schedule, JoinsWhatMeets) {
    const Schedule parts = {
        {0, 10, 2, 3.0, 1}, {10, 20, 2, 3.0, 2}, {15, 30, 1, 3.0, 3}, {40, 50, 1, 3.0, 4}};
    const Schedule wanted = {{0, 15, 2, 3.0, 1}, {15, 30, 1, 3.0, 3}, {40, 50, 1, 3.0, 4}};
    EXPECT_EQ(joined(parts), wanted);
    EXPECT_EQ(runningBetween(wanted, 5, 45), 30.0);
}

TEST(Schedule, ARuleKnowsItsOwnLength) {
    Ramp ramp;
    EXPECT_EQ(ruleLength(ramp), 1);
    ramp.kind = RampKind::Doubling;
    ramp.first_min = 30.0;
    EXPECT_EQ(ruleLength(ramp), 7);  // 30, 60, 120, 240, 480, 960, 1440
    ramp.kind = RampKind::Table;
    ramp.minutes = {30, 60, 90};
    EXPECT_EQ(ruleLength(ramp), 3);
    ramp.kind = RampKind::Linear;
    ramp.add_minPerDay = 1.0;
    EXPECT_EQ(ruleLength(ramp), kLongestRamp);
}

}  // namespace
