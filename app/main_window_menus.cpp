#include "app/main_window.h"
#include "app/main_window_words.h"
#include "app/paper_actions.h"
#include "widgets/night_page.h"
#include "widgets/notice.h"

#include <QAction>
#include <QActionGroup>
#include <QMenuBar>
#include <QMessageBox>

namespace app {

void MainWindow::makeFileMenu() {
    QMenu* menu = menuBar()->addMenu(tr("&File"));
    menu->addAction(tr("&Open\u2026"), QKeySequence::Open, this, &MainWindow::chooseFile);
    m_recent = menu->addMenu(tr("Open &Recent"));
    m_recent->setObjectName(QStringLiteral("recent"));
    connect(m_recent, &QMenu::aboutToShow, this, &MainWindow::fillRecent);
    menu->addSeparator();
    m_needPond << menu->addAction(tr("&Save"), QKeySequence::Save, this, &MainWindow::save);
    m_needPond << menu->addAction(tr("Save &As\u2026"), QKeySequence::SaveAs, this, &MainWindow::saveAs);
    menu->addSeparator();
    m_needOutcome << menu->addAction(tr("&Export Chart\u2026"), QKeySequence(Qt::CTRL | Qt::Key_E), this,
                                     &MainWindow::exportChart);
    menu->addSeparator();
    m_needPond << (new PaperActions(m_document, *m_notice, *menu, *this))->actions();  // owned by the window
    menu->addSeparator();
    menu->addAction(tr("&Quit"), QKeySequence::Quit, this, &QWidget::close);
}

void MainWindow::makeEditMenu() {
    QMenu* menu = menuBar()->addMenu(tr("&Edit"));
    QUndoStack& stack = m_document.undoStack();
    QAction* undo = stack.createUndoAction(this, tr("&Undo"));
    undo->setShortcut(QKeySequence::Undo);
    QAction* redo = stack.createRedoAction(this, tr("&Redo"));
    redo->setShortcuts({QKeySequence(Qt::CTRL | Qt::Key_Y), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Z)});
    menu->addAction(undo);
    menu->addAction(redo);
    menu->addSeparator();
    m_needOutcome << menu->addAction(tr("&Copy Chart"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_C), this,
                                     &MainWindow::copyChart);
}

void MainWindow::makeViewMenu() {
    QMenu* menu = menuBar()->addMenu(tr("&View"));
    const auto night = [this, menu](const QString& text, const QKeySequence& keys, int step) {
        m_needOutcome << menu->addAction(text, keys, this,
                                         [this, step] { m_selection.setNight(m_selection.night() + step); });
    };
    night(tr("&Next Night"), QKeySequence(Qt::CTRL | Qt::Key_Right), 1);
    night(tr("&Previous Night"), QKeySequence(Qt::CTRL | Qt::Key_Left), -1);
    QAction* play = menu->addAction(tr("&Play the Nights"), QKeySequence(Qt::Key_F5), this,
                                    [this] { m_page->setPlaying(!m_page->isPlaying()); });
    play->setCheckable(true);
    connect(m_page, &widgets::NightPage::playingChanged, play, &QAction::setChecked);
    m_needOutcome << play;
    menu->addSeparator();
    auto* modes = new QActionGroup(this);
    const auto mode = [&](const QString& text, const QKeySequence& keys, widgets::Selection::Mode which) {
        QAction* action = menu->addAction(text, keys, this, [this, which] { m_selection.setMode(which); });
        action->setCheckable(true);
        modes->addAction(action);
        connect(&m_selection, &widgets::Selection::changed, action,
                [this, action, which] { action->setChecked(m_selection.mode() == which); });
        action->setChecked(m_selection.mode() == which);
        m_needOutcome << action;
    };
    mode(tr("All &Ramps, One Night"), QKeySequence(Qt::CTRL | Qt::Key_1), widgets::Selection::Mode::AllRamps);
    mode(tr("&All Nights, One Ramp"), QKeySequence(Qt::CTRL | Qt::Key_2),
         widgets::Selection::Mode::AllNights);
    menu->addSeparator();
    m_criteria = menu->addAction(tr("&Criteria of EPA 1986"));
    m_criteria->setCheckable(true);
    m_criteria->setChecked(true);
    connect(m_criteria, &QAction::toggled, m_page, &widgets::NightPage::setCriteria);
    menu->addSeparator();
    QMenu* themes = menu->addMenu(tr("&Theme"));
    auto* group = new QActionGroup(this);
    const auto theme = [&](const QString& text, widgets::Theme which) {
        QAction* action = themes->addAction(text, this, [this, which] {
            m_state.setTheme(which);
            widgets::applyTheme(which);
        });
        action->setCheckable(true);
        action->setChecked(m_state.theme() == which);
        group->addAction(action);
    };
    theme(tr("Like the &Desktop"), widgets::Theme::System);
    theme(tr("&Light"), widgets::Theme::Light);
    theme(tr("&Dark"), widgets::Theme::Dark);
}

void MainWindow::makeHelpMenu() {
    QMenu* menu = menuBar()->addMenu(tr("&Help"));
    menu->addAction(tr("&Cautions"), this,
                    [this] { QMessageBox::information(this, tr("Cautions"), cautions()); });
    menu->addAction(tr("&About Dawnline"), this,
                    [this] { QMessageBox::about(this, tr("About Dawnline"), about()); });
}

void MainWindow::fillRecent() {
    m_recent->clear();
    const QStringList files = m_state.recentFiles();
    for (const QString& file : files) {
        QString text = QString(file).replace(QLatin1Char('&'), QLatin1String("&&"));
        m_recent->addAction(text, this, [this, file] {
            if (mayDiscard()) {
                open(file.toStdString());
            }
        });
    }
    if (files.isEmpty()) {
        m_recent->addAction(tr("No pond was opened yet"))->setEnabled(false);
        return;
    }
    m_recent->addSeparator();
    m_recent->addAction(tr("&Forget These"), this, [this] { m_state.clearRecentFiles(); });
}

}  // namespace app
