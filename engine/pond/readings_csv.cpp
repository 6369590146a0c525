#include "engine/pond/readings_csv.h"

#include "engine/base/text.h"
#include "engine/base/text_file.h"
#include "engine/pond/local_time.h"
#include "engine/pond/logger_file.h"
#include "engine/pond/pond_keys.h"
#include "engine/pond/readings_remarks.h"

#include <algorithm>

namespace engine {

using enum LoggerColumn;

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
            ++m_rowCount;
            m_rowFaults.add(m_rows.line(), "",
                            "The row has " + countOf(static_cast<int>(cells.size()), "cell", "cells") +
                                " for " + std::to_string(m_headings.size()) + " columns" +
                                (cells.size() > m_headings.size() && m_separator == ','
                                     ? "; decimal commas need semicolons between the columns."
                                     : "."));
            continue;
        }
        m_cells = cells;
        stamps.emplace_back(m_rows.line(), has(At) ? cell(At) : cell(DateOnly));
        ++m_rowCount;
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
    std::size_t dayCount = 0, monthCount = 0;
    bool isOpen = false;
    for (const auto& [line, text] : stamps) {
        const DateOrders orders = possibleOrders(text);
        const bool isYearFirst =
            text.size() >= 5 && std::string_view("-/.").find(text[4]) != std::string_view::npos;
        if (isYearFirst || (!orders.dayFirst && !orders.monthFirst)) {
            continue;
        }
        isOpen = isOpen || (orders.dayFirst && orders.monthFirst && text.find('/') != std::string::npos);
        dayCount += !orders.monthFirst ? 1 : 0;
        monthCount += !orders.dayFirst ? 1 : 0;
        if (!orders.monthFirst && !dayFirst) {
            dayFirst = line;
        }
        if (!orders.dayFirst && !monthFirst) {
            monthFirst = line;
        }
    }
    // A few slips among many good dates are left out with a word as they come.
    constexpr std::size_t kFew = 10;
    const bool isSlip = kFew * std::min(dayCount, monthCount) <= std::max(dayCount, monthCount);
    const bool isMonth =
        m_shape.dateOrder == DateOrder::MonthFirst || (!m_shape.dateOrder && monthCount > dayCount);
    m_order = isMonth ? DateOrder::MonthFirst : DateOrder::DayFirst;
    if (dayFirst && monthFirst && !isSlip) {
        m_faults.add(*monthFirst, "at",
                     "The day is first in line " + std::to_string(*dayFirst) +
                         ", but the month is here; dates of one file must have one order.");
    } else if (isOpen && !dayFirst && !monthFirst && !m_shape.dateOrder) {
        m_faults.add(
            stamps.front().first, "date_order",
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
        m_rowFaults.add(m_line, key, "This is " + shownText(text) + ", but must be a number.");
        return std::nullopt;
    }
    const double value = meaning.factor * (*read - meaning.offset) + 0.0;
    if (!(value >= rule.low && value <= rule.high) && isErrorCode(text)) {
        m_rowFaults.addErrorCode(m_line, key, text);
        return std::nullopt;
    }
    if (!(value >= rule.low && value <= rule.high)) {
        const auto back = [&](double limit) { return shortest(limit / meaning.factor + meaning.offset); };
        m_rowFaults.add(m_line, key,
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
    if (reading.at) {
        *reading.at += m_shift;
    }
    if (!reading.at) {
        const bool hasZone = parseLocalTime(stamp.substr(0, 19)) || parseLocalTime(stamp.substr(0, 16));
        m_rowFaults.add(m_line, has(At) ? headingOf(At) : headingOf(DateOnly),
                        "This is " + shownText(trimmed(stamp)) +
                            ", but must be a date and time such as 2026-06-13 17:30" +
                            (hasZone ? ", on the pond's own clock and without a zone." : "."));
    }
    reading.depth = has(Depth) ? number(Depth, kDepthRule) : m_shape.depth;
    if (has(Depth) && isBlank(cell(Depth))) {
        m_rowFaults.add(m_line, headingOf(Depth), "The cell is empty.");
    }
    const bool isBelow = reading.depth && m_deepest && reading.depth->value > *m_deepest;
    if (isBelow) {
        m_rowFaults.add(m_line, headingOf(Depth),
                        "The depth " + shownNumber(*reading.depth) +
                            " m lies below the bottom, which is at " + shownNumber(*m_deepest) + " m.");
    }
    reading.temperature = number(Temperature, kWaterTemperatureRule);
    reading.oxygen = number(Oxygen, kOxygenRule);
    reading.secchi = number(Secchi, kSecchiRule);
    reading.meter = cell(Meter);
    reading.note = cell(Note);
    if (!reading.at || !reading.depth || isBelow) {
        return false;  // said above
    }
    const auto isEmpty = [this](LoggerColumn column) { return isBlank(cell(column)); };
    if (isEmpty(Temperature) && isEmpty(Oxygen) && isEmpty(Secchi) && reading.note.empty()) {
        m_firstBlank = m_blankRows++ == 0 ? m_line : m_firstBlank;
        return false;
    }
    if (!reading.temperature && !reading.oxygen && !reading.secchi && reading.note.empty()) {
        return false;  // error codes, said above
    }
    m_readings.push_back(std::move(reading));
    return true;
}

void LoggerFile::remarks() {
    m_rowFaults.say(m_rowCount, m_faults);
    if (m_blankRows > 0) {
        m_faults.warn(m_firstBlank, "",
                      countOf(m_blankRows, "row holds", "rows hold") +
                          " no value and is no reading; the first is this one.");
    }
    m_readings = withoutRepeats(std::move(m_readings), m_faults);
    warnOfClock(m_readings, m_faults);
}

std::vector<Reading> readReadingsCsv(std::string_view text, const std::string& file,
                                     const ReadingsFile& shape, std::optional<double> deepest,
                                     Diagnostics& diagnostics, std::optional<double> utcOffset_h) {
    LoggerFile logger(text, file, shape, deepest, utcOffset_h);
    std::vector<Reading> readings = logger.read();
    for (Diagnostic& diagnostic : logger.take()) {
        diagnostics.push_back(std::move(diagnostic));
    }
    return readings;
}

}  // namespace engine
