#pragma once

#include "app/main_window_words.h"
#include "app/window_state.h"
#include "widgets/document/document.h"
#include "widgets/document/recomputation.h"
#include "widgets/document/selection.h"

#include <QFileSystemWatcher>
#include <QMainWindow>

#include <filesystem>

class QMenu;

namespace widgets {
class AfterStartPage;
class Notice;
class OwnerView;
class PlanPage;
class PondPage;
class ProgressLine;
class SchedulePage;
class SidePanel;
class ViewsPage;
struct ChartSheet;
}  // namespace widgets

namespace app {

class AnswerChanges;
class Recovery;

/// The window: a document, what it comes to, and the views and forms over both.
class MainWindow final : public QMainWindow {
    Q_OBJECT
public:
    explicit MainWindow(QWidget* parent = nullptr);
    ~MainWindow() override;

    /// Opens a pond file, or keeps the document as it is and says why not.
    bool open(const std::filesystem::path& path);
    /// Shows a pond that is in no file yet; it counts as modified.
    void start(engine::Pond pond, const std::filesystem::path& path = {}, engine::TypedNumbers typed = {});
    /// Saves under the document's name, or asks for one. @return false if it was not saved.
    bool save();
    bool saveAs();
    /// Offers what a program that was ended has left unsaved.
    void offerLeftBehind();
    /// The owner's view on the whole screen; null if there is nothing to show yet.
    widgets::OwnerView* showOwner();

    [[nodiscard]] widgets::Document& document() { return m_document; }
    [[nodiscard]] widgets::Recomputation& recomputation() { return m_recomputation; }
    [[nodiscard]] widgets::Selection& selection() { return m_selection; }
    [[nodiscard]] widgets::ViewsPage& page() { return *m_page; }
    [[nodiscard]] widgets::PondPage& pondPage() { return *m_pondPage; }
    [[nodiscard]] widgets::PlanPage& plan() { return *m_plan; }
    [[nodiscard]] widgets::SchedulePage& schedule() { return *m_schedule; }
    [[nodiscard]] widgets::AfterStartPage& afterStart() { return *m_afterStart; }
    [[nodiscard]] widgets::SidePanel& side() { return *m_side; }
    [[nodiscard]] widgets::Notice& notice() { return *m_notice; }

protected:
    void closeEvent(QCloseEvent* event) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;

private:
    void layOut();
    void addPages();
    void listen();
    void makeFileMenu();
    void makeNewMenu(QMenu& menu);
    void makeEditMenu();
    void makeRampMenu();
    void makeAfterMenu();
    void makeViewMenu();
    void makePlaces(QMenu& menu);
    void makeThemeMenu(QMenu& menu);
    void makeHelpMenu();
    void fillRecent();
    void fillTemplates(QMenu& menu);
    void offerTemplates();
    [[nodiscard]] std::vector<WaysUnder> knownPonds();
    void chooseFile();
    void askFirstPond();
    void newWindow();
    void compareWith();
    void reload();
    /// Takes what is typed in all forms. @return false if a text cannot be taken.
    bool commit();
    /// True if nothing is lost by going on: saved, unmodified, or given up by the user.
    bool mayDiscard();
    bool mayReplace(const QString& typed, const QString& name);
    bool writeTo(const std::filesystem::path& path);
    void watchFile();
    void fileChanged();
    void showTitle();
    void showOutcome();
    /// The chart that has the focus, else the shown view's.
    [[nodiscard]] widgets::ChartSheet sheet() const;
    void exportChart();
    void copyChart();
    void printChart();
    void showPage(const QString& title, const QString& name);
    void showShortcuts();

    WindowState m_state;
    widgets::Document m_document;
    widgets::Selection m_selection;
    widgets::Recomputation m_recomputation;
    widgets::ViewsPage* m_page;
    widgets::PondPage* m_pondPage;
    widgets::SchedulePage* m_schedule;
    widgets::AfterStartPage* m_afterStart;
    widgets::SidePanel* m_side;
    widgets::Notice* m_notice;
    widgets::ProgressLine* m_progress;
    Recovery* m_recovery;
    AnswerChanges* m_changes;
    widgets::PlanPage* m_plan;
    QFileSystemWatcher m_watcher;
    QMenu* m_recent = nullptr;
    QAction* m_criteria = nullptr;
    QList<QAction*> m_needPond, m_needOutcome;
    bool m_isFirstOutcome = true;
};

}  // namespace app
