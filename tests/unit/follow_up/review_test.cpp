#include "engine/follow_up/review.h"

#include "engine/wording/sentence_review.h"
#include "tests/sentences.h"
#include "tests/unit/follow_up/logged_pond.h"

#include <gtest/gtest.h>

#include <chrono>
#include <string>
#include <vector>

namespace engine {
namespace {

/// A date as sentences hold it.
double daysTo(int year, unsigned month, unsigned day) {
    const Date date{std::chrono::year(year), std::chrono::month(month), std::chrono::day(day)};
    return static_cast<double>(std::chrono::sys_days(date).time_since_epoch().count());
}

TEST(Review, ASecondChangeWithinTheWatchIsNotAttributable) {
    Pond pond = test::startedPond();
    for (const char* at : {"2026-06-20 10:00", "2026-07-30 10:00", "2026-08-10 10:00", "2026-10-01 10:00"}) {
        test::happened(pond, at, "treatment");
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

TEST(Review, SaysEachFindingByItsKindAndWaitsForThirtyDays) {
    Pond pond = test::startedPond();
    for (const char* at : {"2026-06-15 05:40", "2026-06-16 05:40", "2026-06-17 05:40"}) {
        test::readAt(pond, at, 5.0, 4.8, 0.1);
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
    // 70 ug/L of chlorophyll, 6.5 to 16 mg/L for each 100.
    EXPECT_NEAR(review.algaeBillLow, 4.55, 1e-9);
    EXPECT_NEAR(review.algaeBillHigh, 11.2, 1e-9);
    const std::vector<Sentence> said = sentencesOf(review);
    EXPECT_EQ(test::textsOf(said, SentenceKey::ReviewVerdict, "verdict"),
              std::vector<std::string>{"verdict-wait"});
    EXPECT_EQ(test::textsOf(said, SentenceKey::ReviewCopper, "gate"),
              std::vector<std::string>{"gate-unknown"});
    // Each finding is said by what it is: out of the noise, within it, or of too few readings.
    std::vector<std::string> out, within;
    for (const ReviewFinding& one : {review.findings[0], review.findings[1]}) {
        EXPECT_EQ(one.standsOut, one.reading < one.without.p05 || one.reading > one.without.p95);
        (one.standsOut ? out : within)
            .push_back(one.measure == ReviewMeasure::DawnLow ? "dawn-low" : "bottom-oxygen");
    }
    EXPECT_EQ(test::textsOf(said, SentenceKey::ReviewStandsOut, "what"), out);
    EXPECT_EQ(test::textsOf(said, SentenceKey::ReviewNothing, "what"), within);
    EXPECT_EQ(test::textsOf(said, SentenceKey::ReviewTooFew, "what"), std::vector<std::string>{"secchi"});
}

/// 40 days with one treatment on the 36th, read at four dawns after the start and at three at the end.
Pond treatedLate(double dawnsAtTheEnd) {
    Pond pond = test::startedPond();
    for (const char* at : {"2026-06-15 05:40", "2026-06-16 05:40", "2026-06-17 05:40", "2026-06-18 05:40"}) {
        test::readAt(pond, at, 5.0, 4.8, 0.1);
    }
    test::happened(pond, "2026-07-19 10:00", "treatment");
    pond.events.back().what = "bacteria";
    pond.events.back().cost = Quantity(400.0);
    test::happened(pond, "2026-07-20 10:00", "not_bought");
    pond.events.back().what = "dye";
    pond.events.back().cost = Quantity(150.0);
    for (const char* at : {"2026-07-21 05:40", "2026-07-22 05:40", "2026-07-23 05:40"}) {
        test::readAt(pond, at, dawnsAtTheEnd, dawnsAtTheEnd, 0.1);
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
    const std::vector<Sentence> said = sentencesOf(changed);
    const std::vector<Sentence> standingOut = test::sentencesWith(said, SentenceKey::ReviewAfterStandsOut);
    ASSERT_FALSE(standingOut.empty());
    EXPECT_EQ(test::valueOf(standingOut[0], "what").text, "dawn-low");
    EXPECT_EQ(test::valueOf(standingOut[0], "treatment").text, "bacteria");
    EXPECT_EQ(test::valueOf(standingOut[0], "reading").number, 12.0);
    EXPECT_EQ(test::valueOf(standingOut[0], "date").number, daysTo(2026, 7, 19));
    EXPECT_EQ(test::textsOf(said, SentenceKey::ReviewNotBought, "what"), std::vector<std::string>{"dye"});
    EXPECT_EQ(test::numbersOf(said, SentenceKey::ReviewNotSpent, "cost"), std::vector{150.0});
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
    const std::vector<Sentence> said = sentencesOf(review);
    EXPECT_EQ(test::numbersOf(said, SentenceKey::ReviewKill, "all"), std::vector{review.kill->all.p50});
    EXPECT_EQ(test::numbersOf(said, SentenceKey::ReviewKill, "date"), std::vector{daysTo(2026, 7, 13)});
    EXPECT_EQ(test::numbersOf(said, SentenceKey::ReviewInParts, "line"), std::vector{5.0});
    EXPECT_EQ(test::numbersOf(said, SentenceKey::ReviewInParts, "days"), std::vector{14.0});
}

TEST(Review, WithoutAnyAirThereIsNothingToReview) {
    Pond pond = test::scenario("grandfathers-pond");
    test::readAt(pond, "2026-06-17 05:40", 5.0, 4.8, 0.1);
    const Review none = reviewPond(pond, {});
    EXPECT_FALSE(none.isDone);
    EXPECT_EQ(none.message,
              "By the log the aerator never ran: an event of kind \"started\" or \"run\" is needed.");
}

}  // namespace
}  // namespace engine
