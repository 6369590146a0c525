#include "widgets/forms/first_pond.h"

#include "engine/pond/pond_check.h"
#include "engine/pond/pond_io.h"
#include "widgets/document/recomputation.h"

#include <gtest/gtest.h>

namespace widgets {
namespace {

FirstAnswers usual() {
    FirstAnswers answers;
    answers.name = "A pond";
    answers.firstDay = engine::Date(std::chrono::year(2026), std::chrono::June, std::chrono::day(14));
    return answers;
}

TEST(FirstPond, EveryCombinationOfChoicesPassesTheChecksAndReadsBack) {
    int count = 0;
    for (int choice = 0; choice < 6; ++choice) {
        FirstAnswers answers = usual();
        answers.muck = static_cast<FirstAnswers::Muck>(choice % 4);
        answers.smell = static_cast<engine::Smell>(choice % 3);
        answers.colour = static_cast<FirstAnswers::Colour>(choice % 3);
        answers.weeds = static_cast<FirstAnswers::Weeds>(choice % 4);
        answers.fish = static_cast<engine::SpeciesGroup>(choice);
        answers.stock = static_cast<FirstAnswers::Stock>(choice % 3);
        answers.sky = static_cast<FirstAnswers::Sky>(choice % 3);
        answers.wind = static_cast<FirstAnswers::Wind>(choice % 3);
        for (const double depth : {0.5, 3.0, 12.0}) {
            for (const double area : {150.0, 8000.0, 2e5}) {
                answers.maxDepth = depth;
                answers.area = area;
                const engine::Pond pond = pondFrom(answers);
                for (const engine::Diagnostic& fault : engine::checkPond(pond)) {
                    EXPECT_NE(fault.severity, engine::Severity::Error)
                        << depth << " m, " << area << " m2: " << engine::format(fault);
                }
                const auto again = engine::readPondText(engine::writePond(pond), "again.toml");
                ASSERT_TRUE(again.pond);
                EXPECT_TRUE(*again.pond == pond);
                ++count;
            }
        }
    }
    EXPECT_EQ(count, 54);
}

TEST(FirstPond, SaysOfEachNumberHowSureItIs) {
    const engine::Pond pond = pondFrom(usual());
    EXPECT_EQ(pond.basin.area->confidence, engine::Confidence::Estimated);
    EXPECT_EQ(pond.bottom.muck->confidence, engine::Confidence::Guessed);
    EXPECT_LT(*pond.bottom.muck->low, pond.bottom.muck->value);
    EXPECT_GT(*pond.fish.front().stock_kgPerHa->high, pond.fish.front().stock_kgPerHa->value);
    EXPECT_FALSE(pond.bottom.oxygenDebt) << "no one can tell it over the telephone";
    EXPECT_EQ(pond.ramps.size(), 3U);
    EXPECT_EQ(pond.chosenRamp, pond.ramps.back().name);
}

TEST(FirstPond, CanBeComputedAtOnce) {
    const Outcome outcome = outcomeOf(pondFrom(usual()), 2, false);
    for (const engine::RampRun& run : outcome.comparison.runs) {
        EXPECT_TRUE(isDrawn(run)) << run.message;
    }
}

}  // namespace
}  // namespace widgets
