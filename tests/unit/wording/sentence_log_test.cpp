#include "engine/wording/sentence_log.h"

#include "engine/follow_up/incident.h"
#include "engine/follow_up/review.h"
#include "engine/follow_up/today.h"
#include "engine/wording/wording.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace engine {
namespace {

TEST(SentenceLog, EverySentenceHasItsWordsWithPlacesThatClose) {
    for (int i = static_cast<int>(SentenceKey::LogTitle);
         i < static_cast<int>(SentenceKey::CautionComparison); ++i) {
        const std::string_view text = englishTemplate(static_cast<SentenceKey>(i));
        EXPECT_FALSE(text.empty());
        EXPECT_EQ(std::count(text.begin(), text.end(), '{'), std::count(text.begin(), text.end(), '}'))
            << text;
    }
}

TEST(SentenceLog, VerdictsReasonsAndAdviceHaveTheirWords) {
    for (const char* term : {"go",
                             "hold",
                             "back",
                             "stop",
                             "go-means",
                             "hold-means",
                             "back-means",
                             "stop-means",
                             "fish-water-good",
                             "fish-water-hold",
                             "fish-water-back",
                             "fish-water-stop",
                             "fall-hold",
                             "fall-back",
                             "smell-faint",
                             "smell-strong",
                             "fish-off-feed",
                             "fish-piping",
                             "weather-hold",
                             "dose-too-large",
                             "three-holds",
                             "no-morning-rise",
                             "night-below-line",
                             "restart-go-on",
                             "restart-reduced",
                             "restart-whole",
                             "restart-formality",
                             "option-stop",
                             "option-run",
                             "option-surface",
                             "option-both",
                             "advice-stratified",
                             "advice-mixed",
                             "advice-between",
                             "verdict-wait",
                             "verdict-leave",
                             "verdict-one",
                             "gate-unknown",
                             "gate-low",
                             "gate-open",
                             "dawn-low",
                             "bottom-oxygen",
                             "secchi"}) {
        EXPECT_NE(englishTerm(term), term);
    }
}

}  // namespace
}  // namespace engine
