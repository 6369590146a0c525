#include "widgets/forms/ramp_model.h"

#include "tests/made_up_comparison.h"
#include "tests/widgets/typing.h"
#include "widgets/document/selection.h"

#include <QAbstractItemModelTester>
#include <QSignalSpy>

#include <gtest/gtest.h>

namespace widgets {
namespace {

using test::plain;

std::shared_ptr<Outcome> madeUp() {
    auto outcome = std::make_shared<Outcome>();
    outcome->comparison = engine::test::madeUpComparison();
    return outcome;
}

std::string cell(const RampModel& model, int row, int column) {
    return plain(model.index(row, column).data().toString());
}

TEST(RampModel, IsAWellBehavedModel) {
    Selection selection;
    RampModel model(selection);
    const QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    model.setOutcome(madeUp());
    auto shorter = madeUp();
    shorter->comparison.runs.resize(2);
    model.setOutcome(shorter);
    EXPECT_EQ(model.rowCount(), 2);
}

TEST(RampModel, ShowsWhatEachRampComesTo) {
    Selection selection;
    RampModel model(selection);
    auto outcome = madeUp();
    outcome->comparison.model.bottom.volume = 8000.0;
    outcome->comparison.runs[1].endState = 4.26;
    model.setOutcome(outcome);
    EXPECT_EQ(cell(model, 0, RampModel::Name), "do nothing");
    EXPECT_EQ(cell(model, 0, RampModel::Dose), "");
    EXPECT_EQ(cell(model, 1, RampModel::Name), "at once");
    EXPECT_EQ(cell(model, 1, RampModel::Worst), "3.2");
    EXPECT_EQ(cell(model, 1, RampModel::Night), "2");
    EXPECT_EQ(cell(model, 1, RampModel::Dose), "10");
    EXPECT_EQ(cell(model, 1, RampModel::End), "4.3");
    EXPECT_EQ(cell(model, 2, RampModel::End), "\u2026") << "pending";
    outcome->isWhole = true;
    EXPECT_EQ(cell(model, 2, RampModel::End), "");
}

TEST(RampModel, ARampThatFailedSaysWhy) {
    Selection selection;
    RampModel model(selection);
    auto outcome = madeUp();
    outcome->comparison.runs[1].end = engine::RunEnd::NotFinite;
    outcome->comparison.runs[1].message = "The oxygen is not a finite number.";
    model.setOutcome(outcome);
    EXPECT_EQ(cell(model, 1, RampModel::Worst), "failed");
    EXPECT_EQ(plain(model.index(1, RampModel::Worst).data(Qt::ToolTipRole).toString()),
              "<qt>The oxygen is not a finite number.</qt>");
}

TEST(RampModel, NewNumbersOfTheSameRampsKeepTheSelection) {
    Selection selection;
    RampModel model(selection);
    model.setOutcome(madeUp());
    QSignalSpy reset(&model, &QAbstractItemModel::modelReset);
    model.setOutcome(madeUp());
    EXPECT_EQ(reset.size(), 0);
}

TEST(RampModel, TheBoxBeforeANameHidesTheRampInTheViews) {
    Selection selection;
    RampModel model(selection);
    model.setOutcome(madeUp());
    EXPECT_EQ(model.index(1, RampModel::Name).data(Qt::CheckStateRole).toInt(), Qt::Checked);
    EXPECT_TRUE(model.setData(model.index(1, RampModel::Name), Qt::Unchecked, Qt::CheckStateRole));
    EXPECT_TRUE(selection.isHidden("at once"));
    EXPECT_EQ(model.index(1, RampModel::Name).data(Qt::CheckStateRole).toInt(), Qt::Unchecked);
    EXPECT_FALSE(model.setData(model.index(1, RampModel::Worst), Qt::Unchecked, Qt::CheckStateRole));
}

TEST(RampModel, EachHeadSaysWhatItsColumnIs) {
    Selection selection;
    RampModel model(selection);
    for (int column = 0; column < RampModel::kColumns; ++column) {
        EXPECT_GT(model.headerData(column, Qt::Horizontal, Qt::ToolTipRole).toString().size(), 15) << column;
    }
}

TEST(RampModel, TheRampOfThePapersIsHeavyAndHeardToBe) {
    Selection selection;
    RampModel model(selection);
    auto outcome = madeUp();
    outcome->comparison.model.pond.chosenRamp = "at once";
    model.setOutcome(outcome);
    EXPECT_TRUE(model.index(1, RampModel::Name).data(Qt::FontRole).value<QFont>().bold());
    EXPECT_FALSE(model.index(2, RampModel::Name).data(Qt::FontRole).isValid());
    EXPECT_EQ(plain(model.index(1, RampModel::Name).data(Qt::AccessibleTextRole).toString()),
              "at once, for the papers");
}

TEST(RampModel, AChanceStandsThereOnceItsMembersAreDrawn) {
    Selection selection;
    RampModel model(selection);
    auto outcome = madeUp();
    model.setOutcome(outcome);
    EXPECT_EQ(cell(model, 1, RampModel::Stress), "\u2026");
    auto stopped = std::make_shared<Outcome>(*outcome);
    stopped->isGivenUp = true;
    model.setOutcome(stopped);
    EXPECT_EQ(cell(model, 1, RampModel::Stress), "") << "what was stopped does not come";
    EXPECT_EQ(cell(model, 1, RampModel::Lethal), "");
    auto drawn = std::make_shared<Outcome>();
    drawn->comparison = engine::test::withMembers(engine::test::madeUpComparison());
    model.setOutcome(drawn);
    EXPECT_EQ(cell(model, 0, RampModel::Stress), "30");
    EXPECT_EQ(cell(model, 1, RampModel::Stress), "46");
}

}  // namespace
}  // namespace widgets
