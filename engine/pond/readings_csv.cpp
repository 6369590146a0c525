#include "engine/pond/readings_csv.h"

#include "engine/base/text.h"
#include "engine/base/text_file.h"
#include "engine/pond/csv.h"
#include "engine/pond/local_time.h"
#include "engine/pond/logger_columns.h"
#include "engine/pond/pond_keys.h"
#include "engine/pond/readings_remarks.h"

#include <algorithm>
#include <map>

namespace engine {
namespace {

using enum LoggerColumn;

constexpr int kMostLinesBefore = 30;  // of a logger's own, before the headings

std::string_view trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(" \t");
    return first == std::string_view::npos ? std::string_view()
                                           : text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

/// One file on its way in.
class LoggerFile {
public:
    LoggerFile(std::string_view text, const std::string& file, const ReadingsFile& shape,
               std::optional<double> deepest)
        : m_separator(separatorOf(text)),
          m_rows(text, m_separator),
          m_faults(file),
          m_shape(shape),
          m_deepest(deepest) {}

    std::vector<Reading> read() {
        if (findHeadings() && areHeadingsWhole()) {
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
    void readRows();
    void chooseDateOrder(const std::vector<std::pair<int, std::string>>& stamps);
    bool takeRow();
    MaybeQuantity number(LoggerColumn column, const NumberRule& rule);
    void remarks();

    char m_separator;
    CsvRows m_rows;
    CsvFaults m_faults;
    const ReadingsFile& m_shape;
    std::optional<double> m_deepest;
    std::vector<std::string> m_headings, m_cells;
    std::vector<ColumnMeaning> m_columns;
    int m_line = 0;
    DateOrder m_order = DateOrder::DayFirst;
    std::vector<Reading> m_readings;
    int m_blankRows = 0, m_firstBlank = 0;
};

bool LoggerFile::findHeadings() {
    int skipped = 0, firstLine = 1;
    std::vector<std::string> first;
    while (skipped <= kMostLinesBefore && m_rows.next()) {
        m_headings.clear();
        m_columns.clear();
        for (const std::string& one : m_rows.cells()) {
            m_headings.emplace_back(trimmed(one));
            m_columns.push_back(columnMeaning(m_headings.back()));
        }
        if (skipped == 0) {
            first = m_headings;
            firstLine = m_rows.line();
        }
        if ((has(At) || has(DateOnly)) &&
            (has(Oxygen) || has(Temperature) || has(OxygenPercent) || has(Depth))) {
            if (skipped > 0) {
                m_faults.warn(m_rows.line(), "",
                              "The headings are in this line; " + countOf(skipped, "line", "lines") +
                                  " before it are not used.");
            }
            return true;
        }
        ++skipped;
    }
    if (!m_rows.fault().empty()) {
        m_faults.add(m_rows.line(), "", m_rows.fault());
    } else if (first.empty()) {
        m_faults.add(1, "", "The file is empty.");
    } else {
        m_headings = first;
        const std::string near = first.size() <= 100 ? nearest("at", first) : "";
        m_faults.add(firstLine, "at",
                     "No line has headings of a time and of depth, temperature or oxygen, such as "
                     "at,depth_m,temperature_c,oxygen_mg_per_l; the first reads " +
                         shownText(first.front()) + ".");
    }
    return false;
}

bool LoggerFile::areHeadingsWhole() {
    bool isWhole = true;
    std::string others;
    std::map<LoggerColumn, int> counts;
    for (std::size_t i = 0; i < m_columns.size(); ++i) {
        const ColumnMeaning& meaning = m_columns[i];
        const bool isUsed = meaning.column != Unused && meaning.column != OxygenPercent;
        if (isUsed && ++counts[meaning.column] > 1) {
            m_faults.add(m_rows.line(), "",
                         "The columns " + shownText(headingOf(meaning.column)) + " and " +
                             shownText(m_headings[i]) + " both mean the same; leave one of them out.");
            isWhole = false;
        }
        if (!isUsed && !m_headings[i].empty()) {
            others += (others.empty() ? "" : ", ") + shownText(m_headings[i]);
        }
        if (isUsed && !meaning.isUnitGiven) {
            m_faults.warn(m_rows.line(), "",
                          "The column " + shownText(m_headings[i]) + " does not say its unit; " +
                              meaning.unit + " is taken.");
        } else if (isUsed && (meaning.factor != 1.0 || meaning.offset != 0.0)) {
            m_faults.warn(
                m_rows.line(), "",
                "The column " + shownText(m_headings[i]) + " is in " + meaning.unit + " and is converted.");
        }
    }
    if (!others.empty()) {
        m_faults.warn(m_rows.line(), "",
                      (others.find(", ") == std::string::npos ? "This column is not used: "
                                                              : "These columns are not used: ") +
                          others + ".");
    }
    const auto missing = [&](const char* name, const std::string& more) {
        m_faults.add(m_rows.line(), name, "This column is missing" + more);
        isWhole = false;
    };
    if (!has(At) && !has(ClockOnly)) {
        missing("at", "; a date alone does not say when.");
    }
    if (!has(Oxygen) && !has(Temperature)) {
        missing("oxygen_mg_per_l", has(OxygenPercent)
                                       ? "; a share of saturation depends on what the meter took for the "
                                         "air pressure, so that mg/L must be given."
                                       : ", and so is temperature_c; one of them must be there.");
    }
    if (!has(Depth) && !m_shape.depth) {
        missing("depth_m", "; give the logger's depth as depth_m under [readings].");
    }
    return isWhole;
}

void LoggerFile::readRows() {
    // The order of day and month is that of the whole file, so all stamps are looked at first.
    struct Row {
        int line;
        std::vector<std::string> cells;
    };
    std::vector<Row> rows;
    std::vector<std::pair<int, std::string>> stamps;
    while (!m_faults.tooMany() && m_rows.next()) {
        std::vector<std::string> cells = m_rows.cells();
        while (cells.size() > m_headings.size() && trimmed(cells.back()).empty()) {
            cells.pop_back();
        }
        if (cells.size() != m_headings.size()) {
            m_faults.add(m_rows.line(), "",
                         "The row has " + countOf(static_cast<int>(cells.size()), "cell", "cells") + " for " +
                             std::to_string(m_headings.size()) + " columns" +
                             (cells.size() > m_headings.size() && m_separator == ','
                                  ? "; decimal commas need semicolons between the columns."
                                  : "."));
            continue;
        }
        m_cells = cells;
        stamps.emplace_back(m_rows.line(), has(At) ? cell(At) : cell(DateOnly));
        rows.push_back({m_rows.line(), std::move(cells)});
    }
    if (!m_rows.fault().empty()) {
        m_faults.add(m_rows.line(), "", m_rows.fault());
    }
    chooseDateOrder(stamps);
    for (Row& row : rows) {
        if (m_faults.tooMany()) {
            break;
        }
        m_line = row.line;
        m_cells = std::move(row.cells);
        takeRow();
    }
    remarks();
}

void LoggerFile::chooseDateOrder(const std::vector<std::pair<int, std::string>>& stamps) {
    std::optional<int> dayFirst, monthFirst;  // the first line that can only be read so
    bool isOpen = false;
    for (const auto& [line, text] : stamps) {
        const DateOrders orders = possibleOrders(text);
        const bool isYearFirst =
            text.size() >= 5 && std::string_view("-/.").find(text[4]) != std::string_view::npos;
        if (isYearFirst || (!orders.dayFirst && !orders.monthFirst)) {
            continue;
        }
        isOpen = isOpen || (orders.dayFirst && orders.monthFirst && text.find('/') != std::string::npos);
        if (!orders.monthFirst && !dayFirst) {
            dayFirst = line;
        }
        if (!orders.dayFirst && !monthFirst) {
            monthFirst = line;
        }
    }
    const bool isMonth = m_shape.dateOrder == DateOrder::MonthFirst || (!m_shape.dateOrder && monthFirst);
    m_order = isMonth ? DateOrder::MonthFirst : DateOrder::DayFirst;
    if (dayFirst && monthFirst) {
        m_faults.add(*monthFirst, "at",
                     "The day is first in line " + std::to_string(*dayFirst) +
                         ", but the month is here; dates of one file must have one order.");
    } else if (isOpen && !dayFirst && !monthFirst && !m_shape.dateOrder) {
        m_faults.add(
            stamps.front().first, "at",
            "Whether the day or the month is first in " + shownText(stamps.front().second) +
                " cannot be told; give date_order = \"day first\" or \"month first\" under [readings].");
    }
}

MaybeQuantity LoggerFile::number(LoggerColumn column, const NumberRule& rule) {
    std::string_view text = cell(column);
    if (isBlank(text)) {
        return std::nullopt;
    }
    const ColumnMeaning& meaning = m_columns[indexOf(column)];
    const bool isUnder = text.starts_with('<');
    const auto read = loggerNumber(trimmed(text.substr(isUnder ? 1 : 0)));
    const std::string key(headingOf(column));
    if (!read) {
        m_faults.add(m_line, key, "This is " + shownText(text) + ", but must be a number.");
        return std::nullopt;
    }
    const double value = meaning.factor * (*read - meaning.offset) + 0.0;
    if (!(value >= rule.low && value <= rule.high)) {
        const auto back = [&](double limit) { return shortest(limit / meaning.factor + meaning.offset); };
        m_faults.add(m_line, key,
                     "The value is " + shownNumber(*read) + " " + meaning.unit + ", but must be from " +
                         back(rule.low) + " to " + back(rule.high) + " " + meaning.unit + ".");
        return std::nullopt;
    }
    if (isUnder) {
        Quantity under(0.5 * value);  // anything from nothing to that
        under.low = 0.0;
        under.high = value;
        return under;
    }
    return Quantity(value);
}

bool LoggerFile::takeRow() {
    Reading reading;
    reading.line = m_line;
    const std::string stamp =
        has(At) ? std::string(cell(At)) : std::string(cell(DateOnly)) + " " + std::string(cell(ClockOnly));
    if (std::all_of(m_cells.begin(), m_cells.end(),
                    [](const std::string& one) { return trimmed(one).empty(); })) {
        return false;
    }
    reading.at = loggerTime(stamp, m_order);
    if (!reading.at) {
        const bool hasZone = parseLocalTime(stamp.substr(0, 19)) || parseLocalTime(stamp.substr(0, 16));
        m_faults.add(m_line, has(At) ? headingOf(At) : headingOf(DateOnly),
                     "This is " + shownText(trimmed(stamp)) +
                         ", but must be a date and time such as 2026-06-13 17:30" +
                         (hasZone ? ", on the pond's own clock and without a zone." : "."));
    }
    reading.depth = has(Depth) ? number(Depth, kDepthRule) : m_shape.depth;
    if (has(Depth) && isBlank(cell(Depth))) {
        m_faults.add(m_line, headingOf(Depth), "The cell is empty.");
    }
    if (reading.depth && m_deepest && reading.depth->value > *m_deepest) {
        m_faults.add(m_line, headingOf(Depth),
                     "The depth " + shownNumber(*reading.depth) + " m lies below the bottom, which is at " +
                         shownNumber(*m_deepest) + " m.");
    }
    reading.temperature = number(Temperature, kWaterTemperatureRule);
    reading.oxygen = number(Oxygen, kOxygenRule);
    reading.secchi = number(Secchi, kSecchiRule);
    reading.meter = cell(Meter);
    reading.note = cell(Note);
    const auto isEmpty = [this](LoggerColumn column) { return isBlank(cell(column)); };
    if (isEmpty(Temperature) && isEmpty(Oxygen) && isEmpty(Secchi) && reading.note.empty()) {
        m_firstBlank = m_blankRows++ == 0 ? m_line : m_firstBlank;
        return false;
    }
    m_readings.push_back(std::move(reading));
    return true;
}

void LoggerFile::remarks() {
    if (m_blankRows > 0) {
        m_faults.warn(m_firstBlank, "",
                      countOf(m_blankRows, "row holds", "rows hold") +
                          " no value and is no reading; the first is this one.");
    }
    m_readings = withoutRepeats(std::move(m_readings), m_faults);
    warnOfClock(m_readings, m_faults);
}

}  // namespace

std::vector<Reading> readReadingsCsv(std::string_view text, const std::string& file,
                                     const ReadingsFile& shape, std::optional<double> deepest,
                                     Diagnostics& diagnostics) {
    LoggerFile logger(text, file, shape, deepest);
    std::vector<Reading> readings = logger.read();
    for (Diagnostic& diagnostic : logger.take()) {
        diagnostics.push_back(std::move(diagnostic));
    }
    return readings;
}

}  // namespace engine
