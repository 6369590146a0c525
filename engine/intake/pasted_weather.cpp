#include "engine/intake/pasted_weather.h"

#include "engine/base/text.h"
#include "engine/base/text_file.h"
#include "engine/base/units.h"
#include "engine/intake/first_pond.h"
#include "engine/intake/pasted_day.h"
#include "engine/pond/local_time.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

namespace engine {
namespace {

constexpr std::size_t kMostLines = 400;       // of a forecast with a line for each number
constexpr std::size_t kLongestRecord = 600;   // characters; what is longer is prose
constexpr double kUsualSpan = 11.0;           // degC between a day's high and low, judgement
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
Pasted recordsOf(const std::vector<Line>& lines, int year, bool dayFirst) {
    std::vector<Line> records;
    const bool hasDays = std::any_of(lines.begin(), lines.end(), [&](const Line& line) {
        return dayOfLine(line.text, year, dayFirst).isThere();
    });
    for (const Line& line : lines) {
        if (!hasDays || dayOfLine(line.text, year, dayFirst).isThere()) {
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
            day.day =
                dayOfLine(day.text, static_cast<int>(Date(m_first).year()), m_units == UnitSystem::Metric);
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
            m_isWindUnitTaken = fastest > 0.0;
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
            if (m_left.size() < kMostNamed) {
                m_left.push_back("line " + std::to_string(from.line) + ", " + shownText(from.text));
            }
            ++m_leftCount;
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
        m_hasRainChance = m_hasRainChance || from.hasRainChance;
        m_twice += m_days.contains(date) ? 1 : 0;
        m_days[date] = day;
    }

    void fill() {
        for (auto& [date, day] : m_days) {
            const auto night = m_nightLows.find(date);
            if (!day.airMin && night != m_nightLows.end()) {
                day.airMin = Quantity(night->second);
            }
            if (!day.airMin) {
                day.airMin = Quantity(*day.airMax - kUsualSpan);
                ++m_lowsFilled;
            }
            if (!day.airMax) {
                day.airMax = Quantity(*day.airMin + kUsualSpan);
                ++m_highsFilled;
            }
            if (*day.airMin > *day.airMax) {
                std::swap(day.airMin, day.airMax);
            }
            fillOne(day.wind, windOf(FirstAnswers::Wind::Light), m_windsFilled);
            fillOne(day.cloud_percent, cloudOf(FirstAnswers::Sky::Mixed), m_cloudsFilled);
            fillOne(day.humidity_percent, kUsualHumidity_percent, m_humiditiesFilled);
            if (!m_out.days.empty()) {
                const std::chrono::local_days last(m_out.days.back().date);
                if (date - last > kLongestGap + std::chrono::days(1)) {
                    m_out.fault = "Between " + formatDate(m_out.days.back().date) + " and " +
                                  formatDate(day.date) + " more than " + std::to_string(kLongestGap.count()) +
                                  " days are missing.";
                    return;
                }
                for (auto gap = last + std::chrono::days(1); gap < date; gap += std::chrono::days(1)) {
                    m_out.days.push_back(m_out.days.back());
                    m_out.days.back().date = Date(gap);
                    ++m_gapsFilled;
                }
            }
            m_out.days.push_back(day);
        }
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
        const auto& days = m_out.days;
        const WeatherDay& day = days.front();
        const auto say = [this](const std::string& sentence) { m_out.said.push_back(sentence); };
        const auto number = [](double value) { return shortest(value); };
        say((days.size() == 1 ? "One day of weather is"
                              : std::to_string(days.size()) + " days of weather are") +
            " taken, from " + formatDate(day.date) + " to " + formatDate(days.back().date) +
            "; the first: " + number(*day.airMin) + " to " + number(*day.airMax) + " degC, wind " +
            number(*day.wind) + " m/s, cloud " + number(*day.cloud_percent) + " %.");
        constexpr std::array kWinds{"m/s", "km/h", "mph", "knots"};
        say(std::string("Temperatures are read as ") +
            (m_pasted.temperature == TemperatureUnit::Fahrenheit ? "degF" : "degC") + ", wind as " +
            kWinds[static_cast<std::size_t>(*m_pasted.wind)] +
            (m_isWindUnitTaken ? ", which the text does not say." : "."));
        const auto filled = [&](int count, const char* what, const std::string& taken) {
            if (count > 0) {
                say(std::string(what) + " missing on " + std::to_string(count) +
                    (count == 1 ? " day: " : " days: ") + taken + " taken (judgement).");
            }
        };
        filled(m_humiditiesFilled, "Humidity is", number(kUsualHumidity_percent) + " % is");
        filled(m_windsFilled, "Wind is", number(windOf(FirstAnswers::Wind::Light)) + " m/s is");
        filled(m_cloudsFilled, "The sky is", number(cloudOf(FirstAnswers::Sky::Mixed)) + " % of cloud is");
        filled(m_lowsFilled, "The low is", number(kUsualSpan) + " degC under the high is");
        filled(m_highsFilled, "The high is", number(kUsualSpan) + " degC above the low is");
        filled(m_gapsFilled, "All weather is", "the day before is");
        if (m_twice > 0) {
            say("A day comes twice; the later line is taken.");
        }
        if (m_hasRainChance) {
            say("Chances of rain in percent are not taken, since they do not say how much falls.");
        }
        if (m_leftCount > 0) {
            std::string list;
            for (const std::string& one : m_left) {
                list += (list.empty() ? "" : "; ") + one;
            }
            say("Not taken, since no temperature stands there: " + list +
                (m_leftCount > static_cast<int>(m_left.size()) ? " and more." : "."));
        }
        say("Forecasts often give the day's strongest wind; the model wants its mean. Put lower numbers in "
            "where "
            "that is so.");
    }

    Pasted m_pasted;
    std::chrono::local_days m_first;
    UnitSystem m_units;
    PastedWeather m_out;
    std::map<std::chrono::local_days, WeatherDay> m_days;
    std::map<std::chrono::local_days, double> m_nightLows;
    std::vector<std::string> m_left;
    bool m_isWindUnitTaken = false, m_hasRainChance = false;
    int m_leftCount = 0, m_twice = 0, m_gapsFilled = 0, m_lowsFilled = 0, m_highsFilled = 0,
        m_windsFilled = 0, m_cloudsFilled = 0, m_humiditiesFilled = 0;
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
    return OrderedDays(table
                           ? *table
                           : recordsOf(lines, static_cast<int>(firstDay.year()), units == UnitSystem::Metric),
                       firstDay, units)
        .read();
}

}  // namespace engine
