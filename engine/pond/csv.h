#pragma once

#include "engine/base/error.h"
#include "engine/pond/pond.h"
#include "engine/pond/pond_keys.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace engine {

inline constexpr std::size_t kMostCsvRows = 200000;  ///< Of one file: 22 years of hours
inline constexpr std::size_t kMostCsvCells = 2000000;
inline constexpr std::size_t kLongestCell_bytes = 10000;

/// Reads comma-separated text by RFC 4180 row by row: quotes, doubled quotes, line breaks in quotes,
/// CRLF or LF, a byte order mark at the front. Empty lines are stepped over. Loggers may separate otherwise.
/// What a file may hold is bounded, so that none takes more memory than a laptop has.
class CsvRows {
public:
    /// @pre text outlives this.
    explicit CsvRows(std::string_view text, char separator = ',');

    /// Reads the next row; false at the end or at a fault of the quoting.
    [[nodiscard]] bool next();

    [[nodiscard]] const std::vector<std::string>& cells() const { return m_cells; }  ///< Of the last row.
    [[nodiscard]] int line() const { return m_line; }  ///< Line on which the last row starts, 1-based.
    [[nodiscard]] const std::string& fault() const { return m_fault; }  ///< A sentence, or empty.

private:
    bool readCell();
    bool readQuoted(std::string& cell);
    bool take(std::string& cell, std::string_view part);
    void skipEmptyLines();
    [[nodiscard]] bool atLineEnd() const;

    std::string_view m_text;
    char m_separator;
    std::size_t m_at = 0;
    int m_line = 0;
    int m_nextLine = 1;
    std::size_t m_count = 0, m_rowsSoFar = 0, m_cellsSoFar = 0;
    std::vector<std::string> m_cells;
    std::string m_fault;
};

/// Faults of one CSV file: the first 20 are kept, the others are counted.
class CsvFaults {
public:
    explicit CsvFaults(std::string file) : m_file(std::move(file)) {}

    void add(int line, std::string_view key, std::string sentence);
    void warn(int line, std::string_view key, std::string sentence);
    [[nodiscard]] bool any() const { return m_count > 0; }
    /// True once there are so many that reading on makes no sense.
    [[nodiscard]] bool tooMany() const;
    /// What was said, with a line about how many more there are.
    [[nodiscard]] Diagnostics take();

private:
    std::string m_file;
    std::size_t m_count = 0;
    Diagnostics m_list;
};

/// The columns of a CSV file by name, and its rows with faults said in words.
class CsvTable {
public:
    CsvTable(std::string_view text, CsvFaults& faults) : m_rows(text), m_faults(faults) {}

    /// Reads the header and says what is wrong with it: none, separators other than commas, a name
    /// twice. False if there is no use in going on.
    [[nodiscard]] bool readHeader();

    /// True if the column is there.
    [[nodiscard]] bool has(std::string_view name) const;
    /// Says that the column is missing unless it is there.
    bool require(std::string_view name);
    /// Warns of the columns that are not among `known`.
    void warnOfOthers(const std::vector<std::string_view>& known);

    /// Reads the next row of as many cells as the header; rows of another length are said and skipped.
    [[nodiscard]] bool nextRow();
    [[nodiscard]] int line() const { return m_rows.line(); }
    /// Rows that were skipped just before this one.
    [[nodiscard]] int skipped() const { return m_skipped; }

    [[nodiscard]] std::string_view cell(std::string_view name) const;  ///< Without spaces around it.

    /// The number of a cell if it lies in the range; says what is wrong otherwise.
    [[nodiscard]] std::optional<double> number(std::string_view name, const NumberRule& range);
    /// The local time of the column `at`; says what is wrong otherwise.
    [[nodiscard]] std::optional<LocalTime> time(std::string_view name);

private:
    [[nodiscard]] std::size_t columnOf(std::string_view name) const;

    CsvRows m_rows;
    CsvFaults& m_faults;
    std::vector<std::string> m_header;
    int m_skipped = 0;
};

}  // namespace engine
