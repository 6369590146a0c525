// What has changed from one answer to the next.
#include "engine/advice/answer_change.h"

#include "engine/output/given_answer.h"
#include "engine/wording/sentence_changes.h"
#include "tests/made_up_comparison.h"
#include "tests/sentences.h"

#include <gtest/gtest.h>

#include <set>

namespace engine {
namespace {

FrozenRun madeUpRun() {
    FrozenRun run{{{std::string(kFrozenPond), "format = 1\n"}, {std::string(kFrozenWeather), "at\n"}},
                  {"0.1.0", std::chrono::sys_days(std::chrono::year(2026) / 6 / 14) + std::chrono::hours(9),
                   3, 200, 14, "at once"},
                  test::withMembers(test::madeUpComparison())};
    run.advice = adviceOn(run.comparison, 1);
    run.advice.kind = AdviceKind::Start;
    run.advice.worst.lowest = 3.21;
    return run;
}

std::vector<std::string> fieldsOf(const AnswerChange& change) {
    std::vector<std::string> names;
    for (const ChangedField& field : change.fields) {
        names.push_back(field.field);
    }
    return names;
}

TEST(AnswerChange, AStatementReadsBackAsItWasWritten) {
    const FrozenRun run = madeUpRun();
    const auto made = readStatement(statementOf(run.files, run.stamp));
    ASSERT_TRUE(made);
    EXPECT_EQ(made->stamp.version, "0.1.0");
    EXPECT_EQ(made->stamp.time, run.stamp.time);
    EXPECT_EQ(made->stamp.seed, 3U);
    EXPECT_EQ(made->stamp.members, 200);
    EXPECT_EQ(made->stamp.nights, 14);
    EXPECT_EQ(made->stamp.ramp, "at once");
    EXPECT_EQ(made->sums.size(), 2U);
    EXPECT_EQ(statementOf(run.files, made->stamp), statementOf(run.files, run.stamp));
    EXPECT_FALSE(readStatement("Dawnline run\nversion 0.1.0\n"));
    EXPECT_FALSE(readStatement("format = 1\n"));
}

TEST(AnswerChange, TheSameAnswerHasNotChanged) {
    const FrozenRun run = madeUpRun();
    const AnswerChange change = changeOf(givenAnswer(run), givenAnswer(run));
    EXPECT_TRUE(change.fields.empty());
    EXPECT_TRUE(change.inputs.empty());
    FrozenRun barely = run;
    barely.advice.worst.lowest += 0.001;
    barely.advice.lethal->with += 0.001;
    EXPECT_TRUE(changeOf(givenAnswer(run), givenAnswer(barely)).fields.empty()) << "as it is shown";
}

TEST(AnswerChange, WhatDiffersIsNamedAndSoIsWhatItWasMadeOf) {
    const FrozenRun before = madeUpRun();
    FrozenRun now = before;
    now.stamp.version = "0.2.0";
    now.stamp.members = 400;
    now.stamp.ramp = "doubling";
    now.files[0].text += "\n";
    now.files[1].text += "\n";
    now.files.push_back({std::string(kFrozenReadings), "at\n"});
    now.files.push_back({std::string(kFrozenClimate), "LOCATION\n"});
    now.advice.kind = AdviceKind::WaitUntil;
    now.advice.wait =
        WaitWindow{{Date(std::chrono::year(2026) / 10 / 15), Date(std::chrono::year(2026) / 11 / 26)}, false};
    now.advice.lethal->with += 0.2;
    now.advice.worst.lowest -= 0.5;
    const AnswerChange change = changeOf(givenAnswer(before), givenAnswer(now));
    EXPECT_EQ(fieldsOf(change), (std::vector<std::string>{"kind", "worst_mg_per_l", "lethal_chance_percent",
                                                          "wait_from", "wait_until"}));
    EXPECT_EQ(change.fields[0].before, "start");
    EXPECT_EQ(change.fields[0].now, "wait_until");
    EXPECT_EQ(change.fields[3].before, "");
    EXPECT_EQ(change.fields[3].now, "2026-10-15");
    EXPECT_EQ(change.inputs,
              (std::vector<AnswerInput>{AnswerInput::Program, AnswerInput::Draws, AnswerInput::Ramp,
                                        AnswerInput::Pond, AnswerInput::Weather, AnswerInput::Readings,
                                        AnswerInput::Climate}));
}

TEST(AnswerChange, EveryKeyAndEveryFieldHasItsWords) {
    const Comparison comparison = test::madeUpComparison();
    const FrozenRun run = madeUpRun();
    GivenAnswer other = givenAnswer(run);
    for (auto& [name, value] : other.fields) {
        value = name == "kind" ? "no_gain" : value.empty() ? "7" : "";
    }
    other.made.stamp.version += "1";
    std::set<SentenceKey> keys;
    for (const AnswerChange& change :
         {changeOf(givenAnswer(run), other), changeOf(givenAnswer(run), givenAnswer(run))}) {
        for (const Sentence& sentence : sentencesOf(change, comparison.model.pond)) {
            keys.insert(sentence.key);
            const std::string text = english(sentence);
            EXPECT_EQ(text.find("field-"), std::string::npos) << text;
            EXPECT_EQ(text.find("input-"), std::string::npos) << text;
            EXPECT_EQ(text.find("kind-"), std::string::npos) << text;
        }
    }
    for (int i = static_cast<int>(SentenceKey::ChangeTitle);
         i <= static_cast<int>(SentenceKey::ChangeNoInput); ++i) {
        EXPECT_TRUE(keys.contains(static_cast<SentenceKey>(i)))
            << englishTemplate(static_cast<SentenceKey>(i));
    }
}

}  // namespace
}  // namespace engine
