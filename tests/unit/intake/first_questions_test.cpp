#include "engine/intake/first_questions.h"

#include "engine/intake/new_file.h"
#include "engine/pond/key_list.h"
#include "engine/pond/local_time.h"
#include "engine/pond/pond_check.h"
#include "engine/pond/pond_io.h"

#include <gtest/gtest.h>

namespace engine {
namespace {

const FirstField& field(std::string_view name) {
    for (const FirstQuestion& question : firstQuestions()) {
        for (const FirstField& one : question.fields) {
            if (one.name == name) {
                return one;
            }
        }
    }
    throw std::runtime_error("no such field");
}

FirstAnswers start() {
    FirstAnswers answers;
    answers.name = "A pond";
    answers.firstDay = Date(std::chrono::year(2026), std::chrono::June, std::chrono::day(14));
    return answers;
}

TEST(FirstQuestions, AreAboutTwelve) {
    EXPECT_GE(firstQuestions().size(), 10U);
    EXPECT_LE(firstQuestions().size(), 14U);
    for (const FirstQuestion& question : firstQuestions()) {
        for (const FirstField& one : question.fields) {
            EXPECT_TRUE(one.key == nullptr || findKey(one.key) != nullptr) << one.name;
            EXPECT_EQ(one.words.size(), one.texts.size());
        }
    }
}

TEST(FirstQuestions, TakeNumbersInTheAskersUnits) {
    FirstAnswers answers = start();
    EXPECT_EQ(takeAnswer(answers, field("area"), "1.8", UnitSystem::Us), "");
    EXPECT_NEAR(answers.area, 7284.34156, 1e-4);
    EXPECT_EQ(takeAnswer(answers, field("area"), "8000", UnitSystem::Metric), "");
    EXPECT_EQ(answers.area, 8000.0);
    EXPECT_EQ(takeAnswer(answers, field("depth"), "11 ft", UnitSystem::Metric), "");
    EXPECT_NEAR(answers.maxDepth, 3.3528, 1e-12);
    EXPECT_EQ(takeAnswer(answers, field("longitude"), "90.5 W", UnitSystem::Metric), "");
    EXPECT_EQ(answers.longitude_deg, -90.5);
    EXPECT_EQ(takeAnswer(answers, field("longitude"), "-90.5", UnitSystem::Us), "");
    EXPECT_EQ(answers.longitude_deg, -90.5);
    EXPECT_EQ(takeAnswer(answers, field("high"), "91", UnitSystem::Us), "");
    EXPECT_NEAR(answers.airMax, 32.7778, 1e-3);
    EXPECT_EQ(takeAnswer(answers, field("air"), "1.6", UnitSystem::Us), "");
    EXPECT_NEAR(*answers.freeAir_lPerMin, 45.307, 1e-3);
}

TEST(FirstQuestions, RefuseInWords) {
    FirstAnswers answers = start();
    const FirstAnswers before = answers;
    EXPECT_NE(takeAnswer(answers, field("depth"), "340", UnitSystem::Us).find("ft"), std::string::npos);
    EXPECT_NE(takeAnswer(answers, field("area"), "1,8 acres", UnitSystem::Us).find("1.8"), std::string::npos);
    EXPECT_NE(takeAnswer(answers, field("smell"), "strnog", UnitSystem::Us).find("Did you mean strong?"),
              std::string::npos);
    for (const char* text : {"soon", "2026-6-1x", "2026-13-40", "14", "", "31 June"}) {
        EXPECT_NE(takeAnswer(answers, field("first-day"), text, UnitSystem::Us).find("2026-06-14"),
                  std::string::npos)
            << text;
    }
    EXPECT_NE(takeAnswer(answers, field("diffusers"), "1.5", UnitSystem::Us).find("whole"),
              std::string::npos);
    EXPECT_EQ(answers.area, before.area);
    EXPECT_EQ(answers.maxDepth, before.maxDepth);
    EXPECT_TRUE(answers.typed.empty());
}

/// As a day is said over the telephone; without its year it is the next one.
TEST(FirstQuestions, TakeADayAsItIsSaid) {
    const auto said = [](const char* text, UnitSystem units) {
        FirstAnswers answers = start();
        answers.firstDay = *parseDate("2026-12-02");  // a Wednesday; today is the 1st
        EXPECT_EQ(takeAnswer(answers, field("first-day"), text, units), "") << text;
        return formatDate(answers.firstDay);
    };
    EXPECT_EQ(said("2027-06-14", UnitSystem::Us), "2027-06-14");
    EXPECT_EQ(said("6/14/2027", UnitSystem::Us), "2027-06-14");
    EXPECT_EQ(said("6/5/27", UnitSystem::Us), "2027-06-05");
    EXPECT_EQ(said("5.6.2027", UnitSystem::Metric), "2027-06-05");
    EXPECT_EQ(said("June 14", UnitSystem::Us), "2027-06-14");
    EXPECT_EQ(said("14 June 2028", UnitSystem::Metric), "2028-06-14");
    EXPECT_EQ(said("Dec 9", UnitSystem::Us), "2026-12-09");
    EXPECT_EQ(said("tomorrow", UnitSystem::Us), "2026-12-02");
    EXPECT_EQ(said("today", UnitSystem::Us), "2026-12-01");
    EXPECT_EQ(said("Saturday", UnitSystem::Us), "2026-12-05");
}

TEST(FirstQuestions, EveryUsualAnswerIsTaken) {
    for (const UnitSystem units : {UnitSystem::Metric, UnitSystem::Us}) {
        FirstAnswers answers = start();
        for (const FirstQuestion& question : firstQuestions()) {
            for (const FirstField& one : question.fields) {
                const std::string text = answerText(answers, one, units);
                if (!text.empty()) {
                    EXPECT_EQ(takeAnswer(answers, one, text, units), "") << one.name << ' ' << text;
                }
            }
        }
        EXPECT_FALSE(hasErrors(checkPond(pondFrom(answers))));
    }
}

TEST(FirstQuestions, APondInFeetReadsBackAndSaysItsUnits) {
    FirstAnswers answers = start();
    ASSERT_EQ(takeAnswer(answers, field("area"), "1.8", UnitSystem::Us), "");
    ASSERT_EQ(takeAnswer(answers, field("depth"), "11", UnitSystem::Us), "");
    Pond pond = pondFrom(answers);
    TypedNumbers typed = answers.typed;
    writeIn(UnitSystem::Us, pond, typed);
    const std::string text = commentedPond(pond, typed);
    for (const char* there :
         {"\"1.8 ac\"", "\"11 ft\"", "degF\"", "cfm\"", "mph\"", "units = \"us\"", "  # "}) {
        EXPECT_NE(text.find(there), std::string::npos) << there << " in " << text;
    }
    const PondReading reading = readPondText(text, "us.toml");
    ASSERT_TRUE(reading.pond) << format(reading.diagnostics.front());
    EXPECT_EQ(*reading.pond, pond);
    EXPECT_NEAR(*reading.pond->weather.days[0].airMax, 28.0, 0.05);
    EXPECT_NEAR(reading.pond->bottom.muck->value, 0.25, 0.002);
}

TEST(FirstQuestions, MetricStaysAsItIs) {
    Pond pond = pondFrom(start());
    TypedNumbers typed;
    writeIn(UnitSystem::Metric, pond, typed);
    EXPECT_EQ(pond, pondFrom(start()));
    EXPECT_TRUE(typed.empty());
    const PondReading reading = readPondText(commentedPond(pond, typed), "metric.toml");
    ASSERT_TRUE(reading.pond);
    EXPECT_EQ(*reading.pond, pond);
}

}  // namespace
}  // namespace engine
