#include "engine/ensemble/ramp_risk.h"

#include "tests/made_up_comparison.h"

#include <gtest/gtest.h>

namespace engine {
namespace {

/// Members of do-nothing and each ramp: so many of ten with a low of 1, so many with 3, the others with 5.
Comparison drawn(const std::vector<std::pair<int, int>>& ofTen) {
    Comparison comparison = test::withMembers(test::madeUpComparison());
    comparison.model.parameters.thresholds.stress = 4.0;
    comparison.model.parameters.thresholds.lethal = 2.0;
    for (std::size_t i = 0; i < ofTen.size(); ++i) {
        RampEnsemble& ramp = comparison.ensemble->ramps[i];
        const auto [lethal, stress] = ofTen[i];
        ramp.chanceBelowLethal = 0.1 * lethal;
        ramp.chanceBelowStress = 0.1 * (lethal + stress);
        ramp.lowest.assign(10, 5.0F);
        std::fill(ramp.lowest.begin(), ramp.lowest.begin() + lethal + stress, 3.0F);
        std::fill(ramp.lowest.begin(), ramp.lowest.begin() + lethal, 1.0F);
    }
    return comparison;
}

TEST(RampRisk, TheLethalLineTellsRampsApartWhereNearlyAllAreUnderStress) {
    EXPECT_EQ(riskLine(drawn({{0, 9}})), RiskLine::Stress);
    EXPECT_EQ(riskLine(drawn({{0, 10}})), RiskLine::Lethal);
    EXPECT_EQ(riskLine(test::madeUpComparison()), RiskLine::Stress) << "without members";
}

TEST(RampRisk, WhatHappensWithNothingDoneNeedsMembers) {
    const Comparison comparison = drawn({{2, 5}});
    EXPECT_DOUBLE_EQ(*belowByItself(comparison, RiskLine::Stress), 0.7);
    EXPECT_DOUBLE_EQ(*belowByItself(comparison, RiskLine::Lethal), 0.2);
    EXPECT_EQ(belowByItself(test::madeUpComparison(), RiskLine::Stress), std::nullopt);
}

TEST(RampRisk, OnlyCompletedRampsWithMembersHaveOne) {
    Comparison comparison = drawn({{1, 2}, {3, 4}});
    comparison.runs[1].daysToContinuous = 6;
    const std::size_t ramps = comparison.runs.size() - 1;
    ASSERT_GE(ramps, 2U);
    const std::vector<RampRisk> risks = rampRisks(comparison);
    ASSERT_EQ(risks.size(), ramps);
    EXPECT_EQ(risks[0].run, 1U);
    EXPECT_EQ(risks[0].daysToContinuous, 6);
    EXPECT_EQ(risks[1].daysToContinuous, std::nullopt);
    EXPECT_DOUBLE_EQ(risks[0].below(RiskLine::Stress), 0.7);
    EXPECT_DOUBLE_EQ(risks[0].below(RiskLine::Lethal), 0.3);
    EXPECT_NEAR(risks[0].added(RiskLine::Stress), 0.7 - 0.3, 1e-12) << "with the ramp minus left alone";
    EXPECT_NEAR(risks[0].added(RiskLine::Lethal), 0.3 - 0.1, 1e-12);
    comparison.runs[2].end = RunEnd::NotFinite;
    EXPECT_EQ(rampRisks(comparison).size(), ramps - 1);
    EXPECT_TRUE(rampRisks(test::madeUpComparison()).empty());
}

TEST(RampRisk, OfEqualsTheFirstAddsLeastAndTheLastMost) {
    std::vector<RampRisk> risks(4);
    risks[0].chances.added = 0.2;
    risks[1].chances.added = 0.1;
    risks[2].chances.added = 0.1;
    risks[3].chances.added = 0.2;
    risks[2].chances.addedLethal = 0.3;  // of the others it is not known
    EXPECT_EQ(riskEnds(risks, RiskLine::Stress).least, 1U);
    EXPECT_EQ(riskEnds(risks, RiskLine::Stress).most, 3U);
    EXPECT_EQ(riskEnds(risks, RiskLine::Lethal).least, 0U);
    EXPECT_EQ(riskEnds(risks, RiskLine::Lethal).most, 2U);
}

}  // namespace
}  // namespace engine
