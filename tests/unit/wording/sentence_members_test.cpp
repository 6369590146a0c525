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

TEST(SentenceMembers, AChanceStandsBesideThatOfThePondLeftAlone) {
    const Comparison comparison = withMembers(madeUpComparison());
    const auto sentences = sentencesOfChances(comparison, 1);
    ASSERT_EQ(sentences.size(), 2U);
    EXPECT_EQ(english(sentences[0]),
              "Of 100 ponds like this one, 2 go below the lethal line of 2.0 mg/L with it, and none left "
              "alone: 2 more.");
    EXPECT_EQ(english(sentences[1]),
              "Of 100 ponds like this one, 46 go below the stress line of 5.0 mg/L with it, and 30 left "
              "alone: 16 more.");
    const auto alone = sentencesOfChances(comparison, 0);
    ASSERT_EQ(alone.size(), 2U);
    EXPECT_EQ(english(alone[1]), "Of 100 ponds like this one, 30 go below the stress line of 5.0 mg/L.");
}

TEST(SentenceMembers, WeightsAreSaidWithWhatTheyChange) {
    Comparison comparison = withMembers(madeUpComparison());
    EXPECT_FALSE(isSaid(sentencesOf(comparison), SentenceKey::MembersWeighed));
    comparison.ensemble->weights.assign(200, 1.0);
    comparison.ensemble->effective = 140.2;
    EXPECT_EQ(numberSaid(sentencesOf(comparison), SentenceKey::MembersWeighed, "effective"), 140.0);
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
    EXPECT_EQ(said(comparison, SentenceKey::AdviceChance), "");
    comparison = withMembers(comparison);
    comparison.ensemble->end = EnsembleEnd::Cancelled;
    EXPECT_EQ(said(comparison, SentenceKey::AdviceChance), "");
    EXPECT_NE(said(comparison, SentenceKey::CentralRunOnly), "");
}

}  // namespace
}  // namespace engine
