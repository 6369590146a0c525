// A schedule planned anew from a morning's readings.

#include "engine/replan.h"

#include "engine/local_time.h"
#include "tests/scenario.h"

#include <gtest/gtest.h>

#include <chrono>
#include <stop_token>

namespace engine {
namespace {

TodayOptions quick() {
    TodayOptions options;
    options.members = 8;
    options.resolution = {14, 1800.0};
    return options;
}

/// A young pond, read on its second morning.
Today goodMorning() {
    Pond pond = test::scenario("new-clay");
    Reading reading;
    reading.at = parseLocalTime("2026-05-27 05:40");
    for (const double depth : {0.5, 1.5, 2.9}) {
        reading.depth = Quantity(depth);
        reading.oxygen = Quantity(7.6 - 0.8 * depth);
        reading.temperature = Quantity(27.5 - depth);
        pond.readings.push_back(reading);
    }
    return decideToday(pond, quick());
}

TEST(Replan, StartsFromThisMorningAndCanBeStopped) {
    Today today = goodMorning();
    ASSERT_TRUE(today.isDecided) << today.message;
    std::stop_source stop;
    stop.request_stop();
    EXPECT_EQ(replanned(today, quick(), {stop.get_token(), {}}).end, PlanEnd::Cancelled);
    today.decision.verdict = DawnVerdict::Back;
    double progress = 0.0;
    const Plan plan = replanned(today, quick(), {{}, [&](double share) { progress = share; }});
    ASSERT_EQ(plan.end, PlanEnd::Completed) << plan.message;
    EXPECT_EQ(progress, 1.0);
    const Pond& pond = plan.comparison.model.pond;
    EXPECT_EQ(pond.place.firstDay, Date(std::chrono::floor<std::chrono::days>(today.at)));
    ASSERT_TRUE(pond.profile);
    EXPECT_NEAR(pond.profile->oxygen.front(), 7.2, 1e-9);
    ASSERT_FALSE(plan.holds.empty());
    EXPECT_EQ(plan.holds.front().day, 1);
    // One depth makes no profile.
    today.model.pond.readings.resize(today.model.pond.readings.size() - 2);
    const Plan none = replanned(today, quick());
    EXPECT_EQ(none.end, PlanEnd::NotRun);
    EXPECT_NE(none.message.find("two or more depths"), std::string::npos);
}

}  // namespace
}  // namespace engine
