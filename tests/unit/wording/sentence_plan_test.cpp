#include "engine/plan/plan.h"
#include "engine/plan/plan_sustained.h"
#include "engine/wording/wording.h"
#include "tests/made_up_comparison.h"
#include "tests/sentences.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

namespace engine {
namespace {

using test::madeUpComparison;
using test::numberSaid;
using test::textSaid;

/// A plan of made-up numbers that leads to the ramp of its comparison that stands last: four members, one of
/// which it adds below the line.
Plan madeUpPlan() {
    Plan plan;
    plan.end = PlanEnd::Completed;
    plan.line = 5.0;
    plan.chance = 0.05;
    plan.comparison = madeUpComparison();
    plan.nothingEndState = 5.5;
    EnsembleResult& ensemble = plan.comparison.ensemble.emplace();
    ensemble.end = EnsembleEnd::Completed;
    ensemble.members = 4;
    for (std::size_t i = 0; i < plan.comparison.runs.size(); ++i) {
        RampEnsemble ramp;
        ramp.name = plan.comparison.runs[i].name;
        ramp.hours = {0.0};
        ramp.lowest = {6.0F, 6.0F, 6.0F, 1.0F};
        ramp.chanceBelowStress = 0.25;
        ensemble.ramps.push_back(ramp);
    }
    ensemble.ramps.back().lowest[0] = 4.5F;
    for (const SustainedKind kind : {SustainedKind::Continuous, SustainedKind::Raised, SustainedKind::ByDay,
                                     SustainedKind::ByNight, SustainedKind::PartTime}) {
        SustainedSchedule row;
        row.kind = kind;
        row.action = {1440, 2, 3.0, 1, false};
        row.start = ClockTime{600};
        row.endState = 5.25;
        row.verdict = EndVerdict::Keeps;
        plan.sustainedSchedules.push_back(row);
    }
    plan.verdict = PlanVerdict::Ramp;
    plan.chosen = 0;
    plan.days = {
        {0, 2, 3.0, 1, true}, {20, 1, 3.0, 1, false}, {40, 2, 3.0, 4, false}, {1440, 2, 3.0, 1, false}};
    plan.added = {1, 4};
    plan.addedLethal = {0, 4};
    plan.ownHarm = {2, 128};
    plan.ramp = Ramp{};
    plan.holds = {{1, {HoldReason::Heat, HoldReason::ColdFront}}};
    plan.heedsHolds = true;
    plan.tradeOff = {{"gentle", 7, {3, 4}, 0.5, false},
                     {"held", std::nullopt, {0, 4}, 0.9, false},
                     {"", 2, {1, 128}, 0.2, false}};
    plan.slow = {{5, 1.5}, {60, 0.05}, {1440, 0.02}};
    plan.stress = {{StressKind::ColdFront, 2, 3.5, 2, 4.5}};
    return plan;
}

Plan notToStart(PlanReason reason) {
    Plan plan = madeUpPlan();
    plan.verdict = PlanVerdict::DoNotStart;
    plan.reason = reason;
    plan.chosen.reset();
    plan.ramp.reset();
    plan.days.clear();
    plan.stress.clear();
    return plan;
}

TEST(SentencePlan, EveryKeyIsSaidWithAllItsValues) {
    std::vector<Plan> plans{madeUpPlan()};
    for (const PlanReason reason : {PlanReason::NothingBelowLethal, PlanReason::NothingTooWarm,
                                    PlanReason::NoEndState, PlanReason::NoSafeWay, PlanReason::BetterHarms}) {
        plans.push_back(notToStart(reason));
    }
    plans.back().toxicantsFound = true;
    plans.back().isUnderWay = true;
    plans.back().holds.clear();
    Plan atOnce = madeUpPlan();
    atOnce.verdict = PlanVerdict::AtOnce;
    atOnce.days = {{1440, 2, 0.5, 1, false}};
    atOnce.sustainedSchedules[0].action = atOnce.days[0];
    atOnce.sustainedSchedules[0].verdict = EndVerdict::Better;
    atOnce.comparison.model.debt_kg = 0.0;
    atOnce.heedsHolds = false;
    atOnce.comparison.days = 30;  // longer than the outlook
    atOnce.chance = 0.5;
    atOnce.slow = {{5, 1.5}, {1440, 0.2}};
    plans.push_back(atOnce);
    Plan harms = notToStart(PlanReason::BetterHarms);
    harms.sustainedSchedules[0].verdict = EndVerdict::Fails;
    plans.push_back(harms);
    for (Plan climbed : {madeUpPlan(), notToStart(PlanReason::NothingBelowLethal)}) {
        climbed.isClimb = true;
        plans.push_back(climbed);
    }
    std::set<SentenceKey> keys;
    for (const Plan& plan : plans) {
        for (const Sentence& sentence : sentencesOf(plan)) {
            keys.insert(sentence.key);
            const std::string text = english(sentence);  // throws if a value is missing
            EXPECT_EQ(text.find_first_of("{}"), std::string::npos) << text;
            EXPECT_TRUE(text.ends_with('.') || text.ends_with(':')) << text;
        }
    }
    for (int i = static_cast<int>(SentenceKey::PlanTitle); i <= static_cast<int>(SentenceKey::StressWorst);
         ++i) {
        const auto key = static_cast<SentenceKey>(i);
        EXPECT_TRUE(keys.contains(key)) << englishTemplate(key);
    }
}

TEST(SentencePlan, AirThatAlreadyRanIsLeftOffAndNotUnstarted) {
    for (const PlanReason reason : {PlanReason::NothingBelowLethal, PlanReason::NothingTooWarm,
                                    PlanReason::NoEndState, PlanReason::NoSafeWay, PlanReason::BetterHarms}) {
        Plan plan = notToStart(reason);
        EXPECT_FALSE(test::isSaid(sentencesOf(plan), SentenceKey::PlanUnderWay));
        // Where the pond fails left alone nobody knows whether air is worse: that is the morning's to say.
        const bool failsAlone =
            reason == PlanReason::NothingBelowLethal || reason == PlanReason::NothingTooWarm;
        plan.isUnderWay = true;
        EXPECT_EQ(test::textsOf(sentencesOf(plan), SentenceKey::PlanUnderWay, "order"),
                  std::vector<std::string>{failsAlone ? "go-by-morning" : "leave-off"});
    }
    EXPECT_EQ(englishTerm("go-by-morning"), "No schedule from here; go by the morning's readings");
    EXPECT_EQ(englishTerm("leave-off"), "Leave the air from below off for now");
}

TEST(SentencePlan, WhatThePondDoesByItselfComesFirstWhereItExceedsTheShare) {
    Plan plan = madeUpPlan();
    ASSERT_GT(plan.comparison.ensemble->ramps.front().chanceBelowStress, plan.chance);
    auto sentences = sentencesOf(plan);
    ASSERT_GT(sentences.size(), 2U);
    EXPECT_EQ(sentences[0].key, SentenceKey::PlanTitle);
    EXPECT_EQ(sentences[1].key, SentenceKey::PlanNothingExceeds);
    EXPECT_EQ(sentences[2].key, SentenceKey::PlanRamp);
    EXPECT_FALSE(test::isSaid(sentences, SentenceKey::PlanNothingWithin));
    EXPECT_EQ(numberSaid(sentences, SentenceKey::PlanNothingExceeds, "count"), 0.25);
    EXPECT_EQ(numberSaid(sentences, SentenceKey::PlanNothingExceeds, "line"), 5.0);
    plan.chance = 0.5;
    sentences = sentencesOf(plan);
    EXPECT_EQ(sentences[1].key, SentenceKey::PlanRamp)
        << "the plan comes first where the pond keeps the share";
    EXPECT_FALSE(test::isSaid(sentences, SentenceKey::PlanNothingExceeds));
    EXPECT_EQ(numberSaid(sentences, SentenceKey::PlanNothingWithin, "count"), 0.25);
    EXPECT_EQ(numberSaid(sentences, SentenceKey::PlanNothingWithin, "line"), 5.0);
}

TEST(SentencePlan, DaysAreSaidOneByOne) {
    const auto sentences = sentencesOf(madeUpPlan());
    const auto first = std::find_if(sentences.begin(), sentences.end(), [](const Sentence& sentence) {
        return sentence.key == SentenceKey::PlanRamp;
    });
    ASSERT_GE(sentences.end() - first, 5);
    EXPECT_EQ(english(first[0]), "The standing schedule begins on day 4; before it:");
    EXPECT_EQ(english(first[1]), "Day 1: no air.");
    EXPECT_EQ(english(first[2]), "Day 2: 20 min from 10:00, 1 of 2 diffusers at 3.0 m.");
    EXPECT_EQ(english(first[3]),
              "Day 3: 40 min in 4 equal runs, the first at 10:00, 2 of 2 diffusers at 3.0 m.");
    EXPECT_EQ(first[4].key, SentenceKey::PlanSustained) << "and of no other day";
}

}  // namespace
}  // namespace engine
