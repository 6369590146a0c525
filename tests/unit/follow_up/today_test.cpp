#include "engine/follow_up/today.h"

#include "engine/follow_up/incident.h"
#include "engine/follow_up/replan.h"
#include "engine/follow_up/review.h"
#include "engine/pond/local_time.h"
#include "engine/ramps/weather.h"
#include "engine/wording/sentence_incident.h"
#include "engine/wording/sentence_review.h"
#include "engine/wording/sentence_today.h"
#include "engine/wording/wording.h"
#include "tests/scenario.h"

#include <gtest/gtest.h>

#include <chrono>
#include <initializer_list>
#include <stop_token>
#include <string>

namespace engine {
namespace {

Reading reading(const char* at, double depth, double oxygen, double temperature) {
    Reading out;
    out.at = parseLocalTime(at);
    out.depth = Quantity(depth);
    out.oxygen = Quantity(oxygen);
    out.temperature = Quantity(temperature);
    return out;
}

void readAt(Pond& pond, const char* at, double top, double middle, double bottom,
            double bottomTemperature = 21.0) {
    pond.readings.push_back(reading(at, 0.5, top, 27.0));
    pond.readings.push_back(reading(at, 1.5, middle, 25.0));
    pond.readings.push_back(reading(at, 2.9, bottom, bottomTemperature));
}

/// The headline pond with its doubling ramp under way since the first day.
Pond started() {
    Pond pond = test::scenario("grandfathers-pond");
    Event event;
    event.at = parseLocalTime("2026-06-14 09:00");
    event.kind = "started";
    event.ramp = "doubling from 30 min";
    pond.events.push_back(event);
    return pond;
}

TodayOptions quick() {
    TodayOptions options;
    options.members = 8;
    options.resolution = {14, 1800.0};
    options.threads = 1;
    return options;
}

TEST(Today, AGoodMorningGoesOnWithTheRampUnderTheCap) {
    Pond pond = started();
    readAt(pond, "2026-06-14 05:40", 6.2, 6.0, 0.1);
    readAt(pond, "2026-06-15 05:40", 6.0, 5.8, 0.1);
    const Today today = decideToday(pond, quick());
    ASSERT_TRUE(today.isDecided) << today.message;
    EXPECT_EQ(today.day, 2);
    EXPECT_EQ(today.morning.beforeStart, 6.0);
    EXPECT_EQ(today.morning.yesterday, 6.0);
    ASSERT_FALSE(today.steps.empty());
    EXPECT_EQ(today.steps.front().day, 2);
    ASSERT_TRUE(today.decision.doseCap_percent);
    for (const StepAhead& step : today.steps) {
        EXPECT_LE(*step.dose_percent, *today.decision.doseCap_percent * 1.1) << step.day;
    }
    ASSERT_TRUE(today.fit) << today.fitMessage;
    EXPECT_TRUE(today.morning.tonight);
    EXPECT_NE(englishText(sentencesOf(today)).find("Tonight's low is expected at"), std::string::npos);
}

TEST(Today, BackSkipsADayAndResumesAtHalf) {
    Pond pond = started();
    readAt(pond, "2026-06-16 05:40", 4.4, 4.2, 0.1);
    readAt(pond, "2026-06-17 05:40", 3.4, 3.6, 0.1);
    const Today today = decideToday(pond, quick());
    ASSERT_TRUE(today.isDecided) << today.message;
    EXPECT_EQ(today.decision.verdict, DawnVerdict::Back);
    EXPECT_EQ(today.steps[0].minutes, 0);
    EXPECT_EQ(today.steps[1].minutes, 60);  // 120 ran yesterday
    EXPECT_TRUE(today.decision.wantsSurfaceAir);
}

TEST(Today, StopRunsNothingForDaysAndThenAQuarter) {
    Pond pond = started();
    readAt(pond, "2026-06-17 05:40", 2.1, 2.6, 0.1);
    const Today today = decideToday(pond, quick());
    EXPECT_EQ(today.decision.verdict, DawnVerdict::Stop);
    for (std::size_t i = 0; i < 5; ++i) {
        EXPECT_EQ(today.steps[i].minutes, 0);
    }
    EXPECT_EQ(today.steps[5].minutes, 30);
}

TEST(Today, HoldRepeatsTheMinutes) {
    Pond pond = started();
    readAt(pond, "2026-06-16 05:40", 4.6, 4.5, 0.1);
    const Today today = decideToday(pond, quick());
    EXPECT_EQ(today.decision.verdict, DawnVerdict::Hold);
    EXPECT_LE(today.steps[0].minutes, 60);  // of day 2, under the cap
}

/// A run of each of the days before the 19th that stands for the whole of its day.
void ranEachDay(Pond& pond, std::initializer_list<int> minutes) {
    int day = 14;
    for (const int one : minutes) {
        Event event;
        event.at = parseLocalTime("2026-06-" + std::to_string(day++) + " 10:00");
        event.kind = "run";
        event.minutes = Quantity(one);
        pond.events.push_back(event);
    }
}

TEST(Today, OnlyDaysThatFellBehindTheRampCountAsHolds) {
    // 30, 60, 120 by the ramp; the minutes of its second day twice more were held.
    Pond pond = started();
    ranEachDay(pond, {30, 60, 60, 60});
    readAt(pond, "2026-06-18 05:40", 6.2, 6.0, 0.1);
    EXPECT_EQ(decideToday(pond, quick()).morning.holdsBefore, 2);
    // A skipped day ends the row.
    Pond skipped = started();
    ranEachDay(skipped, {30, 30, 30, 0});
    readAt(skipped, "2026-06-18 05:40", 6.2, 6.0, 0.1);
    EXPECT_EQ(decideToday(skipped, quick()).morning.holdsBefore, 0);
    // The same minutes where the ramp asks for no more are its steps.
    Pond level = started();
    level.ramps.clear();
    level.ramps.push_back(test::minutesEachDay(60.0));
    level.events.front().ramp = level.ramps.front().name;
    readAt(level, "2026-06-18 05:40", 6.2, 6.0, 0.1);
    const Today steady = decideToday(level, quick());
    ASSERT_TRUE(steady.isDecided) << steady.message;
    EXPECT_EQ(steady.morning.holdsBefore, 0);
}

TEST(Today, ThreeInputsSufficeAndNoneIsRefusedInWords) {
    Pond pond = test::scenario("grandfathers-pond");
    const Today none = decideToday(pond, quick());
    EXPECT_FALSE(none.isDecided);
    EXPECT_NE(none.message, "");
    readAt(pond, "2026-06-14 05:40", 6.2, 6.0, 0.1);
    EXPECT_TRUE(decideToday(pond, quick()).isDecided);
}

TEST(Today, APowerCutAsksForPartOfTheRampAgain) {
    Pond pond = started();
    Event cut;
    cut.at = parseLocalTime("2026-06-16 12:00");
    cut.kind = "power_cut";
    pond.events.push_back(cut);
    readAt(pond, "2026-06-22 05:40", 6.2, 6.0, 0.1);
    const Today today = decideToday(pond, quick());
    ASSERT_TRUE(today.restart);
    EXPECT_NEAR(today.restart->daysOff, 5.75, 0.3);
    EXPECT_EQ(today.restart->restart, Restart::ReducedStart);
    EXPECT_GT(today.restart->accumulated.debt, 0.0);
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
    Pond pond = started();
    Event off;
    off.at = parseLocalTime("2026-06-18 09:00");
    off.kind = "stopped";
    pond.events.push_back(off);
    readAt(pond, "2026-07-08 05:40", 6.2, 6.0, 0.1);
    const Today today = decideToday(pond, quick());
    ASSERT_TRUE(today.isDecided) << today.message;
    ASSERT_TRUE(today.restart);
    EXPECT_EQ(today.restart->restart, Restart::WholeRamp);
    EXPECT_EQ(today.decision.verdict, DawnVerdict::Go);
    ASSERT_FALSE(today.steps.empty());
    EXPECT_LE(today.steps.front().minutes, 30) << "the ramp's first day, and no more than the cap";
    EXPECT_GT(today.steps.front().minutes, 0);
}

TEST(Today, ADayOnWhichNobodyReadsHolds) {
    Pond pond = started();
    pond.weather.holdDays = {Date(std::chrono::year(2026) / 6 / 15)};
    readAt(pond, "2026-06-15 05:40", 6.2, 6.0, 0.1);
    const Today today = decideToday(pond, quick());
    EXPECT_EQ(today.decision.verdict, DawnVerdict::Hold);
    EXPECT_EQ(today.decision.reasons.front(), DawnReason::WeatherHold);
}

TEST(Today, WithoutARiseByTenNothingRuns) {
    Pond pond = started();
    pond.weather.holdDays = {Date(std::chrono::year(2026) / 6 / 30)};  // none of these days
    readAt(pond, "2026-06-15 05:40", 6.2, 6.0, 0.1);
    pond.readings.push_back(reading("2026-06-15 10:00", 0.5, 6.6, 27.0));
    const Today flat = decideToday(pond, quick());
    ASSERT_TRUE(flat.isDecided) << flat.message;
    EXPECT_EQ(flat.morning.midMorning, 6.6);
    EXPECT_FALSE(flat.decision.runsToday);
    EXPECT_EQ(flat.steps.front().minutes, 0);
    pond.readings.back().oxygen = Quantity(7.6);
    const Today risen = decideToday(pond, quick());
    EXPECT_TRUE(risen.decision.runsToday);
    EXPECT_GT(risen.steps.front().minutes, 0);
}

TEST(Today, AMixedPondNeedsItsOxygenMixedTooForAShortRestart) {
    // Trade 3.3: both within 1 degC and 1.5 mg/L; temperature alone fails.
    for (const bool isMixed : {true, false}) {
        Pond pond = started();
        Event cut;
        cut.at = parseLocalTime("2026-06-16 12:00");
        cut.kind = "power_cut";
        pond.events.push_back(cut);
        readAt(pond, "2026-06-22 05:40", 6.2, 6.0, isMixed ? 5.0 : 4.0, 26.3);
        const Today today = decideToday(pond, quick());
        ASSERT_TRUE(today.restart);
        EXPECT_EQ(today.restart->restart, isMixed ? Restart::Formality : Restart::ReducedStart);
    }
}

TEST(Incident, AMixedPondKeepsItsAirAndAStratifiedOneDoesNot) {
    Pond mixed = started();
    readAt(mixed, "2026-06-17 05:30", 1.6, 1.5, 1.2, 26.8);
    const Incident one = judgeIncident(mixed, quick());
    ASSERT_TRUE(one.isJudged) << one.message;
    EXPECT_EQ(one.state, PresentState::Mixed);
    ASSERT_EQ(one.options.size(), 4U);
    Pond stratified = started();
    readAt(stratified, "2026-06-17 05:30", 2.2, 1.5, 0.0, 20.5);
    const Incident two = judgeIncident(stratified, quick());
    ASSERT_TRUE(two.isJudged) << two.message;
    EXPECT_EQ(two.state, PresentState::Stratified);
    // Lifting what owes oxygen lowers the fish water; surface air never does.
    EXPECT_LT(two.options[1].lowest, two.options[0].lowest);
    EXPECT_GE(two.options[2].lowest, two.options[0].lowest - 1e-9);
    const std::string said = englishText(sentencesOf(two));
    for (const char* part :
         {"Still stratified", "never from the bottom", "small fish first", "Call:", "Write down"}) {
        EXPECT_NE(said.find(part), std::string::npos) << part;
    }
}

TEST(Incident, SaysWhichSurfaceAeratorItTakesWhereTheFileHasNone) {
    Pond pond = started();
    readAt(pond, "2026-06-17 05:30", 2.2, 1.5, 0.0, 20.5);
    pond.surfaceAerator.reset();
    const auto said = [](const Pond& one) { return englishText(sentencesOf(judgeIncident(one, quick()))); };
    EXPECT_NE(said(pond).find("one of 2.50 kW a hectare is taken"), std::string::npos) << said(pond);
    pond.surfaceAerator.emplace();
    pond.surfaceAerator->transfer_kgPerH = Quantity(1.0);
    EXPECT_EQ(said(pond).find("no surface aerator"), std::string::npos);
}

TEST(Incident, AStopLeavesNoJudgementAndNoDecision) {
    Pond pond = started();
    readAt(pond, "2026-06-17 05:30", 2.2, 1.5, 0.0, 20.5);
    std::stop_source stop;
    stop.request_stop();
    const Incident incident = judgeIncident(pond, quick(), {stop.get_token(), {}});
    EXPECT_FALSE(incident.isJudged);
    EXPECT_NE(incident.message.find("stopped"), std::string::npos);
    const Today today = decideToday(pond, quick(), {stop.get_token(), {}});
    EXPECT_FALSE(today.isDecided);
    EXPECT_NE(today.message.find("stopped"), std::string::npos);
}

TEST(Incident, TwoDepthsWithTemperaturesAreNeeded) {
    Pond pond = started();
    pond.readings.push_back(reading("2026-06-17 05:30", 0.5, 2.0, 26.0));
    EXPECT_FALSE(judgeIncident(pond, quick()).isJudged);
}

TEST(Review, ASecondChangeWithinTheWatchIsNotAttributable) {
    Pond pond = started();
    for (const char* at : {"2026-06-20 10:00", "2026-07-30 10:00", "2026-08-10 10:00", "2026-10-01 10:00"}) {
        Event event;
        event.at = parseLocalTime(at);
        event.kind = "treatment";
        pond.events.push_back(event);
    }
    const std::vector<ReviewTreatment> treatments = treatmentsOf(pond, eventsInForce(pond), 1);
    ASSERT_EQ(treatments.size(), 4U);
    EXPECT_FALSE(treatments[0].isAttributable);  // six days after the start
    EXPECT_FALSE(treatments[1].isAttributable);  // eleven days before the next
    EXPECT_FALSE(treatments[2].isAttributable);
    EXPECT_TRUE(treatments[3].isAttributable);
}

TEST(Review, CopperNeedsAlkalinity) {
    Water water;
    EXPECT_EQ(copperGate(water), CopperGate::Unknown);
    water.alkalinity = Quantity(49.0);
    EXPECT_EQ(copperGate(water), CopperGate::Low);
    water.alkalinity = Quantity(50.0);
    EXPECT_EQ(copperGate(water), CopperGate::Open);
}

TEST(Review, SaysWhatStandsOutAndWaitsForThirtyDays) {
    Pond pond = started();
    for (const char* at : {"2026-06-15 05:40", "2026-06-16 05:40", "2026-06-17 05:40"}) {
        readAt(pond, at, 5.0, 4.8, 0.1);
    }
    FitOptions options;
    options.members = 8;
    options.resolution = {14, 1800.0};
    const Review review = reviewPond(pond, options);
    ASSERT_TRUE(review.isDone) << review.message;
    EXPECT_EQ(review.verdict, ReviewVerdict::Wait);
    ASSERT_EQ(review.rows.size(), 4U);
    EXPECT_EQ(review.rows[1].dawn, 5.0);
    ASSERT_EQ(review.findings.size(), 3U);
    EXPECT_EQ(review.findings[0].count, 3);
    EXPECT_EQ(review.findings[2].count, 0);
    // 70 ug/L of chlorophyll, 8 to 13 mg/L for each 100.
    EXPECT_NEAR(review.algaeBillLow, 5.6, 0.1);
    EXPECT_NEAR(review.algaeBillHigh, 9.1, 0.1);
    const std::string said = englishText(sentencesOf(review));
    EXPECT_NE(said.find("Wait: 30 days have not passed"), std::string::npos);
    EXPECT_NE(said.find("Copper: not before the alkalinity is measured"), std::string::npos);
}

// Expected: the line of two points by hand. From 6.0 at 17:30 to 5.3 at 21:00 it falls 0.2 mg/L an hour, and
// ten hours later it is at 3.3; a meter off by 0.2 mg/L at each leaves 0.2 sqrt((1 + 20/7)^2 + (20/7)^2) =
// 0.960 there, 1.645 times which is 1.58.
TEST(Today, TwoEveningReadingsAreDrawnOnToDawn) {
    Pond pond = started();
    readAt(pond, "2026-06-14 05:40", 6.2, 6.0, 0.1);
    readAt(pond, "2026-06-15 05:40", 6.0, 5.8, 0.1);
    readAt(pond, "2026-06-15 17:30", 6.3, 6.0, 0.1);
    const Today before = decideToday(pond, quick());
    ASSERT_TRUE(before.isDecided) << before.message;
    EXPECT_FALSE(before.dusk);
    readAt(pond, "2026-06-15 21:00", 6.1, 5.3, 0.1);
    const Today today = decideToday(pond, quick());
    ASSERT_TRUE(today.isDecided) << today.message;
    ASSERT_TRUE(today.dusk);
    EXPECT_NEAR(today.dusk->dawn, 3.3, 1e-9);
    EXPECT_NEAR(today.dusk->low, 3.3 - 1.58, 0.01);
    EXPECT_NEAR(today.dusk->high, 3.3 + 1.58, 0.01);
    EXPECT_LE(*today.morning.tonight, today.dusk->dawn);
    EXPECT_TRUE(today.decision.wantsSurfaceAir);
    const std::string said = englishText(sentencesOf(today));
    EXPECT_NE(said.find("comes to 3.3 mg/L at 07:00"), std::string::npos);
    // A low night ahead asks for surface air; it is no reason of the morning's verdict.
    EXPECT_NE(said.find("Have surface air running before midnight; tonight is expected under the hold limit"),
              std::string::npos)
        << said;
    EXPECT_EQ(said.find("Because tonight"), std::string::npos);
}

TEST(Today, EveningReadingsCloseTogetherSayNothing) {
    Pond pond = started();
    readAt(pond, "2026-06-15 05:40", 6.0, 5.8, 0.1);
    readAt(pond, "2026-06-15 18:50", 6.3, 6.0, 0.1);
    readAt(pond, "2026-06-15 19:40", 6.1, 5.9, 0.1);
    const Today today = decideToday(pond, quick());
    ASSERT_TRUE(today.isDecided) << today.message;
    EXPECT_FALSE(today.dusk);
}

/// 40 days with one treatment on the 36th, read at four dawns after the start and at three at the end.
Pond treatedLate(double dawnsAtTheEnd) {
    Pond pond = started();
    for (const char* at : {"2026-06-15 05:40", "2026-06-16 05:40", "2026-06-17 05:40", "2026-06-18 05:40"}) {
        readAt(pond, at, 5.0, 4.8, 0.1);
    }
    Event event;
    event.at = parseLocalTime("2026-07-19 10:00");
    event.kind = "treatment";
    event.what = "bacteria";
    event.cost = Quantity(400.0);
    pond.events.push_back(event);
    event.at = parseLocalTime("2026-07-20 10:00");
    event.kind = "not_bought";
    event.what = "dye";
    event.cost = Quantity(150.0);
    pond.events.push_back(event);
    for (const char* at : {"2026-07-21 05:40", "2026-07-22 05:40", "2026-07-23 05:40"}) {
        readAt(pond, at, dawnsAtTheEnd, dawnsAtTheEnd, 0.1);
    }
    return pond;
}

Review coarseReview(const Pond& pond) {
    FitOptions options;
    options.members = 8;
    options.resolution = {14, 1800.0};
    return reviewPond(pond, options);
}

TEST(Review, ATreatmentIsHeldAgainstThePondWithoutIt) {
    const Review changed = coarseReview(treatedLate(12.0));
    ASSERT_TRUE(changed.isDone) << changed.message;
    ASSERT_EQ(changed.findings.size(), 3U);
    EXPECT_EQ(changed.findings[0].count, 4);  // of the aerator: none after the treatment
    ASSERT_EQ(changed.treatments.size(), 1U);
    ASSERT_EQ(changed.treatments[0].findings.size(), 3U);
    EXPECT_EQ(changed.treatments[0].findings[0].count, 3);
    EXPECT_TRUE(changed.treatments[0].findings[0].standsOut);
    const std::string said = englishText(sentencesOf(changed));
    EXPECT_NE(said.find("after bacteria on 2026-07-19 stands out"), std::string::npos) << said;
    EXPECT_NE(said.find("dye was offered and not bought"), std::string::npos);
    EXPECT_EQ(changed.cost, 400.0);
    EXPECT_EQ(changed.notBoughtCost, 150.0);

    // What the members have without the treatment is no news.
    const Review usual = coarseReview(treatedLate(changed.rows[38].dawnWith.p50));
    ASSERT_TRUE(usual.isDone) << usual.message;
    EXPECT_FALSE(usual.treatments[0].findings[0].standsOut);
}

TEST(Review, APondThatStaysLowAsksForOneThingAndAGoodOneIsLeftAlone) {
    const auto verdict = [](double dawnsAtTheEnd) {
        Pond pond = treatedLate(dawnsAtTheEnd);
        std::erase_if(pond.events, [](const Event& event) { return event.kind == "treatment"; });
        const Review review = coarseReview(pond);
        EXPECT_TRUE(review.isDone) << review.message;
        return review.verdict;
    };
    EXPECT_EQ(verdict(1.0), ReviewVerdict::OneThing);
    EXPECT_EQ(verdict(6.0), ReviewVerdict::LeaveAlone);
}

TEST(Review, DeadAlgaeHaveAPrice) {
    const Review review = coarseReview(treatedLate(4.0));
    ASSERT_TRUE(review.isDone) << review.message;
    ASSERT_TRUE(review.kill);
    EXPECT_EQ(review.kill->day, 30);
    EXPECT_LT(review.kill->all.p50, review.kill->quarter.p50);
    EXPECT_LT(review.kill->quarter.p50, review.kill->leftAlone.p50);
    const std::string said = englishText(sentencesOf(review));
    EXPECT_NE(said.find("Had all algae been killed"), std::string::npos);
    EXPECT_NE(said.find("never the whole pond in hot or cloudy weather, or where the dawn is below 5.0 mg/L"),
              std::string::npos)
        << said;
}

TEST(Review, WithoutAnyAirThereIsNothingToReview) {
    Pond pond = test::scenario("grandfathers-pond");
    readAt(pond, "2026-06-17 05:40", 5.0, 4.8, 0.1);
    EXPECT_FALSE(reviewPond(pond, {}).isDone);
}

}  // namespace
}  // namespace engine
