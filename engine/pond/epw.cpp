#include "engine/pond/epw.h"

#include "engine/base/text.h"
#include "engine/base/text_file.h"
#include "engine/pond/csv.h"
#include "engine/pond/local_time.h"
#include "engine/pond/pond_keys.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

namespace engine {
namespace {

constexpr int kHeaderLines = 8;

// A month's means of 20 days are about as good as those of all, and a day without 4 of its hours still has
// its lowest and highest. Judgement.
constexpr int kFewestDays = 20;
constexpr int kFewestHours = 24 * kFewestDays;
constexpr int kFewestOfDay = 20;

// From where on a station's weather is hardly the pond's: 2 degrees of latitude are about 1.5 K of the year's
// mean, and 300 m nearly 2 K. Judgement.
constexpr double kFar_deg = 2.0;
constexpr double kFar_m = 300.0;

/// One number of a row, and what stands for it where it is missing.
struct EpwColumn {
    std::string_view name;
    double missing;
    NumberRule rule;
};

// Ranges and codes of the form, from memory; winds by our own rule.
constexpr EpwColumn kAir{"dry_bulb_c", 99.9, {-70.0, 70.0, "degC"}};
constexpr EpwColumn kDew{"dew_point_c", 99.9, {-70.0, 70.0, "degC"}};
constexpr EpwColumn kHumidity{"relative_humidity_percent", 999.0, {0.0, 110.0, "percent"}};
constexpr EpwColumn kWind{"wind_m_per_s", 999.0, kWindRule};
constexpr EpwColumn kSky{"sky_cover_tenths", 99.0, {0.0, 10.0, "tenths"}};

/// Names for the cells that are read, at their places; a row goes on behind the last.
constexpr std::array<std::string_view, 23> kPlaces{
    "year", "month", "day", "hour", "", "", kAir.name, kDew.name, kHumidity.name, "",       "", "", "",
    "",     "",      "",    "",     "", "", "",        "",        kWind.name,     kSky.name};

constexpr std::array<std::string_view, 12> kMonthNames{"January",   "February", "March",    "April",
                                                       "May",       "June",     "July",     "August",
                                                       "September", "October",  "November", "December"};

struct Mean {
    double sum = 0.0;
    int count = 0;

    void add(const std::optional<double>& value) {
        sum += value.value_or(0.0);
        count += value ? 1 : 0;
    }
};

struct DayAir {
    double low = 0.0, high = 0.0;
    int hours = 0;           ///< Of which there is the air
    unsigned hoursSeen = 0;  ///< A bit each
};

struct Month {
    int line = 0;  ///< Of its first row
    std::map<Date, DayAir> days;
    Mean dew, humidity, wind, sky;
};

/// The first cells of a header line, which is no CSV: programs write quotes into it as they like.
std::vector<std::string_view> cellsOf(std::string_view line) {
    constexpr std::size_t kMostRead = 10;
    std::vector<std::string_view> cells;
    while (true) {
        const std::size_t comma = line.find(',');
        std::string_view cell = line.substr(0, comma);
        cell.remove_prefix(std::min(cell.find_first_not_of(" \t"), cell.size()));
        cell = cell.substr(0, cell.find_last_not_of(" \t\r") + 1);
        cells.push_back(cell);
        if (comma == std::string_view::npos || cells.size() == kMostRead) {
            return cells;
        }
        line.remove_prefix(comma + 1);
    }
}

/// A number of the header's first line.
struct HeaderNumber {
    std::size_t cell;
    std::string_view name;
    NumberRule rule;
};

std::optional<double> take(const std::vector<std::string_view>& cells, const HeaderNumber& number,
                           CsvFaults& faults) {
    if (number.cell >= cells.size()) {
        faults.add(1, number.name, "The line LOCATION has no cell for this number.");
        return std::nullopt;
    }
    const auto value = toNumber(cells[number.cell]);
    if (!value || *value < number.rule.low || *value > number.rule.high) {
        faults.add(1, number.name,
                   "This is " + shownText(cells[number.cell]) + ", but must be a number from " +
                       shortest(number.rule.low) + " to " + shortest(number.rule.high) + " " +
                       number.rule.unit + ".");
        return std::nullopt;
    }
    return value;
}

/// Says how far the file's station is from the pond, if it is far.
void warnIfFar(const std::vector<std::string_view>& cells, const Place& place, CsvFaults& faults) {
    const auto latitude = take(cells, {6, "latitude_deg", {-90.0, 90.0, "degrees north"}}, faults);
    const auto longitude = take(cells, {7, "longitude_deg", {-180.0, 180.0, "degrees east"}}, faults);
    const auto height = take(cells, {9, "elevation_m", {-1000.0, 9999.9, "m"}}, faults);
    const auto warn = [&](std::string_view key, double there, double here, const char* unit) {
        faults.warn(1, key,
                    "The file's station is at " + shortest(there) + " " + unit + ", but the pond is at " +
                        shortest(here) + " " + unit + ": its weather may be another.");
    };
    if (latitude && place.latitude_deg && std::abs(*latitude - *place.latitude_deg) > kFar_deg) {
        warn("latitude_deg", *latitude, *place.latitude_deg, "degrees north");
    }
    if (longitude && place.longitude_deg) {
        const double apart = std::abs(*longitude - *place.longitude_deg);
        if (std::min(apart, 360.0 - apart) > kFar_deg) {
            warn("longitude_deg", *longitude, *place.longitude_deg, "degrees east");
        }
    }
    if (height && place.elevation && std::abs(*height - *place.elevation) > kFar_m) {
        warn("elevation_m", *height, *place.elevation, "m");
    }
}

/// Takes the header off; what is left are the rows. Nothing if there is no use in going on.
std::optional<std::string_view> rowsBehindHeader(std::string_view text, const Place& place,
                                                 CsvFaults& faults) {
    constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
    if (text.starts_with(kByteOrderMark)) {
        text.remove_prefix(kByteOrderMark.size());
    }
    for (int line = 1; line <= kHeaderLines; ++line) {
        const std::size_t end = std::min(text.find('\n'), text.size());
        const auto cells = cellsOf(text.substr(0, end));
        text.remove_prefix(std::min(end + 1, text.size()));
        const std::string_view begins = line == 1 ? "LOCATION" : line == kHeaderLines ? "DATA PERIODS" : "";
        if (!begins.empty() && cells.front() != begins) {
            faults.add(line, "",
                       "Line " + std::to_string(line) + " of a typical year in the EPW form begins with " +
                           std::string(begins) + ", but this one with " + shownText(cells.front()) + ".");
            return std::nullopt;
        }
        if (line == 1) {
            warnIfFar(cells, place, faults);
        }
    }
    return text;
}

/// The rows with a heading of our own in the header's last line, so that what is said has the file's lines.
std::string withHeading(std::string_view rows) {
    constexpr std::ptrdiff_t kMostCells = 1000;
    const std::string_view first = rows.substr(std::min(rows.find_first_not_of("\r\n"), rows.size()));
    const auto end = first.begin() + static_cast<std::ptrdiff_t>(std::min(first.find('\n'), first.size()));
    const auto commas = std::min(std::count(first.begin(), end, ','), kMostCells);
    std::string text(kHeaderLines - 1, '\n');
    for (std::size_t i = 0; i < std::max(static_cast<std::size_t>(commas) + 1, kPlaces.size()); ++i) {
        text += i == 0 ? "" : ",";
        text += i < kPlaces.size() ? kPlaces[i] : "";
    }
    return text.append("\n").append(rows);
}

std::optional<double> number(CsvTable& table, const EpwColumn& column) {
    const auto value = toNumber(table.cell(column.name));
    return value == column.missing ? std::nullopt : table.number(column.name, column.rule);
}

/// A whole number of a row.
std::optional<int> whole(CsvTable& table, std::string_view name, double low, double high, CsvFaults& faults) {
    const auto value = table.number(name, {low, high, ""});
    if (value && std::floor(*value) != *value) {
        faults.add(table.line(), name, "The value is " + shortest(*value) + ", but must be a whole number.");
        return std::nullopt;
    }
    return value ? std::optional(static_cast<int>(*value)) : std::nullopt;
}

void takeRow(CsvTable& table, std::array<Month, 12>& months, CsvFaults& faults) {
    const auto year = whole(table, "year", 1800.0, 2200.0, faults);
    const auto month = whole(table, "month", 1.0, 12.0, faults);
    const auto day = whole(table, "day", 1.0, 31.0, faults);
    const auto hour = whole(table, "hour", 1.0, 24.0, faults);
    const auto air = number(table, kAir), dew = number(table, kDew), humidity = number(table, kHumidity),
               wind = number(table, kWind), sky = number(table, kSky);
    if (!year || !month || !day || !hour) {
        return;
    }
    const Date date = std::chrono::year(*year) / *month / *day;
    if (!date.ok()) {
        faults.add(table.line(), "day",
                   "There is no day " + std::to_string(*day) + " in " +
                       std::string(kMonthNames[static_cast<std::size_t>(*month - 1)]) + ".");
        return;
    }
    Month& into = months[static_cast<std::size_t>(*month - 1)];
    into.line = into.line == 0 ? table.line() : into.line;
    DayAir& of = into.days[date];
    if ((of.hoursSeen >> static_cast<unsigned>(*hour) & 1U) != 0) {
        faults.add(table.line(), "hour",
                   "The hour " + std::to_string(*hour) + " of " + formatDate(date) + " comes twice.");
    }
    of.hoursSeen |= 1U << static_cast<unsigned>(*hour);
    if (air) {
        of.low = of.hours == 0 ? *air : std::min(of.low, *air);
        of.high = of.hours == 0 ? *air : std::max(of.high, *air);
        ++of.hours;
    }
    into.dew.add(dew);
    into.humidity.add(humidity);
    into.wind.add(wind);
    into.sky.add(sky);
}

/// The means of a month; says of what it has too little.
class MonthMeans {
public:
    MonthMeans(std::size_t index, int line, CsvFaults& faults)
        : m_name(kMonthNames[index]), m_line(line), m_faults(faults) {}

    /// True unless there are so few that their mean is no month's.
    bool isEnough(int count, int fewest, const char* what, std::string_view column) {
        if (count < fewest) {
            m_faults.add(m_line, column,
                         m_name + " has " + std::to_string(count) + " " + what + ", but must have at least " +
                             std::to_string(fewest) + ".");
        }
        return count >= fewest;
    }

    /// What the mean of a number would be taken for in a pond file's own table.
    Quantity of(const Mean& mean, int fewest, const char* what, const EpwColumn& column,
                const NumberRule& rule, double scale = 1.0) {
        if (!isEnough(mean.count, fewest, what, column.name)) {
            return rule.low;
        }
        const double value = scale * mean.sum / mean.count;
        if (value < rule.low || value > rule.high) {
            m_faults.add(m_line, column.name,
                         "The mean of " + m_name + " is " + fixed(value, 1) + " " + rule.unit +
                             ", but must be from " + shortest(rule.low) + " to " + shortest(rule.high) + " " +
                             rule.unit + ".");
        }
        return value;
    }

private:
    std::string m_name;
    int m_line;
    CsvFaults& m_faults;
};

/// @param line  Of the month's first row, or of the file's last where the month has none.
ClimateMonth meansOf(std::size_t index, const Month& month, int line, CsvFaults& faults) {
    constexpr const char* kHours = "hours with this number";
    constexpr const char* kDays = "days with 20 hours of it";
    constexpr double kPercentOfTenth = 10.0;
    ClimateMonth out;
    out.month = Quantity(static_cast<double>(index + 1));
    MonthMeans means(index, line, faults);
    if (!means.isEnough(static_cast<int>(month.days.size()), kFewestDays, "days", "")) {
        return out;
    }
    Mean low, high;
    for (const auto& [date, day] : month.days) {
        if (day.hours >= kFewestOfDay) {
            low.add(day.low);
            high.add(day.high);
        }
    }
    out.airMin = means.of(low, kFewestDays, kDays, kAir, kAirTemperatureRule);
    if (high.count >= kFewestDays) {  // one sentence is enough
        out.airMax = means.of(high, kFewestDays, kDays, kAir, kAirTemperatureRule);
    }
    if (month.dew.count < kFewestHours && month.humidity.count >= kFewestHours) {
        out.humidity_percent = Quantity(std::min(month.humidity.sum / month.humidity.count, 100.0));
    } else {
        out.dewPoint = means.of(month.dew, kFewestHours, kHours, kDew, kDewPointRule);
    }
    out.wind = means.of(month.wind, kFewestHours, kHours, kWind, kWindRule);
    out.cloud_percent = means.of(month.sky, kFewestHours, kHours, kSky, kPercentRule, kPercentOfTenth);
    return out;
}

}  // namespace

std::vector<ClimateMonth> readEpw(std::string_view text, const std::string& file, const Place& place,
                                  Diagnostics& diagnostics) {
    std::vector<ClimateMonth> out;
    CsvFaults faults(file);
    if (const auto rows = rowsBehindHeader(text, place, faults)) {
        const std::string headed = withHeading(*rows);
        CsvTable table(headed, faults);
        std::array<Month, 12> months;
        if (table.readHeader()) {
            while (table.nextRow()) {
                takeRow(table, months, faults);
            }
            const bool isSound = !faults.any();
            for (std::size_t i = 0; i < months.size() && isSound; ++i) {
                const Month& month = months[i];
                out.push_back(meansOf(i, month, month.line > 0 ? month.line : table.line(), faults));
            }
        }
    }
    for (Diagnostic& one : faults.take()) {
        diagnostics.push_back(std::move(one));
    }
    return out;
}

}  // namespace engine
