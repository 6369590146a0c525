#pragma once

#include "engine/pond/csv.h"
#include "engine/pond/logger_columns.h"
#include "engine/pond/pond.h"
#include "engine/pond/row_faults.h"

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace engine {

/// A cell without the blanks around it.
[[nodiscard]] inline std::string_view trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(" \t");
    return first == std::string_view::npos ? std::string_view()
                                           : text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

/// One file on its way in.
class LoggerFile {
public:
    LoggerFile(std::string_view text, const std::string& file, const ReadingsFile& shape,
               std::optional<double> deepest, std::optional<double> utcOffset_h)
        : m_separator(separatorOf(text)),
          m_rows(text, m_separator),
          m_faults(file),
          m_shape(shape),
          m_deepest(deepest),
          m_utcOffset_h(utcOffset_h) {}

    std::vector<Reading> read() {
        if (findHeadings() && areHeadingsWhole()) {
            chooseClock();
            readRows();
        }
        return std::move(m_readings);
    }
    Diagnostics take() { return m_faults.take(); }

private:
    [[nodiscard]] bool has(LoggerColumn column) const {
        return std::any_of(m_columns.begin(), m_columns.end(),
                           [column](const ColumnMeaning& one) { return one.column == column; });
    }
    [[nodiscard]] std::size_t indexOf(LoggerColumn column) const {
        return static_cast<std::size_t>(
            std::find_if(m_columns.begin(), m_columns.end(),
                         [column](const ColumnMeaning& one) { return one.column == column; }) -
            m_columns.begin());
    }
    [[nodiscard]] std::string_view cell(LoggerColumn column) const {
        return has(column) ? trimmed(m_cells[indexOf(column)]) : std::string_view();
    }
    [[nodiscard]] std::string_view headingOf(LoggerColumn column) const {
        return has(column) ? std::string_view(m_headings[indexOf(column)]) : std::string_view();
    }

    bool findHeadings();
    bool areHeadingsWhole();
    void dropSpares();
    void chooseClock();
    void readRows();
    void chooseDateOrder(const std::vector<std::pair<int, std::string>>& stamps);
    bool takeRow();
    MaybeQuantity number(LoggerColumn column, const NumberRule& rule);
    void remarks();

    char m_separator;
    CsvRows m_rows;
    CsvFaults m_faults;
    RowFaults m_rowFaults;
    int m_rowCount = 0;
    const ReadingsFile& m_shape;
    std::optional<double> m_deepest, m_utcOffset_h;
    std::chrono::seconds m_shift{0};  ///< From the file's clock to the pond's
    std::vector<std::string> m_headings, m_cells;
    std::vector<ColumnMeaning> m_columns;
    int m_line = 0;
    DateOrder m_order = DateOrder::DayFirst;
    std::vector<Reading> m_readings;
    int m_blankRows = 0, m_firstBlank = 0;
};

}  // namespace engine
