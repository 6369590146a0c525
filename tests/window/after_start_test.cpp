// The pages for after the start, as they sit in the window.

#include "tests/window/driven.h"
#include "widgets/follow_up/after_start_page.h"
#include "widgets/follow_up/dawn_form.h"
#include "widgets/follow_up/incident_page.h"
#include "widgets/follow_up/log_page.h"
#include "widgets/follow_up/review_page.h"
#include "widgets/follow_up/today_page.h"

#include <QTableView>

namespace app {
namespace {

using test::Driven;
using test::plain;
using widgets::test::fieldOf;

void pressKey(Driven& driven, Qt::Key key) {
    QTest::keyClick(&driven.window, key);
    QCoreApplication::processEvents();
}

TEST(AfterTheStart, ItsKeysLeadToTheFirstFieldToBeTyped) {
    Driven driven(Driven::Writable{"grandfathers-pond.toml"});
    ASSERT_TRUE(QTest::qWaitForWindowActive(&driven.window));
    widgets::AfterStartPage& after = driven.window.afterStart();
    const auto isIn = [](const QWidget& page) {
        return QApplication::focusWidget() != nullptr && page.isAncestorOf(QApplication::focusWidget());
    };
    pressKey(driven, Qt::Key_F6);
    EXPECT_TRUE(after.today().isVisible());
    QTest::keyClicks(QApplication::focusWidget(), QStringLiteral("26.2"));
    EXPECT_EQ(widgets::test::textOf(fieldOf(after.today(), "Surface: temperature")), "26.2");
    pressKey(driven, Qt::Key_F7);
    EXPECT_TRUE(isIn(after.log()));
    QTest::keyClicks(QApplication::focusWidget(), QStringLiteral("25"));
    EXPECT_EQ(widgets::test::textOf(fieldOf(after.log(), "Surface: temperature")), "25");
    pressKey(driven, Qt::Key_F8);
    QTest::keyClicks(QApplication::focusWidget(), QStringLiteral("24"));
    EXPECT_EQ(widgets::test::textOf(fieldOf(after.incident(), "Surface: temperature")), "24");
    pressKey(driven, Qt::Key_F9);
    EXPECT_TRUE(isIn(after.review()));
}

TEST(AfterTheStart, TheNewScheduleJoinsTheRampsAndUndoTakesItBack) {
    Driven driven(Driven::Writable{"new-clay.toml"});
    ASSERT_TRUE(driven.waitForCurves());
    const std::size_t before = driven.window.document().pond().ramps.size();
    driven.trigger("Today: Go or Hold");
    widgets::TodayPage& today = driven.window.afterStart().today();
    widgets::test::type(fieldOf(today, "At"), "2026-05-27 05:40");
    const char* const names[] = {"Surface", "Middle", "Bottom"};
    const char* const values[][2] = {{"21", "7.1"}, {"20", "7.0"}, {"17", "4.0"}};
    for (std::size_t i = 0; i < 3; ++i) {
        const std::string name = names[i];
        widgets::test::type(fieldOf(today, (name + ": temperature").c_str()), values[i][0]);
        widgets::test::type(fieldOf(today, (name + ": oxygen").c_str()), values[i][1]);
    }
    today.decide(false);
    ASSERT_TRUE(QTest::qWaitFor([&] { return !today.isRunning(); }, test::kPatience_ms));
    ASSERT_NE(today.plan(), nullptr) << plain(today.text());
    widgets::test::button(today, "Add the New Schedule to the Pond")->click();
    const auto& ramps = driven.window.document().pond().ramps;
    ASSERT_EQ(ramps.size(), before + 1) << plain(driven.window.notice().text());
    EXPECT_EQ(ramps.back().name, "from 2026-05-27");
    EXPECT_NE(plain(today.state()).find("stands beside"), std::string::npos);
    driven.window.document().undoStack().undo();
    EXPECT_EQ(driven.window.document().pond().ramps.size(), before);
}

}  // namespace
}  // namespace app
