#include "engine/ramps/log.h"

#include "engine/base/units.h"
#include "engine/follow_up/log_chain.h"
#include "engine/pond/local_time.h"

#include <gtest/gtest.h>

namespace engine {
namespace {

LocalTime at(const char* text) {
    return *parseLocalTime(text);
}

Pond pondOfJune() {
    Pond pond;
    pond.place.firstDay = parseDate("2026-06-14");
    pond.aerator.emplace();
    pond.aerator->diffusers = Quantity(2.0);
    pond.aerator->depth = Quantity(3.0);
    Ramp doubling;
    doubling.name = "doubling";
    doubling.kind = RampKind::Doubling;
    doubling.first_min = Quantity(30.0);
    pond.ramps = {doubling};
    return pond;
}

Event event(const char* when, const char* kind) {
    Event out;
    out.at = at(when);
    out.kind = kind;
    return out;
}

Reading reading(const char* when, double oxygen, double depth = 0.5) {
    Reading out;
    out.at = at(when);
    out.depth = Quantity(depth);
    out.oxygen = Quantity(oxygen);
    return out;
}

double minutesOnDay(const Schedule& schedule, int day) {
    return runningBetween(schedule, (day - 1) * kDay, day * kDay) / kMinute;
}

TEST(Log, ARampRunsFromItsStartOn) {
    Pond pond = pondOfJune();
    pond.events = {event("2026-06-16 09:00", "started")};
    const LoggedAir air = airOfLog(pond, nullptr, 10, 10.5 * kDay);
    EXPECT_TRUE(air.isStarted);
    EXPECT_EQ(air.firstDay, 3);
    EXPECT_EQ(minutesOnDay(air.schedule, 2), 0.0);
    EXPECT_NEAR(minutesOnDay(air.schedule, 3), 30.0, 1e-9);
    EXPECT_NEAR(minutesOnDay(air.schedule, 5), 120.0, 1e-9);
}

TEST(Log, WithoutAStartNothingRuns) {
    EXPECT_TRUE(airOfLog(pondOfJune(), nullptr, 10, 10.5 * kDay).schedule.empty());
}

TEST(Log, ARunStandsForItsDay) {
    Pond pond = pondOfJune();
    Event run = event("2026-06-15 12:00", "run");
    run.minutes = Quantity(45.0);
    run.diffusers = Quantity(1.0);
    pond.events = {event("2026-06-14 09:00", "started"), run};
    const LoggedAir air = airOfLog(pond, nullptr, 10, 10.5 * kDay);
    EXPECT_NEAR(minutesOnDay(air.schedule, 1), 30.0, 1e-9);
    EXPECT_NEAR(minutesOnDay(air.schedule, 2), 45.0, 1e-9);
    EXPECT_NEAR(minutesOnDay(air.schedule, 3), 120.0, 1e-9);
    EXPECT_EQ(air.schedule[1].open, 1);
}

TEST(Log, StopsAndPowerCutsEndWhatRuns) {
    Pond pond = pondOfJune();
    pond.events = {event("2026-06-14 09:00", "started"), event("2026-06-15 10:20", "power_cut"),
                   event("2026-06-16 12:00", "power_back"), event("2026-06-17 10:30", "stopped")};
    const LoggedAir air = airOfLog(pond, nullptr, 10, 10.5 * kDay);
    EXPECT_NEAR(minutesOnDay(air.schedule, 2), 20.0, 1e-9);  // of 60
    EXPECT_NEAR(minutesOnDay(air.schedule, 3), 0.0, 1e-9);   // its two hours were over by noon
    EXPECT_NEAR(minutesOnDay(air.schedule, 4), 30.0, 1e-9);
    EXPECT_EQ(minutesOnDay(air.schedule, 5), 0.0);
    EXPECT_EQ(air.stoppedSince, 3.0 * kDay + 10.5 * kHour);
}

TEST(Log, AStartedEventOverridesTheChosenRamp) {
    Pond pond = pondOfJune();
    pond.ramps.push_back(pond.ramps.front());
    pond.ramps.back().name = "other";
    EXPECT_EQ(rampMeant(pond), nullptr);  // of two none is chosen
    pond.chosenRamp = "doubling";
    EXPECT_EQ(rampMeant(pond)->name, "doubling");
    pond.events = {event("2026-06-14 09:00", "started")};
    EXPECT_EQ(rampMeant(pond)->name, "doubling");
    pond.events[0].note = "other";
    EXPECT_EQ(rampMeant(pond)->name, "other");
    pond.events[0].ramp = "doubling";
    EXPECT_EQ(rampMeant(pond)->name, "doubling");
}

TEST(Log, ACorrectionIsANewEntryAndTheOldOneStays) {
    Pond pond = pondOfJune();
    pond.readings = {reading("2026-06-15 05:40", 8.1), reading("2026-06-14 05:40", 6.0),
                     reading("2026-06-15 05:40", 7.0, 1.5)};
    Reading corrected = reading("2026-06-15 05:40", 5.1);
    corrected.corrects = corrected.at;
    pond.readings.push_back(corrected);
    const std::vector<Reading> inForce = readingsInForce(pond);
    ASSERT_EQ(inForce.size(), 3U);
    EXPECT_EQ(inForce[0].oxygen, Quantity(6.0));  // in the order of time
    EXPECT_EQ(pond.readings.size(), 4U);
    const bool hasOld = std::any_of(inForce.begin(), inForce.end(),
                                    [](const Reading& one) { return one.oxygen == Quantity(8.1); });
    EXPECT_FALSE(hasOld);
}

TEST(Log, ACorrectionOfACorrectionCountsAndNothingElseOfThatTime) {
    Pond pond = pondOfJune();
    pond.readings = {reading("2026-06-15 05:40", 8.1)};
    for (const double right : {5.1, 5.3}) {
        Reading corrected = reading("2026-06-15 05:40", right);
        corrected.corrects = corrected.at;
        pond.readings.push_back(corrected);
    }
    const std::vector<Reading> inForce = readingsInForce(pond);
    ASSERT_EQ(inForce.size(), 1U);
    EXPECT_EQ(inForce[0].oxygen, Quantity(5.3));
}

TEST(Log, WhatWasNotKnownIsNotUsed) {
    Pond pond = pondOfJune();
    pond.weather.observed = true;
    for (const char* date : {"2026-06-14", "2026-06-15", "2026-06-16"}) {
        WeatherDay day;
        day.date = *parseDate(date);
        day.airMin = Quantity(10.0);
        day.airMax = Quantity(20.0);
        day.wind = day.cloud_percent = day.humidity_percent = Quantity(50.0);
        pond.weather.days.push_back(day);
    }
    WeatherDay forecast = pond.weather.days[2];
    forecast.knownAt = at("2026-06-15 07:00");
    forecast.forecast = true;
    forecast.airMax = Quantity(33.0);
    pond.weather.days[2].knownAt = at("2026-06-16 20:00");
    pond.weather.days.insert(pond.weather.days.begin() + 2, forecast);
    pond.readings = {reading("2026-06-15 05:40", 8.1), reading("2026-06-16 05:40", 7.0)};
    pond.events = {event("2026-06-16 10:00", "started")};

    const Pond early = knownAt(pond, at("2026-06-15 06:00"));
    EXPECT_EQ(early.readings.size(), 1U);
    EXPECT_TRUE(early.events.empty());
    ASSERT_EQ(early.weather.days.size(), 1U);  // not even the day's own, which is not over
    const Pond later = knownAt(pond, at("2026-06-15 19:00"));
    ASSERT_EQ(later.weather.days.size(), 3U);
    EXPECT_EQ(later.weather.days[2].airMax, Quantity(33.0));  // the forecast
    const Weather all = weatherKnownAt(pond, std::nullopt);
    ASSERT_EQ(all.days.size(), 3U);
    EXPECT_EQ(all.days[2].airMax, Quantity(20.0));  // what came
}

TEST(LogChain, TheHeadShowsChangeAndAllowsAdding) {
    Pond pond = pondOfJune();
    pond.readings = {reading("2026-06-14 05:40", 6.0), reading("2026-06-15 05:40", 5.0)};
    pond.events = {event("2026-06-14 09:00", "started")};
    const LogHead printed = logHead(pond);
    EXPECT_EQ(parseLogHead(shown(printed)), printed);
    EXPECT_EQ(matchHead(pond, printed), HeadMatch::Same);
    Pond added = pond;
    added.readings.push_back(reading("2026-06-16 05:40", 4.0));
    added.events.push_back(event("2026-06-16 09:00", "stopped"));
    EXPECT_EQ(matchHead(added, printed), HeadMatch::OnlyAdded);
    Pond changed = added;
    changed.readings[0].oxygen = Quantity(6.1);
    EXPECT_EQ(matchHead(changed, printed), HeadMatch::Changed);
    Pond noted = added;
    noted.events[0].note = "late";
    EXPECT_EQ(matchHead(noted, printed), HeadMatch::Changed);
    Pond between = pond;
    between.readings.insert(between.readings.begin(), reading("2026-06-13 05:40", 7.0));
    EXPECT_EQ(matchHead(between, printed), HeadMatch::Changed);
    Pond less = pond;
    less.readings.pop_back();
    EXPECT_EQ(matchHead(less, printed), HeadMatch::Changed);
    EXPECT_FALSE(parseLogHead("1-2-3"));
    EXPECT_FALSE(parseLogHead("1-2-x-" + printed.hash));
}

}  // namespace
}  // namespace engine
