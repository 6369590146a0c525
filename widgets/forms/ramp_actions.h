#pragma once

#include "widgets/document/document.h"
#include "widgets/document/outcome.h"

#include <QObject>

#include <memory>
#include <vector>

class QAction;
class QMenu;

namespace widgets {

class Selection;

/// What can be done with the list of ramps, as actions for a menu and for buttons: add, copy, move, colour,
/// turn into a table, choose, delete. All of them are named steps of undo.
class RampActions final : public QObject {
    Q_OBJECT
public:
    RampActions(Document& document, Selection& selection, QObject* parent = nullptr);
    ~RampActions() override;

    void setOutcome(const OutcomePtr& outcome);
    /// Puts the actions into a menu, or those that matter most as buttons.
    void fill(QMenu& menu) const;
    [[nodiscard]] const std::vector<QAction*>& buttons() const { return m_buttons; }
    /// Adds a ramp that somebody else has made, under a name that is free, and shows it.
    void add(engine::Ramp ramp);

signals:
    /// The user wants a ramp to be looked for.
    void findAsked();
    void refused(const QString& sentence);

private:
    void makeAdding();
    void makeChanging();
    void makeColours();
    void turnIntoTable();
    void move(int by);  ///< In the list; -1 is up
    void remove();
    bool edit(const QString& name, const std::function<void(engine::Pond&)>& change);
    [[nodiscard]] int index() const;  ///< Of the selected ramp in the pond; -1 for do-nothing
    void enable();

    Document& m_document;
    Selection& m_selection;
    OutcomePtr m_outcome;
    std::unique_ptr<QMenu> m_adding, m_colours;
    std::vector<QAction*> m_needRamp, m_buttons, m_changing;
    QAction *m_find = nullptr, *m_up = nullptr, *m_down = nullptr;
    std::string m_wanted;  ///< To be selected once it has been computed
};

/// The ramp as a table of the minutes that it ran, day by day, up to where it stays the same.
[[nodiscard]] engine::Ramp asTable(const engine::Ramp& ramp, const engine::RampRun* run);

}  // namespace widgets
