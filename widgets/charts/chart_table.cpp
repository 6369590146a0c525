#include "widgets/charts/chart_table.h"

#include "engine/base/csv_table.h"
#include "widgets/charts/chart_view.h"
#include "widgets/document/to_qstring.h"

#include <algorithm>
#include <string_view>

namespace widgets {
namespace {

/// A table of our own (RFC 4180) as lines of cells.
std::vector<QStringList> linesOf(std::string_view csv) {
    std::vector<QStringList> lines;
    QStringList line;
    std::string cell;
    bool isQuoted = false;
    const auto endCell = [&] {
        line << toQString(std::string(engine::ofCsvText(cell)));
        cell.clear();
    };
    for (std::size_t i = 0; i < csv.size(); ++i) {
        const char c = csv[i];
        if (c == '"') {
            const bool isDoubled = isQuoted && i + 1 < csv.size() && csv[i + 1] == '"';
            cell += isDoubled ? "\"" : "";
            i += isDoubled ? 1 : 0;
            isQuoted = isDoubled ? isQuoted : !isQuoted;
        } else if (isQuoted) {
            cell += c;
        } else if (c == ',') {
            endCell();
        } else if (c == '\n') {
            endCell();
            lines.push_back(std::move(line));
            line.clear();
        } else if (c != '\r') {
            cell += c;
        }
    }
    return lines;
}

/// A cell, or the name over a column (row -1).
class ChartCell final : public QAccessibleInterface, public QAccessibleTableCellInterface {
public:
    ChartCell(const ChartTable& table, int row, int column) : m_table(table), m_row(row), m_column(column) {}

    [[nodiscard]] bool isValid() const override { return m_table.isValid(); }
    [[nodiscard]] QObject* object() const override { return nullptr; }
    [[nodiscard]] QAccessibleInterface* childAt(int /*x*/, int /*y*/) const override { return nullptr; }
    [[nodiscard]] QAccessibleInterface* parent() const override { return table(); }
    [[nodiscard]] QAccessibleInterface* child(int /*index*/) const override { return nullptr; }
    [[nodiscard]] int childCount() const override { return 0; }
    [[nodiscard]] int indexOfChild(const QAccessibleInterface* /*child*/) const override { return -1; }
    [[nodiscard]] QString text(QAccessible::Text kind) const override {
        return kind == QAccessible::Name ? m_table.cellText(m_row, m_column) : QString();
    }
    void setText(QAccessible::Text /*kind*/, const QString& /*text*/) override {}
    [[nodiscard]] QRect rect() const override { return m_table.rect(); }
    [[nodiscard]] QAccessible::Role role() const override {
        return m_row < 0 ? QAccessible::ColumnHeader : QAccessible::Cell;
    }
    [[nodiscard]] QAccessible::State state() const override { return m_table.state(); }
    void* interface_cast(QAccessible::InterfaceType type) override {
        return type == QAccessible::TableCellInterface && m_row >= 0
                   ? static_cast<QAccessibleTableCellInterface*>(this)
                   : nullptr;
    }

    [[nodiscard]] bool isSelected() const override { return false; }
    [[nodiscard]] QList<QAccessibleInterface*> columnHeaderCells() const override {
        return {m_table.headerCell(m_column)};
    }
    [[nodiscard]] QList<QAccessibleInterface*> rowHeaderCells() const override { return {}; }
    [[nodiscard]] int columnIndex() const override { return m_column; }
    [[nodiscard]] int rowIndex() const override { return m_row; }
    [[nodiscard]] int columnExtent() const override { return 1; }
    [[nodiscard]] int rowExtent() const override { return 1; }
    [[nodiscard]] QAccessibleInterface* table() const override { return const_cast<ChartTable*>(&m_table); }

private:
    const ChartTable& m_table;
    int m_row, m_column;
};

}  // namespace

ChartTable::ChartTable(ChartView& chart) : m_chart(&chart) {
    QObject::connect(&chart, &ChartView::saidAnew, &m_listening, [this] { forget(); });
}

ChartTable::~ChartTable() {
    deleteCells();
}

void ChartTable::deleteCells() {
    for (const QAccessible::Id id : m_cells) {
        if (id != 0) {
            QAccessible::deleteAccessibleInterface(id);
        }
    }
    m_cells.clear();
}

void ChartTable::forget() {
    deleteCells();
    m_lines.clear();
    m_isRead = false;
    if (QAccessible::isActive()) {
        QAccessibleTableModelChangeEvent event(this, QAccessibleTableModelChangeEvent::ModelReset);
        QAccessible::updateAccessibility(&event);
    }
}

const std::vector<QStringList>& ChartTable::lines() const {
    if (!m_isRead && !m_chart.isNull()) {
        m_lines = linesOf(m_chart->numbers());
        m_cells.assign(m_lines.empty() ? 0 : m_lines.size() * static_cast<std::size_t>(m_lines[0].size()), 0);
        m_isRead = true;
    }
    return m_lines;
}

QAccessibleInterface* ChartTable::parent() const {
    return m_chart.isNull() ? nullptr : QAccessible::queryAccessibleInterface(m_chart.data());
}

int ChartTable::columnCount() const {
    return lines().empty() ? 0 : static_cast<int>(lines().front().size());
}

int ChartTable::rowCount() const {
    return std::max(0, static_cast<int>(lines().size()) - 1);
}

QAccessibleInterface* ChartTable::cell(int line, int column) const {
    if (line < 0 || line > rowCount() || column < 0 || column >= columnCount()) {
        return nullptr;
    }
    QAccessible::Id& id = m_cells[static_cast<std::size_t>(line * columnCount() + column)];
    if (id == 0) {
        id = QAccessible::registerAccessibleInterface(new ChartCell(*this, line - 1, column));
    }
    return QAccessible::accessibleInterface(id);
}

QAccessibleInterface* ChartTable::cellAt(int row, int column) const {
    return row < 0 ? nullptr : cell(row + 1, column);
}

QAccessibleInterface* ChartTable::headerCell(int column) const {
    return cell(0, column);
}

QAccessibleInterface* ChartTable::child(int index) const {
    return index < 0 || columnCount() == 0 ? nullptr : cell(index / columnCount(), index % columnCount());
}

int ChartTable::childCount() const {
    return static_cast<int>(lines().size()) * columnCount();
}

int ChartTable::indexOfChild(const QAccessibleInterface* cell) const {
    const auto* place = cell == nullptr ? nullptr : dynamic_cast<const ChartCell*>(cell);
    return place == nullptr || place->table() != this
               ? -1
               : (place->rowIndex() + 1) * columnCount() + place->columnIndex();
}

QString ChartTable::cellText(int row, int column) const {
    const auto line = static_cast<std::size_t>(row + 1);
    return line < lines().size() ? lines()[line].value(column) : QString();
}

QString ChartTable::columnDescription(int column) const {
    return cellText(-1, column);
}

QString ChartTable::rowDescription(int row) const {
    return cellText(row, 0);
}

QString ChartTable::text(QAccessible::Text kind) const {
    return kind == QAccessible::Name && !m_chart.isNull()
               ? ChartView::tr("The numbers of: %1").arg(m_chart->accessibleName())
               : QString();
}

QRect ChartTable::rect() const {
    return parent() == nullptr ? QRect() : parent()->rect();
}

QAccessible::State ChartTable::state() const {
    QAccessible::State state = parent() == nullptr ? QAccessible::State() : parent()->state();
    state.focusable = state.focused = false;
    return state;
}

void* ChartTable::interface_cast(QAccessible::InterfaceType type) {
    return type == QAccessible::TableInterface ? static_cast<QAccessibleTableInterface*>(this) : nullptr;
}

}  // namespace widgets
