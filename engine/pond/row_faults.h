#pragma once

#include "engine/pond/csv.h"

#include <map>
#include <string>
#include <utility>
#include <vector>

namespace engine {

/// What single rows of a logger's file have for faults. A few bad rows among good ones are left out with a
/// word; where most rows are bad, the file is not what it was taken for, and each fault is an error.
class RowFaults {
public:
    /// @param sentence  Of the fault, with its value and rule.
    void add(int line, std::string_view key, std::string sentence);
    /// A number that meters write where they could not measure, such as -888.88.
    void addErrorCode(int line, std::string_view key, std::string_view text);

    /// Says them: as errors where more than half of `rows` have one, as warnings by column otherwise.
    void say(int rows, CsvFaults& faults) const;

private:
    struct Fault {
        int line;
        std::string key, sentence;
    };
    std::vector<Fault> m_faults;          ///< The first of them
    std::map<std::string, int> m_counts;  ///< By column
    int m_lines = 0, m_lastLine = 0;      ///< Lines with a fault; those of one line come together
    std::map<std::string, std::pair<int, std::string>> m_codes;  ///< By column: the first line and its text
    std::map<std::string, int> m_codeCounts;
};

/// True for a number that stands for an error of the meter: three or more of one digit 8 or 9, such as
/// -888.88, 9999 or 999.9, the ends of its counter, or 6999 and 7999 with any sign.
[[nodiscard]] bool isErrorCode(std::string_view text);

}  // namespace engine
