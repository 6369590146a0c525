#include "engine/pond/row_faults.h"

#include "engine/base/text_file.h"
#include "engine/pond/readings_remarks.h"

#include <algorithm>
#include <array>

namespace engine {

void RowFaults::add(int line, std::string_view key, std::string sentence) {
    constexpr std::size_t kMostKept = 1000;
    m_lines += line != m_lastLine ? 1 : 0;
    m_lastLine = line;
    if (++m_counts[std::string(key)] == 1 || m_faults.size() < kMostKept) {
        m_faults.push_back({line, std::string(key), std::move(sentence)});
    }
}

void RowFaults::addErrorCode(int line, std::string_view key, std::string_view text) {
    const std::string column(key);
    m_codes.try_emplace(column, line, text);
    ++m_codeCounts[column];
}

void RowFaults::say(int rows, CsvFaults& faults) const {
    for (const auto& [column, first] : m_codes) {
        const int count = m_codeCounts.at(column);
        faults.warn(first.first, column,
                    countOf(count, "value is an error code", "values are error codes") +
                        " of the meter and not taken, such as " + shownText(first.second) + " here.");
    }
    if (2 * m_lines > rows) {
        for (const Fault& fault : m_faults) {
            faults.add(fault.line, fault.key, fault.sentence);
        }
        return;
    }
    for (const auto& [column, count] : m_counts) {
        const auto first =
            std::find_if(m_faults.begin(), m_faults.end(),
                         [&, &name = column](const Fault& fault) { return fault.key == name; });
        faults.warn(first->line, column,
                    countOf(count, "row has", "rows have") +
                        " here what cannot be used and is left out; the first is this one. " +
                        first->sentence);
    }
}

bool isErrorCode(std::string_view text) {
    constexpr std::array<std::string_view, 4> kEnds{"32767", "32768", "65535", "2147483647"};
    std::string digits;
    for (const char c : text) {
        if (c >= '0' && c <= '9') {
            digits += c;
        } else if (c != '-' && c != '.' && c != ',') {
            return false;
        }
    }
    const std::string_view whole = std::string_view(digits).substr(0, digits.find_last_not_of('0') + 1);
    const bool isOneDigit = whole.size() >= 3 && (whole[0] == '8' || whole[0] == '9') &&
                            whole.find_first_not_of(whole[0]) == std::string_view::npos;
    return isOneDigit || whole == "6999" || whole == "7999" ||
           std::find(kEnds.begin(), kEnds.end(), digits) != kEnds.end();
}

}  // namespace engine
