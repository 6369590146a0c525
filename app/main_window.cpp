#include "app/main_window.h"

#include "app/answer_changes.h"
#include "app/main_window_words.h"
#include "app/papers.h"
#include "app/recovery.h"
#include "widgets/charts/chart_view.h"
#include "widgets/charts/owner_view.h"
#include "widgets/charts/print_sheet.h"
#include "widgets/charts/sheets.h"
#include "widgets/charts/views_page.h"
#include "widgets/controls/notice.h"
#include "widgets/controls/progress_line.h"
#include "widgets/follow_up/after_start_page.h"
#include "widgets/follow_up/review_page.h"
#include "widgets/follow_up/today_page.h"
#include "widgets/forms/plan_page.h"
#include "widgets/forms/pond_page.h"
#include "widgets/forms/ramp_actions.h"
#include "widgets/forms/schedule_grid.h"
#include "widgets/forms/schedule_page.h"
#include "widgets/forms/side_panel.h"

#include <QAction>
#include <QApplication>
#include <QClipboard>
#include <QCloseEvent>
#include <QFileDialog>
#include <QMimeData>
#include <QSplitter>
#include <QStackedWidget>
#include <QVBoxLayout>

namespace app {
namespace {

constexpr QSize kFirstSize{1320, 720};

}  // namespace

MainWindow::MainWindow(QWidget* parent)
    : QMainWindow(parent),
      m_recomputation(m_document),
      m_page(new widgets::ViewsPage(m_selection, this)),
      m_pondPage(new widgets::PondPage(m_document, this)),
      m_schedule(new widgets::SchedulePage(m_document, m_selection, this)),
      m_afterStart(new widgets::AfterStartPage(m_document, this)),
      m_side(new widgets::SidePanel(m_document, m_selection, m_recomputation, this)),
      m_notice(new widgets::Notice(this)),
      m_progress(new widgets::ProgressLine(this)),
      m_recovery(new Recovery(m_document, this)),
      m_changes(new AnswerChanges(m_document, *m_notice, *this)),
      m_plan(new widgets::PlanPage(m_document, this)) {
    widgets::applyTheme(m_state.theme());
    layOut();
    setAcceptDrops(true);
    makeFileMenu();
    makeEditMenu();
    makeRampMenu();
    makeAfterMenu();
    makeViewMenu();
    makeHelpMenu();
    resize(kFirstSize);
    if (const QByteArray geometry = m_state.geometry(); !geometry.isEmpty()) {
        restoreGeometry(geometry);
    }
    listen();
    showTitle();
}

MainWindow::~MainWindow() {
    m_document.undoStack().disconnect(this);  // it speaks once more when it goes, after what listens
    delete m_recovery;                        // it looks at the document
    delete m_changes;                         // its work may speak in the window
}

void MainWindow::layOut() {
    auto* split = new QSplitter(Qt::Horizontal, this);
    split->setChildrenCollapsible(false);
    split->addWidget(m_page);
    split->addWidget(m_side);
    split->setStretchFactor(0, 1);
    split->setStretchFactor(1, 0);
    addPages();
    auto* middle = new QWidget(this);
    auto* column = new QVBoxLayout(middle);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(m_notice);
    auto* stack = new QStackedWidget(middle);
    stack->addWidget(emptyPage(stack,
                               {{tr("A First Pond: Twelve Questions\u2026"), [this] { askFirstPond(); }},
                                {tr("An Example Pond\u2026"), [this] { offerTemplates(); }},
                                {tr("Open a Pond File\u2026"), [this] { chooseFile(); }}},
                               knownPonds()));
    stack->addWidget(split);
    column->addWidget(stack, 1);
    column->addWidget(m_progress);
    setCentralWidget(middle);
    connect(&m_document, &widgets::Document::changed, this, [this, stack] {
        stack->setCurrentIndex(m_document.isEmpty() ? 0 : 1);
        showTitle();
    });
}

void MainWindow::addPages() {
    using widgets::AfterStartPage;
    using widgets::Place;
    m_page->addPage(Place::Pond, 0, {tr("Pond"), m_pondPage});
    m_page->addPage(Place::Plan, 0, {tr("Find"), m_plan});
    m_page->addPage(Place::Plan, 1, {tr("Schedule"), m_schedule});
    for (int i = 0; i < AfterStartPage::kPages; ++i) {
        const auto which = static_cast<AfterStartPage::Page>(i);
        m_page->addPage(
            Place::After, i,
            {AfterStartPage::name(which), m_afterStart, [this, which] { m_afterStart->setPage(which); },
             [this] { return m_afterStart->chart(); }});
    }
}

void MainWindow::listen() {
    using widgets::Recomputation;
    connect(&m_document, &widgets::Document::pathChanged, this, [this] {
        watchFile();
        showTitle();
    });
    connect(&m_document.undoStack(), &QUndoStack::cleanChanged, this, &MainWindow::showTitle);
    m_afterStart->review().setLedger(ledgerFile());
    connect(&m_afterStart->today(), &widgets::TodayPage::rampWanted, &m_side->ramps(),
            &widgets::RampActions::add);
    connect(&m_recomputation, &Recomputation::outcomeChanged, this, &MainWindow::showOutcome);
    connect(&m_recomputation, &Recomputation::staleChanged, m_page, &widgets::ViewsPage::setStale);
    connect(&m_recomputation, &Recomputation::staleChanged, this, [this](bool isStale) {
        if (isStale) {
            m_progress->start(tr("Computing the ramps"));
        }
    });
    connect(&m_recomputation, &Recomputation::measuring, this,
            [this] { m_progress->start(tr("Working out what to measure")); });
    connect(m_page, &widgets::ViewsPage::viewChanged, m_side,
            [this](int view) { m_side->setVisible(m_page->placeOf(view) != widgets::Place::After); });
    connect(m_page, &widgets::ViewsPage::viewChanged, this,
            [this] { m_recomputation.setMeasuring(m_page->isMeasuring()); });
    connect(&m_recomputation, &Recomputation::progressed, m_progress, &widgets::ProgressLine::set);
    connect(&m_recomputation, &Recomputation::settled, m_progress, &widgets::ProgressLine::finish);
    connect(&m_recomputation, &Recomputation::failed, m_progress, &widgets::ProgressLine::finish);
    connect(&m_recomputation, &Recomputation::failed, m_notice, &widgets::Notice::say);
    connect(m_progress, &widgets::ProgressLine::stopped, &m_recomputation, &Recomputation::cancel);
    connect(&m_side->ramps(), &widgets::RampActions::findAsked, this,
            [this] { m_page->setView(m_page->viewNamed(tr("Find"))); });
    connect(m_plan, &widgets::PlanPage::rampWanted, &m_side->ramps(), &widgets::RampActions::add);
    connect(&m_side->ramps(), &widgets::RampActions::refused, m_notice, &widgets::Notice::say);
    connect(&m_schedule->grid(), &widgets::ScheduleGrid::refused, m_notice, &widgets::Notice::say);
    connect(&m_watcher, &QFileSystemWatcher::fileChanged, this, &MainWindow::fileChanged);
}

void MainWindow::closeEvent(QCloseEvent* event) {
    if (!mayDiscard()) {
        event->ignore();
        return;
    }
    m_state.setGeometry(saveGeometry());
    event->accept();
}

void MainWindow::dragEnterEvent(QDragEnterEvent* event) {
    const QList<QUrl> urls = event->mimeData()->urls();
    if (urls.size() == 1 && urls.front().isLocalFile()) {
        event->acceptProposedAction();
    }
}

void MainWindow::dropEvent(QDropEvent* event) {
    const QList<QUrl> urls = event->mimeData()->urls();
    if (urls.size() == 1 && urls.front().isLocalFile() && mayDiscard()) {
        event->acceptProposedAction();
        open(urls.front().toLocalFile().toStdString());
    }
}

void MainWindow::showTitle() {
    setWindowTitle(m_document.isEmpty() ? tr("Dawnline")
                                        : tr("%1[*] \u2013 Dawnline").arg(m_document.title()));
    setWindowModified(m_document.isModified());
    for (QAction* action : m_needPond) {
        action->setEnabled(!m_document.isEmpty());
    }
    for (QAction* action : m_needOutcome) {
        action->setEnabled(m_recomputation.outcome() != nullptr);
    }
}

void MainWindow::showOutcome() {
    const widgets::OutcomePtr& outcome = m_recomputation.outcome();
    m_page->setOutcome(outcome);
    m_side->setOutcome(outcome);
    m_schedule->setOutcome(outcome);
    m_pondPage->setOutcome(outcome);
    if (!outcome->isGivenUp && (m_recomputation.isRunning() || !outcome->hasAllMembers)) {
        m_progress->start(outcome->isWhole ? tr("Computing the uncertainty")
                                           : tr("Looking for what makes the lows"));
    }
    // Only now may the selection go to nights and ramps that the outcome before did not have.
    if (m_isFirstOutcome) {  // of this pond: the ramp that is meant, in its own worst night
        m_isFirstOutcome = false;
        m_selection.setRamp(widgets::chosenRamp(outcome->comparison));
        m_selection.setNight(widgets::chosenNight(outcome->comparison));
    }
    const QString fault = endedEarly(outcome->comparison);
    if (!fault.isEmpty()) {
        m_notice->say(fault);
    }
    showTitle();
}

widgets::ChartSheet MainWindow::sheet() const {
    return m_page->meant().sheet();
}

void MainWindow::exportChart() {
    const widgets::ChartSheet chart = sheet();
    QString filter;
    const QString typed =
        QFileDialog::getSaveFileName(this, tr("Export the chart"), chart.name + QStringLiteral(".png"),
                                     chartFilters().join(QStringLiteral(";;")), &filter);
    const QString name = typed.isEmpty() ? QString() : chartName(typed, filter);
    if (name.isEmpty() || !mayReplace(typed, name)) {
        return;
    }
    if (const auto fault = widgets::saveSheet(chart, name.toStdString())) {
        m_notice->say(*fault);
    }
}

void MainWindow::printChart() {
    widgets::askAndPrint(sheet(), this);
}

widgets::OwnerView* MainWindow::showOwner() {
    if (m_recomputation.outcome() == nullptr) {
        return nullptr;
    }
    auto* view =
        new widgets::OwnerView(m_recomputation.outcome(), m_selection.ramp(), m_selection.night(), this);
    connect(view, &widgets::OwnerView::printAsked, view,
            [view] { widgets::askAndPrint(view->sheet(), view); });
    view->showFullScreen();
    return view;
}

void MainWindow::copyChart() {
    QApplication::clipboard()->setMimeData(widgets::clippingOf(sheet()));
}

}  // namespace app
