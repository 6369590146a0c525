#pragma once

#include "engine/pond/pond_keys.h"
#include "widgets/document/document.h"

#include <QAbstractTableModel>

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace widgets {

/// A cell of a table: a number in the unit of the pond file, or a text (dates and times too, as files write
/// them).
struct SheetCell {
    std::optional<double> number;
    std::string text;
    bool operator==(const SheetCell&) const = default;
    [[nodiscard]] bool isEmpty() const { return !number && text.empty(); }
};
using SheetRow = std::vector<SheetCell>;
using SheetRows = std::vector<SheetRow>;

struct SheetColumn {
    enum class Kind { Number, Date, Time, Text };
    QString name;  ///< %1 is the unit
    Kind kind = Kind::Number;
    engine::NumberRule rule;
    bool isNeeded = true;  ///< A row without it is not whole yet
    bool isReadOnly = false;
    QString help;
};

/// A table of the pond file as rows and columns.
struct SheetSpec {
    QString name;  ///< For screen readers
    QString step;  ///< What undo says
    std::vector<SheetColumn> columns;
    std::function<SheetRows(const engine::Pond&)> read;
    std::function<void(engine::Pond&, const SheetRows&)> write;
    bool canGrow = true;  ///< Rows can be added and taken away
};

/// A table of the document. Holds what is typed until its rows are whole; then one edit of the document takes
/// all of it. A last empty row takes what is added.
class SheetModel final : public QAbstractTableModel {
    Q_OBJECT
public:
    SheetModel(Document& document, SheetSpec spec, QObject* parent = nullptr);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;

    /// Puts a block as copied from a spreadsheet or read from a CSV file over the cells from a place on, and
    /// adds rows where it is longer, in one step of undo. A first row of words is taken for a header. Nothing
    /// changes if a cell cannot be read.
    bool paste(const QString& text, int row, int column);
    /// Rows as a spreadsheet takes them.
    [[nodiscard]] QString copied(const QModelIndexList& cells) const;
    void takeAway(std::vector<int> rows);
    [[nodiscard]] const SheetSpec& spec() const { return m_spec; }
    /// Reads the document again, as after a change of what the spec looks at beside it.
    void reload();

signals:
    /// Why what stands there is not in the document; empty if it is.
    void said(const QString& sentence);

private:
    [[nodiscard]] QString read(const QString& text, const SheetColumn& column, SheetCell& cell) const;
    [[nodiscard]] QString text(const SheetCell& cell, const SheetColumn& column) const;
    bool take(SheetRows rows);

    Document& m_document;
    SheetSpec m_spec;
    SheetRows m_rows, m_taken;
    bool m_isTaking = false;
};

/// Parts a pasted text into rows and cells: by tabs, else by semicolons, else by commas.
[[nodiscard]] std::vector<QStringList> pastedCells(const QString& text);

}  // namespace widgets
