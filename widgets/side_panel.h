#pragma once

#include "widgets/outcome.h"

#include <QWidget>

class QTableView;

namespace widgets {

class Document;
class RampModel;
class Selection;
class Simulation;

/// Beside the picture: the ramps with what they come to, and under them the numbers that can be changed.
class SidePanel final : public QWidget {
    Q_OBJECT
public:
    SidePanel(Document& document, Selection& selection, Simulation& simulation, QWidget* parent = nullptr);

    void setOutcome(const OutcomePtr& outcome);
    [[nodiscard]] QTableView& table() const { return *m_table; }

protected:
    void changeEvent(QEvent* event) override;

private:
    void makeTable();
    void fitTable();
    void selectRow();

    Selection& m_selection;
    RampModel* m_model;
    QTableView* m_table;
};

}  // namespace widgets
