#include "engine/plan/plan.h"
#include "engine/plan/plan_sustained.h"
#include "engine/wording/wording.h"
#include "tests/made_up_comparison.h"

#include <gtest/gtest.h>

#include <set>

namespace engine {
namespace {

using test::madeUpComparison;

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

std::string textOf(const Plan& plan) {
    return englishText(sentencesOf(plan));
}

TEST(SentencePlan, EveryKeyIsSaidWithAllItsValues) {
    std::vector<Plan> plans{madeUpPlan()};
    for (const PlanReason reason : {PlanReason::NothingBelowLethal, PlanReason::NothingTooWarm,
                                    PlanReason::NoEndState, PlanReason::NoSafeWay, PlanReason::BetterHarms}) {
        plans.push_back(notToStart(reason));
    }
    plans.back().toxicantsFound = true;
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
    atOnce.months = {{4, 6.0, 5.0, true}, {7, 1.0, 5.0, false}};
    plans.push_back(atOnce);
    Plan harms = notToStart(PlanReason::BetterHarms);
    harms.sustainedSchedules[0].verdict = EndVerdict::Fails;
    plans.push_back(harms);
    std::set<SentenceKey> keys;
    for (const Plan& plan : plans) {
        for (const Sentence& sentence : sentencesOf(plan)) {
            keys.insert(sentence.key);
            const std::string text = english(sentence);  // throws if a value is missing
            EXPECT_EQ(text.find_first_of("{}"), std::string::npos) << text;
            EXPECT_TRUE(text.ends_with('.') || text.ends_with(':')) << text;
        }
    }
    for (int i = static_cast<int>(SentenceKey::PlanTitle); i <= static_cast<int>(SentenceKey::MonthsMissing);
         ++i) {
        const auto key = static_cast<SentenceKey>(i);
        EXPECT_TRUE(keys.contains(key)) << englishTemplate(key);
    }
}

TEST(SentencePlan, AirThatAlreadyRanIsLeftOffAndNotUnstarted) {
    for (const PlanReason reason : {PlanReason::NothingBelowLethal, PlanReason::NothingTooWarm,
                                    PlanReason::NoEndState, PlanReason::NoSafeWay, PlanReason::BetterHarms}) {
        Plan plan = notToStart(reason);
        EXPECT_NE(textOf(plan).find("Do not start"), std::string::npos);
        plan.isUnderWay = true;
        EXPECT_EQ(textOf(plan).find("Do not start"), std::string::npos);
        // Where the pond fails by itself nobody knows whether air is worse: that is the morning's to say.
        const bool failsAlone =
            reason == PlanReason::NothingBelowLethal || reason == PlanReason::NothingTooWarm;
        EXPECT_NE(textOf(plan).find(failsAlone ? "No schedule from here; go by the morning's readings: "
                                               : "Leave the air from below off for now: "),
                  std::string::npos);
    }
}

TEST(SentencePlan, WhatThePondDoesByItselfComesFirstWhereItExceedsTheShare) {
    Plan plan = madeUpPlan();
    ASSERT_GT(plan.comparison.ensemble->ramps.front().chanceBelowStress, plan.chance);
    std::string text = textOf(plan);
    EXPECT_LT(text.find("1 of 4 ponds like this one go below 5.0 mg/L by themselves"),
              text.find("The plan\n"));
    plan.chance = 0.5;
    text = textOf(plan);
    EXPECT_GT(text.find("1 of 4 ponds like this one go below 5.0 mg/L within"), text.find("The plan\n"));
}

TEST(SentencePlan, TheThreeChancesStandTogether) {
    const std::string text = textOf(madeUpPlan());
    EXPECT_NE(text.find("this plan takes 1 below 5.0 mg/L that would not go there by themselves: 25.0 %"),
              std::string::npos)
        << text;
    EXPECT_NE(text.find("Below the line at some time with it: 2; without the aerator: 1."),
              std::string::npos);
}

TEST(SentencePlan, DaysAreSaidOneByOne) {
    const std::string text = textOf(madeUpPlan());
    for (const char* line : {"Day 1: no air.", "Day 2: 20 min from 10:00, 1 of 2 diffusers at 3.0 m.",
                             "Day 3: 40 min in 4 equal runs, the first at 10:00, 2 of 2 diffusers at 3.0 m.",
                             "The standing schedule begins on day 4; before it:"}) {
        EXPECT_NE(text.find(line), std::string::npos) << line << "\n" << text;
    }
}

}  // namespace
}  // namespace engine
