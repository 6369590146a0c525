#include "engine/follow_up/incident.h"

#include "engine/wording/sentence_incident.h"
#include "engine/wording/sentence_today.h"
#include "tests/sentences.h"
#include "tests/unit/follow_up/logged_pond.h"

#include <gtest/gtest.h>

#include <set>
#include <stop_token>
#include <string>
#include <vector>

namespace engine {
namespace {

TEST(Incident, AMixedPondKeepsItsAirAndAStratifiedOneDoesNot) {
    Pond mixed = test::startedPond();
    test::readAt(mixed, "2026-06-17 05:30", 1.6, 1.5, 1.2, 26.8);
    const Incident one = judgeIncident(mixed, test::quickOptions());
    ASSERT_TRUE(one.isJudged) << one.message;
    EXPECT_EQ(one.state, PresentState::Mixed);
    ASSERT_EQ(one.options.size(), 4U);
    Pond stratified = test::startedPond();
    test::readAt(stratified, "2026-06-17 05:30", 2.2, 1.5, 0.0, 20.5);
    const Incident two = judgeIncident(stratified, test::quickOptions());
    ASSERT_TRUE(two.isJudged) << two.message;
    EXPECT_EQ(two.state, PresentState::Stratified);
    const auto advice = [](const Incident& incident) {
        return test::textsOf(sentencesOf(incident), SentenceKey::IncidentAdvice, "advice");
    };
    EXPECT_EQ(advice(one), std::vector<std::string>{"advice-mixed"});
    EXPECT_EQ(advice(two), std::vector<std::string>{"advice-stratified"});
    // Lifting what owes oxygen lowers the fish water; surface air never does.
    EXPECT_LT(two.options[1].lowest, two.options[0].lowest);
    EXPECT_GE(two.options[2].lowest, two.options[0].lowest - 1e-9);
    const std::vector<Sentence> said = sentencesOf(two);
    EXPECT_EQ(test::textsOf(said, SentenceKey::IncidentPresent, "state"),
              std::vector<std::string>{"stratified"});
    EXPECT_EQ(test::textsOf(said, SentenceKey::IncidentSign, "sign"),
              (std::vector<std::string>{"sign-oxygen", "sign-toxic"}));
    EXPECT_EQ(test::sentencesWith(said, SentenceKey::IncidentCall).size(), 1U);
    EXPECT_EQ(test::sentencesWith(said, SentenceKey::IncidentWrite).size(), 1U);
}

// The same three readings on the two pages: what is said of the bottom air is one thing.
TEST(Incident, SaysTheSameOfTheBottomAirAsTheMorning) {
    std::set<std::string> seen;
    for (const double bottomTemperature : {26.8, 26.2, 25.4, 24.5, 21.0}) {
        for (const double bottomOxygen : {1.5, 0.0}) {
            Pond pond = test::startedPond();
            test::readAt(pond, "2026-06-17 05:30", 1.6, 1.5, bottomOxygen, bottomTemperature);
            const Incident incident = judgeIncident(pond, test::quickOptions());
            const Today today = decideToday(pond, test::quickOptions());
            ASSERT_TRUE(incident.isJudged && today.isDecided) << incident.message << today.message;
            EXPECT_EQ(today.state, incident.state) << bottomTemperature << ' ' << bottomOxygen;
            const auto there = test::textsOf(sentencesOf(incident), SentenceKey::IncidentAdvice, "advice");
            const auto here = test::textsOf(sentencesOf(today), SentenceKey::TodayBottomAir, "advice");
            ASSERT_EQ(here.size(), 1U) << bottomTemperature << ' ' << bottomOxygen;
            EXPECT_EQ(here, there) << bottomTemperature << ' ' << bottomOxygen;
            seen.insert(here.front());
        }
    }
    EXPECT_EQ(seen, (std::set<std::string>{"advice-between", "advice-mixed", "advice-stratified"}));
}

TEST(Incident, SaysWhichSurfaceAeratorItTakesWhereTheFileHasNone) {
    Pond pond = test::startedPond();
    test::readAt(pond, "2026-06-17 05:30", 2.2, 1.5, 0.0, 20.5);
    pond.surfaceAerator.reset();
    const Incident guessed = judgeIncident(pond, test::quickOptions());
    ASSERT_TRUE(guessed.isJudged) << guessed.message;
    const std::vector<Sentence> said = sentencesOf(guessed);
    EXPECT_EQ(test::numbersOf(said, SentenceKey::IncidentSurfaceAssumed, "power"), std::vector{2.5});
    // 0.8 ha at 2.5 kW/ha and 1.5 kg/kWh.
    const std::vector<double> transfer =
        test::numbersOf(said, SentenceKey::IncidentSurfaceAssumed, "transfer");
    ASSERT_EQ(transfer.size(), 1U);
    EXPECT_NEAR(transfer[0], 3.0, 1e-9);
    pond.surfaceAerator.emplace();
    pond.surfaceAerator->transfer_kgPerH = Quantity(1.0);
    const Incident given = judgeIncident(pond, test::quickOptions());
    ASSERT_TRUE(given.isJudged) << given.message;
    EXPECT_EQ(given.surfaceTransfer_kgPerH, 1.0);
    EXPECT_TRUE(test::sentencesWith(sentencesOf(given), SentenceKey::IncidentSurfaceAssumed).empty());
}

TEST(Incident, AStopLeavesNoJudgementAndNoDecision) {
    Pond pond = test::startedPond();
    test::readAt(pond, "2026-06-17 05:30", 2.2, 1.5, 0.0, 20.5);
    std::stop_source stop;
    stop.request_stop();
    const Incident incident = judgeIncident(pond, test::quickOptions(), {stop.get_token(), {}});
    EXPECT_FALSE(incident.isJudged);
    EXPECT_EQ(incident.message, "The incident was stopped before it was judged.");
    const Today today = decideToday(pond, test::quickOptions(), {stop.get_token(), {}});
    EXPECT_FALSE(today.isDecided);
    EXPECT_EQ(today.message, "The decision was stopped before it was made.");
}

TEST(Incident, TwoDepthsWithTemperaturesAreNeeded) {
    Pond pond = test::startedPond();
    pond.readings.push_back(test::readingOf("2026-06-17 05:30", 0.5, 2.0, 26.0));
    EXPECT_FALSE(judgeIncident(pond, test::quickOptions()).isJudged);
    pond.readings.push_back(test::readingOf("2026-06-17 05:31", 2.9, 0.1, 21.0));
    EXPECT_TRUE(judgeIncident(pond, test::quickOptions()).isJudged);
}

}  // namespace
}  // namespace engine
