// What the headings of a logger's file say; its rows are in readings_csv.cpp.
#include "engine/base/text.h"
#include "engine/base/text_file.h"
#include "engine/pond/logger_file.h"
#include "engine/pond/readings_remarks.h"

#include <map>

namespace engine {
namespace {

constexpr int kMostLinesBefore = 30;  // of a logger's own, before the headings

}  // namespace

using enum LoggerColumn;

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

/// Of two columns that say the same, in UTC and on the spot's clock or in two units, one is used.
void LoggerFile::dropSpares() {
    for (std::size_t i = 0; i < m_columns.size(); ++i) {
        for (std::size_t j = i + 1; j < m_columns.size(); ++j) {
            if (m_columns[i].column != m_columns[j].column || m_columns[i].column == Unused) {
                continue;
            }
            const bool isTime = m_columns[i].column == At || m_columns[i].column == DateOnly ||
                                m_columns[i].column == ClockOnly;
            const bool isFirstUtc = clockOfHeading(m_headings[i]).has_value();
            const bool isSecondUtc = clockOfHeading(m_headings[j]).has_value();
            const bool isUnit = m_columns[i].unit != m_columns[j].unit && m_columns[i].isUnitGiven &&
                                m_columns[j].isUnitGiven;
            if (isTime ? isFirstUtc != isSecondUtc : isUnit) {
                const std::size_t spare = isTime && isFirstUtc ? i : j;
                m_faults.warn(m_rows.line(), "",
                              "The columns " + shownText(m_headings[i]) + " and " + shownText(m_headings[j]) +
                                  " say the same; " + shownText(m_headings[spare]) + " is not used.");
                m_columns[spare] = {};
                m_headings[spare].clear();
            }
        }
    }
}

void LoggerFile::chooseClock() {
    const LoggerColumn column = has(At) ? At : ClockOnly;
    const auto ofFile = clockOfHeading(headingOf(column));
    if (!ofFile) {
        return;
    }
    const std::string says =
        "The column " + shownText(headingOf(column)) + " is on a clock " + shortest(*ofFile) + " h from UTC";
    if (!m_utcOffset_h) {
        m_faults.warn(m_rows.line(), "", says + "; its times are taken as those of the pond's own clock.");
    } else if (*m_utcOffset_h != *ofFile) {
        const double hours = *m_utcOffset_h - *ofFile;
        m_shift = std::chrono::seconds(static_cast<long>(3600.0 * hours));
        m_faults.warn(m_rows.line(), "",
                      says + "; its times are moved by " + shortest(hours) + " h to the pond's own clock.");
    }
}

bool LoggerFile::areHeadingsWhole() {
    bool isWhole = true;
    dropSpares();
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

}  // namespace engine
