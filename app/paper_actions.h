#pragma once

#include "app/papers.h"
#include "widgets/document/job.h"

#include <QObject>

#include <functional>
#include <string>

class QAction;
class QMenu;
class QPagedPaintDevice;
class QPrinter;
class QWidget;

namespace widgets {
class Document;
class Notice;
class Recomputation;
}  // namespace widgets

namespace app {

class PapersDialog;

/// The business details, and print preview, printing and saving of them, from the window. Their run is
/// frozen and computed off the UI thread when it is asked for; asking again gives the earlier up.
class PaperActions final : public QObject {
    Q_OBJECT
public:
    /// Adds its actions to a menu. All of the others must outlive it.
    /// @param recomputation  What of its outcome still holds is not computed again.
    PaperActions(widgets::Document& document, const widgets::Recomputation& recomputation,
                 widgets::Notice& notice, QMenu& menu, QWidget& window);

    /// The actions that need a pond.
    [[nodiscard]] const QList<QAction*>& actions() const { return m_actions; }

    /// Whose ramp the papers are about; empty: the one that the log says was started, else the chosen one.
    [[nodiscard]] const std::string& ramp() const { return m_ramp; }

    /// Asks for ramp and folder, makes the papers there, and says how far it is.
    void make();

    /// Paints every paper of a run on a printer set up for them.
    static void print(const std::shared_ptr<const engine::FrozenRun>& run,
                      const engine::Consultant& consultant, QPrinter& printer);

private:
    using Deliver = std::function<void(const std::shared_ptr<const engine::FrozenRun>& run,
                                       const engine::Consultant& consultant)>;
    using Say = std::function<void(const QString& sentence)>;
    /// Reads the profile, computes the run and hands it on, or says why not.
    void withRun(Deliver deliver, Say say);
    void withRun(Deliver deliver);  ///< Says so in the window
    void preview();
    void printOut();
    void makeIn(PapersDialog& dialog);
    void askWhose();
    /// Fills the menu of ramps that the papers can be about.
    void fillRamps();

    widgets::Document& m_document;
    const widgets::Recomputation& m_recomputation;
    widgets::Notice& m_notice;
    QWidget& m_window;
    QMenu* m_ramps;
    QList<QAction*> m_actions;
    std::string m_ramp;  ///< Of this pond as it was opened
    widgets::Job m_job;
};

}  // namespace app
