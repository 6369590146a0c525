#include "app/help_browser.h"
#include "app/main_window.h"
#include "app/main_window_words.h"
#include "app/paper_actions.h"
#include "app/templates.h"
#include "engine/pond/pond_io.h"
#include "widgets/charts/views_page.h"
#include "widgets/controls/notice.h"
#include "widgets/controls/plain_text.h"
#include "widgets/document/to_qstring.h"
#include "widgets/follow_up/after_start_page.h"
#include "widgets/forms/key_help.h"
#include "widgets/forms/ramp_actions.h"
#include "widgets/forms/side_panel.h"

#include <QAction>
#include <QActionGroup>
#include <QDialog>
#include <QDir>
#include <QFileInfo>
#include <QMenuBar>
#include <QPlainTextEdit>
#include <QVBoxLayout>

namespace app {

void MainWindow::makeFileMenu() {
    QMenu* menu = menuBar()->addMenu(tr("&File"));
    makeNewMenu(*menu);
    menu->addAction(tr("&Open\u2026"), QKeySequence::Open, this, &MainWindow::chooseFile);
    m_recent = menu->addMenu(tr("Open &Recent"));
    m_recent->setObjectName(QStringLiteral("recent"));
    connect(m_recent, &QMenu::aboutToShow, this, &MainWindow::fillRecent);
    menu->addSeparator();
    m_needPond << menu->addAction(tr("&Save"), QKeySequence::Save, this, &MainWindow::save);
    m_needPond << menu->addAction(tr("Save &As\u2026"), QKeySequence::SaveAs, this, &MainWindow::saveAs);
    menu->addSeparator();
    QAction* again = menu->addAction(tr("Read A&gain from Disk"), this, &MainWindow::reload);
    QAction* compare =
        menu->addAction(tr("Compare w&ith Another Version\u2026"), this, &MainWindow::compareWith);
    m_needPond << again << compare;
    menu->addSeparator();
    m_needOutcome << menu->addAction(tr("Print the C&hart\u2026"),
                                     QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_P), this,
                                     &MainWindow::printChart);
    m_needOutcome << menu->addAction(tr("&Export Chart\u2026"), QKeySequence(Qt::CTRL | Qt::Key_E), this,
                                     &MainWindow::exportChart);
    menu->addSeparator();
    auto* papers =
        new PaperActions(m_document, m_recomputation, *m_notice, *menu, *this);  // owned by the window
    m_needPond << papers->actions();
    connect(m_side, &widgets::SidePanel::papersWanted, papers, &PaperActions::make);
    menu->addSeparator();
    menu->addAction(tr("&Quit"), QKeySequence::Quit, this, &QWidget::close);
}

void MainWindow::makeNewMenu(QMenu& menu) {
    menu.addAction(tr("&First Pond: Twelve Questions\u2026"), QKeySequence::New, this,
                   &MainWindow::askFirstPond);
    QMenu* templates = menu.addMenu(tr("New from a &Template"));
    templates->setObjectName(QStringLiteral("templates"));
    connect(templates, &QMenu::aboutToShow, this, [this, templates] { fillTemplates(*templates); });
    menu.addAction(tr("New &Window"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_N), this,
                   &MainWindow::newWindow);
    menu.addSeparator();
}

/// A template is copied, not opened: it counts as unsaved and is no recent file.
void MainWindow::fillTemplates(QMenu& menu) {
    menu.clear();
    for (const Template& one : templates()) {
        menu.addAction(QString(one.title).replace(QLatin1Char('&'), QLatin1String("&&")), this,
                       [this, path = one.path] {
                           const engine::PondReading reading = engine::readPond(path);
                           if (reading.pond && mayDiscard()) {
                               start(*reading.pond);
                           }
                       });
    }
    if (menu.isEmpty()) {
        menu.addAction(tr("There are none beside the program"))->setEnabled(false);
    }
}

/// The same list under the button of the empty window.
void MainWindow::offerTemplates() {
    QMenu menu(this);
    fillTemplates(menu);
    menu.exec(QCursor::pos());
}

/// The ponds opened last, which are there still, and then those of the folder of the last one: a client's
/// ponds stand in one folder.
std::vector<WaysUnder> MainWindow::knownPonds() {
    constexpr qsizetype kMost = 6;
    const QStringList recent = m_state.recentFiles();
    std::vector<WaysUnder> lists;
    const auto add = [&](const QString& heading, const QStringList& files) {
        WaysUnder list{heading, {}};
        for (const QString& file : files.first(std::min(files.size(), kMost))) {
            list.ways.emplace_back(QFileInfo(file).fileName(), [this, file] { open(file.toStdString()); });
        }
        if (!list.ways.empty()) {
            lists.push_back(std::move(list));
        }
    };
    add(tr("Opened last"), recent);
    if (!recent.isEmpty()) {
        QStringList beside = pondsBeside(recent.front());
        beside.removeIf([&](const QString& file) { return recent.contains(file); });
        add(tr("Also in the folder \"%1\"").arg(QFileInfo(recent.front()).dir().dirName()), beside);
    }
    return lists;
}

void MainWindow::makeRampMenu() {
    QMenu* menu = menuBar()->addMenu(tr("&Ramps"));
    m_side->ramps().fill(*menu);
}

void MainWindow::makeAfterMenu() {
    using widgets::AfterStartPage;
    QMenu* menu = menuBar()->addMenu(tr("&After the Start"));
    const auto page = [this, menu](const QString& text, Qt::Key key, AfterStartPage::Page which) {
        m_needPond << menu->addAction(text, QKeySequence(key), this, [this, which] {
            m_page->setView(m_page->viewNamed(AfterStartPage::name(which)));
            m_afterStart->currentWidget()->setFocus();
        });
    };
    page(tr("&Today: Go or Hold"), Qt::Key_F6, AfterStartPage::Today);
    page(tr("The &Log"), Qt::Key_F7, AfterStartPage::Log);
    page(tr("Fish in &Distress"), Qt::Key_F8, AfterStartPage::Incident);
    page(tr("&Sixty Days Later"), Qt::Key_F9, AfterStartPage::Review);
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
    m_needOutcome << menu->addAction(tr("For the &Owner"), QKeySequence(Qt::Key_F11), this,
                                     &MainWindow::showOwner);
    menu->addSeparator();
    makePlaces(*menu);
    menu->addSeparator();
    const auto night = [this, menu](const QString& text, const QKeySequence& keys, int step) {
        m_needOutcome << menu->addAction(text, keys, this,
                                         [this, step] { m_selection.setNight(m_selection.night() + step); });
    };
    night(tr("&Next Night"), QKeySequence(Qt::CTRL | Qt::Key_Right), 1);
    night(tr("&Previous Night"), QKeySequence(Qt::CTRL | Qt::Key_Left), -1);
    QAction* play = menu->addAction(tr("Pla&y the Nights"), QKeySequence(Qt::Key_F5), this,
                                    [this] { m_page->setPlaying(!m_page->isPlaying()); });
    play->setCheckable(true);
    connect(m_page, &widgets::ViewsPage::playingChanged, play, &QAction::setChecked);
    m_needOutcome << play;
    menu->addSeparator();
    m_criteria = menu->addAction(tr("&Criteria of EPA 1986"));
    m_criteria->setCheckable(true);
    connect(m_criteria, &QAction::toggled, m_page, &widgets::ViewsPage::setCriteria);
    menu->addSeparator();
    makeThemeMenu(*menu);
}

/// The views, place by place; Alt and a digit goes to a place, Ctrl and a digit to what is seen most.
void MainWindow::makePlaces(QMenu& menu) {
    auto* views = new QActionGroup(this);
    int digit = 0;
    for (const widgets::Place place : widgets::kPlaces) {
        QAction* go = menu.addAction(tr("Go to \u201c%1\u201d").arg(placeText(place)),
                                     QKeySequence(Qt::ALT | static_cast<Qt::Key>(Qt::Key_1 + digit++)), this,
                                     [this, place] { m_page->setPlace(place); });
        m_needPond << go;
    }
    menu.addSeparator();
    for (int i = 0; i < m_page->viewCount(); ++i) {
        QAction* action = menu.addAction(m_page->viewName(i), this, [this, i] { m_page->setView(i); });
        action->setCheckable(true);
        action->setChecked(i == m_page->view());
        views->addAction(action);
        connect(m_page, &widgets::ViewsPage::viewChanged, action,
                [action, i](int shown) { action->setChecked(shown == i); });
        m_needPond << action;
    }
    views->actions()[m_page->viewNamed(widgets::ViewsPage::tr("One night"))]->setShortcut(
        QKeySequence(Qt::CTRL | Qt::Key_1));
    views->actions()[m_page->viewNamed(widgets::ViewsPage::tr("All nights"))]->setShortcut(
        QKeySequence(Qt::CTRL | Qt::Key_2));
}

void MainWindow::makeThemeMenu(QMenu& menu) {
    QMenu* themes = menu.addMenu(tr("&Theme"));
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
    theme(tr("Like the Des&ktop"), widgets::Theme::System);
    theme(tr("&Light"), widgets::Theme::Light);
    theme(tr("&Dark"), widgets::Theme::Dark);
}

void MainWindow::makeHelpMenu() {
    QMenu* menu = menuBar()->addMenu(tr("&Help"));
    menu->addAction(tr("&Keys and Shortcuts"), QKeySequence(Qt::Key_F1), this, &MainWindow::showShortcuts);
    menu->addAction(tr("&Guide\u2026"), this, [this] { showPage(tr("Guide"), QStringLiteral("guide.md")); });
    menu->addAction(tr("&Tutorial\u2026"), this,
                    [this] { showPage(tr("Tutorial"), QStringLiteral("tutorial.md")); });
    menu->addAction(tr("The &Pond File\u2026"), this, [this] {
        auto* help = new widgets::KeyHelp(this);
        help->setAttribute(Qt::WA_DeleteOnClose);
        help->show();
    });
    menu->addSeparator();
    menu->addAction(tr("&Cautions"), this,
                    [this] { widgets::tellPlainly(this, tr("Cautions"), cautions()); });
    menu->addAction(tr("&About Dawnline"), this,
                    [this] { widgets::tellPlainly(this, tr("About Dawnline"), about()); });
}

/// A page of the help, as it is installed beside the program.
void MainWindow::showPage(const QString& title, const QString& name) {
    auto* dialog = new QDialog(this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setWindowTitle(title);
    auto* column = new QVBoxLayout(dialog);
    auto* text = new HelpBrowser(name, dialog);
    text->setAccessibleName(title);
    column->addWidget(text);
    dialog->resize(760, 640);
    dialog->show();
}

void MainWindow::showShortcuts() {
    auto* dialog = new QDialog(this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setWindowTitle(tr("Keys and shortcuts"));
    auto* column = new QVBoxLayout(dialog);
    QStringList lines;
    for (const QAction* action : findChildren<QAction*>()) {
        if (!action->shortcut().isEmpty() && !action->text().isEmpty()) {
            lines << action->shortcut().toString(QKeySequence::NativeText) + QLatin1Char('\t') +
                         QString(action->text()).remove(QLatin1Char('&'));
        }
    }
    lines.sort();
    lines << QString() << chartKeys();
    auto* text = new QPlainTextEdit(lines.join(QLatin1Char('\n')), dialog);
    text->setReadOnly(true);
    text->setTabStopDistance(text->fontMetrics().averageCharWidth() * 22);
    text->setAccessibleName(tr("Keys and shortcuts"));
    column->addWidget(text);
    dialog->resize(520, 560);
    dialog->show();
}

void MainWindow::fillRecent() {
    m_recent->clear();
    const auto add = [this](const QString& text, const QString& file) {
        m_recent->addAction(QString(text).replace(QLatin1Char('&'), QLatin1String("&&")), this, [this, file] {
            if (mayDiscard()) {
                open(file.toStdString());
            }
        });
    };
    const QStringList files = m_state.recentFiles();
    for (const QString& file : files) {
        add(file, file);
    }
    if (files.isEmpty()) {
        m_recent->addAction(tr("No pond was opened yet"))->setEnabled(false);
        return;
    }
    if (const QStringList beside = pondsBeside(widgets::toQString(m_document.path().string()));
        !beside.isEmpty()) {
        m_recent->addSection(tr("In This Folder"));
        for (const QString& file : beside) {
            add(QFileInfo(file).fileName(), file);
        }
    }
    m_recent->addSeparator();
    m_recent->addAction(tr("&Forget These"), this, [this] { m_state.clearRecentFiles(); });
}

}  // namespace app
