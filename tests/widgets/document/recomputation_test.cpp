#include "widgets/document/recomputation.h"

#include "engine/advice/frozen_run.h"
#include "engine/ensemble/chances.h"
#include "engine/output/advice_io.h"
#include "engine/pond/pond_io.h"
#include "tests/scenario.h"
#include "tests/temporary_folder.h"
#include "tests/widgets/typing.h"

#include <QSignalSpy>

#include <gtest/gtest.h>

#include <memory>

namespace widgets {
namespace {

using engine::test::TemporaryFolder;

constexpr int kPatience_ms = 600000;  // only a hanging test waits that long, also where sanitizers watch

/// A document of the plain pond, three nights of it.
struct Bench {
    Bench() {
        recomputation.setNights(3);
        recomputation.setMembers(1);
        test::open(document, folder, engine::test::kPlainPond);
    }
    bool waitUntilWhole() {
        return QTest::qWaitFor(
            [this] {
                return recomputation.outcome() && recomputation.outcome()->isWhole &&
                       !recomputation.isRunning();
            },
            kPatience_ms);
    }
    TemporaryFolder folder;
    Document document;
    Recomputation recomputation{document};
};

TEST(Recomputation, CurvesComeFirstThenCausesAndEndStates) {
    Bench bench;
    std::vector<bool> whole;
    QObject::connect(&bench.recomputation, &Recomputation::outcomeChanged,
                     [&] { whole.push_back(bench.recomputation.outcome()->isWhole); });
    EXPECT_TRUE(bench.recomputation.isStale());
    ASSERT_TRUE(bench.waitUntilWhole());
    EXPECT_EQ(whole, (std::vector<bool>{false, true}));
    EXPECT_FALSE(bench.recomputation.isStale());
    const engine::Comparison& comparison = bench.recomputation.outcome()->comparison;
    EXPECT_EQ(comparison.days, 3);
    EXPECT_EQ(comparison.runs.size(), 4U);
    EXPECT_TRUE(comparison.runs[1].endState);
    EXPECT_FALSE(comparison.runs[1].attribution.empty());
}

TEST(Recomputation, MembersOfTheChosenRampComeBeforeThoseOfAll) {
    Bench bench;
    bench.recomputation.setMembers(8);
    std::vector<std::string> stages;
    QObject::connect(&bench.recomputation, &Recomputation::outcomeChanged, [&] {
        const Outcome& now = *bench.recomputation.outcome();
        std::string stage = now.isWhole ? "whole" : "curves";
        for (std::size_t i = 0; i < now.comparison.runs.size(); ++i) {
            stage += engine::membersOf(now.comparison, i) != nullptr ? '+' : '-';
        }
        stages.push_back(now.answer != nullptr ? stage + '!' : stage);
    });
    bool isSettled = false;
    QObject::connect(&bench.recomputation, &Recomputation::settled, [&] { isSettled = true; });
    ASSERT_TRUE(QTest::qWaitFor([&] { return isSettled; }, kPatience_ms));
    const std::size_t chosen = chosenRamp(bench.recomputation.outcome()->comparison);
    std::string pair = "whole----";
    pair[5] = pair[5 + chosen] = '+';
    EXPECT_EQ(stages, (std::vector<std::string>{"curves----", "whole----", pair, "whole++++", "whole++++!"}));
    EXPECT_TRUE(bench.recomputation.outcome()->hasAllMembers);
    // The pair's members are those of the whole: a draw does not hang on what else is run.
    const auto& all = bench.recomputation.outcome()->comparison.ensemble->ramps;
    const Outcome alone = withMembers(outcomeOf(bench.document.pond(), 3, true), 8, false);
    EXPECT_EQ(engine::membersOf(alone.comparison, chosen)->nightLows, all[chosen].nightLows);
}

TEST(Recomputation, TheAnswerIsThatOfThePapers) {
    for (const char* name : {"new-clay", "fee-cats"}) {
        const engine::Pond pond = engine::test::scenario(name);
        const Outcome shown = withAnswer(withMembers(outcomeOf(pond, {}, true), 8, true));
        ASSERT_NE(shown.answer, nullptr) << name;
        const auto frozen = std::get<engine::FrozenPond>(engine::freeze(pond, "pond.toml"));
        const engine::FrozenRun papers = engine::runFrozen(frozen, {"0", {}, 1, 8, 0, ""}, {});
        EXPECT_EQ(engine::adviceCsv(*shown.answer, ""), engine::adviceCsv(papers.advice, "")) << name;
    }
    EXPECT_EQ(withAnswer(outcomeOf(engine::test::scenario("new-clay"), 3, true)).answer, nullptr)
        << "without members there is none";
}

TEST(Recomputation, AfterAnEditOfARampItsMembersAloneAreDrawn) {
    const auto reading = engine::readPondText(engine::test::kPlainPond, "plain.toml");
    engine::Pond pond = *reading.pond;
    const Outcome before = withMembers(outcomeOf(pond, 3, true), 8, true);
    pond.ramps.back() = pond.ramps.front();
    pond.ramps.back().name = "another";
    pond.ramps.back().first_min = 45.0;
    const Outcome edited = outcomeOf(pond, 3, true);
    const Outcome anew = withMembers(edited, 8, true);
    const Outcome taken = withMembers(edited, 8, true, {}, &before);
    ASSERT_TRUE(anew.hasAllMembers && taken.hasAllMembers);
    for (std::size_t i = 0; i < edited.comparison.runs.size(); ++i) {
        EXPECT_EQ(taken.comparison.ensemble->ramps[i].lowest, anew.comparison.ensemble->ramps[i].lowest) << i;
        EXPECT_EQ(taken.comparison.ensemble->ramps[i].fishWater,
                  anew.comparison.ensemble->ramps[i].fishWater);
    }
    EXPECT_NE(taken.comparison.ensemble->ramps.back().lowest,
              before.comparison.ensemble->ramps.back().lowest);
    pond.aerator->diffusers = engine::Quantity(1.0);  // another pond: nothing may be taken over
    const Outcome other = outcomeOf(pond, 3, true);
    EXPECT_EQ(withMembers(other, 8, true, {}, &before).comparison.ensemble->ramps.back().lowest,
              withMembers(other, 8, true).comparison.ensemble->ramps.back().lowest);
}

TEST(Recomputation, WhatIsStoppedLeavesThePictureAndComesWithTheNextEdit) {
    Bench bench;
    ASSERT_TRUE(bench.waitUntilWhole());
    const OutcomePtr old = bench.recomputation.outcome();
    bool isSettled = false;
    QObject::connect(&bench.recomputation, &Recomputation::settled, [&] { isSettled = true; });
    bench.document.edit(QStringLiteral("edit"), [](engine::Pond& pond) { pond.aerator->diffusers = 1.0; });
    bench.recomputation.cancel();
    ASSERT_TRUE(QTest::qWaitFor([&] { return isSettled; }, kPatience_ms));
    EXPECT_EQ(bench.recomputation.outcome()->comparison.model.pond, old->comparison.model.pond);
    EXPECT_TRUE(bench.recomputation.outcome()->isGivenUp) << "nothing may say that more comes";
    EXPECT_TRUE(bench.recomputation.isStale());
    bench.document.edit(QStringLiteral("edit"), [](engine::Pond& pond) { pond.aerator->diffusers = 3.0; });
    ASSERT_TRUE(QTest::qWaitFor([&] { return !bench.recomputation.isStale(); }, kPatience_ms));
    EXPECT_EQ(bench.recomputation.outcome()->comparison.model.pond.aerator->diffusers->value, 3.0);
    EXPECT_FALSE(bench.recomputation.outcome()->isGivenUp);
}

TEST(Recomputation, TheOldOutcomeStaysUntilTheNewOneIsThere) {
    Bench bench;
    ASSERT_TRUE(bench.waitUntilWhole());
    const OutcomePtr old = bench.recomputation.outcome();
    bench.document.edit(QStringLiteral("edit"), [](engine::Pond& pond) { pond.aerator->diffusers = 1.0; });
    EXPECT_TRUE(bench.recomputation.isStale());
    EXPECT_EQ(bench.recomputation.outcome(), old);
    ASSERT_TRUE(QTest::qWaitFor([&] { return !bench.recomputation.isStale(); }, kPatience_ms));
    EXPECT_NE(bench.recomputation.outcome(), old);
    EXPECT_EQ(bench.recomputation.outcome()->comparison.model.pond.aerator->diffusers->value, 1.0);
}

TEST(Recomputation, ManyEditsInARowEndWithTheLast) {
    Bench bench;
    for (int i = 1; i <= 20; ++i) {
        bench.document.edit(QStringLiteral("edit"),
                            [i](engine::Pond& pond) { pond.ramps[1].first_min = 10.0 + i; });
        QTest::qWait(3);
    }
    ASSERT_TRUE(bench.waitUntilWhole());
    EXPECT_EQ(bench.recomputation.outcome()->comparison.model.pond, bench.document.pond());
}

TEST(Recomputation, UndoComputesAnew) {
    Bench bench;
    ASSERT_TRUE(bench.waitUntilWhole());
    const double before = bench.recomputation.outcome()->comparison.runs[2].worst().lowest;
    bench.document.edit(QStringLiteral("edit"), [](engine::Pond& pond) { pond.ramps[1].first_min = 1440.0; });
    ASSERT_TRUE(QTest::qWaitFor([&] { return !bench.recomputation.isStale(); }, kPatience_ms));
    EXPECT_NE(bench.recomputation.outcome()->comparison.runs[2].worst().lowest, before);
    bench.document.undoStack().undo();
    ASSERT_TRUE(QTest::qWaitFor([&] { return !bench.recomputation.isStale(); }, kPatience_ms));
    EXPECT_EQ(bench.recomputation.outcome()->comparison.runs[2].worst().lowest, before);
}

TEST(Recomputation, MayGoWhileItComputes) {
    for (const int wait_ms : {0, 1, 5, 20, 60}) {
        auto bench = std::make_unique<Bench>();
        bench->recomputation.setNights(60);
        QTest::qWait(wait_ms);
        bench.reset();  // must neither hang nor touch what is gone
    }
    SUCCEED();
}

}  // namespace
}  // namespace widgets
