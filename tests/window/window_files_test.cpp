// What the window writes and reads: charts, ponds, what is dropped on it, what it remembers.
#include "engine/base/text_file.h"
#include "engine/pond/pond_io.h"
#include "tests/window/driven.h"
#include "widgets/charts/dawn_lows_plot.h"
#include "widgets/charts/night_stage.h"

#include <QClipboard>
#include <QDropEvent>
#include <QImage>
#include <QMenu>
#include <QMimeData>

#include <gtest/gtest.h>

namespace app {
namespace {

using test::answerNext;
using test::Driven;
using test::nameNext;
using test::plain;
using test::scenario;

std::string textOf(const std::filesystem::path& path) {
    return engine::readWholeFile(path, engine::kPondFileLimit_bytes).text.value_or("");
}

TEST(WindowFiles, ExportsTheChartAsPictureDrawingAndNumbers) {
    Driven driven(scenario("new-clay.toml"));
    ASSERT_TRUE(driven.waitUntilWhole());
    for (const char* name : {"night.png", "night.svg", "night.csv"}) {
        nameNext(driven.folder.path() / name);
        driven.trigger("Export Chart\u2026");
        EXPECT_TRUE(std::filesystem::exists(driven.folder.path() / name)) << name;
    }
    const QImage image(QString::fromStdString((driven.folder.path() / "night.png").string()));
    EXPECT_NEAR(image.dotsPerMeterX() * 0.0254, 300.0, 0.1);
    EXPECT_EQ(textOf(driven.folder.path() / "night.csv").rfind("line,night,time_h,", 0), 0U);
    driven.window.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&driven.window));
    driven.window.page().stage().lows().setFocus();
    nameNext(driven.folder.path() / "lows.csv");
    driven.trigger("Export Chart\u2026");
    EXPECT_EQ(textOf(driven.folder.path() / "lows.csv").rfind("ramp,night,date,", 0), 0U);
    nameNext(driven.folder.path() / "no.bmp");
    driven.trigger("Export Chart\u2026");
    EXPECT_NE(plain(driven.window.notice().text()).find("must end in"), std::string::npos);
}

TEST(WindowFiles, AChartsNameHasTheEndingOfTheChosenFilter) {
    const QStringList filters = chartFilters();
    const auto named = [](const char* typed, const QString& filter) {
        return plain(chartName(QString::fromUtf8(typed), filter));
    };
    EXPECT_EQ(named("night", filters[0]), "night.png");
    EXPECT_EQ(named("night", filters[1]), "night.svg");
    EXPECT_EQ(named("night.png", filters[2]), "night.csv");
    EXPECT_EQ(named("night.svg", filters[0]), "night.svg") << "the first filter is nobody's choice";
    EXPECT_EQ(named("night.bmp", filters[0]), "night.bmp") << "refused when it is written";
    EXPECT_EQ(named("two.nights", filters[1]), "two.nights");
}

TEST(WindowFiles, CopiesTheChart) {
    Driven driven(scenario("new-clay.toml"));
    ASSERT_TRUE(driven.waitForCurves());
    driven.trigger("Copy Chart");
    const QMimeData* clipping = QApplication::clipboard()->mimeData();
    EXPECT_TRUE(clipping->hasImage());
    EXPECT_TRUE(clipping->hasFormat(QStringLiteral("image/svg+xml")));
    EXPECT_TRUE(clipping->text().contains(QStringLiteral("night")));
}

TEST(WindowFiles, SavingSaysThatCommentsAreLostAndThenKeepsThePond) {
    Driven driven(Driven::Writable{"new-clay.toml"});
    ASSERT_TRUE(driven.waitForCurves());
    const auto path = driven.window.document().path();
    const std::string before = textOf(path);
    driven.window.document().edit(QStringLiteral("edit"), [](engine::Pond& pond) { pond.title = "Renamed"; });
    auto asked = answerNext(QMessageBox::Cancel);
    EXPECT_FALSE(driven.window.save());
    EXPECT_TRUE(*asked);
    EXPECT_EQ(textOf(path), before);
    EXPECT_TRUE(driven.window.isWindowModified());
    asked = answerNext(QMessageBox::Save);
    EXPECT_TRUE(driven.window.save());
    EXPECT_FALSE(driven.window.isWindowModified());
    EXPECT_EQ(*engine::readPond(path).pond, driven.window.document().pond());
    EXPECT_EQ(textOf(path.string() + ".bak"), before);
    driven.window.document().edit(QStringLiteral("edit"), [](engine::Pond& pond) { pond.title = "Again"; });
    EXPECT_TRUE(driven.window.save()) << "in our own form nothing is lost, so nothing is asked";
}

TEST(WindowFiles, SavesUnderAnotherName) {
    Driven driven(scenario("new-clay.toml"));
    ASSERT_TRUE(driven.waitForCurves());
    nameNext(driven.folder.path() / "bare");
    EXPECT_TRUE(driven.window.saveAs());
    EXPECT_EQ(driven.window.document().path(), driven.folder.path() / "bare.toml");
    nameNext(driven.folder.path() / "mine.toml");
    EXPECT_TRUE(driven.window.saveAs());
    EXPECT_EQ(driven.window.document().path(), driven.folder.path() / "mine.toml");
    EXPECT_EQ(*engine::readPond(driven.folder.path() / "mine.toml").pond, driven.window.document().pond());
}

TEST(WindowFiles, ASaveThatFailsIsSaidAndLosesNothing) {
    Driven driven(Driven::Writable{"new-clay.toml"});
    ASSERT_TRUE(driven.waitForCurves());
    driven.window.document().edit(QStringLiteral("edit"), [](engine::Pond& pond) { pond.title = "Renamed"; });
    std::filesystem::remove_all(driven.folder.path());
    answerNext(QMessageBox::Save);  // that comments are lost
    EXPECT_FALSE(driven.window.save());
    EXPECT_NE(plain(driven.window.notice().text()).find("was not saved"), std::string::npos);
    EXPECT_TRUE(driven.window.isWindowModified());
    EXPECT_EQ(driven.window.document().pond().title, "Renamed");
}

TEST(WindowFiles, UnsavedChangesAreAskedForBeforeTheyAreLost) {
    Driven driven(Driven::Writable{"new-clay.toml"});
    ASSERT_TRUE(driven.waitForCurves());
    driven.window.document().edit(QStringLiteral("edit"), [](engine::Pond& pond) { pond.title = "Renamed"; });
    auto asked = answerNext(QMessageBox::Cancel);
    EXPECT_FALSE(driven.window.close());
    EXPECT_TRUE(*asked);
    EXPECT_TRUE(driven.window.isVisible());
    asked = answerNext(QMessageBox::Discard);
    EXPECT_TRUE(driven.window.close());
    EXPECT_TRUE(*asked);
}

TEST(WindowFiles, TakesAFileThatIsDropped) {
    Driven driven;
    QMimeData data;
    data.setUrls({QUrl::fromLocalFile(QString::fromStdString(scenario("new-clay.toml").string()))});
    QDragEnterEvent enter(QPoint(10, 10), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(&driven.window, &enter);
    EXPECT_TRUE(enter.isAccepted());
    QDropEvent drop(QPointF(10, 10), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(&driven.window, &drop);
    EXPECT_FALSE(driven.window.document().isEmpty());
    ASSERT_TRUE(driven.waitForCurves());
}

TEST(WindowFiles, RemembersRecentFiles) {
    const auto remembered = scenario("new-clay.toml");
    { Driven driven(remembered); }
    Driven driven;
    auto* menu = driven.window.findChild<QMenu*>(QStringLiteral("recent"));
    ASSERT_NE(menu, nullptr);
    emit menu->aboutToShow();
    ASSERT_FALSE(menu->actions().isEmpty());
    menu->actions().front()->trigger();
    EXPECT_EQ(driven.window.document().path(), std::filesystem::absolute(remembered));
}

}  // namespace
}  // namespace app
