#include "widgets/forms/plan_page.h"

#include "engine/pond/pond_io.h"
#include "tests/scenario.h"
#include "tests/widgets/typing.h"
#include "widgets/controls/progress_line.h"

#include <QPushButton>
#include <QSignalSpy>

#include <gtest/gtest.h>

#include <algorithm>

namespace widgets {
namespace {

using test::plain;

constexpr int kPatience_ms = 120000;               // only a hanging test waits that long
constexpr engine::Resolution kCoarse{12, 1800.0};  // what is found is not looked at here

struct Asked {
    Asked() {
        document.start(engine::test::scenario("new-clay"));
        dialog.show();
        test::type(test::fieldOf(dialog, "Report on so many ponds"), "64");
    }
    QPushButton& button(const char* text) { return *test::button(dialog, text); }
    bool waitForAnswer() {
        return QTest::qWaitFor([this] { return !dialog.isRunning(); }, kPatience_ms);
    }
    Document document;
    PlanPage dialog{document, nullptr, kCoarse};
};

TEST(PlanPage, SaysWhatTheEngineFindsAndHandsTheRampOver) {
    Asked asked;
    EXPECT_FALSE(asked.button("Add to the Pond").isEnabled());
    asked.button("Find").click();
    EXPECT_FALSE(asked.button("Find").isEnabled());
    ASSERT_TRUE(asked.waitForAnswer());
    ASSERT_NE(asked.dialog.plan(), nullptr);
    engine::PlanOptions options;
    options.members = 64;
    options.resolution = kCoarse;
    const engine::Plan same = engine::makePlan(asked.document.pond(), options);
    EXPECT_EQ(asked.dialog.plan()->verdict, same.verdict);
    EXPECT_EQ(asked.dialog.plan()->days, same.days);
    EXPECT_EQ(asked.dialog.verdict(), verdictText({same, engine::answered(same)}));
    const std::string text = plain(asked.dialog.text());
    EXPECT_NE(text.find("comparison of ramps"), std::string::npos) << "the cautions are there";
    EXPECT_NE(text.find("What the pond can run for good"), std::string::npos);
    QSignalSpy wanted(&asked.dialog, &PlanPage::rampWanted);
    ASSERT_TRUE(same.ramp);
    ASSERT_NE(asked.dialog.ramp(), nullptr);
    asked.button("Add to the Pond").click();
    EXPECT_EQ(wanted.count(), 1);
}

TEST(PlanPage, AWishThatCannotBeMetIsRefusedInWords) {
    Asked asked;
    test::type(test::fieldOf(asked.dialog, "At most harmed, of 100 ponds"), "0.5");
    asked.dialog.find();
    EXPECT_FALSE(asked.dialog.isRunning());
    bool isSaid = false;
    for (const QLabel* label : asked.dialog.findChildren<QLabel*>()) {
        isSaid = isSaid || label->text().contains(QStringLiteral("64 members"));
    }
    EXPECT_TRUE(isSaid);
}

TEST(PlanPage, AnAnswerIsNeverForAnotherPond) {
    Asked asked;
    asked.dialog.find();
    ASSERT_TRUE(asked.waitForAnswer());
    asked.document.edit(QStringLiteral("edit"), [](engine::Pond& pond) { pond.ramps.pop_back(); });
    EXPECT_NE(asked.dialog.plan(), nullptr) << "an edit leaves it there";
    EXPECT_TRUE(asked.button("Add to the Pond").isEnabled());
    asked.document.start(engine::test::scenario("courtyard-koi"));
    EXPECT_EQ(asked.dialog.plan(), nullptr);
    EXPECT_FALSE(asked.button("Add to the Pond").isEnabled());
}

TEST(PlanPage, CanBeStopped) {
    Asked asked;
    asked.dialog.find();
    emit asked.dialog.findChild<ProgressLine*>()->stopped();
    ASSERT_TRUE(asked.waitForAnswer());
    EXPECT_EQ(asked.dialog.plan(), nullptr);
    EXPECT_TRUE(asked.button("Find").isEnabled());
}

TEST(PlanPage, StoppedWhileARampIsReportedItKeepsTheRampAndSaysThatThereIsNoAnswer) {
    Asked asked;
    test::type(test::fieldOf(asked.dialog, "Report on so many ponds"), "10000");
    asked.dialog.find();
    const auto isSaid = [&](const char* words) {
        const auto labels = asked.dialog.findChildren<QLabel*>();
        return std::any_of(labels.begin(), labels.end(),
                           [&](const QLabel* label) { return label->text().contains(QLatin1String(words)); });
    };
    ASSERT_TRUE(QTest::qWaitFor([&] { return isSaid("A ramp was found"); }, kPatience_ms));
    EXPECT_FALSE(asked.button("Add to the Pond").isEnabled()) << "as long as it runs";
    emit asked.dialog.findChild<ProgressLine*>()->stopped();
    ASSERT_TRUE(asked.waitForAnswer());
    EXPECT_EQ(asked.dialog.plan(), nullptr);
    EXPECT_TRUE(isSaid("there is no answer"));
    QSignalSpy wanted(&asked.dialog, &PlanPage::rampWanted);
    asked.button("Add to the Pond").click();
    ASSERT_EQ(wanted.count(), 1);
    EXPECT_EQ(qvariant_cast<engine::Ramp>(wanted.front().front()).name, engine::kPlannedRamp);
    asked.dialog.find();
    EXPECT_EQ(asked.dialog.ramp(), nullptr) << "a new search begins with nothing";
}

}  // namespace
}  // namespace widgets
