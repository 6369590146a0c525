#pragma once

#include "app/window_state.h"
#include "widgets/document.h"
#include "widgets/selection.h"
#include "widgets/simulation.h"

#include <QMainWindow>

#include <filesystem>

class QMenu;

namespace widgets {
class ViewsPage;
class Notice;
class SidePanel;
struct ChartSheet;
}  // namespace widgets

namespace app {

/// The window: a document, what it comes to, and the views and forms over both.
class MainWindow final : public QMainWindow {
    Q_OBJECT
public:
    explicit MainWindow(QWidget* parent = nullptr);
    ~MainWindow() override;

    /// Opens a pond file, or keeps the document as it is and says why not.
    bool open(const std::filesystem::path& path);
    /// Saves under the document's name, or asks for one. @return false if it was not saved.
    bool save();
    bool saveAs();

    [[nodiscard]] widgets::Document& document() { return m_document; }
    [[nodiscard]] widgets::Simulation& simulation() { return m_simulation; }
    [[nodiscard]] widgets::Selection& selection() { return m_selection; }
    [[nodiscard]] widgets::ViewsPage& page() { return *m_page; }
    [[nodiscard]] widgets::SidePanel& side() { return *m_side; }
    [[nodiscard]] widgets::Notice& notice() { return *m_notice; }

protected:
    void closeEvent(QCloseEvent* event) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;

private:
    void makeFileMenu();
    void makeEditMenu();
    void makeViewMenu();
    void makeHelpMenu();
    void fillRecent();
    void chooseFile();
    /// True if nothing is lost by going on: saved, unmodified, or given up by the user.
    bool mayDiscard();
    bool writeTo(const std::filesystem::path& path);
    void showTitle();
    void showOutcome();
    /// The chart that has the focus, else the night.
    [[nodiscard]] widgets::ChartSheet sheet() const;
    void exportChart();
    void copyChart();

    WindowState m_state;
    widgets::Document m_document;
    widgets::Selection m_selection;
    widgets::Simulation m_simulation;
    widgets::ViewsPage* m_page;
    widgets::SidePanel* m_side;
    widgets::Notice* m_notice;
    QMenu* m_recent = nullptr;
    QAction* m_criteria = nullptr;
    QList<QAction*> m_needPond, m_needOutcome;
    bool m_isFirstOutcome = true;
};

}  // namespace app
