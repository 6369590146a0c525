#pragma once

#include <QAccessible>
#include <QObject>
#include <QPointer>
#include <QStringList>

#include <vector>

namespace widgets {

class ChartView;

/// The numbers of a chart as a table for assistive technology: the rows of its CSV under the names in the
/// header. They are made when somebody asks, and again when the chart says something new.
class ChartTable final : public QAccessibleInterface, public QAccessibleTableInterface {
public:
    explicit ChartTable(ChartView& chart);

    [[nodiscard]] bool isValid() const override { return !m_chart.isNull(); }
    [[nodiscard]] QObject* object() const override { return nullptr; }
    [[nodiscard]] QAccessibleInterface* childAt(int /*x*/, int /*y*/) const override { return nullptr; }
    [[nodiscard]] QAccessibleInterface* parent() const override;
    /// Cells row by row, the header first.
    [[nodiscard]] QAccessibleInterface* child(int index) const override;
    [[nodiscard]] int childCount() const override;
    [[nodiscard]] int indexOfChild(const QAccessibleInterface* cell) const override;
    [[nodiscard]] QString text(QAccessible::Text kind) const override;
    void setText(QAccessible::Text /*kind*/, const QString& /*text*/) override {}
    [[nodiscard]] QRect rect() const override;
    [[nodiscard]] QAccessible::Role role() const override { return QAccessible::Table; }
    [[nodiscard]] QAccessible::State state() const override;
    void* interface_cast(QAccessible::InterfaceType type) override;

    [[nodiscard]] QAccessibleInterface* caption() const override { return nullptr; }
    [[nodiscard]] QAccessibleInterface* summary() const override { return nullptr; }
    [[nodiscard]] QAccessibleInterface* cellAt(int row, int column) const override;
    [[nodiscard]] int selectedCellCount() const override { return 0; }
    [[nodiscard]] QList<QAccessibleInterface*> selectedCells() const override { return {}; }
    [[nodiscard]] QString columnDescription(int column) const override;
    [[nodiscard]] QString rowDescription(int row) const override;
    [[nodiscard]] int selectedColumnCount() const override { return 0; }
    [[nodiscard]] int selectedRowCount() const override { return 0; }
    [[nodiscard]] int columnCount() const override;
    /// Without the header.
    [[nodiscard]] int rowCount() const override;
    [[nodiscard]] QList<int> selectedColumns() const override { return {}; }
    [[nodiscard]] QList<int> selectedRows() const override { return {}; }
    [[nodiscard]] bool isColumnSelected(int /*column*/) const override { return false; }
    [[nodiscard]] bool isRowSelected(int /*row*/) const override { return false; }
    bool selectRow(int /*row*/) override { return false; }
    bool selectColumn(int /*column*/) override { return false; }
    bool unselectRow(int /*row*/) override { return false; }
    bool unselectColumn(int /*column*/) override { return false; }
    void modelChange(QAccessibleTableModelChangeEvent* /*event*/) override {}

    /// What stands in a cell; row -1 is the header. Empty outside.
    [[nodiscard]] QString cellText(int row, int column) const;
    /// The cell of a name over a column, for the cells under it.
    [[nodiscard]] QAccessibleInterface* headerCell(int column) const;

protected:
    ~ChartTable() override;

private:
    [[nodiscard]] const std::vector<QStringList>& lines() const;
    [[nodiscard]] QAccessibleInterface* cell(int line, int column) const;
    void deleteCells();
    void forget();

    QPointer<ChartView> m_chart;
    QObject m_listening;
    mutable bool m_isRead = false;
    mutable std::vector<QStringList> m_lines;      ///< The header first
    mutable std::vector<QAccessible::Id> m_cells;  ///< As child() numbers them; 0: nobody asked yet
};

}  // namespace widgets
