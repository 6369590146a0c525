#include "engine/intake/pasted_weather.h"

#include "engine/base/text.h"
#include "engine/base/text_file.h"
#include "engine/base/units.h"
#include "engine/intake/first_pond.h"
#include "engine/intake/pasted_day.h"
#include "engine/intake/pasted_summary.h"
#include "engine/pond/local_time.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

namespace engine {
namespace {

constexpr std::size_t kMostLines = 400;       // of a forecast with a line for each number
constexpr std::size_t kLongestRecord = 600;   // characters; what is longer is prose
constexpr double kHotterIsFahrenheit = 48.0;  // no forecast high is that hot in degC
constexpr double kFasterIsKilometres = 14.0;  // m/s as a day's mean would be a storm
constexpr std::size_t kMostNamed = 5;         // records that are not taken and said one by one
constexpr std::chrono::days kLongestGap{3};   // that is filled by the day before
constexpr double kMillimetrePerInch = 25.4;

struct Line {
    int number;
    std::string text;
};

std::vector<Line> linesOf(std::string_view text) {
    std::vector<Line> lines;
    for (int number = 1; !text.empty() && lines.size() < kMostLines; ++number) {
        const std::size_t end = std::min(text.find('\n'), text.size());
        std::string line(text.substr(0, std::min(end, kLongestRecord)));
        line.erase(std::remove(line.begin(), line.end(), '\r'), line.end());
        if (line.find_first_not_of(" \t;,|") != std::string::npos) {
            lines.push_back({number, std::move(line)});
        }
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return lines;
}

/// The cells of a line where one sign parts them: tab, semicolon, bar, or a comma where lines have several.
std::vector<std::string> cellsOf(const std::string& line, char separator) {
    std::vector<std::string> cells(1);
    for (const char c : line) {
        if (c == separator) {
            cells.emplace_back();
        } else if (c != '"' && !(c == ' ' && cells.back().empty())) {
            cells.back() += c;
        }
    }
    return cells;
}

char separatorOfTable(const std::string& heading) {
    for (const char candidate : {'\t', ';', '|', ','}) {
        if (std::count(heading.begin(), heading.end(), candidate) >= 2) {
            return candidate;
        }
    }
    return '\0';
}

/// What a file says of its units, and the days in it.
struct Pasted {
    std::vector<PastedDay> days;
    std::optional<TemperatureUnit> temperature;
    std::optional<WindUnit> wind;
    bool isRainInInches = false;
};

/// The days of a table with headings; nothing if the first line is none.
std::optional<Pasted> tableOf(const std::vector<Line>& lines) {
    const char separator = separatorOfTable(lines.front().text);
    if (separator == '\0') {
        return std::nullopt;
    }
    std::vector<PastedColumn> columns;
    Pasted pasted;
    for (const std::string& heading : cellsOf(lines.front().text, separator)) {
        columns.push_back(columnOfHeading(heading));
        if (columns.back() == PastedColumn::High || columns.back() == PastedColumn::Low) {
            const auto unit = temperatureUnitIn(heading);
            pasted.temperature = unit ? unit : pasted.temperature;
        } else if (columns.back() == PastedColumn::Wind) {
            pasted.wind = windUnitIn(heading);
        } else if (columns.back() == PastedColumn::Rain) {
            pasted.isRainInInches =
                heading.find("in)") != std::string::npos || heading.find("inch") != std::string::npos;
        }
    }
    if (std::find(columns.begin(), columns.end(), PastedColumn::High) == columns.end()) {
        return std::nullopt;
    }
    for (std::size_t i = 1; i < lines.size(); ++i) {
        std::vector<std::string> cells = cellsOf(lines[i].text, separator);
        cells.resize(columns.size());
        pasted.days.push_back(dayOfCells(cells, columns, lines[i].number));
    }
    return pasted;
}

/// The days of free text: each begins with a line that names a day; where none does, each line is one.
Pasted recordsOf(const std::vector<Line>& lines, Date near, bool dayFirst) {
    std::vector<Line> records;
    const bool hasDays = std::any_of(lines.begin(), lines.end(), [&](const Line& line) {
        return dayOfLine(line.text, near, dayFirst).isThere();
    });
    for (const Line& line : lines) {
        if (!hasDays || dayOfLine(line.text, near, dayFirst).isThere()) {
            records.push_back(line);
        } else if (!records.empty() && records.back().text.size() < kLongestRecord) {
            records.back().text += " " + line.text;
        }
    }
    Pasted pasted;
    for (const Line& record : records) {
        pasted.days.push_back(dayOfWords(record.text, record.number));
    }
    return pasted;
}

/// Brings the records into degC, m/s and mm, onto days one after the other.
class OrderedDays {
public:
    OrderedDays(Pasted pasted, Date firstDay, UnitSystem units)
        : m_pasted(std::move(pasted)), m_first(std::chrono::local_days(firstDay)), m_units(units) {}

    PastedWeather read() {
        chooseUnits();
        for (PastedDay& day : m_pasted.days) {
            day.day = dayOfLine(day.text, Date(m_first), m_units == UnitSystem::Metric);
            take(day);
        }
        fill();
        saySummary();
        return std::move(m_out);
    }

private:
    void chooseUnits() {
        double hottest = -100.0, fastest = 0.0;
        for (PastedDay& day : m_pasted.days) {
            if (!day.high && !day.low && day.temperatures.size() == 3 && !day.wind) {
                day.wind = day.temperatures.back();  // high, low and wind without a word between them
                day.temperatures.pop_back();
            }
            m_pasted.temperature = m_pasted.temperature ? m_pasted.temperature : day.temperatureUnit;
            m_pasted.wind = m_pasted.wind ? m_pasted.wind : day.windUnit;
            hottest = std::max({hottest, day.high.value_or(-100.0), day.low.value_or(-100.0)});
            for (const double one : day.temperatures) {
                hottest = std::max(hottest, one);
            }
            fastest = std::max(fastest, day.wind.value_or(0.0));
        }
        const bool isUs = m_units == UnitSystem::Us;
        if (!m_pasted.temperature) {
            m_pasted.temperature = isUs || hottest > kHotterIsFahrenheit ? TemperatureUnit::Fahrenheit
                                                                         : TemperatureUnit::Celsius;
        }
        if (!m_pasted.wind) {
            m_counts.isWindUnitTaken = fastest > 0.0;
            m_pasted.wind = isUs || m_pasted.temperature == TemperatureUnit::Fahrenheit ? WindUnit::Mile
                            : fastest > kFasterIsKilometres ? WindUnit::KilometrePerHour
                                                            : WindUnit::MetrePerSecond;
        }
    }

    [[nodiscard]] double celsius(double value) const {
        const bool isFahrenheit = m_pasted.temperature == TemperatureUnit::Fahrenheit;
        return std::round(100.0 * (isFahrenheit ? (value - 32.0) * 5.0 / 9.0 : value)) / 100.0;
    }
    [[nodiscard]] double metresPerSecond(double value) const {
        constexpr std::array kFactors{1.0, 1.0 / 3.6, kMetrePerMile / kHour, 1852.0 / kHour};
        return std::round(100.0 * value * kFactors[static_cast<std::size_t>(*m_pasted.wind)]) / 100.0;
    }

    /// Which day a record is about; nothing if it names none and none can follow.
    [[nodiscard]] std::chrono::local_days dateOf(const PastedDate& day) const {
        const auto next = m_days.empty() ? m_first : m_days.rbegin()->first + std::chrono::days(1);
        if (day.date) {
            return std::chrono::local_days(*day.date);
        }
        if (day.weekday) {
            // The next day of that name from the evening before the first day on; of a night, its own day.
            auto date = m_days.empty() ? m_first - std::chrono::days(1) : m_days.rbegin()->first;
            while (std::chrono::weekday(date).c_encoding() != *day.weekday) {
                date += std::chrono::days(1);
            }
            return date;
        }
        return day.fromFirst ? m_first - std::chrono::days(1) + std::chrono::days(*day.fromFirst) : next;
    }

    void take(const PastedDay& from) {
        std::optional<double> high = from.high, low = from.low;
        if (!from.temperatures.empty()) {
            const auto [least, most] =
                std::minmax_element(from.temperatures.begin(), from.temperatures.end());
            if (from.temperatures.size() >= 2) {
                high = high ? high : *most;
                low = low ? low : *least;
            } else if (from.day.isNight && !low) {
                low = *most;
            } else if (!from.day.isNight && !high) {
                high = *most;
            }
        }
        if (!high && !low) {
            if (m_counts.firstLeft.size() < kMostNamed) {
                m_counts.firstLeft.push_back("line " + std::to_string(from.line) + ", " +
                                             shownText(from.text));
            }
            ++m_counts.left;
            return;
        }
        const auto date = dateOf(from.day);
        if (from.day.isNight) {
            if (low) {
                m_nightLows[date + std::chrono::days(1)] = celsius(*low);
            }
            return;
        }
        WeatherDay day;
        day.date = Date(date);
        if (high) {
            day.airMax = Quantity(celsius(*high));
        }
        if (low) {
            day.airMin = Quantity(celsius(*low));
        }
        if (from.wind || from.windByWord) {
            day.wind = Quantity(from.wind ? metresPerSecond(*from.wind) : *from.windByWord);
        }
        const auto share = [](const std::optional<double>& value) {
            return value && *value >= 0.0 && *value <= 100.0 ? MaybeQuantity(*value) : std::nullopt;
        };
        day.humidity_percent = share(from.humidity_percent);
        day.cloud_percent = share(from.cloud_percent);
        if (from.rain && *from.rain > 0.0) {
            const bool isInches = from.isRainInInches || m_pasted.isRainInInches;
            day.rain_mm =
                Quantity(std::round(10.0 * *from.rain * (isInches ? kMillimetrePerInch : 1.0)) / 10.0);
        }
        m_counts.hasRainChance = m_counts.hasRainChance || from.hasRainChance;
        m_counts.twice += m_days.contains(date) ? 1 : 0;
        m_days[date] = day;
    }

    void fill() {
        for (auto& [date, day] : m_days) {
            const auto night = m_nightLows.find(date);
            if (!day.airMin && night != m_nightLows.end()) {
                day.airMin = Quantity(night->second);
            }
            if (!day.airMin) {
                fillOne(day.airMin, *day.airMax - kUsualSpan, m_counts.lows);
            }
            if (!day.airMax) {
                fillOne(day.airMax, *day.airMin + kUsualSpan, m_counts.highs);
            }
            if (*day.airMin > *day.airMax) {
                std::swap(day.airMin, day.airMax);
            }
            fillOne(day.wind, windOf(FirstAnswers::Wind::Light), m_counts.winds);
            fillOne(day.cloud_percent, cloudOf(FirstAnswers::Sky::Mixed), m_counts.clouds);
            fillOne(day.humidity_percent, kUsualHumidity_percent, m_counts.humidities);
            if (!m_out.days.empty()) {
                const std::chrono::local_days last(m_out.days.back().date);
                if (date - last > kLongestGap + std::chrono::days(1)) {
                    m_out.fault = "Between " + formatDate(m_out.days.back().date) + " and " +
                                  formatDate(day.date) + " more than " + std::to_string(kLongestGap.count()) +
                                  " days are missing.";
                    return;
                }
                for (auto gap = last + std::chrono::days(1); gap < date; gap += std::chrono::days(1)) {
                    m_out.days.push_back(guessedFrom(m_out.days.back(), Date(gap)));
                    ++m_counts.gaps;
                }
            }
            m_out.days.push_back(day);
        }
    }

    static WeatherDay guessedFrom(WeatherDay day, Date date) {
        day.date = date;
        for (MaybeQuantity* value :
             {&day.airMin, &day.airMax, &day.wind, &day.cloud_percent, &day.humidity_percent, &day.rain_mm}) {
            if (*value) {
                (*value)->confidence = Confidence::Guessed;
                (*value)->source = "the day before";
            }
        }
        return day;
    }

    static void fillOne(MaybeQuantity& value, double usual, int& count) {
        if (!value) {
            value = Quantity(usual);
            value->confidence = Confidence::Guessed;
            value->source = "not in the forecast";
            ++count;
        }
    }

    void saySummary() {
        if (m_out.days.empty() || !m_out.fault.empty()) {
            m_out.days.clear();
            m_out.fault = m_out.fault.empty()
                              ? "No line with the high or the low of a day was found, such as "
                                "\"Sat 14 Jun, 91/70 F, wind 8 mph, sunny\"."
                              : m_out.fault;
            return;
        }
        m_counts.temperature = m_pasted.temperature;
        m_counts.wind = m_pasted.wind;
        m_out.said = pastedSentences(m_out.days, m_counts, m_units);
    }

    Pasted m_pasted;
    std::chrono::local_days m_first;
    UnitSystem m_units;
    PastedWeather m_out;
    std::map<std::chrono::local_days, WeatherDay> m_days;
    std::map<std::chrono::local_days, double> m_nightLows;
    PastedCounts m_counts;
};

}  // namespace

PastedWeather readPastedWeather(std::string_view text, Date firstDay, UnitSystem units) {
    if (const auto fault = findTextFault(text)) {
        return {{}, {}, fault->sentence};
    }
    const std::vector<Line> lines = linesOf(text);
    if (lines.empty()) {
        return {{}, {}, "There is no text."};
    }
    const auto table = tableOf(lines);
    return OrderedDays(table ? *table : recordsOf(lines, firstDay, units == UnitSystem::Metric), firstDay,
                       units)
        .read();
}

}  // namespace engine
