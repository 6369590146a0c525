#include "engine/pond/csv.h"

#include "engine/base/text.h"
#include "engine/base/text_file.h"
#include "engine/pond/local_time.h"

#include <algorithm>

namespace engine {
namespace {

constexpr std::size_t kFaultsShown = 20;
constexpr std::size_t kFaultsCounted = 1000;
constexpr std::size_t kMostColumns = 1000;

std::string_view trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(" \t");
    if (first == std::string_view::npos) {
        return {};
    }
    return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

bool isDecimalComma(std::string_view text) {
    std::string changed(text);
    const auto comma = changed.find(',');
    if (comma == std::string::npos) {
        return false;
    }
    changed[comma] = '.';
    return toNumber(changed).has_value();
}

}  // namespace

CsvRows::CsvRows(std::string_view text, char separator) : m_text(text), m_separator(separator) {
    constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
    if (m_text.starts_with(kByteOrderMark)) {
        m_at = kByteOrderMark.size();
    }
}

bool CsvRows::atLineEnd() const {
    return m_at == m_text.size() || m_text[m_at] == '\n' ||
           (m_text[m_at] == '\r' && (m_at + 1 == m_text.size() || m_text[m_at + 1] == '\n'));
}

void CsvRows::skipEmptyLines() {
    while (m_at < m_text.size() && atLineEnd()) {
        m_at += m_text[m_at] == '\r' ? 1 : 0;
        if (m_at < m_text.size()) {
            ++m_at;
            ++m_nextLine;
        }
    }
}

bool CsvRows::next() {
    skipEmptyLines();
    if (!m_fault.empty() || m_at >= m_text.size()) {
        return false;
    }
    m_line = m_nextLine;
    m_count = 0;
    if (++m_rowsSoFar > kMostCsvRows + 1) {  // the headings' is none
        m_fault = "The file has more than " + std::to_string(kMostCsvRows) +
                  " rows, the most that is read; leave out what is not needed or split it.";
        return false;
    }
    while (readCell()) {
        if (atLineEnd()) {
            m_cells.resize(m_count);
            skipEmptyLines();
            return true;
        }
        ++m_at;  // the separator
    }
    return false;
}

/// Reads one cell up to its comma or line end.
bool CsvRows::readCell() {
    if (m_count == kMostColumns) {
        m_fault = "The row has more than " + std::to_string(kMostColumns) + " cells.";
        return false;
    }
    if (++m_cellsSoFar > kMostCsvCells) {
        m_fault = "The file has more than " + std::to_string(kMostCsvCells) +
                  " cells, the most that is read; leave out the columns that are not needed.";
        return false;
    }
    if (m_count == m_cells.size()) {
        m_cells.emplace_back();
    }
    std::string& cell = m_cells[m_count++];
    cell.clear();
    if (m_at < m_text.size() && m_text[m_at] == '"') {
        return readQuoted(cell);
    }
    const std::size_t start = m_at;
    while (!atLineEnd() && m_text[m_at] != m_separator) {
        if (m_text[m_at] == '"') {
            m_fault = "A quote stands inside a cell that does not begin with one.";
            return false;
        }
        ++m_at;
    }
    return take(cell, m_text.substr(start, m_at - start));
}

bool CsvRows::take(std::string& cell, std::string_view part) {
    if (cell.size() + part.size() > kLongestCell_bytes) {
        m_fault =
            "A cell has more than " + std::to_string(kLongestCell_bytes) + " bytes, the most that is read.";
        return false;
    }
    cell += part;
    return true;
}

bool CsvRows::readQuoted(std::string& cell) {
    ++m_at;
    while (true) {
        const auto quote = std::min(m_text.find('"', m_at), m_text.size());
        const auto part = m_text.substr(m_at, quote - m_at);
        m_nextLine += static_cast<int>(std::count(part.begin(), part.end(), '\n'));
        if (quote == m_text.size()) {
            m_fault = "The quote that is opened in this row is never closed.";
            return false;
        }
        if (!take(cell, part)) {
            return false;
        }
        m_at = quote + 1;
        if (m_at < m_text.size() && m_text[m_at] == '"') {
            cell += '"';
            ++m_at;
        } else if (atLineEnd() || m_text[m_at] == m_separator) {
            return true;
        } else {
            m_fault = "Text follows the closing quote of a cell.";
            return false;
        }
    }
}

void CsvFaults::add(int line, std::string_view key, std::string sentence) {
    if (++m_count <= kFaultsShown) {
        m_list.push_back({Severity::Error, m_file, line, std::string(key), std::move(sentence)});
    }
}

void CsvFaults::warn(int line, std::string_view key, std::string sentence) {
    m_list.push_back({Severity::Warning, m_file, line, std::string(key), std::move(sentence)});
}

bool CsvFaults::tooMany() const {
    return m_count >= kFaultsCounted;
}

Diagnostics CsvFaults::take() {
    if (m_count > kFaultsShown) {
        const std::string more = std::to_string(m_count - kFaultsShown);
        m_list.push_back({Severity::Error, m_file, 0, "",
                          tooMany() ? "There are at least " + more + " more faults; reading stopped there."
                                    : "There " + std::string(more == "1" ? "is " : "are ") + more + " more " +
                                          (more == "1" ? "fault." : "faults.")});
    }
    m_count = 0;
    return std::move(m_list);
}

bool CsvTable::readHeader() {
    if (!m_rows.next()) {
        m_faults.add(1, "", m_rows.fault().empty() ? "The file is empty." : m_rows.fault());
        return false;
    }
    for (const std::string& cell : m_rows.cells()) {
        m_header.emplace_back(trimmed(cell));
    }
    if (m_header.size() == 1 && m_header[0].find_first_of(";\t") != std::string::npos) {
        const bool isTab = m_header[0].find(';') == std::string::npos;
        m_faults.add(m_rows.line(), "",
                     std::string("The columns are separated by ") + (isTab ? "tabs" : "semicolons") +
                         ", but must be separated by commas, with a point in decimal numbers.");
        return false;
    }
    for (std::size_t i = 0; i < m_header.size(); ++i) {
        const auto before = m_header.begin() + static_cast<std::ptrdiff_t>(i);
        if (!m_header[i].empty() && std::find(m_header.begin(), before, m_header[i]) != before) {
            m_faults.add(m_rows.line(), "", "The column " + shownText(m_header[i]) + " is there twice.");
        }
    }
    return true;
}

std::size_t CsvTable::columnOf(std::string_view name) const {
    return static_cast<std::size_t>(std::find(m_header.begin(), m_header.end(), name) - m_header.begin());
}

bool CsvTable::has(std::string_view name) const {
    return columnOf(name) < m_header.size();
}

bool CsvTable::require(std::string_view name) {
    if (has(name)) {
        return true;
    }
    const std::string near = m_header.size() <= 100 ? nearest(name, m_header) : "";
    m_faults.add(m_rows.line(), name,
                 "This column is missing" +
                     (near.empty() ? std::string(".") : "; is it the one named " + shownText(near) + "?"));
    return false;
}

void CsvTable::warnOfOthers(const std::vector<std::string_view>& known) {
    constexpr std::size_t kMostNamed = 20;
    std::string list;
    std::size_t count = 0;
    for (const std::string& name : m_header) {
        if (std::find(known.begin(), known.end(), name) == known.end() && ++count <= kMostNamed) {
            list += (count == 1 ? "" : ", ") + shownText(name);
        }
    }
    if (count > kMostNamed) {
        list += " and " + std::to_string(count - kMostNamed) + " more";
    }
    if (count > 0) {
        m_faults.warn(
            m_rows.line(), "",
            (count == 1 ? "This column is not used: " : "These columns are not used: ") + list + ".");
    }
}

bool CsvTable::nextRow() {
    for (m_skipped = 0; !m_faults.tooMany() && m_rows.next(); ++m_skipped) {
        const std::size_t count = m_rows.cells().size();
        if (count == m_header.size()) {
            return true;
        }
        m_faults.add(
            m_rows.line(), "",
            "The row has " + std::to_string(count) + (count == 1 ? " cell" : " cells") + " for " +
                std::to_string(m_header.size()) + " columns" +
                (count > m_header.size() ? "; decimal numbers must have a point, not a comma." : "."));
    }
    if (!m_rows.fault().empty()) {
        m_faults.add(m_rows.line(), "", m_rows.fault());
    }
    return false;
}

std::string_view CsvTable::cell(std::string_view name) const {
    return trimmed(m_rows.cells()[columnOf(name)]);
}

std::optional<double> CsvTable::number(std::string_view name, const NumberRule& range) {
    const std::string_view text = cell(name);
    const auto value = toNumber(text);
    const std::string unit = *range.unit == '\0' ? "" : std::string(" ") + range.unit;
    if (text.empty()) {
        m_faults.add(line(), name, "The cell is empty.");
    } else if (!value && isDecimalComma(text)) {
        m_faults.add(line(), name,
                     "The number " + shownText(text) + " must be written with a decimal point.");
    } else if (!value) {
        m_faults.add(line(), name, "This is " + shownText(text) + ", but must be a number.");
    } else if (!(*value >= range.low && *value <= range.high)) {
        m_faults.add(line(), name,
                     "The value is " + shownNumber(*value) + unit + ", but must be from " +
                         shortest(range.low) + " to " + shortest(range.high) + unit + ".");
    } else {
        return *value + 0.0;
    }
    return std::nullopt;
}

std::optional<LocalTime> CsvTable::time(std::string_view name) {
    const std::string_view text = cell(name);
    const auto at = parseLocalTime(text);
    if (!at) {
        const bool hasZone = parseLocalTime(text.substr(0, 19)) || parseLocalTime(text.substr(0, 16));
        m_faults.add(line(), name,
                     "This is " + shownText(text) + ", but must be a date and time such as 2026-06-13 17:30" +
                         (hasZone ? ", on the pond's own clock and without a zone." : "."));
    }
    return at;
}

}  // namespace engine
