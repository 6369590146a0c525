#include "widgets/forms/schedule_grid.h"

#include "tests/widgets/typing.h"
#include "widgets/document/selection.h"
#include "widgets/forms/ramp_actions.h"

#include <QAction>
#include <QMenu>
#include <QMouseEvent>

#include <gtest/gtest.h>

namespace widgets {
namespace {

using engine::test::TemporaryFolder;
using test::plain;

/// The grid over the doubling ramp of the plain pond.
struct Grid {
    Grid() {
        test::open(document, folder, engine::test::kPlainPond);
        selection.setExtent(14, document.pond().ramps.size() + 1);
        selection.setRamp(2);
        grid.resize(900, 500);
        test::showActive(grid);
        grid.setFocus();
    }
    [[nodiscard]] const engine::Ramp& ramp() const { return document.pond().ramps[1]; }
    void drag(QPointF from, QPointF to) {
        QTest::mousePress(&grid, Qt::LeftButton, {}, from.toPoint());
        for (int i = 1; i <= 8; ++i) {
            const QPointF at = from + (to - from) * (i / 8.0);
            QMouseEvent move(QEvent::MouseMove, at, grid.mapToGlobal(at), Qt::NoButton, Qt::LeftButton, {});
            QApplication::sendEvent(&grid, &move);
        }
        QTest::mouseRelease(&grid, Qt::LeftButton, {}, to.toPoint());
    }
    TemporaryFolder folder;
    Document document;
    Selection selection;
    ScheduleGrid grid{document, selection};
};

TEST(ScheduleGrid, DraggingTheEndOfABlockMakesATableInOneStep) {
    Grid bench;
    ASSERT_EQ(bench.ramp().kind, engine::RampKind::Doubling);
    const double first = bench.ramp().first_min->value;
    bench.drag(bench.grid.placeOf(2, 600 + 2 * first), bench.grid.placeOf(2, 900));
    ASSERT_EQ(bench.ramp().kind, engine::RampKind::Table);
    EXPECT_NEAR(bench.ramp().minutes[1], 300.0, 5.0);
    EXPECT_EQ(bench.ramp().minutes[0], first);
    EXPECT_EQ(bench.ramp().minutes[2], 4 * first) << "the other days keep their minutes";
    EXPECT_EQ(bench.document.undoStack().count(), 1);
    bench.document.undoStack().undo();
    EXPECT_EQ(bench.ramp().kind, engine::RampKind::Doubling);
}

TEST(ScheduleGrid, DraggingABlockMovesTheStartOfAllDays) {
    Grid bench;
    bench.drag(bench.grid.placeOf(4, 660), bench.grid.placeOf(4, 780));
    ASSERT_TRUE(bench.ramp().startTime);
    EXPECT_NEAR(bench.ramp().startTime->minutes, 720, 5);
    EXPECT_EQ(bench.document.undoStack().count(), 1);
}

TEST(ScheduleGrid, KeysChooseADayAndChangeItsMinutes) {
    Grid bench;
    QTest::keyClick(&bench.grid, Qt::Key_Down);
    EXPECT_EQ(bench.grid.day(), 2);
    const double before = 2 * bench.ramp().first_min->value;
    QTest::keyClick(&bench.grid, Qt::Key_Right);
    QTest::keyClick(&bench.grid, Qt::Key_Right, Qt::ShiftModifier);
    QTest::keyClick(&bench.grid, Qt::Key_Left, Qt::ControlModifier);
    EXPECT_EQ(bench.ramp().minutes[1], std::max(before + 10 + 1 - 60, 0.0));
    QTest::keyClick(&bench.grid, Qt::Key_Delete);
    EXPECT_EQ(bench.ramp().minutes[1], 0.0);
    EXPECT_NE(plain(bench.grid.accessibleDescription()).find("day 2: 0 min"), std::string::npos);
}

TEST(ScheduleGrid, DoNothingHasNoSchedule) {
    Grid bench;
    bench.selection.setRamp(0);
    bench.drag(bench.grid.placeOf(2, 700), bench.grid.placeOf(2, 900));
    EXPECT_EQ(bench.document.undoStack().count(), 0);
}

/// Presses the action of this name.
void press(const RampActions& actions, const char* text) {
    QMenu menu;
    actions.fill(menu);
    std::vector<QAction*> all;
    const std::function<void(const QMenu&)> collect = [&](const QMenu& from) {
        for (QAction* action : from.actions()) {
            all.push_back(action);
            if (action->menu() != nullptr) {
                collect(*action->menu());
            }
        }
    };
    collect(menu);
    for (QAction* action : all) {
        if (plain(action->text().remove(QLatin1Char('&'))) == text) {
            ASSERT_TRUE(action->isEnabled()) << text;
            action->trigger();
            return;
        }
    }
    FAIL() << "there is no action " << text;
}

TEST(RampActions, AddCopyMoveColourAndDeleteAreStepsOfUndo) {
    TemporaryFolder folder;
    Document document;
    test::open(document, folder, engine::test::kPlainPond);
    const engine::Pond before = document.pond();
    Selection selection;
    selection.setExtent(3, before.ramps.size() + 1);
    selection.setRamp(1);
    RampActions actions(document, selection);
    press(actions, "Copy the Ramp");
    EXPECT_EQ(document.pond().ramps.back().name, before.ramps[0].name + " 2");
    press(actions, "Doubling daily");
    EXPECT_EQ(document.pond().ramps.back().kind, engine::RampKind::Doubling);
    press(actions, "Move Down");
    EXPECT_EQ(document.pond().ramps[1].name, before.ramps[0].name);
    press(actions, "vermilion");
    EXPECT_EQ(document.pond().ramps[0].colour->value, 2.0);
    press(actions, "As a Table of Minutes");
    EXPECT_EQ(document.pond().ramps[0].kind, engine::RampKind::Table);
    press(actions, "Delete the Ramp");
    EXPECT_EQ(document.pond().ramps.size(), before.ramps.size() + 1);
    EXPECT_EQ(document.undoStack().count(), 6);
    while (document.undoStack().canUndo()) {
        document.undoStack().undo();
    }
    EXPECT_TRUE(document.pond() == before);
}

}  // namespace
}  // namespace widgets
