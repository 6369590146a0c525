// A schedule planned anew from a morning's readings.

#include "engine/follow_up/replan.h"

#include "engine/plan/plan_mornings.h"
#include "engine/pond/local_time.h"
#include "tests/scenario.h"

#include <gtest/gtest.h>

#include <chrono>
#include <functional>
#include <stop_token>

namespace engine {
namespace {

TodayOptions quick() {
    TodayOptions options;
    options.members = 8;
    options.resolution = {14, 1800.0};
    return options;
}

/// A young pond, read on its second morning with good oxygen; something else may be wrong.
Today goodMorning(const std::function<void(Pond&)>& change = {}) {
    Pond pond = test::scenario("new-clay");
    Event started;
    started.at = parseLocalTime("2026-05-26 09:00");
    started.kind = "started";
    started.ramp = "doubling from 30 min";
    pond.events.push_back(started);
    Reading reading;
    reading.at = parseLocalTime("2026-05-27 05:40");
    for (const double depth : {0.5, 1.5, 2.9}) {
        reading.depth = Quantity(depth);
        reading.oxygen = Quantity(7.6 - 0.8 * depth);
        reading.temperature = Quantity(27.5 - depth);
        pond.readings.push_back(reading);
    }
    if (change) {
        change(pond);
    }
    return decideToday(pond, quick());
}

TEST(Replan, StartsFromThisMorningAndCanBeStopped) {
    Today today = goodMorning();
    ASSERT_TRUE(today.isDecided) << today.message;
    std::stop_source stop;
    stop.request_stop();
    EXPECT_EQ(replanned(today, quick(), {stop.get_token(), {}}).end, PlanEnd::Cancelled);
    double progress = 0.0;
    const Plan plan = replanned(today, quick(), {{}, [&](double share) { progress = share; }});
    ASSERT_EQ(plan.end, PlanEnd::Completed) << plan.message;
    EXPECT_EQ(progress, 1.0);
    const Pond& pond = plan.comparison.model.pond;
    EXPECT_EQ(pond.place.firstDay, Date(std::chrono::floor<std::chrono::days>(today.at)));
    ASSERT_TRUE(pond.profile);
    EXPECT_NEAR(pond.profile->oxygen.front(), 7.2, 1e-9);
    // One depth makes no profile.
    today.model.pond.readings.resize(today.model.pond.readings.size() - 2);
    const Plan none = replanned(today, quick());
    EXPECT_EQ(none.end, PlanEnd::NotRun);
    EXPECT_EQ(
        none.message,
        "A new schedule needs readings of temperature and oxygen at two or more depths of today, within "
        "3 h.");
}

TEST(Replan, ADiscReadHoursLaterDoesNotHideTheMorning) {
    const Today today = goodMorning([](Pond& pond) {
        Reading disc;
        disc.at = parseLocalTime("2026-05-27 11:00");
        disc.secchi = Quantity(1.0);
        pond.readings.push_back(disc);
    });
    ASSERT_TRUE(today.isDecided) << today.message;
    EXPECT_EQ(today.at, parseLocalTime("2026-05-27 11:00"));
    const Plan plan = replanned(today, quick());
    ASSERT_EQ(plan.end, PlanEnd::Completed) << plan.message;
    EXPECT_EQ(plan.comparison.model.pond.profile->at, parseLocalTime("2026-05-27 05:40"));
}

// Trade 3.4 and 3.8: hold is the same minutes again, back is no air today and half after it, stop is five
// days without air and a quarter after them.
TEST(Replan, NeverSaysOtherThanTheMorningsVerdict) {
    const auto plannedAfter = [](DawnVerdict verdict, const std::function<void(Pond&)>& change) {
        const Today today = goodMorning(change);
        EXPECT_TRUE(today.isDecided) << today.message;
        EXPECT_EQ(today.decision.verdict, verdict);
        Plan plan = replanned(today, quick());
        EXPECT_EQ(plan.end, PlanEnd::Completed) << plan.message;
        EXPECT_TRUE(plan.chosen) << "a pond with a way";
        return plan;
    };
    const Plan held = plannedAfter(DawnVerdict::Hold, [](Pond& pond) {
        pond.weather.holdDays.push_back(Date(std::chrono::year(2026) / 5 / 27));
    });
    ASSERT_GT(held.days.size(), 1U);
    EXPECT_EQ(held.days[0].minutes, 30) << "the same minutes again";
    const Plan back =
        plannedAfter(DawnVerdict::Back, [](Pond& pond) { pond.readings.back().smell = Smell::Strong; });
    ASSERT_GT(back.days.size(), 2U);
    EXPECT_EQ(back.days[0].minutes, 0);
    EXPECT_LE(back.days[1].minutes, 15) << "half of what ran last";
    EXPECT_GT(back.days[1].minutes, 0);
    const Plan stopped = plannedAfter(DawnVerdict::Stop,
                                      [](Pond& pond) { pond.readings.back().fish = FishBehaviour::Piping; });
    ASSERT_GT(stopped.days.size(), 6U);
    for (std::size_t day = 0; day < 5; ++day) {
        EXPECT_EQ(stopped.days[day].minutes, 0) << day;
    }
    EXPECT_LE(stopped.days[5].minutes, 8) << "a quarter of what ran last";
}

TEST(Replan, NoDayLiftsMoreThanTheCapsOfTheMornings) {
    const auto planUnder = [](double cap) {
        const Today today = goodMorning([cap](Pond& pond) {
            pond.bottom.oxygenDebt = Quantity(40.0);  // the ratio to the oxygen reserve is above 0.5
            pond.dawnRules.emplace();
            pond.dawnRules->doseHigh_percent = pond.dawnRules->doseMiddle_percent = Quantity(cap);
        });
        EXPECT_TRUE(today.decision.doseCap_percent) << today.morning.debtRatio;
        Plan plan = replanned(today, quick());
        EXPECT_TRUE(plan.chosen) << "a pond with a way";
        return plan;
    };
    const Plan bold = planUnder(1000.0), capped = planUnder(12.0);
    DawnLimits limits;
    limits.doseHigh = limits.doseMiddle = 12.0;
    const auto heeds = [&](const Plan& plan) {
        const RampRun& run = plan.comparison.runs.back();
        return heedsCaps(plan.comparison.model, run, static_cast<int>(run.days.size()), limits);
    };
    EXPECT_FALSE(heeds(bold)) << "the cap says something here";
    EXPECT_TRUE(heeds(capped));
    EXPECT_GT(capped.days.size(), bold.days.size());
}

}  // namespace
}  // namespace engine
