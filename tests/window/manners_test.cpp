// What one expects of any program: nothing is lost, every entry and every view works, and a first user gets
// there.

#include "app/recovery.h"
#include "engine/pond/pond_io.h"
#include "tests/widgets/child_environment.h"
#include "tests/window/driven.h"
#include "widgets/charts/owner_view.h"
#include "widgets/controls/progress_line.h"
#include "widgets/controls/sheet_editor.h"
#include "widgets/forms/compare_dialog.h"
#include "widgets/forms/first_pond_dialog.h"
#include "widgets/forms/pond_page.h"

#include <QAbstractItemModelTester>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QMenu>
#include <QProcess>
#include <QTableView>

#include <gtest/gtest.h>

#include <csignal>
#include <fstream>

namespace app {
namespace {

using engine::test::TemporaryFolder;
using test::Driven;
using test::plain;
using test::scenario;

/// Its own state folder while it lives.
struct OwnState {
    OwnState() : before(qgetenv("XDG_STATE_HOME")) {
        qputenv("XDG_STATE_HOME", QByteArray::fromStdString(folder.path().string()));
    }
    ~OwnState() { qputenv("XDG_STATE_HOME", before); }
    TemporaryFolder folder;
    QByteArray before;
};

TEST(Recovery, WhatAKilledProgramDidNotSaveIsOfferedAndBroughtBack) {
    const OwnState state;
    const TemporaryFolder folder;
    const auto path = folder.path() / "pond.toml";
    std::filesystem::copy_file(scenario("new-clay.toml"), path);
    // A child that edits and is killed with its edit not saved.
    QProcess child;
    QProcessEnvironment environment = widgets::test::childEnvironment();
    environment.insert(QStringLiteral("DAWNLINE_TEST_EDIT"), QString::fromStdString(path.string()));
    child.setProcessEnvironment(environment);
    child.start(QCoreApplication::applicationFilePath(),
                {QStringLiteral("--gtest_filter=Recovery.DISABLED_EditsAndWaits"),
                 QStringLiteral("--gtest_also_run_disabled_tests")});
    ASSERT_TRUE(child.waitForStarted());
    const auto isLeft = [&] {
        const std::filesystem::path recovery = state.folder.path() / "dawnline" / "recovery";
        std::error_code none;
        for (const auto& entry : std::filesystem::directory_iterator(recovery, none)) {
            if (entry.path().extension() == ".toml") {
                return true;
            }
        }
        return false;
    };
    QElapsedTimer clock;
    clock.start();
    ASSERT_TRUE(QTest::qWaitFor(isLeft, 20000)) << child.readAllStandardOutput().toStdString();
    EXPECT_TRUE(Recovery::leftBehind().empty()) << "its program still runs";
    ::kill(static_cast<pid_t>(child.processId()), SIGKILL);
    ASSERT_TRUE(child.waitForFinished());

    Driven driven;
    driven.window.offerLeftBehind();
    EXPECT_NE(plain(driven.window.notice().text()).find("had changes that were not saved"), std::string::npos)
        << plain(driven.window.notice().text());
    QPushButton* back = nullptr;
    for (auto* button : driven.window.notice().findChildren<QPushButton*>()) {
        back = button->isVisible() ? button : back;
    }
    ASSERT_NE(back, nullptr);
    back->click();
    ASSERT_FALSE(driven.window.document().isEmpty());
    EXPECT_EQ(driven.window.document().pond().title, "edited and never saved");
    EXPECT_EQ(driven.window.document().path(), path);
    EXPECT_TRUE(driven.window.document().isModified());
    const auto asked = test::answerNext(QMessageBox::Save);  // its comments go
    EXPECT_TRUE(driven.window.save());
    EXPECT_TRUE(*asked);
    EXPECT_EQ(engine::readPond(path).pond->title, "edited and never saved");
    EXPECT_TRUE(Recovery::leftBehind().empty()) << "brought back and saved";
}

/// Run by the test above in a process of its own.
TEST(Recovery, DISABLED_EditsAndWaits) {
    const QString path = qEnvironmentVariable("DAWNLINE_TEST_EDIT");
    if (path.isEmpty()) {
        GTEST_SKIP() << "run by another test";
    }
    Driven driven(std::filesystem::path(path.toStdString()));
    driven.window.document().edit(QStringLiteral("edit"),
                                  [](engine::Pond& pond) { pond.title = "edited and never saved"; });
    QTest::qWait(60000);
}

/// A folder's name may be any bytes but a slash.
TEST(Recovery, OffersWhatBelongsIntoAFolderWithAnyName) {
    const OwnState state;
    for (const char* name : {"line\nbreak", "not \xFF utf-8", "100 % # \" '", "plain"}) {
        const TemporaryFolder folder;
        const auto path = folder.path() / name / "pond.toml";
        std::filesystem::create_directory(folder.path() / name);
        std::filesystem::copy_file(scenario("new-clay.toml"), path);
        widgets::Document document;
        ASSERT_FALSE(engine::hasErrors(document.open(path)));
        auto* recovery = new Recovery(document);
        document.edit(QStringLiteral("edit"), [&](engine::Pond& pond) { pond.title = "edited"; });
        QTest::qWait(3500);
        // As a killed program leaves it: the file stays, and its lock's holder is gone.
        const auto kept = state.folder.path() / "dawnline" / "recovery";
        std::filesystem::copy(kept, folder.path() / "kept");
        delete recovery;
        for (const auto& entry : std::filesystem::directory_iterator(folder.path() / "kept")) {
            if (entry.path().extension() == ".toml") {
                std::filesystem::copy_file(entry.path(), kept / entry.path().filename());
            }
        }
        const auto left = Recovery::leftBehind();
        ASSERT_EQ(left.size(), 1U) << name;
        EXPECT_EQ(left.front().original, path);
        EXPECT_EQ(left.front().pond.title, "edited");
        std::filesystem::remove(left.front().file);
    }
}

TEST(Recovery, NothingIsLeftOfWhatWasSavedOrGivenUp) {
    const OwnState state;
    {
        Driven driven(Driven::Writable{"new-clay.toml"});
        driven.window.document().edit(QStringLiteral("edit"),
                                      [](engine::Pond& pond) { pond.title = "given up"; });
        QTest::qWait(3500);
    }
    EXPECT_TRUE(Recovery::leftBehind().empty());
}

TEST(Manners, ATitleWithMarkupIsShownAsItIs) {
    Driven driven(Driven::Writable{"new-clay.toml"});
    driven.window.document().edit(QStringLiteral("edit"), [](engine::Pond& pond) {
        pond.title = "<h1>x</h1><img src='file:///etc/passwd'>";
    });
    bool isPlain = false;
    QTimer::singleShot(0, [&] {
        for (QWidget* widget : QApplication::topLevelWidgets()) {
            if (auto* box = qobject_cast<QMessageBox*>(widget); box != nullptr && box->isVisible()) {
                isPlain = box->textFormat() == Qt::PlainText;
                EXPECT_NE(plain(box->text()).find("<h1>x</h1>"), std::string::npos);
                box->button(QMessageBox::Cancel)->click();
            }
        }
    });
    EXPECT_FALSE(driven.window.close());
    EXPECT_TRUE(isPlain);
    const auto asked = test::answerNext(QMessageBox::Discard);
    driven.window.close();
}

TEST(Manners, AFileChangedByAnotherProgramIsSaidAndReadAgain) {
    Driven driven(Driven::Writable{"new-clay.toml"});
    ASSERT_TRUE(driven.waitForCurves());
    const auto path = driven.window.document().path();
    engine::Pond other = driven.window.document().pond();
    other.title = "written by another program";
    std::ofstream(path) << engine::writePond(other);
    ASSERT_TRUE(QTest::qWaitFor(
        [&] { return driven.window.notice().text().contains(QStringLiteral("changed by another")); }, 5000));
    for (auto* button : driven.window.notice().findChildren<QPushButton*>()) {
        if (button->isVisible()) {
            button->click();
            break;
        }
    }
    EXPECT_EQ(driven.window.document().pond().title, "written by another program");
}

TEST(Manners, OwnSavingIsNoForeignChange) {
    Driven driven(Driven::Writable{"new-clay.toml"});
    ASSERT_TRUE(driven.waitForCurves());
    driven.window.document().edit(QStringLiteral("edit"), [](engine::Pond& pond) { pond.title = "mine"; });
    const auto asked = test::answerNext(QMessageBox::Save);  // comments are lost
    ASSERT_TRUE(driven.window.save());
    EXPECT_TRUE(*asked);
    QTest::qWait(300);
    EXPECT_EQ(plain(driven.window.notice().text()), "");
}

TEST(Manners, ANewerFormatIsRefusedInWordsAndNotTouched) {
    Driven driven;
    const std::string text = "format = 2\ntitle = \"of the future\"\nunheard = 1\n";
    const auto path = driven.folder.write("future.toml", text);
    EXPECT_FALSE(driven.window.open(path));
    EXPECT_NE(plain(driven.window.notice().text()).find("newer"), std::string::npos)
        << plain(driven.window.notice().text());
    std::ifstream file(path);
    EXPECT_EQ(std::string(std::istreambuf_iterator<char>(file), {}), text);
}

TEST(Manners, TemplatesAreCopiedAndNoRecentFiles) {
    Driven driven;
    auto* templates = driven.window.findChild<QMenu*>(QStringLiteral("templates"));
    ASSERT_NE(templates, nullptr);
    emit templates->aboutToShow();
    if (templates->actions().size() < 2) {
        GTEST_SKIP() << "the tests do not stand beside the scenarios";
    }
    EXPECT_EQ(templates->actions().size(), 11);
    templates->actions().front()->trigger();
    EXPECT_FALSE(driven.window.document().isEmpty());
    EXPECT_TRUE(driven.window.document().path().empty());
    EXPECT_TRUE(driven.window.document().isModified());
}

TEST(Manners, EveryViewIsShownByItsEntryAndSaysSomething) {
    Driven driven(scenario("new-clay.toml"), 3);
    ASSERT_TRUE(driven.waitUntilWhole());
    auto& page = driven.window.page();
    for (int view = 0; view < page.viewCount(); ++view) {
        driven.trigger(plain(page.viewName(view)).c_str());
        EXPECT_EQ(page.view(), view);
        QTest::qWait(30);
        EXPECT_FALSE(page.meant().sheet().headline.isEmpty());
    }
    EXPECT_EQ(page.viewCount(), 19);
}

TEST(Manners, EverySectionOfThePondIsAWellBehavedForm) {
    Driven driven(scenario("grandfathers-pond.toml"), 2);
    ASSERT_TRUE(driven.waitForCurves());
    driven.window.page().setPlace(widgets::Place::Pond);
    auto& pond = driven.window.pondPage();
    for (int section = 0; section < pond.sectionCount(); ++section) {
        pond.setSection(section);
        QTest::qWait(10);
        for (const QWidget* widget : pond.findChildren<QWidget*>()) {
            if (widget->isVisible() && widget->focusPolicy() != Qt::NoFocus &&
                widget->focusProxy() == nullptr && !widget->inherits("QTableCornerButton") &&
                widget->parentWidget()->inherits("QTableView") == false) {
                EXPECT_FALSE(widget->accessibleName().isEmpty() &&
                             qobject_cast<const QAbstractButton*>(widget) == nullptr)
                    << plain(pond.sectionName(section)) << ": " << widget->metaObject()->className();
            }
        }
    }
    for (widgets::SheetEditor* sheet : pond.sheets()) {
        const QAbstractItemModelTester tester(&sheet->model(),
                                              QAbstractItemModelTester::FailureReportingMode::Fatal);
    }
}

TEST(Manners, UnitsSwitchEverywhereAtOnce) {
    Driven driven(Driven::Writable{"grandfathers-pond.toml"}, 2);
    ASSERT_TRUE(driven.waitForCurves());
    driven.window.document().edit(QStringLiteral("units"),
                                  [](engine::Pond& pond) { pond.units = engine::UnitSystem::Us; });
    auto& pond = driven.window.pondPage();
    EXPECT_EQ(widgets::test::textOf(widgets::test::fieldOf(pond, "Area, ac")), "1.97684");
    EXPECT_EQ(widgets::test::textOf(widgets::test::fieldOf(pond, "Air each, cfm")), "1.58916");
    driven.window.document().edit(QStringLiteral("units"),
                                  [](engine::Pond& of) { of.units = engine::UnitSystem::Metric; });
    EXPECT_EQ(widgets::test::textOf(widgets::test::fieldOf(pond, "Area, m2")), "8000");
}

TEST(Manners, TheOwnersViewIsPlainPlayableAndChangesNothing) {
    Driven driven(scenario("grandfathers-pond.toml"), 4);
    ASSERT_TRUE(driven.waitUntilWhole());
    const engine::Pond before = driven.window.document().pond();
    QPointer<widgets::OwnerView> view = driven.window.showOwner();
    ASSERT_FALSE(view.isNull());
    const std::string said = plain(view->headline() + view->chances());
    for (const char* jargon : {"dose", "ramp", "mg/L", "percentile", "debt", "stratif"}) {
        EXPECT_EQ(said.find(jargon), std::string::npos) << said;
    }
    const int night = view->night();
    QTest::keyClick(view, Qt::Key_Left);
    EXPECT_EQ(view->night(), std::max(night - 1, 1));
    QTest::keyClick(view, Qt::Key_Space);
    EXPECT_TRUE(view->isPlaying());
    for (const QWidget* widget : view->findChildren<QWidget*>()) {
        EXPECT_EQ(qobject_cast<const QLineEdit*>(widget), nullptr) << "nothing can be typed";
    }
    EXPECT_FALSE(view->sheet().headline.isEmpty());
    QTest::keyClick(view, Qt::Key_Escape);
    EXPECT_TRUE(QTest::qWaitFor([&] { return view.isNull(); }, 2000));
    EXPECT_TRUE(driven.window.document().pond() == before);
}

// From an empty window to a saved comparison of three ramps for a pond of one's own, by clicks and keys
// alone.
TEST(FirstUser, GetsFromStartToASavedComparisonOfThreeRamps) {
    Driven driven;
    test::atNextDialog<widgets::FirstPondDialog>([](widgets::FirstPondDialog& dialog) {
        auto* name = widgets::test::fieldOf<QLineEdit>(dialog, "Name of the pond");
        name->selectAll();
        QTest::keyClicks(name, QStringLiteral("Mill pond"));
        const auto type = [&](const char* field, const char* text) {
            widgets::test::typeOnly(widgets::test::fieldOf(dialog, field), text);
        };
        type("Area, m2", "2.5 ac");
        type("Deepest point, m", "12 ft");
        type("Age, years", "30");
        type("First day", "2026-06-14");
        type("Coldest of a day, °C", "64 F");
        type("Warmest of a day, °C", "90 F");
        widgets::test::fieldOf<QComboBox>(dialog, "Muck")->setCurrentIndex(2);
        widgets::test::fieldOf<QComboBox>(dialog, "Colour of the water")->setCurrentIndex(2);
        dialog.findChild<QDialogButtonBox*>()->button(QDialogButtonBox::Ok)->click();
    });
    for (auto* button : driven.window.findChildren<QPushButton*>()) {
        if (button->isVisible() && button->text().startsWith(QStringLiteral("A First Pond"))) {
            QTest::mouseClick(button, Qt::LeftButton);
            break;
        }
    }
    ASSERT_FALSE(driven.window.document().isEmpty());
    EXPECT_EQ(driven.window.document().pond().title, "Mill pond");
    EXPECT_NEAR(driven.window.document().pond().basin.area->value, 10117.1, 0.1);
    EXPECT_NEAR(driven.window.document().pond().basin.maxDepth->value, 3.6576, 1e-6);
    ASSERT_TRUE(driven.waitUntilWhole());
    EXPECT_EQ(driven.window.side().table().model()->rowCount(), 4) << "do nothing and three ramps";
    EXPECT_NE(plain(driven.window.page().headline()).find("mg/L"), std::string::npos);
    const auto path = driven.folder.path() / "mill-pond.toml";
    test::nameNext(path);
    driven.trigger("Save");
    ASSERT_TRUE(std::filesystem::exists(path));
    EXPECT_EQ(engine::readPond(path).pond->ramps.size(), 3U);
    test::nameNext(driven.folder.path() / "night.png");
    driven.trigger("Export Chart…");
    EXPECT_TRUE(std::filesystem::exists(driven.folder.path() / "night.png"));
    EXPECT_FALSE(driven.window.document().isModified());
}

}  // namespace
}  // namespace app
