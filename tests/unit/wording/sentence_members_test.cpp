#include "engine/wording/sentence.h"
#include "engine/wording/wording.h"
#include "tests/made_up_comparison.h"
#include "tests/sentences.h"

#include <gtest/gtest.h>

namespace engine {
namespace {

using test::isSaid;
using test::madeUpComparison;
using test::numberSaid;
using test::withMembers;

std::string said(const Comparison& comparison, SentenceKey key) {
    return test::englishSaid(sentencesOf(comparison), key);
}

TEST(SentenceMembers, AChanceStandsBesideDoNothingsAndTheAddedOne) {
    const Comparison comparison = withMembers(madeUpComparison());
    EXPECT_EQ(said(comparison, SentenceKey::NothingChances),
              "Of ten ponds like this one, 3 would go below the stress line of 5.0 mg/L by themselves at "
              "some time of "
              "the 2 days, and none below the lethal line of 2.0 mg/L.");
    EXPECT_EQ(said(comparison, SentenceKey::RampChances),
              "Of ten ponds like this one, 5 would go below the stress line of 5.0 mg/L at some time of the "
              "2 days; "
              "without the new aerator 3; 2 with this ramp that would not without, which is what a ramp can "
              "control.");
    EXPECT_EQ(said(comparison, SentenceKey::RampChancesLethal),
              "Of ten ponds like this one, fewer than one would go below the lethal line of 2.0 mg/L; "
              "without the new "
              "aerator none.");
}

TEST(SentenceMembers, WhatTheyAreIsSaidInsteadOfTheCentralRunAlone) {
    Comparison comparison = withMembers(madeUpComparison());
    auto sentences = sentencesOf(comparison);
    EXPECT_FALSE(isSaid(sentences, SentenceKey::CentralRunOnly));
    EXPECT_EQ(numberSaid(sentences, SentenceKey::MembersDrawn, "members"), 200.0);
    EXPECT_EQ(numberSaid(sentences, SentenceKey::MembersDrawn, "seed"), 7.0);
    EXPECT_TRUE(isSaid(sentences, SentenceKey::MembersWeather));
    EXPECT_FALSE(isSaid(sentences, SentenceKey::MembersAtFactorEnd));
    comparison.ensemble->atFactorEnd = 3;
    sentences = sentencesOf(comparison);
    EXPECT_EQ(numberSaid(sentences, SentenceKey::MembersAtFactorEnd, "count"), 3.0);
    EXPECT_EQ(numberSaid(sentences, SentenceKey::MembersAtFactorEnd, "members"), 200.0);
}

TEST(SentenceMembers, NoMembersNoChances) {
    Comparison comparison = madeUpComparison();
    EXPECT_NE(said(comparison, SentenceKey::CentralRunOnly), "");
    EXPECT_EQ(said(comparison, SentenceKey::RampChances), "");
    comparison = withMembers(comparison);
    comparison.ensemble->end = EnsembleEnd::Cancelled;
    EXPECT_EQ(said(comparison, SentenceKey::RampChances), "");
    EXPECT_NE(said(comparison, SentenceKey::CentralRunOnly), "");
}

}  // namespace
}  // namespace engine
