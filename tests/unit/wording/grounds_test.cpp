#include "engine/wording/grounds.h"

#include "engine/intake/first_pond.h"
#include "engine/pond/pond_io.h"
#include "engine/wording/wording.h"
#include "tests/pond_texts.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace engine {
namespace {

bool names(const std::vector<Ground>& grounds, const char* word) {
    return std::any_of(grounds.begin(), grounds.end(),
                       [word](const Ground& ground) { return ground.what.find(word) != std::string::npos; });
}

TEST(Grounds, OfAPondFromTheTelephoneTheProfileIsTheWorst) {
    FirstAnswers answers;
    answers.firstDay = Date(std::chrono::year(2026), std::chrono::June, std::chrono::day(14));
    const Pond pond = pondFrom(answers);
    const std::vector<Ground> grounds = groundsOf(pond);
    ASSERT_GE(grounds.size(), 8U);
    EXPECT_NE(grounds[0].what.find("no profile"), std::string::npos);
    EXPECT_NE(grounds[1].what.find("oxygen debt"), std::string::npos);
    for (std::size_t i = 0; i < grounds.size(); ++i) {
        EXPECT_TRUE(grounds[i].what.ends_with('.') && grounds[i].better.ends_with('.')) << grounds[i].what;
        EXPECT_TRUE(i == 0 || grounds[i - 1].weight >= grounds[i].weight);
    }
    const std::vector<Sentence> sentences = sentencesOfGrounds(pond);
    ASSERT_EQ(sentences.size(), grounds.size());
    EXPECT_EQ(english(sentences.front()), grounds[0].what + " " + grounds[0].better);
}

TEST(Grounds, WhatIsMeasuredIsNotNamed) {
    const Pond pond = *readPondText(test::fullPondAlone(), "full.toml").pond;
    const std::vector<Ground> grounds = groundsOf(pond);
    EXPECT_FALSE(names(grounds, "profile"));
    EXPECT_FALSE(names(grounds, "Secchi"));
    EXPECT_FALSE(names(grounds, "forecast"));
    EXPECT_TRUE(names(grounds, "shelter"));  // a guess, as the file says
}

}  // namespace
}  // namespace engine
