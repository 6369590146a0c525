#include "engine/intake/first_pond.h"

#include "engine/ensemble/compare.h"
#include "engine/pond/pond_check.h"
#include "engine/pond/pond_io.h"

#include <gtest/gtest.h>

namespace engine {
namespace {

FirstAnswers usual() {
    FirstAnswers answers;
    answers.name = "A pond";
    answers.firstDay = Date(std::chrono::year(2026), std::chrono::June, std::chrono::day(14));
    return answers;
}

TEST(FirstPond, EveryCombinationOfChoicesPassesTheChecksAndReadsBack) {
    int count = 0;
    for (int choice = 0; choice < 6; ++choice) {
        FirstAnswers answers = usual();
        answers.muck = static_cast<FirstAnswers::Muck>(choice % 4);
        answers.smell = static_cast<Smell>(choice % 3);
        answers.colour = static_cast<FirstAnswers::Colour>(choice % 3);
        answers.weeds = static_cast<FirstAnswers::Weeds>(choice % 4);
        answers.fish = static_cast<SpeciesGroup>(choice);
        answers.stock = static_cast<FirstAnswers::Stock>(choice % 3);
        answers.sky = static_cast<FirstAnswers::Sky>(choice % 3);
        answers.wind = static_cast<FirstAnswers::Wind>(choice % 3);
        for (const double depth : {0.5, 3.0, 12.0}) {
            for (const double area : {150.0, 8000.0, 2e5}) {
                answers.maxDepth = depth;
                answers.area = area;
                const Pond pond = pondFrom(answers);
                for (const Diagnostic& fault : checkPond(pond)) {
                    EXPECT_NE(fault.severity, Severity::Error)
                        << depth << " m, " << area << " m2: " << format(fault);
                }
                const auto again = readPondText(writePond(pond), "again.toml");
                ASSERT_TRUE(again.pond);
                EXPECT_TRUE(*again.pond == pond);
                ++count;
            }
        }
    }
    EXPECT_EQ(count, 54);
}

TEST(FirstPond, SaysOfEachNumberHowSureItIs) {
    const Pond pond = pondFrom(usual());
    EXPECT_EQ(pond.basin.area->confidence, Confidence::Estimated);
    EXPECT_EQ(pond.bottom.muck->confidence, Confidence::Guessed);
    EXPECT_LT(*pond.bottom.muck->low, pond.bottom.muck->value);
    EXPECT_GT(*pond.fish.front().stock_kgPerHa->high, pond.fish.front().stock_kgPerHa->value);
    EXPECT_FALSE(pond.bottom.oxygenDebt) << "no one can tell it over the telephone";
    EXPECT_EQ(pond.ramps.size(), 3U);
    EXPECT_EQ(pond.chosenRamp, pond.ramps.back().name);
}

TEST(FirstPond, CanBeComputedAtOnce) {
    CompareOptions options;
    options.days = 2;
    const Comparison comparison = compare(pondFrom(usual()), options, {});
    EXPECT_EQ(comparison.runs.size(), 4U);
    for (const RampRun& run : comparison.runs) {
        EXPECT_EQ(run.end, RunEnd::Completed) << run.message;
    }
}

}  // namespace
}  // namespace engine
