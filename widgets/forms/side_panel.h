#pragma once

#include "widgets/document/outcome.h"

#include <QWidget>

class QPushButton;
class QScrollArea;
class QTableView;
class QToolButton;

namespace widgets {

class Document;
class NumberBox;
class RampActions;
class RampFacts;
class RampForm;
class RampModel;
class Selection;
class Recomputation;

/// Beside the picture: the ramps with what they come to, the selected one in a few lines with what comes
/// next, the numbers of it that can be changed, and the way to the papers.
class SidePanel final : public QWidget {
    Q_OBJECT
public:
    SidePanel(Document& document, Selection& selection, Recomputation& recomputation,
              QWidget* parent = nullptr);

    void setOutcome(const OutcomePtr& outcome);
    /// Takes what is typed and not taken yet. @return false if a text cannot be taken; it has the focus then.
    bool commit();
    /// Shows the columns of the table that only some ask for.
    void setMore(bool isShown);
    /// Shows the numbers of the ramp that can be changed instead of what it does.
    void setChanging(bool isChanging);

    [[nodiscard]] RampActions& ramps() const { return *m_actions; }
    [[nodiscard]] QTableView& table() const { return *m_table; }
    [[nodiscard]] RampForm& form() const { return *m_ramp; }

signals:
    void papersWanted();

protected:
    void changeEvent(QEvent* event) override;

private:
    void applyStyle();
    void makeTable();
    void makeForm(Recomputation& recomputation);
    QWidget* nightsRow(Recomputation& recomputation, QWidget* parent);
    QWidget* buttonsRow();
    void fitTable();
    void selectRow();

    Selection& m_selection;
    OutcomePtr m_outcome;
    RampModel* m_model;
    RampActions* m_actions;
    QTableView* m_table;
    QToolButton *m_more = nullptr, *m_change = nullptr;
    RampFacts* m_facts;
    QScrollArea* m_area;
    RampForm* m_ramp;
    NumberBox* m_nights = nullptr;
    QPushButton* m_papers;
};

}  // namespace widgets
