#include "widgets/papers/papers.h"

#include "app/paper_actions.h"
#include "engine/pond/pond_io.h"
#include "tests/window/driven.h"
#include "widgets/controls/notice.h"
#include "widgets/papers/consultant_dialog.h"
#include "widgets/papers/paper_pdf.h"

#include <QDialog>
#include <QMenu>
#include <QPrinter>
#include <QProcess>
#include <QTextBrowser>

#include <algorithm>

namespace app {
namespace {

using test::Driven;
using test::plain;
using test::scenario;
using widgets::test::fieldOf;

TEST(PaperActions, StandInTheFileMenuOnceThereIsAPond) {
    Driven empty;
    int found = 0;
    for (const QAction* action : empty.window.findChildren<QAction*>()) {
        found += action->text().contains(QStringLiteral("Pap")) && !action->isEnabled() ? 1 : 0;
    }
    EXPECT_EQ(found, 4);
    empty.window.open(scenario("new-clay.toml"));
    for (const QAction* action : empty.window.findChildren<QAction*>()) {
        EXPECT_TRUE(!action->text().contains(QStringLiteral("Pap")) || action->isEnabled());
    }
}

TEST(PaperActions, AreAboutTheRampThatIsPickedForThisPond) {
    Driven driven(scenario("grandfathers-pond.toml"));
    auto* papers = driven.window.findChild<PaperActions*>();
    auto* ramps = driven.window.findChild<QMenu*>(QStringLiteral("paper-ramps"));
    ASSERT_TRUE(papers != nullptr && ramps != nullptr);
    emit ramps->aboutToShow();
    const auto action = [&](const char* text) {
        const auto all = ramps->actions();
        const auto found = std::find_if(
            all.begin(), all.end(), [&](const QAction* one) { return one->text() == QLatin1String(text); });
        return found == all.end() ? nullptr : *found;
    };
    QAction* usual = action("As Started or Chosen: tenth of the bottom a day");
    QAction* other = action("doubling from 30 min");
    ASSERT_TRUE(usual != nullptr && other != nullptr);
    EXPECT_TRUE(usual->isChecked() && !other->isChecked());
    other->trigger();
    EXPECT_EQ(papers->ramp(), "doubling from 30 min");
    emit ramps->aboutToShow();
    EXPECT_TRUE(action("doubling from 30 min")->isChecked());
    driven.window.open(scenario("new-clay.toml"));  // another pond, another plan
    EXPECT_EQ(papers->ramp(), "");
}

// What goes to a printer has the pages of the PDFs.
TEST(PaperActions, PrintEveryPageOfEveryPaper) {
    const auto pond = engine::readPond(scenario("new-clay.toml")).pond;
    ASSERT_TRUE(pond.has_value());
    PaperOptions options;
    options.members = 2;
    const PaperRunReading run = runForPapers(*pond, scenario("new-clay.toml"), options);
    ASSERT_NE(run.run, nullptr) << run.fault;
    const widgets::PaperRun papers = widgets::paperRun(run.run, {});
    const widgets::PaperImprint imprint = widgets::imprintOf(papers);
    int pages = 0;
    for (const widgets::Paper& paper : widgets::allPapers(papers)) {
        pages +=
            widgets::PaperPainter(paper, imprint, papers.format, widgets::PaperLook::standard()).pageCount();
    }
    const test::TemporaryFolder folder;
    const QString path = QString::fromStdString((folder.path() / "print.pdf").string());
    QPrinter printer(QPrinter::ScreenResolution);
    printer.setOutputFileName(path);
    printer.setResolution(widgets::kPaperDots);
    printer.setPageSize(QPageSize(QPageSize::A4));
    printer.setFullPage(true);
    PaperActions::print(run.run, {}, printer);
    QProcess count;
    count.start(QStringLiteral("qpdf"), {QStringLiteral("--show-npages"), path});
    ASSERT_TRUE(count.waitForFinished(30000));
    EXPECT_EQ(count.readAllStandardOutput().trimmed().toInt(), pages);
    EXPECT_GT(pages, 12);
}

/// A config folder of its own, while it lives.
struct ConfigFolder {
    ConfigFolder() { qputenv("XDG_CONFIG_HOME", folder.path().c_str()); }
    ~ConfigFolder() { qunsetenv("XDG_CONFIG_HOME"); }
    test::TemporaryFolder folder;
};

TEST(PaperActions, PapersCarryTheNameThatIsSetOnce) {
    const ConfigFolder config;
    Driven driven(scenario("new-clay.toml"));
    test::atNextDialog<widgets::ConsultantDialog>([](widgets::ConsultantDialog& dialog) {
        widgets::test::typeOnly(fieldOf(dialog, "Business"), "Still Water");
        widgets::test::button(dialog, "Save")->click();
    });
    driven.trigger("Your Business Details\u2026");

    const auto who = consultantOf({}).consultant;
    ASSERT_TRUE(who.has_value());
    PaperOptions options;
    options.members = 2;
    const PaperRunReading run =
        runForPapers(driven.window.document().pond(), scenario("new-clay.toml"), options);
    ASSERT_NE(run.run, nullptr) << run.fault;
    for (const engine::TextFile& file : widgets::paperFiles(widgets::paperRun(run.run, *who))) {
        if (file.name.ends_with(".pdf")) {
            EXPECT_NE(file.text.find("Still Water"), std::string::npos) << file.name;
        }
    }
}

// Somebody typed it, and it is not written over.
TEST(PaperActions, AProfileThatCannotBeReadIsSaidAndLeft) {
    const ConfigFolder config;
    std::filesystem::create_directory(config.folder.path() / "dawnline");
    config.folder.write("dawnline/consultant.toml", "buisness = \"Still Water\"\n");
    Driven driven;
    driven.trigger("Your Business Details\u2026");
    EXPECT_EQ(QApplication::activeModalWidget(), nullptr);
    EXPECT_NE(plain(driven.window.notice().text()).find("the nearest is"), std::string::npos);
}

// The pond is asked again as the bundle was.
TEST(AnswerChanges, SayWhatIsNotAsItWasWhenABundleWasMade) {
    Driven driven(Driven::Writable{"new-clay.toml"});
    const auto path = driven.window.document().path();
    PaperOptions options;
    options.members = 2;
    const PaperRunReading run = runForPapers(driven.window.document().pond(), path, options);
    ASSERT_NE(run.run, nullptr) << run.fault;
    const auto files = widgets::paperFiles(widgets::paperRun(run.run, {}));
    const auto bundle = std::find_if(
        files.begin(), files.end(), [](const engine::TextFile& file) { return file.name.ends_with(".zip"); });
    ASSERT_NE(bundle, files.end());
    driven.folder.write(bundle->name, bundle->text);
    driven.window.document().edit(QStringLiteral("edit"), [](engine::Pond& pond) {
        pond.water.secchi = engine::Quantity(0.5 * pond.water.secchi->value);
    });
    const auto said = [&] {
        for (const auto* dialog : driven.window.findChildren<QDialog*>()) {
            if (const auto* browser = dialog->findChild<QTextBrowser*>();
                browser != nullptr && dialog->windowTitle().contains(QStringLiteral("What has changed"))) {
                return plain(browser->toPlainText());
            }
        }
        return std::string();
    };
    test::nameNext(driven.folder.path() / bundle->name);
    driven.trigger("Compare with Another Version\u2026");
    ASSERT_TRUE(QTest::qWaitFor([&] { return !said().empty(); }, test::kPatience_ms))
        << plain(driven.window.notice().text());
    EXPECT_NE(said().find("Not the same as then: the pond file."), std::string::npos) << said();
    EXPECT_EQ(said().find("the weather's file"), std::string::npos) << said();
    driven.folder.write("broken.zip", "no bundle");
    test::nameNext(driven.folder.path() / "broken.zip");
    driven.trigger("Compare with Another Version\u2026");
    EXPECT_TRUE(QTest::qWaitFor(
        [&] { return plain(driven.window.notice().text()).find("broken.zip") != std::string::npos; },
        test::kPatience_ms));
}

}  // namespace
}  // namespace app
