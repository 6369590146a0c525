#include "engine/wording/sentence.h"

#include "engine/wording/wording.h"
#include "tests/made_up_comparison.h"
#include "tests/sentences.h"

#include <gtest/gtest.h>

#include <set>

namespace engine {
namespace {

using test::find;
using test::inTrouble;
using test::kPlainPond;
using test::madeUpComparison;
using test::numberSaid;
using test::with;

std::string said(const Comparison& comparison, SentenceKey key) {
    return test::englishSaid(sentencesOf(comparison), key);
}

/// Place of the first sentence of a part, from a place on.
std::size_t firstOf(const std::vector<Sentence>& sentences, SentencePart part, std::size_t from = 0) {
    const auto begin = sentences.begin() + static_cast<std::ptrdiff_t>(from);
    return static_cast<std::size_t>(
        std::find_if(begin, sentences.end(), [&](const Sentence& one) { return one.part == part; }) -
        sentences.begin());
}

TEST(Sentence, ARampSaysItsWorstNightWithDoNothingBesideIt) {
    Comparison comparison = madeUpComparison();
    comparison.runs[0].days[1].lowest = 5.26;
    comparison.runs[1].days[1].lowest = 3.26;
    // 193180 s is 05:39:40 on the morning after night 2, which begins on 15 June.
    EXPECT_EQ(said(comparison, SentenceKey::RampWorst),
              "at once: lowest on night 2 at 05:40 on 2026-06-16, 3.3 mg/L in the fish water; left alone "
              "that night's "
              "low is 5.3 mg/L.");
}

TEST(Sentence, TheClockAndTheDateAreRoundedTogether) {
    Comparison comparison = madeUpComparison();
    comparison.runs[1].days[1].lowestTime = 2.0 * 86400.0 - 10.0;  // ten seconds to midnight
    const auto sentences = sentencesOf(comparison);
    EXPECT_EQ(numberSaid(sentences, SentenceKey::RampWorst, "clock"), 2.0 * 86400.0);
    EXPECT_EQ(numberSaid(sentences, SentenceKey::RampWorst, "date"), 20620.0) << "16 June 2026";
}

TEST(Sentence, DoNothingBelowTheStressLineComesFirstAndNamesNoCulprit) {
    const auto sentences = sentencesOf(inTrouble());
    ASSERT_EQ(sentences[0].key, SentenceKey::Title);
    const std::size_t first = firstOf(sentences, SentencePart::DoNothing);
    ASSERT_EQ(sentences[first].key, SentenceKey::NothingBelowStress);
    EXPECT_LT(first, firstOf(sentences, SentencePart::Pond, 1));
    EXPECT_EQ(
        english(sentences[first]),
        "Left alone this pond goes below its stress line of 5.0 mg/L, first on night 2, for 12.3 of 48 h. It "
        "is lowest on night 2 at 05:40 on 2026-06-16, 1.3 mg/L in the fish water.");
    EXPECT_EQ(find(sentences, SentenceKey::NothingWorst), nullptr);
    EXPECT_EQ(said(inTrouble(), SentenceKey::NothingBelowLethal),
              "It spends under 0.1 of 48 h below the lethal line of 2.0 mg/L, first on night 2.");
}

TEST(Sentence, DoNothingAboveTheStressLineIsSaidFirstToo) {
    const auto sentences = sentencesOf(madeUpComparison());
    const std::size_t first = firstOf(sentences, SentencePart::DoNothing);
    EXPECT_EQ(sentences[first].key, SentenceKey::NothingWorst);
    EXPECT_EQ(sentences[first + 1].key, SentenceKey::NothingAbove);
    EXPECT_EQ(find(sentences, SentenceKey::NothingBelowStress), nullptr);
}

TEST(Sentence, HoursAndDosesCarryTheirNumbers) {
    Comparison comparison = inTrouble();
    EXPECT_EQ(said(comparison, SentenceKey::RampBelowLethal),
              "It spends 3.0 of 48 h below the lethal line of 2.0 mg/L, first on night 2; left alone under "
              "0.1 h.");
    comparison.model.bottom.volume = 1000.0;
    EXPECT_EQ(said(comparison, SentenceKey::RampLargestDose),
              "The largest dose is 80 % of the bottom water, on day 2 with 60 min of air.");
    comparison.model.bottom.volume = 4e5;
    EXPECT_EQ(said(comparison, SentenceKey::RampLargestDose),
              "The largest dose is under 1 % of the bottom water, on day 2 with 60 min of air.");
    EXPECT_EQ(said(comparison, SentenceKey::EndStateDrift),
              "It has not settled: the dawn low still changes by -0.2 mg/L a day.");
}

TEST(Sentence, TheDebtRatioFallsIntoTheTradesFourBands) {
    Comparison comparison = madeUpComparison();
    comparison.model.oxygenReserve_kg = 100.0;
    const auto band = [&](double debt_kg) {
        comparison.model.debt_kg = debt_kg;
        const auto sentences = sentencesOf(comparison);
        return (find(sentences, SentenceKey::DebtRatio) + 1)->key;
    };
    EXPECT_EQ(band(0.0), SentenceKey::RatioLow);
    EXPECT_EQ(band(14.9), SentenceKey::RatioLow);
    EXPECT_EQ(band(15.0), SentenceKey::RatioRampRequired);
    EXPECT_EQ(band(49.9), SentenceKey::RatioRampRequired);
    EXPECT_EQ(band(50.0), SentenceKey::RatioHigh);
    EXPECT_EQ(band(100.0), SentenceKey::RatioHigh);
    EXPECT_EQ(band(101.0), SentenceKey::RatioDoNotStart);
    EXPECT_EQ(
        said(comparison, SentenceKey::DebtRatio),
        "The oxygen debt of the bottom water is 101 kg and the oxygen above it 100 kg: a debt-to-pool ratio "
        "of 1.01.");
    for (const SentenceKey key : {SentenceKey::RatioLow, SentenceKey::RatioRampRequired,
                                  SentenceKey::RatioHigh, SentenceKey::RatioDoNotStart}) {
        EXPECT_NE(englishTemplate(key).find("common practice, no published source"), std::string_view::npos);
    }
}

TEST(Sentence, AMixedPondIsSaidToBeMixedAndHasNoDoses) {
    Comparison comparison = madeUpComparison();
    comparison.model.bottom = BottomWater{};
    const auto sentences = sentencesOf(comparison);
    EXPECT_NE(find(sentences, SentenceKey::Mixed), nullptr);
    EXPECT_EQ(find(sentences, SentenceKey::DebtRatio), nullptr);
    EXPECT_EQ(find(sentences, SentenceKey::RampLargestDose), nullptr);
    EXPECT_NE(find(sentences, SentenceKey::RampCapNotNeeded), nullptr);
}

TEST(Sentence, WhatIsGivenIsNotCalledAssumed) {
    const auto assumed = [](std::string_view text) {
        std::set<SentenceKey> keys;
        for (const Sentence& sentence : sentencesOf(madeUpComparison(text))) {
            keys.insert(sentence.key);
        }
        return keys;
    };
    const auto plain = assumed(kPlainPond);
    EXPECT_TRUE(plain.contains(SentenceKey::GuessedWindShelter));
    EXPECT_TRUE(plain.contains(SentenceKey::NoPower));
    EXPECT_FALSE(plain.contains(SentenceKey::GuessedFish));
    EXPECT_FALSE(plain.contains(SentenceKey::GuessedDebt));
    const std::string sheltered =
        with(kPlainPond, "utc_offset_h = -6", "utc_offset_h = -6\nwind_shelter = 0.5");
    EXPECT_FALSE(assumed(sheltered).contains(SentenceKey::GuessedWindShelter));
    const std::string fishless = with(kPlainPond, "[[fish]]\nkind = \"bass\"\nstock_kg_per_ha = 120\n", "");
    EXPECT_TRUE(assumed(fishless).contains(SentenceKey::GuessedFish));
    EXPECT_FALSE(assumed(fishless).contains(SentenceKey::GuessedFishMass));
}

TEST(Sentence, TheMassTakenForAFishIsTheOneThatIsSaid) {
    const auto stock = [](const char* mass) {
        const std::string text = with(kPlainPond, "stock_kg_per_ha = 120", mass);
        return madeUpComparison(text).model.parameters.fish.stock;
    };
    const auto sentences = sentencesOf(madeUpComparison());
    const Sentence* guessed = find(sentences, SentenceKey::GuessedFishMass);
    ASSERT_NE(guessed, nullptr);
    EXPECT_EQ(english(*guessed), "No mean mass is given for the bass: 250 g is taken.");
    EXPECT_EQ(stock("stock_kg_per_ha = 120"), stock("stock_kg_per_ha = 120\nmean_mass_g = 250"));
}

TEST(Sentence, AnUnusualBalanceWarnsAndItsMissIsSaid) {
    Comparison comparison = madeUpComparison();
    comparison.model.balance = {2.9, 1.0, 1.1, false, {}, -0.66, 0.4};
    const auto sentences = sentencesOf(comparison);
    EXPECT_EQ(said(comparison, SentenceKey::BalanceUnusual), "");
    EXPECT_EQ(numberSaid(sentences, SentenceKey::Balance, "photosynthesis"), 2.9);
    EXPECT_EQ(numberSaid(sentences, SentenceKey::Balance, "respiration"), 1.0);
    EXPECT_EQ(numberSaid(sentences, SentenceKey::Balance, "wind"), 1.1);
    EXPECT_EQ(said(comparison, SentenceKey::BalanceMiss),
              "A usual day after the profile the computed water is off by -0.7 mg/L and 0.4 degC where it is "
              "off most "
              "(computed minus measured).");
    EXPECT_EQ(said(comparison, SentenceKey::BalanceContrary), "");
    comparison.model.balance = {1.0, 0.2, 1.0, true, {}, -1.6, 0.4};
    EXPECT_NE(said(comparison, SentenceKey::BalanceUnusual), "");
    EXPECT_EQ(said(comparison, SentenceKey::BalanceMiss), "");
    EXPECT_NE(said(comparison, SentenceKey::BalanceContrary), "");
    comparison.model.balance = {1.0, 1.0, 1.0, true, {}, 0.2, -1.2};
    EXPECT_NE(said(comparison, SentenceKey::BalanceContrary), "");
    comparison.model.balance.loggerDepth = 0.5;
    EXPECT_NE(said(comparison, SentenceKey::BalanceWithLogger).find("at 0.5 m"), std::string::npos);
    EXPECT_EQ(said(comparison, SentenceKey::BalanceWithDawn), "") << "the logger's nights count instead";
}

TEST(Sentence, ARunThatEndedEarlyIsSaidAndNotCompared) {
    Comparison comparison = madeUpComparison();
    comparison.runs[2].end = RunEnd::NotFinite;
    comparison.runs[2].message = "It broke at hour 7.";
    comparison.runs[3].end = RunEnd::NotRun;
    comparison.runs[3].days.clear();
    const auto sentences = sentencesOf(comparison);
    EXPECT_EQ(english(*find(sentences, SentenceKey::RampEndedEarly)),
              "doubling: the run ended early. It broke at hour 7.");
    EXPECT_EQ(test::sentencesWith(sentences, SentenceKey::RampWorst).size(), 1U);
}

TEST(Sentence, TheCautionsCloseEveryComparison) {
    const auto sentences = sentencesOf(madeUpComparison());
    EXPECT_EQ(sentences.back().key, SentenceKey::CautionIce);
    for (const SentenceKey key :
         {SentenceKey::CautionComparison, SentenceKey::CautionReadings, SentenceKey::CautionPermits,
          SentenceKey::CautionLifeSupport, SentenceKey::CentralRunOnly}) {
        EXPECT_NE(find(sentences, key), nullptr) << english({SentencePart::Caution, key, {}});
    }
}

TEST(Sentence, APondFileSaysWhatItHolds) {
    const Pond pond = madeUpComparison().model.pond;
    const Diagnostics warnings{{Severity::Warning, "p.toml", 3, "title", "Odd."}};
    const std::string text = englishText(sentencesOf(pond, "p.toml", warnings));
    EXPECT_EQ(text.substr(0, text.find("\nTriage\n")),
              "p.toml: Test pond\n"
              "  Day 1 is 2026-06-14.\n"
              "  The weather covers 2026-06-14 to 2026-06-15.\n"
              "  Ramp \"at once\": continuous from the first day.\n"
              "  Ramp \"doubling\": run time multiplied from day to day.\n"
              "  Ramp \"gentle\": a cap on the daily dose.\n"
              "  Number of warnings: 1.\n");
}

}  // namespace
}  // namespace engine
