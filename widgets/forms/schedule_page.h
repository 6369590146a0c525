#pragma once

#include "widgets/document/outcome.h"

#include <QWidget>

namespace widgets {

class Document;
class ScheduleGrid;
class Selection;
class SheetEditor;

/// The selected ramp as a schedule: drawn hour by day, and as a table of minutes with the doses they came to.
class SchedulePage final : public QWidget {
    Q_OBJECT
public:
    SchedulePage(Document& document, Selection& selection, QWidget* parent = nullptr);

    void setOutcome(const OutcomePtr& outcome);
    [[nodiscard]] ScheduleGrid& grid() const { return *m_grid; }
    [[nodiscard]] SheetEditor& table() const { return *m_table; }

private:
    Selection& m_selection;
    OutcomePtr m_outcome;
    ScheduleGrid* m_grid;
    SheetEditor* m_table;
};

}  // namespace widgets
