#include "engine/base/csv_table.h"

#include "engine/base/error.h"
#include "engine/base/text.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

/// True for a text that a spreadsheet may compute; apostrophes before it, marks of ours or the user's own, do
/// not count, so that a mark can be told from what it marks.
bool isFormula(std::string_view text) {
    const std::size_t first = text.find_first_not_of('\'');
    return first != std::string_view::npos &&
           std::string_view("=+-@\t\r").find(text[first]) != std::string_view::npos;
}

}  // namespace

std::string csvField(std::string_view text) {
    if (text.find_first_of(",\"\r\n") == std::string_view::npos) {
        return std::string(text);
    }
    std::string quoted = "\"";
    for (const char c : text) {
        quoted.append(c == '"' ? 2U : 1U, c);
    }
    return quoted + '"';
}

std::string csvText(std::string_view text) {
    return csvField(isFormula(text) ? "'" + std::string(text) : std::string(text));
}

std::string_view ofCsvText(std::string_view cell) {
    return cell.starts_with('\'') && isFormula(cell) ? cell.substr(1) : cell;
}

CsvWriter::CsvWriter(std::string_view header)
    : m_text(header), m_columns(1 + static_cast<int>(std::count(header.begin(), header.end(), ','))) {
    m_text += "\r\n";
}

CsvWriter& CsvWriter::number(double value) {
    return put(std::isfinite(value) ? shortest(value + 0.0) : std::string());
}

void CsvWriter::end() {
    ensure(m_fields == m_columns, "a row of a table has as many fields as its header");
    m_text += "\r\n";
    m_fields = 0;
}

CsvWriter& CsvWriter::put(std::string_view field) {
    if (m_fields++ > 0) {
        m_text += ',';
    }
    m_text += field;
    return *this;
}

}  // namespace engine
