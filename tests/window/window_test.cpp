#include "tests/window/driven.h"
#include "widgets/charts/dawn_lows_plot.h"
#include "widgets/charts/night_stage.h"
#include "widgets/charts/whole_run_plot.h"
#include "widgets/controls/theme.h"
#include "widgets/forms/plan_page.h"
#include "widgets/forms/pond_page.h"

#include <QAccessible>
#include <QTableView>

#include <gtest/gtest.h>

namespace app {
namespace {

using test::Driven;
using test::kPatience_ms;
using test::plain;
using test::scenario;

TEST(Window, OpensAPondAndShowsItsWorstNight) {
    Driven driven(scenario("grandfathers-pond.toml"));
    ASSERT_TRUE(driven.waitUntilWhole());
    EXPECT_EQ(plain(driven.window.windowTitle()), "Grandfather's Pond[*] \u2013 Dawnline");
    const std::string headline = plain(driven.window.page().headline());
    EXPECT_EQ(headline.rfind("Night ", 0), 0U) << headline;
    EXPECT_NE(headline.find("Left alone"), std::string::npos) << headline;
    const auto& comparison = driven.window.recomputation().outcome()->comparison;
    EXPECT_EQ(driven.window.selection().night(), comparison.runs[3].worst().day) << "its own worst night";
    EXPECT_NE(plain(driven.window.page().verdict()).find(comparison.runs[3].name), std::string::npos)
        << plain(driven.window.page().verdict());
    EXPECT_NE(plain(driven.window.page().verdict()).find("left alone"), std::string::npos);
    EXPECT_EQ(driven.window.selection().ramp(), 3U) << "the chosen ramp of the pond file";
    EXPECT_EQ(driven.window.side().table().model()->rowCount(), 5);
    EXPECT_EQ(driven.window.side().table().currentIndex().row(), 3);
    EXPECT_FALSE(driven.window.isWindowModified());
}

TEST(Window, ASecondPondMayHaveMoreRampsAndNightsThanTheFirst) {
    Driven driven(Driven::Writable{"new-clay.toml"}, 2);
    driven.window.document().edit(QStringLiteral("edit"), [](engine::Pond& pond) {
        pond.ramps.resize(1);
        pond.chosenRamp = pond.ramps.front().name;
    });
    ASSERT_TRUE(driven.waitForCurves());
    driven.window.recomputation().setNights(6);
    driven.window.open(scenario("grandfathers-pond.toml"));
    ASSERT_TRUE(driven.waitForCurves());
    EXPECT_TRUE(driven.window.notice().text().isEmpty()) << plain(driven.window.notice().text());
    EXPECT_EQ(driven.window.selection().ramp(), 3U);
    EXPECT_EQ(driven.window.page().stage().night().scene().lines.size(), 5U);
    EXPECT_EQ(driven.window.side().table().currentIndex().row(), 3);
}

TEST(Window, WithoutAPondSaysHowToOpenOne) {
    Driven driven;
    EXPECT_EQ(plain(driven.window.windowTitle()), "Dawnline");
    EXPECT_FALSE(driven.window.page().isVisible());
    for (const QAction* action : driven.window.findChildren<QAction*>()) {
        if (action->text().contains(QStringLiteral("Save"))) {
            EXPECT_FALSE(action->isEnabled()) << plain(action->text());
        }
    }
}

TEST(Window, ABadFileLeavesThePondAndSaysWhy) {
    Driven driven(scenario("new-clay.toml"));
    ASSERT_TRUE(driven.waitForCurves());
    const engine::Pond before = driven.window.document().pond();
    const auto bad = driven.folder.write("bad.toml", "format = 1\ntitle = \"x\"\n[basin]\narea_m2 = -5\n");
    EXPECT_FALSE(driven.window.open(bad));
    EXPECT_EQ(driven.window.document().pond(), before);
    EXPECT_EQ(driven.window.document().path(), scenario("new-clay.toml"));
    const std::string notice = plain(driven.window.notice().text());
    EXPECT_NE(notice.find("\"bad.toml\" was not opened; the pond you had stays."), std::string::npos)
        << notice;
    EXPECT_NE(notice.find("bad.toml:4: basin.area_m2: "), std::string::npos) << notice;
    EXPECT_TRUE(driven.window.notice().isVisible());
    for (const char* path : {"missing.toml", "."}) {
        EXPECT_FALSE(driven.window.open(driven.folder.path() / path)) << path;
    }
}

TEST(Window, AnEditGivesNewCurvesAndUndoTheOldOnes) {
    Driven driven(Driven::Writable{"new-clay.toml"});
    ASSERT_TRUE(driven.waitUntilWhole());
    driven.window.selection().setRamp(2);
    driven.window.side().setChanging(true);
    const auto lowOf = [&] {
        return driven.window.recomputation().outcome()->comparison.runs[2].days[0].liftedVolume;
    };
    const double before = lowOf();
    auto* first = widgets::test::fieldOf(driven.window.side(), "First day, min");
    widgets::test::type(first, "600");
    EXPECT_TRUE(driven.window.isWindowModified());
    EXPECT_TRUE(driven.window.recomputation().isStale());
    ASSERT_TRUE(driven.waitForCurves());
    EXPECT_GT(lowOf(), 2.0 * before);
    QTest::keyClick(first, Qt::Key_Z, Qt::ControlModifier);
    EXPECT_FALSE(driven.window.isWindowModified());
    ASSERT_TRUE(driven.waitForCurves());
    EXPECT_DOUBLE_EQ(lowOf(), before);
    EXPECT_EQ(widgets::test::textOf(first), "30");
}

TEST(Window, EveryFormEditsThePond) {
    Driven driven(Driven::Writable{"new-clay.toml"});
    ASSERT_TRUE(driven.waitForCurves());
    driven.window.page().setPlace(widgets::Place::Pond);
    const auto section = [&](const char* name) {
        auto& pond = driven.window.pondPage();
        for (int i = 0; i < pond.sectionCount(); ++i) {
            if (plain(pond.sectionName(i)) == name) {
                pond.setSection(i);
            }
        }
    };
    section("Fish");
    widgets::test::type(widgets::test::fieldOf(driven.window.pondPage(), "Stress line, mg/L"), "4.5");
    EXPECT_DOUBLE_EQ(*driven.window.document().pond().limits.stress, 4.5);
    section("Air");
    widgets::test::type(widgets::test::fieldOf(driven.window.pondPage(), "Diffusers"), "3");
    EXPECT_DOUBLE_EQ(*driven.window.document().pond().aerator->diffusers, 3.0);
    EXPECT_EQ(driven.window.document().undoStack().count(), 2);
}

TEST(Window, TheNumberOfNightsIsForTheUserToSay) {
    Driven driven(scenario("new-clay.toml"));
    ASSERT_TRUE(driven.waitForCurves());
    driven.window.side().setChanging(true);
    widgets::test::type(widgets::test::fieldOf(driven.window.side(), "Nights to compute"), "2");
    ASSERT_TRUE(driven.waitForCurves());
    EXPECT_EQ(driven.window.recomputation().outcome()->comparison.days, 2);
    EXPECT_EQ(driven.window.selection().nights(), 2);
}

TEST(Window, PlaysANightASecondAndStopsAtTheEnd) {
    Driven driven(scenario("new-clay.toml"));
    ASSERT_TRUE(driven.waitForCurves());
    driven.window.selection().setNight(1);
    driven.trigger("Play the Nights");
    EXPECT_TRUE(driven.window.page().isPlaying());
    EXPECT_TRUE(driven.window.page().stage().night().options().ghost);
    QElapsedTimer clock;
    clock.start();
    ASSERT_TRUE(QTest::qWaitFor([&] { return driven.window.selection().night() == 2; }, 5000));
    EXPECT_GT(clock.elapsed(), 800);
    ASSERT_TRUE(QTest::qWaitFor([&] { return !driven.window.page().isPlaying(); }, 5000));
    EXPECT_EQ(driven.window.selection().night(), 3);
    EXPECT_FALSE(driven.window.page().stage().night().options().ghost);
}

TEST(Window, GoesByTheKeyboard) {
    Driven driven(scenario("new-clay.toml"));
    ASSERT_TRUE(driven.waitForCurves());
    driven.window.selection().setNight(1);
    QTest::keyClick(&driven.window, Qt::Key_Right, Qt::ControlModifier);
    EXPECT_EQ(driven.window.selection().night(), 2);
    QTest::keyClick(&driven.window, Qt::Key_2, Qt::ControlModifier);
    EXPECT_EQ(driven.window.selection().mode(), widgets::Selection::Mode::AllNights);
    EXPECT_NE(plain(driven.window.page().headline()).find("lowest on night"), std::string::npos);
    QTest::keyClick(&driven.window, Qt::Key_1, Qt::ControlModifier);
    EXPECT_EQ(driven.window.selection().mode(), widgets::Selection::Mode::AllRamps);
    QTableView& table = driven.window.side().table();
    table.setFocus();
    QTest::keyClick(&table, Qt::Key_Home, Qt::ControlModifier);
    EXPECT_EQ(driven.window.selection().ramp(), 0U);
    QTest::keyClick(&table, Qt::Key_Down);
    EXPECT_EQ(driven.window.selection().ramp(), 1U);
}

TEST(Window, AFoundRampStandsBesideTheOthersAndCanBeUndone) {
    Driven driven(Driven::Writable{"new-clay.toml"});
    ASSERT_TRUE(driven.waitForCurves());
    driven.trigger("Find a Ramp\u2026");
    auto* dialog = driven.window.findChild<widgets::PlanPage*>();
    ASSERT_NE(dialog, nullptr);
    EXPECT_TRUE(dialog->isVisible());
    const std::size_t before = driven.window.document().pond().ramps.size();
    engine::Ramp found = driven.window.document().pond().ramps.front();
    found.name = engine::kPlannedRamp;
    for (int times = 0; times < 2; ++times) {
        emit dialog->rampWanted(found);
    }
    const auto& ramps = driven.window.document().pond().ramps;
    ASSERT_EQ(ramps.size(), before + 2);
    EXPECT_EQ(ramps[before].name, "planned");
    EXPECT_EQ(ramps.back().name, "planned 2");
    ASSERT_TRUE(driven.waitForCurves());
    EXPECT_TRUE(
        QTest::qWaitFor([&] { return driven.window.selection().ramp() == ramps.size(); }, kPatience_ms));
    driven.window.document().undoStack().undo();
    EXPECT_EQ(driven.window.document().pond().ramps.size(), before + 1);
}

TEST(Window, MayCloseWhileItComputes) {
    for (const int wait_ms : {0, 2, 10, 40}) {
        auto driven = std::make_unique<Driven>(scenario("grandfathers-pond.toml"), 60);
        QTest::qWait(wait_ms);
        EXPECT_TRUE(driven->window.close());
        driven.reset();
    }
}

TEST(Window, FollowsTheTheme) {
    Driven driven(scenario("new-clay.toml"));
    ASSERT_TRUE(driven.waitForCurves());
    driven.trigger("Dark");
    QTest::qWait(100);
    const QColor dark = driven.window.page().grab().toImage().pixelColor(2, 2);
    driven.trigger("Light");
    QTest::qWait(100);
    const QColor light = driven.window.page().grab().toImage().pixelColor(2, 2);
    EXPECT_LT(dark.lightness(), 60);
    EXPECT_GT(light.lightness(), 200);
    driven.trigger("Like the Desktop");
}

TEST(Window, EveryWidgetThatTakesTheFocusHasAName) {
    Driven driven(scenario("grandfathers-pond.toml"));
    ASSERT_TRUE(driven.waitForCurves());
    int seen = 0;
    driven.window.side().setChanging(true);
    for (int view = 0; view < driven.window.page().viewCount(); ++view) {
        driven.window.page().setView(view);
        for (QWidget* widget : driven.window.findChildren<QWidget*>()) {
            if (!widget->isVisible() || widget->focusPolicy() == Qt::NoFocus ||
                widget->focusProxy() != nullptr) {
                continue;
            }
            ++seen;
            QAccessibleInterface* accessible = QAccessible::queryAccessibleInterface(widget);
            ASSERT_NE(accessible, nullptr);
            EXPECT_FALSE(accessible->text(QAccessible::Name).isEmpty())
                << widget->metaObject()->className() << " \"" << plain(widget->objectName()) << "\" in "
                << widget->parentWidget()->metaObject()->className();
        }
    }
    EXPECT_GT(seen, 20);
}

TEST(Window, EveryChartIsAnAccessibleObjectWithATextAlternative) {
    Driven driven(scenario("grandfathers-pond.toml"));
    ASSERT_TRUE(driven.waitForCurves());
    driven.window.page().stage().setUnfolded(true);
    const std::initializer_list<widgets::ChartView*> charts{&driven.window.page().stage().night(),
                                                            &driven.window.page().stage().lows(),
                                                            &driven.window.page().stage().wholeRun()};
    for (widgets::ChartView* chart : charts) {
        QAccessibleInterface* accessible = QAccessible::queryAccessibleInterface(chart);
        ASSERT_NE(accessible, nullptr);
        EXPECT_EQ(accessible->role(), QAccessible::Chart);
        EXPECT_FALSE(accessible->text(QAccessible::Name).isEmpty());
        EXPECT_NE(plain(accessible->text(QAccessible::Description)).find("doubling from 30 min"),
                  std::string::npos);
    }
}

TEST(Window, ManyRampsWithLongNamesAllHaveTheirPlace) {
    Driven driven(Driven::Writable{"new-clay.toml"}, 2);
    driven.window.document().edit(QStringLiteral("edit"), [](engine::Pond& pond) {
        while (pond.ramps.size() < 10) {
            engine::Ramp ramp = pond.ramps.front();
            ramp.name = "a ramp with quite a long name, number " + std::to_string(pond.ramps.size());
            pond.ramps.push_back(ramp);
        }
    });
    ASSERT_TRUE(driven.waitForCurves());
    EXPECT_EQ(driven.window.side().table().model()->rowCount(), 11);
    EXPECT_LE(driven.window.minimumSizeHint().width(), 1366);
    EXPECT_LE(driven.window.minimumSizeHint().height(), 740);
}

}  // namespace
}  // namespace app
