#include "app/answer_changes.h"
#include "app/main_window.h"
#include "app/main_window_words.h"
#include "app/recovery.h"
#include "engine/pond/pond_io.h"
#include "widgets/charts/views_page.h"
#include "widgets/controls/notice.h"
#include "widgets/controls/plain_text.h"
#include "widgets/document/to_qstring.h"
#include "widgets/forms/compare_dialog.h"
#include "widgets/forms/first_pond_dialog.h"
#include "widgets/forms/pond_page.h"
#include "widgets/forms/side_panel.h"

#include <QFileDialog>
#include <QFileInfo>

// What the window does with documents: opening, saving, what was left behind, and other versions.

namespace app {

bool MainWindow::open(const std::filesystem::path& path) {
    m_page->setPlaying(false);
    const engine::Diagnostics said = m_document.open(path);
    if (engine::hasErrors(said)) {
        m_notice->say(notOpened(path, said, !m_document.isEmpty()));
        return false;
    }
    m_isFirstOutcome = true;
    m_state.addRecentFile(widgets::toQString(path.string()));
    if (said.empty()) {
        m_notice->clear();
    } else {
        m_notice->say(warnings(said));
    }
    return true;
}

bool MainWindow::save() {
    if (!commit()) {
        return false;
    }
    return m_document.path().empty() ? saveAs() : writeTo(m_document.path());
}

bool MainWindow::saveAs() {
    if (!commit()) {
        return false;
    }
    const QString name = QFileDialog::getSaveFileName(
        this, tr("Save the pond as"), widgets::toQString(m_document.path().string()), pondFilter());
    return !name.isEmpty() && mayReplace(name, pondName(name)) && writeTo(pondName(name).toStdString());
}

/// The dialog has asked about the name that was typed, not about the one with its ending.
bool MainWindow::mayReplace(const QString& typed, const QString& name) {
    if (name == typed || !QFileInfo::exists(name)) {
        return true;
    }
    return widgets::askPlainly(this, tr("Save the pond"),
                               tr("\"%1\" is there already. Save over it?").arg(QFileInfo(name).fileName()),
                               QMessageBox::Save | QMessageBox::Cancel,
                               QMessageBox::Cancel) == QMessageBox::Save;
}

bool MainWindow::writeTo(const std::filesystem::path& path) {
    if (m_document.losesComments() && path == m_document.path()) {
        const auto answer = widgets::askPlainly(this, tr("Save the pond"), commentsAreLost(),
                                                QMessageBox::Save | QMessageBox::Cancel, QMessageBox::Save);
        if (answer != QMessageBox::Save) {
            return false;
        }
    }
    const auto over = path == m_document.path() ? m_document.changedOnDisk() : std::nullopt;
    if (over) {
        const auto answer = widgets::askPlainly(this, tr("Save the pond"),
                                                changedOnDisk() + QLatin1Char(' ') + tr("Save over it?"),
                                                QMessageBox::Save | QMessageBox::Cancel, QMessageBox::Cancel);
        if (answer != QMessageBox::Save) {
            return false;
        }
    }
    if (const auto fault = m_document.saveAs(path, over)) {
        m_notice->say(*fault + QLatin1Char(' ') +
                      tr("Your changes are still here; save under another name."));
        return false;
    }
    m_state.addRecentFile(widgets::toQString(path.string()));
    watchFile();
    m_notice->clear();
    return true;
}

bool MainWindow::mayDiscard() {
    commit();
    if (!m_document.isModified()) {
        return true;
    }
    const auto answer = widgets::askPlainly(
        this, tr("Unsaved changes"), tr("\"%1\" has changes that are not saved.").arg(m_document.title()),
        QMessageBox::Save | QMessageBox::Discard | QMessageBox::Cancel, QMessageBox::Save);
    return answer == QMessageBox::Discard || (answer == QMessageBox::Save && save());
}

void MainWindow::chooseFile() {
    if (!mayDiscard()) {
        return;
    }
    const QString folder = widgets::toQString(m_document.path().parent_path().string());
    const QString name = QFileDialog::getOpenFileName(this, tr("Open a pond"), folder, pondFilter());
    if (!name.isEmpty()) {
        open(name.toStdString());
    }
}

bool MainWindow::commit() {
    return m_side->commit() && m_pondPage->commit();
}

void MainWindow::start(engine::Pond pond, const std::filesystem::path& path, engine::TypedNumbers typed) {
    m_page->setPlaying(false);
    m_isFirstOutcome = true;
    m_notice->clear();
    m_document.start(std::move(pond), path, std::move(typed));
}

void MainWindow::askFirstPond() {
    if (!mayDiscard()) {
        return;
    }
    widgets::FirstPondDialog dialog(this);
    if (dialog.exec() == QDialog::Accepted) {
        start(dialog.pond());
    }
}

void MainWindow::newWindow() {
    auto* window = new MainWindow;
    window->setAttribute(Qt::WA_DeleteOnClose);
    window->resize(size());
    window->show();
}

void MainWindow::compareWith() {
    const QString name = QFileDialog::getOpenFileName(
        this, tr("Compare with another version"),
        widgets::toQString(m_document.path().parent_path().string()), pondFilter(true));
    if (name.isEmpty() || !commit()) {
        return;
    }
    const std::filesystem::path path = name.toStdString();
    if (path.extension() == ".zip") {
        m_changes->since(path);
        return;
    }
    const engine::PondReading reading = engine::readPond(path);
    if (!reading.pond) {
        m_notice->say(notOpened(path, reading.diagnostics, true));
        return;
    }
    auto* dialog = new widgets::CompareDialog(m_document.pond(), *reading.pond,
                                              widgets::toQString(path.filename().string()),
                                              m_recomputation.outcome(), this);
    dialog->show();
}

void MainWindow::reload() {
    if (!m_document.path().empty() && mayDiscard()) {
        open(std::filesystem::path(m_document.path()));
    }
}

void MainWindow::watchFile() {
    if (!m_watcher.files().isEmpty()) {
        m_watcher.removePaths(m_watcher.files());
    }
    if (!m_document.path().empty()) {
        m_watcher.addPath(widgets::toQString(m_document.path().string()));
    }
}

/// Another program may write a file in steps or put a new one in its place: what counts is what it holds
/// then.
void MainWindow::fileChanged() {
    watchFile();
    if (m_document.changedOnDisk()) {
        m_notice->ask(changedOnDisk(), tr("Read It Again"), [this] { reload(); });
    }
}

void MainWindow::offerLeftBehind() {
    const std::vector<LeftBehind> left = Recovery::leftBehind();
    if (left.empty()) {
        return;
    }
    const LeftBehind latest = left.front();
    m_notice->ask(leftBehindText(latest, left.size()), tr("Bring It Back"), [this, latest] {
        if (mayDiscard()) {
            start(latest.pond, latest.original, latest.typed);
            m_recovery->adopt(latest);
        }
    });
}

}  // namespace app
