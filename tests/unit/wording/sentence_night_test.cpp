#include "engine/wording/sentence.h"
#include "engine/wording/wording.h"
#include "tests/made_up_comparison.h"

#include <gtest/gtest.h>

namespace engine {
namespace {

using test::madeUpComparison;

std::string said(const std::vector<Sentence>& sentences, SentencePart part) {
    std::string text;
    for (const Sentence& sentence : sentences) {
        if (sentence.part == part) {
            text.append(text.empty() ? 0 : 1, ' ').append(english(sentence));
        }
    }
    return text;
}

Comparison threeRamps() {
    Comparison comparison = madeUpComparison();  // lines of sport fish: 5 (warm surface) and 2
    comparison.runs[0].days[1].lowest = 5.52;
    comparison.runs[1].days[1].lowest = 1.24;
    comparison.runs[2].days[1].lowest = 3.0;
    comparison.runs[3].days[1].lowest = 5.4;
    return comparison;
}

TEST(SentenceNight, SaysTheSelectedTheLowestAndDoNothing) {
    EXPECT_EQ(
        said(sentencesOfNight(threeRamps(), 2, 3), SentencePart::Night),
        "Night 2: \"gentle\" goes down to 5.4 mg/L at 05:40, above the stress line. The lowest ramp is \"at "
        "once\" with 1.2 mg/L, below the lethal line. Left alone that night: 5.5 mg/L, above the "
        "stress line.");
}

TEST(SentenceNight, TheSelectedIsNotSaidTwice) {
    EXPECT_EQ(said(sentencesOfNight(threeRamps(), 2, 1), SentencePart::Night),
              "Night 2: \"at once\" goes down to 1.2 mg/L at 05:40, below the lethal line. Left alone that "
              "night: 5.5 mg/L, "
              "above the stress line.");
}

TEST(SentenceNight, ANumberThatPrintsAsTheLineIsJustBelowIt) {
    Comparison comparison = threeRamps();
    comparison.runs[0].days[1].lowest = 4.97;
    comparison.runs[1].days[1].lowest = 1.99;
    EXPECT_EQ(said(sentencesOfNight(comparison, 2, 1), SentencePart::Night),
              "Night 2: \"at once\" goes down to 2.0 mg/L at 05:40, just below the lethal line. Left alone "
              "that night: 5.0 "
              "mg/L, just below the stress line.");
}

TEST(SentenceNight, DoNothingComesFirstWhereItIsSelected) {
    EXPECT_EQ(
        said(sentencesOfNight(threeRamps(), 2, 0), SentencePart::Night),
        "Night 2: left alone the pond goes down to 5.5 mg/L at 05:40, above the stress line. The lowest "
        "ramp is \"at once\" with 1.2 mg/L, below the lethal line.");
    EXPECT_EQ(said(sentencesOfNight(threeRamps(), 1, 0), SentencePart::Night),
              "Night 1: left alone the pond goes down to 5.5 mg/L at 05:00, above the stress line.")
        << "a ramp that prints the same is not named";
}

TEST(SentenceNight, CausesAreOfTheWorstNightAndSayWhichThatIs) {
    Comparison comparison = threeRamps();
    EXPECT_EQ(said(sentencesOfNight(comparison, 2, 0), SentencePart::NightDetail), "")
        << "nothing is known yet";
    comparison.runs[1].attribution = {{CauseKind::BottomDebt, 1.26}, {CauseKind::Fish, 0.02}};
    const std::string attribution =
        "Main cause, and what it takes away (mg/L): oxygen debt of the bottom water 1.3.";
    EXPECT_EQ(said(sentencesOfNight(comparison, 2, 0), SentencePart::NightDetail), attribution);
    EXPECT_EQ(said(sentencesOfNight(comparison, 1, 0), SentencePart::NightDetail),
              "The worst night of \"at once\" is night 2, 1.2 mg/L at 05:40. " + attribution);
    comparison.runs[3].attribution = {{CauseKind::Fish, 0.54}};
    EXPECT_EQ(said(sentencesOfNight(comparison, 2, 3), SentencePart::NightDetail),
              "Main cause, and what it takes away (mg/L): breathing of the fish 0.5.")
        << "the selected ramp's own";
}

TEST(SentenceNight, ARampThatFailedIsPassedOver) {
    Comparison comparison = threeRamps();
    comparison.runs[1].end = RunEnd::NotFinite;
    EXPECT_EQ(said(sentencesOfNight(comparison, 2, 1), SentencePart::Night),
              "Night 2: \"doubling\" goes down to 3.0 mg/L at 05:40, below the stress line. Left alone that "
              "night: 5.5 "
              "mg/L, above the stress line.");
}

TEST(SentenceNight, WithoutRampsThereIsDoNothing) {
    Comparison comparison = threeRamps();
    comparison.runs.resize(1);
    EXPECT_EQ(said(sentencesOfNight(comparison, 2, 0), SentencePart::Night),
              "Night 2: left alone the pond goes down to 5.5 mg/L at 05:40, above the stress line.");
}

TEST(SentenceNight, AllNightsOfARampAreItsWorst) {
    EXPECT_EQ(said(sentencesOfNights(threeRamps(), 1), SentencePart::Night),
              "\"at once\": lowest on night 2, 1.2 mg/L at 05:40. Left alone that night's low is 5.5 mg/L.");
    EXPECT_EQ(said(sentencesOfNights(threeRamps(), 0), SentencePart::Night),
              "Left alone the lowest is night 1, 5.5 mg/L at 05:00.");
}

}  // namespace
}  // namespace engine
