#pragma once

#include "widgets/controls/sheet_model.h"

#include <QWidget>

class QLabel;
class QTableView;

namespace widgets {

/// A table of the document to type in, with paste from a spreadsheet, import of a CSV file, and copy.
class SheetEditor final : public QWidget {
    Q_OBJECT
public:
    SheetEditor(Document& document, SheetSpec spec, QWidget* parent = nullptr);

    [[nodiscard]] SheetModel& model() const { return *m_model; }
    [[nodiscard]] QTableView& table() const { return *m_table; }
    [[nodiscard]] QString said() const;

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void paste();
    void copy();
    void removeSelected();
    void import();

    SheetModel* m_model;
    QTableView* m_table;
    QLabel* m_said;
};

}  // namespace widgets
