#pragma once

#include "widgets/document/outcome.h"

#include <QWidget>

class QTabWidget;
class QTableView;

namespace widgets {

class AeratorForm;
class Document;
class LimitsForm;
class NumberBox;
class RampActions;
class RampForm;
class RampModel;
class Selection;
class Recomputation;

/// Beside the picture: the ramps with what they come to, and under them the numbers that can be changed.
class SidePanel final : public QWidget {
    Q_OBJECT
public:
    SidePanel(Document& document, Selection& selection, Recomputation& recomputation,
              QWidget* parent = nullptr);

    void setOutcome(const OutcomePtr& outcome);
    /// Takes what is typed and not taken yet. @return false if a text cannot be taken; it has the focus then.
    bool commit();

    [[nodiscard]] RampActions& ramps() const { return *m_actions; }
    [[nodiscard]] QTableView& table() const { return *m_table; }
    [[nodiscard]] QTabWidget& tabs() const { return *m_tabs; }

protected:
    void changeEvent(QEvent* event) override;

private:
    void applyStyle();
    void makeTable();
    void makeForms(Document& document);
    QWidget* nightsRow(Recomputation& recomputation);
    QWidget* buttonsRow();
    void fitTable();
    void selectRow();

    Selection& m_selection;
    RampModel* m_model;
    RampActions* m_actions;
    QTableView* m_table;
    QTabWidget* m_tabs;
    RampForm* m_ramp = nullptr;
    LimitsForm* m_limits = nullptr;
    AeratorForm* m_aerator = nullptr;
    NumberBox* m_nights = nullptr;
};

}  // namespace widgets
