#include "widgets/papers.h"

#include "app/paper_actions.h"
#include "engine/pond_io.h"
#include "tests/window/driven.h"
#include "widgets/paper_pdf.h"

#include <QPrinter>
#include <QProcess>

namespace app {
namespace {

using test::Driven;
using test::scenario;

TEST(PaperActions, StandInTheFileMenuOnceThereIsAPond) {
    Driven empty;
    int found = 0;
    for (const QAction* action : empty.window.findChildren<QAction*>()) {
        found += action->text().contains(QStringLiteral("Pap")) && !action->isEnabled() ? 1 : 0;
    }
    EXPECT_EQ(found, 3);
    empty.window.open(scenario("new-clay.toml"));
    for (const QAction* action : empty.window.findChildren<QAction*>()) {
        EXPECT_TRUE(!action->text().contains(QStringLiteral("Pap")) || action->isEnabled());
    }
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
    const widgets::PaperDress dress = widgets::dressOf(papers);
    int pages = 0;
    for (const widgets::Paper& paper : widgets::allPapers(papers)) {
        pages +=
            widgets::PaperPainter(paper, dress, papers.format, widgets::PaperLook::standard()).pageCount();
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

}  // namespace
}  // namespace app
