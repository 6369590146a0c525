#include "engine/wording/sentence.h"
#include "engine/wording/wording.h"
#include "tests/made_up_comparison.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace engine {
namespace {

using test::madeUpComparison;
using test::withMembers;

std::string said(const Comparison& comparison, SentenceKey key) {
    const auto sentences = sentencesOf(comparison);
    const auto found = std::find_if(sentences.begin(), sentences.end(),
                                    [key](const Sentence& sentence) { return sentence.key == key; });
    return found == sentences.end() ? "" : english(*found);
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
    EXPECT_EQ(said(comparison, SentenceKey::CentralRunOnly), "");
    EXPECT_NE(said(comparison, SentenceKey::MembersDrawn).find("are 200 draws (seed 7)"), std::string::npos);
    EXPECT_NE(said(comparison, SentenceKey::MembersWeather), "");
    EXPECT_EQ(said(comparison, SentenceKey::MembersAtFactorEnd), "");
    comparison.ensemble->atFactorEnd = 3;
    EXPECT_NE(said(comparison, SentenceKey::MembersAtFactorEnd).find("In 3 of 200"), std::string::npos);
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
