#include "engine/follow_up/today.h"

#include "engine/follow_up/replan.h"
#include "engine/water/sediment.h"
#include "engine/wording/sentence_today.h"
#include "tests/sentences.h"
#include "tests/unit/follow_up/logged_pond.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <string>
#include <vector>

namespace engine {
namespace {

TEST(Today, AGoodMorningGoesOnWithTheRampUnderTheCap) {
    Pond pond = test::startedPond();
    test::readAt(pond, "2026-06-14 05:40", 6.2, 6.0, 0.1);
    test::readAt(pond, "2026-06-15 05:40", 6.0, 5.8, 0.1);
    const Today today = decideToday(pond, test::quickOptions());
    ASSERT_TRUE(today.isDecided) << today.message;
    EXPECT_EQ(today.day, 2);
    EXPECT_EQ(today.morning.beforeStart, 6.0);
    EXPECT_EQ(today.morning.yesterday, 6.0);
    ASSERT_FALSE(today.steps.empty());
    EXPECT_EQ(today.steps.front().day, 2);
    ASSERT_TRUE(today.decision.doseCap_percent);
    for (const StepAhead& step : today.steps) {
        EXPECT_GT(*step.dose_percent, 0.0) << step.day;
        EXPECT_LE(*step.dose_percent, *today.decision.doseCap_percent) << step.day;
    }
    ASSERT_TRUE(today.fit) << today.fitMessage;
    const auto tonight = std::find_if(today.fit->nights.begin(), today.fit->nights.end(),
                                      [&](const NightAhead& one) { return one.night == today.day; });
    ASSERT_NE(tonight, today.fit->nights.end());
    EXPECT_EQ(today.morning.tonight, tonight->low.p50);
    EXPECT_EQ(test::numbersOf(sentencesOf(today), SentenceKey::TodayTonight, "low"),
              std::vector{tonight->low.p50});
}

TEST(Today, BackSkipsADayAndResumesAtHalf) {
    Pond pond = test::startedPond();
    test::readAt(pond, "2026-06-16 05:40", 4.4, 4.2, 0.1);
    test::readAt(pond, "2026-06-17 05:40", 3.4, 3.6, 0.1);
    const Today today = decideToday(pond, test::quickOptions());
    ASSERT_TRUE(today.isDecided) << today.message;
    EXPECT_EQ(today.decision.verdict, DawnVerdict::Back);
    EXPECT_EQ(today.steps[0].minutes, 0);
    EXPECT_EQ(today.steps[1].minutes, 60);  // 120 ran yesterday
    EXPECT_TRUE(today.decision.wantsSurfaceAir);
}

TEST(Today, StopRunsNothingForDaysAndThenAQuarter) {
    Pond pond = test::startedPond();
    test::readAt(pond, "2026-06-17 05:40", 2.1, 2.6, 0.1);
    const Today today = decideToday(pond, test::quickOptions());
    ASSERT_TRUE(today.isDecided) << today.message;
    EXPECT_EQ(today.decision.verdict, DawnVerdict::Stop);
    ASSERT_GT(today.steps.size(), 5U);
    for (std::size_t i = 0; i < 5; ++i) {
        EXPECT_EQ(today.steps[i].minutes, 0);
    }
    EXPECT_EQ(today.steps[5].minutes, 30);
}

TEST(Today, HoldRepeatsTheMinutes) {
    Pond pond = test::startedPond();
    test::readAt(pond, "2026-06-16 05:40", 4.6, 4.5, 0.1);
    const Today capped = decideToday(pond, test::quickOptions());
    ASSERT_TRUE(capped.isDecided) << capped.message;
    EXPECT_EQ(capped.decision.verdict, DawnVerdict::Hold);
    EXPECT_GT(capped.steps[0].minutes, 0);
    EXPECT_LE(capped.steps[0].minutes, 60);
    // Of day 2 where no cap is in the way, and of day 3 after it.
    pond.dawnRules.emplace();
    pond.dawnRules->doseHigh_percent = pond.dawnRules->doseMiddle_percent = Quantity(1000.0);
    const Today held = decideToday(pond, test::quickOptions());
    ASSERT_TRUE(held.isDecided) << held.message;
    EXPECT_EQ(held.decision.verdict, DawnVerdict::Hold);
    EXPECT_EQ(held.steps[0].minutes, 60);
    EXPECT_EQ(held.steps[1].minutes, 120);
}

/// A run of each of the days before the 19th that stands for the whole of its day.
void ranEachDay(Pond& pond, std::initializer_list<int> minutes) {
    int day = 14;
    for (const int one : minutes) {
        test::happened(pond, ("2026-06-" + std::to_string(day++) + " 10:00").c_str(), "run");
        pond.events.back().minutes = Quantity(one);
    }
}

TEST(Today, OnlyDaysThatFellBehindTheRampCountAsHolds) {
    // 30, 60, 120 by the ramp; the minutes of its second day twice more were held.
    Pond pond = test::startedPond();
    ranEachDay(pond, {30, 60, 60, 60});
    test::readAt(pond, "2026-06-18 05:40", 6.2, 6.0, 0.1);
    EXPECT_EQ(decideToday(pond, test::quickOptions()).morning.holdsBefore, 2);
    // A skipped day ends the row.
    Pond skipped = test::startedPond();
    ranEachDay(skipped, {30, 30, 30, 0});
    test::readAt(skipped, "2026-06-18 05:40", 6.2, 6.0, 0.1);
    EXPECT_EQ(decideToday(skipped, test::quickOptions()).morning.holdsBefore, 0);
    // The same minutes where the ramp asks for no more are its steps.
    Pond level = test::startedPond();
    level.ramps.clear();
    level.ramps.push_back(test::minutesEachDay(60.0));
    level.events.front().ramp = level.ramps.front().name;
    test::readAt(level, "2026-06-18 05:40", 6.2, 6.0, 0.1);
    const Today steady = decideToday(level, test::quickOptions());
    ASSERT_TRUE(steady.isDecided) << steady.message;
    EXPECT_EQ(steady.morning.holdsBefore, 0);
}

TEST(Today, ThreeInputsSufficeAndNoneIsRefusedInWords) {
    Pond pond = test::scenario("grandfathers-pond");
    const Today early =
        decideToday(pond, test::quickOptions());  // the profile is of the evening before the first day
    EXPECT_FALSE(early.isDecided);
    EXPECT_EQ(early.message,
              "No morning readings yet: that time is before the first day of the pond file.");
    Pond unread = pond;
    unread.profile.reset();
    const Today none = decideToday(unread, test::quickOptions());
    EXPECT_FALSE(none.isDecided);
    EXPECT_EQ(none.message, "There is no reading to decide by.");
    test::readAt(pond, "2026-06-14 05:40", 6.2, 6.0, 0.1);
    EXPECT_TRUE(decideToday(pond, test::quickOptions()).isDecided);
}

TEST(Today, APowerCutAsksForPartOfTheRampAgain) {
    Pond pond = test::startedPond();
    test::happened(pond, "2026-06-16 12:00", "power_cut");
    test::readAt(pond, "2026-06-22 05:40", 6.2, 6.0, 0.1);
    const Today today = decideToday(pond, test::quickOptions());
    ASSERT_TRUE(today.restart);
    EXPECT_NEAR(today.restart->daysOff, 5.75, 1e-9);  // to six in the morning
    EXPECT_EQ(today.restart->restart, Restart::ReducedStart);
    // What the mud gives back gathers in the thickness of the bottom water.
    const double thickness = today.model.bottom.volume / today.model.basin.area(today.model.bottom.depth);
    const double returned =
        returnedDebt_gPerM2Day(today.model.parameters.sediment, *today.morning.temperatureBottom);
    EXPECT_NEAR(today.restart->accumulated.debt, returned * 5.75 / thickness, 1e-9);
}

TEST(Replan, LeavesTheDaysOfTheVerdict) {
    DawnDecision decision;
    decision.verdict = DawnVerdict::Go;
    EXPECT_EQ(daysOfVerdict(decision), 0);
    decision.runsToday = false;
    EXPECT_EQ(daysOfVerdict(decision), 1);
    decision.verdict = DawnVerdict::Stop;
    EXPECT_EQ(daysOfVerdict(decision), 5);
}

TEST(Today, AfterWeeksWithoutAirTheWholeRampBeginsAgain) {
    Pond pond = test::startedPond();
    test::happened(pond, "2026-06-18 09:00", "stopped");
    test::readAt(pond, "2026-07-08 05:40", 6.2, 6.0, 0.1);
    const Today today = decideToday(pond, test::quickOptions());
    ASSERT_TRUE(today.isDecided) << today.message;
    ASSERT_TRUE(today.restart);
    EXPECT_EQ(today.restart->restart, Restart::WholeRamp);
    EXPECT_EQ(today.decision.verdict, DawnVerdict::Go);
    ASSERT_FALSE(today.steps.empty());
    EXPECT_LE(today.steps.front().minutes, 30) << "the ramp's first day, and no more than the cap";
    EXPECT_GT(today.steps.front().minutes, 0);
}

TEST(Today, ADayOnWhichNobodyReadsHolds) {
    Pond pond = test::startedPond();
    pond.weather.holdDays = {Date(std::chrono::year(2026) / 6 / 15)};
    test::readAt(pond, "2026-06-15 05:40", 6.2, 6.0, 0.1);
    const Today today = decideToday(pond, test::quickOptions());
    EXPECT_EQ(today.decision.verdict, DawnVerdict::Hold);
    EXPECT_EQ(today.decision.reasons.front(), DawnReason::WeatherHold);
}

TEST(Today, WithoutARiseByTenNothingRuns) {
    Pond pond = test::startedPond();
    pond.weather.holdDays = {Date(std::chrono::year(2026) / 6 / 30)};  // none of these days
    test::readAt(pond, "2026-06-15 05:40", 6.2, 6.0, 0.1);
    pond.readings.push_back(test::readingOf("2026-06-15 10:00", 0.5, 6.6, 27.0));
    const Today flat = decideToday(pond, test::quickOptions());
    ASSERT_TRUE(flat.isDecided) << flat.message;
    EXPECT_EQ(flat.morning.midMorning, 6.6);
    EXPECT_FALSE(flat.decision.runsToday);
    EXPECT_EQ(flat.steps.front().minutes, 0);
    pond.readings.back().oxygen = Quantity(7.6);
    const Today risen = decideToday(pond, test::quickOptions());
    EXPECT_TRUE(risen.decision.runsToday);
    EXPECT_GT(risen.steps.front().minutes, 0);
}

TEST(Today, AMixedPondNeedsItsOxygenMixedTooForAShortRestart) {
    // Common practice, no source: both within 1 degC and 1.5 mg/L; temperature alone fails.
    for (const bool isMixed : {true, false}) {
        Pond pond = test::startedPond();
        test::happened(pond, "2026-06-16 12:00", "power_cut");
        test::readAt(pond, "2026-06-22 05:40", 6.2, 6.0, isMixed ? 5.0 : 4.0, 26.3);
        const Today today = decideToday(pond, test::quickOptions());
        ASSERT_TRUE(today.restart);
        EXPECT_EQ(today.restart->restart, isMixed ? Restart::Formality : Restart::ReducedStart);
    }
}

// Expected: the line of two points by hand. From 6.0 at 17:30 to 5.3 at 21:00 it falls 0.2 mg/L an hour, and
// ten hours later it is at 3.3; a meter off by 0.2 mg/L at each leaves 0.2 sqrt((1 + 20/7)^2 + (20/7)^2) =
// 0.960 there, 1.645 times which is 1.58.
TEST(Today, TwoEveningReadingsAreDrawnOnToDawn) {
    Pond pond = test::startedPond();
    test::readAt(pond, "2026-06-14 05:40", 6.2, 6.0, 0.1);
    test::readAt(pond, "2026-06-15 05:40", 6.0, 5.8, 0.1);
    test::readAt(pond, "2026-06-15 17:30", 6.3, 6.0, 0.1);
    const Today before = decideToday(pond, test::quickOptions());
    ASSERT_TRUE(before.isDecided) << before.message;
    EXPECT_FALSE(before.dusk);
    test::readAt(pond, "2026-06-15 21:00", 6.1, 5.3, 0.1);
    const Today today = decideToday(pond, test::quickOptions());
    ASSERT_TRUE(today.isDecided) << today.message;
    ASSERT_TRUE(today.dusk);
    EXPECT_NEAR(today.dusk->dawn, 3.3, 1e-9);
    const double sigmas = 1.645 * 0.2 * std::hypot(1.0 + 20.0 / 7.0, 20.0 / 7.0);
    EXPECT_NEAR(today.dusk->low, 3.3 - sigmas, 1e-9);
    EXPECT_NEAR(today.dusk->high, 3.3 + sigmas, 1e-9);
    EXPECT_LE(*today.morning.tonight, today.dusk->dawn);
    EXPECT_TRUE(today.decision.wantsSurfaceAir);
    const std::vector<Sentence> said = sentencesOf(today);
    EXPECT_EQ(test::numbersOf(said, SentenceKey::TodayDuskLine, "dawn"), std::vector{today.dusk->dawn});
    // A low night ahead asks for surface air; it is no reason of the morning's verdict.
    EXPECT_EQ(test::textsOf(said, SentenceKey::TodaySurfaceAir, "reason"),
              std::vector<std::string>{"night-below-line"});
    const std::vector<std::string> reasons = test::textsOf(said, SentenceKey::TodayReason, "reason");
    EXPECT_FALSE(reasons.empty());
    EXPECT_EQ(std::count(reasons.begin(), reasons.end(), "night-below-line"), 0);
}

TEST(Today, EveningReadingsCloseTogetherSayNothing) {
    Pond pond = test::startedPond();
    test::readAt(pond, "2026-06-15 05:40", 6.0, 5.8, 0.1);
    test::readAt(pond, "2026-06-15 18:50", 6.3, 6.0, 0.1);
    test::readAt(pond, "2026-06-15 19:40", 6.1, 5.9, 0.1);
    const Today today = decideToday(pond, test::quickOptions());
    ASSERT_TRUE(today.isDecided) << today.message;
    EXPECT_FALSE(today.dusk);
}

}  // namespace
}  // namespace engine
