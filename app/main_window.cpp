#include "app/main_window.h"

#include "app/main_window_words.h"
#include "widgets/dawn_lows_plot.h"
#include "widgets/views_page.h"
#include "widgets/night_plot.h"
#include "widgets/notice.h"
#include "widgets/sheets.h"
#include "widgets/shown.h"
#include "widgets/side_panel.h"
#include "widgets/whole_run_plot.h"

#include <QAction>
#include <QApplication>
#include <QClipboard>
#include <QCloseEvent>
#include <QFileDialog>
#include <QMenuBar>
#include <QMessageBox>
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
      m_simulation(m_document),
      m_page(new widgets::ViewsPage(m_selection, this)),
      m_side(new widgets::SidePanel(m_document, m_selection, m_simulation, this)),
      m_notice(new widgets::Notice(this)) {
    widgets::applyTheme(m_state.theme());
    auto* split = new QSplitter(Qt::Horizontal, this);
    split->setChildrenCollapsible(false);
    split->addWidget(m_page);
    split->addWidget(m_side);
    split->setStretchFactor(0, 1);
    split->setStretchFactor(1, 0);
    auto* middle = new QWidget(this);
    auto* column = new QVBoxLayout(middle);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(m_notice);
    auto* stack = new QStackedWidget(middle);
    stack->addWidget(emptyPage(stack));
    stack->addWidget(split);
    column->addWidget(stack, 1);
    setCentralWidget(middle);
    setAcceptDrops(true);
    makeFileMenu();
    makeEditMenu();
    makeViewMenu();
    makeHelpMenu();
    resize(kFirstSize);
    if (const QByteArray geometry = m_state.geometry(); !geometry.isEmpty()) {
        restoreGeometry(geometry);
    }

    connect(&m_document, &widgets::Document::changed, this, [this, stack] {
        stack->setCurrentIndex(m_document.isEmpty() ? 0 : 1);
        showTitle();
    });
    connect(&m_document, &widgets::Document::pathChanged, this, &MainWindow::showTitle);
    connect(&m_document.undoStack(), &QUndoStack::cleanChanged, this, &MainWindow::showTitle);
    connect(&m_simulation, &widgets::Simulation::outcomeChanged, this, &MainWindow::showOutcome);
    connect(&m_simulation, &widgets::Simulation::staleChanged, m_page, &widgets::ViewsPage::setStale);
    connect(&m_simulation, &widgets::Simulation::failed, m_notice, &widgets::Notice::say);
    showTitle();
}

MainWindow::~MainWindow() {
    m_document.undoStack().disconnect(this);  // it speaks once more when it goes, after what listens
}

bool MainWindow::open(const std::filesystem::path& path) {
    m_page->setPlaying(false);
    const engine::Diagnostics said = m_document.open(path);
    if (engine::hasErrors(said)) {
        m_notice->say(notOpened(path, said, !m_document.isEmpty()));
        return false;
    }
    m_isFirstOutcome = true;
    m_state.addRecentFile(widgets::shown(path.string()));
    if (said.empty()) {
        m_notice->clear();
    } else {
        m_notice->say(warnings(said));
    }
    return true;
}

bool MainWindow::save() {
    if (!m_side->commit()) {
        return false;
    }
    return m_document.path().empty() ? saveAs() : writeTo(m_document.path());
}

bool MainWindow::saveAs() {
    if (!m_side->commit()) {
        return false;
    }
    const QString name = QFileDialog::getSaveFileName(
        this, tr("Save the pond as"), widgets::shown(m_document.path().string()), pondFilter());
    return !name.isEmpty() && writeTo(name.toStdString());
}

bool MainWindow::writeTo(const std::filesystem::path& path) {
    if (m_document.losesComments() && path == m_document.path()) {
        const auto answer = QMessageBox::question(this, tr("Save the pond"), commentsAreLost(),
                                                  QMessageBox::Save | QMessageBox::Cancel, QMessageBox::Save);
        if (answer != QMessageBox::Save) {
            return false;
        }
    }
    if (const auto fault = m_document.saveAs(path)) {
        m_notice->say(*fault + QLatin1Char(' ') +
                      tr("Your changes are still here; save under another name."));
        return false;
    }
    m_state.addRecentFile(widgets::shown(path.string()));
    m_notice->clear();
    return true;
}

bool MainWindow::mayDiscard() {
    m_side->commit();
    if (!m_document.isModified()) {
        return true;
    }
    const auto answer = QMessageBox::question(
        this, tr("Unsaved changes"), tr("\"%1\" has changes that are not saved.").arg(m_document.title()),
        QMessageBox::Save | QMessageBox::Discard | QMessageBox::Cancel, QMessageBox::Save);
    return answer == QMessageBox::Discard || (answer == QMessageBox::Save && save());
}

void MainWindow::chooseFile() {
    if (!mayDiscard()) {
        return;
    }
    const QString folder = widgets::shown(m_document.path().parent_path().string());
    const QString name = QFileDialog::getOpenFileName(this, tr("Open a pond"), folder, pondFilter());
    if (!name.isEmpty()) {
        open(name.toStdString());
    }
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
        action->setEnabled(m_simulation.outcome() != nullptr);
    }
}

void MainWindow::showOutcome() {
    const widgets::OutcomePtr& outcome = m_simulation.outcome();
    m_page->setOutcome(outcome);
    m_side->setOutcome(outcome);
    // Only now may the selection go to nights and ramps that the outcome before did not have.
    if (m_isFirstOutcome) {  // of this pond: its worst night, with the ramp that is meant
        m_isFirstOutcome = false;
        m_selection.setRamp(widgets::chosenRamp(outcome->comparison));
        m_selection.setNight(widgets::worstNight(outcome->comparison));
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
    const QString name = QFileDialog::getSaveFileName(
        this, tr("Export the chart"), chart.name + QStringLiteral(".png"),
        tr("Picture, 300 dots an inch (*.png);;Drawing (*.svg);;Numbers (*.csv)"));
    if (name.isEmpty()) {
        return;
    }
    if (const auto fault = widgets::saveSheet(chart, name.toStdString())) {
        m_notice->say(*fault);
    }
}

void MainWindow::copyChart() {
    QApplication::clipboard()->setMimeData(widgets::clippingOf(sheet()));
}

}  // namespace app
