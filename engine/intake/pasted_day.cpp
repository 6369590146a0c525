#include "engine/intake/pasted_day.h"

#include "engine/base/text.h"
#include "engine/intake/sky_words.h"

#include <algorithm>
#include <array>
#include <regex>

namespace engine {
namespace {

std::string smallOf(std::string_view text) {
    std::string small;
    for (const char c : text) {
        small += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c == '\t' ? ' ' : c;
    }
    return small;
}

double numberOf(std::string text) {
    std::replace(text.begin(), text.end(), ',', '.');
    return toNumber(text.starts_with('+') ? text.substr(1) : text).value_or(0.0);
}

constexpr std::array<std::string_view, 7> kWeekdays{"sun", "mon", "tue", "wed", "thu", "fri", "sat"};
constexpr std::array<std::string_view, 12> kMonths{"jan", "feb", "mar", "apr", "may", "jun",
                                                   "jul", "aug", "sep", "oct", "nov", "dec"};

int wholeOf(const std::ssub_match& part) {
    return static_cast<int>(toNumber(part.str()).value_or(0.0));
}

std::optional<Date> dateFrom(int year, int month, int day) {
    const Date date{std::chrono::year(year < 100 ? 2000 + year : year),
                    std::chrono::month(static_cast<unsigned>(std::max(month, 0))),
                    std::chrono::day(static_cast<unsigned>(std::max(day, 0)))};
    return date.ok() ? std::optional(date) : std::nullopt;
}

/// Where no year is written, that which brings the date nearest to a day.
std::optional<Date> dateFrom(const std::ssub_match& year, int month, int day, Date near) {
    if (year.matched) {
        return dateFrom(wholeOf(year), month, day);
    }
    std::optional<Date> best;
    const auto apart = [near](Date date) {
        return std::chrono::abs(std::chrono::sys_days(date) - std::chrono::sys_days(near));
    };
    for (const int by : {-1, 0, 1}) {
        const auto date = dateFrom(static_cast<int>(near.year()) + by, month, day);
        best = date && (!best || apart(*date) < apart(*best)) ? date : best;
    }
    return best;
}

std::optional<Date> writtenDate(const std::string& small, Date near, bool dayFirst) {
    static const std::regex kIso("^\\W*(?:[a-z]+,? )?(\\d{4})-(\\d{1,2})-(\\d{1,2})");
    static const std::regex kSlashed(
        "^\\W*(?:[a-z]+,? )?(\\d{1,2})[/.](\\d{1,2})(?:[/.](\\d{2,4}))?(?=[\\s,;|.]|$)");
    static const std::regex kMonthFirst(
        "^\\W*(?:[a-z]+,? )?(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*\\.? (\\d{1,2})\\b(?:,? "
        "(20\\d{2})\\b)?");
    static const std::regex kDayFirst(
        "^\\W*(?:[a-z]+,? )?(\\d{1,2})\\.? (jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*"
        "(?:,? (20\\d{2})\\b)?");
    std::smatch m;
    const auto monthOf = [](const std::string& name) {
        return static_cast<int>(std::find(kMonths.begin(), kMonths.end(), name) - kMonths.begin()) + 1;
    };
    if (std::regex_search(small, m, kIso)) {
        return dateFrom(wholeOf(m[1]), wholeOf(m[2]), wholeOf(m[3]));
    }
    if (std::regex_search(small, m, kMonthFirst)) {
        return dateFrom(m[3], monthOf(m[1]), wholeOf(m[2]), near);
    }
    if (std::regex_search(small, m, kDayFirst)) {
        return dateFrom(m[3], monthOf(m[2]), wholeOf(m[1]), near);
    }
    if (std::regex_search(small, m, kSlashed)) {
        const int first = wholeOf(m[1]), second = wholeOf(m[2]);
        const bool isDayFirst = first > 12 || (dayFirst && second <= 12);
        return dateFrom(m[3], isDayFirst ? second : first, isDayFirst ? first : second, near);
    }
    return std::nullopt;
}

/// Takes the first match of a pattern out of a text.
std::optional<std::smatch> cut(std::string& text, const std::regex& pattern, std::string& kept) {
    std::smatch match;
    kept = text;
    if (!std::regex_search(kept, match, pattern)) {
        return std::nullopt;
    }
    text = match.prefix().str() + " " + match.suffix().str();
    return match;
}

/// The mean of "5 to 10", or of one number alone.
double meanOf(const std::smatch& match, std::size_t first) {
    const double low = numberOf(match[first]);
    return match[first + 1].matched ? 0.5 * (low + numberOf(match[first + 1])) : low;
}

constexpr const char* kRange = "(\\d+(?:[.,]\\d+)?)(?:\\s*(?:-|to|\u2013)\\s*(\\d+(?:[.,]\\d+)?))?";

void takeWind(std::string& text, PastedDay& day) {
    static const std::regex kUnit(std::string(kRange) + "\\s*(mph|mi/h|km/h|kmh|kph|m/s|kts?|knots|kn)\\b");
    static const std::regex kWord(std::string("\\bwinds?[^\\d]{0,25}") + kRange);
    static const std::regex kDirection(std::string("\\b[nesw]{1,3}\\s+") + kRange);
    static const std::regex kGusts(
        "gust\\w*[^\\d]{0,20}\\d+(?:[.,]\\d+)?\\s*(?:mph|km/h|kmh|kph|m/s|kts?|knots)?");
    std::string kept;
    while (cut(text, kGusts, kept)) {
    }
    if (const auto match = cut(text, kUnit, kept)) {
        day.wind = meanOf(*match, 1);
        day.windUnit = windUnitIn((*match)[3].str());
        return;
    }
    auto match = cut(text, kWord, kept);
    match = match ? match : cut(text, kDirection, kept);
    if (match) {
        day.wind = meanOf(*match, 1);
    }
}

void takeShares(std::string& text, PastedDay& day) {
    static const std::regex kHumidity(
        "(?:humidity|hum|rh)\\W{0,3}(\\d+(?:[.,]\\d+)?)\\s*%?|(\\d+)\\s*%\\s*(?:humidity|rh)");
    static const std::regex kCloud(
        "(?:cloud cover|cloudiness|sky cover|clouds?)\\W{0,3}(\\d+)\\s*%|(\\d+)\\s*%\\s*cloud");
    static const std::regex kRain("(\\d+(?:[.,]\\d+)?)\\s*(mm|inch|in\\b|\")");
    static const std::regex kChance("\\d+\\s*%");
    std::string kept;
    const auto value = [](const std::smatch& match) {
        return numberOf(match[1].matched ? match[1].str() : match[2].str());
    };
    if (const auto match = cut(text, kHumidity, kept)) {
        day.humidity_percent = value(*match);
    }
    if (const auto match = cut(text, kCloud, kept)) {
        day.cloud_percent = value(*match);
    }
    if (const auto match = cut(text, kRain, kept)) {
        day.rain = numberOf((*match)[1]);
        day.isRainInInches = (*match)[2].str() != "mm";
    }
    while (cut(text, kChance, kept)) {
        day.hasRainChance = true;
    }
}

void takeTemperatures(std::string& text, PastedDay& day) {
    static const std::regex kHigh(
        "\\b(?:high|hi|max|h)\\b\\W{0,3}(?:of|near|around|about)?\\W{0,3}(-?\\d+(?:[.,]\\d+)?)");
    static const std::regex kLow(
        "\\b(?:low|lo|min|l)\\b\\W{0,3}(?:of|near|around|about)?\\W{0,3}(-?\\d+(?:[.,]\\d+)?)");
    static const std::regex kNumber("-?\\d+(?:[.,]\\d+)?");
    std::string kept;
    if (const auto match = cut(text, kHigh, kept)) {
        day.high = numberOf((*match)[1]);
    }
    if (const auto match = cut(text, kLow, kept)) {
        day.low = numberOf((*match)[1]);
    }
    // A dash between digits parts a high and a low and is no minus.
    static const std::regex kParting("(\\d)\\s*[-\u2013/]\\s*(?=\\d)");
    text = std::regex_replace(text, kParting, "$1 ");
    for (auto it = std::sregex_iterator(text.begin(), text.end(), kNumber); it != std::sregex_iterator();
         ++it) {
        day.temperatures.push_back(numberOf(it->str()));
    }
}

constexpr const char* kDayWord =
    "^\\W*(sun(?:day)?|mon(?:day)?|tue(?:s|sday)?|wed(?:nesday)?|thu(?:rs|rsday|r)?|fri(?:day)?|sat(?:urday)?"
    "|"
    "today|tonight|tomorrow|overnight)\\b";

/// Without the day, whose name and numbers are none of the weather.
std::string withoutDay(const std::string& small) {
    static const std::regex kWord(kDayWord);
    static const std::regex kDate(
        "^\\W*(?:\\d{4}-\\d{1,2}-\\d{1,2}|\\d{1,2}[/.]\\d{1,2}(?:[/.]\\d{2,4})?(?=[\\s,;|.]|$)|"
        "(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*\\.? \\d{1,2}\\b(?:,? 20\\d{2}\\b)?|"
        "\\d{1,2}\\.? (?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*(?:,? 20\\d{2}\\b)?)");
    constexpr Date kAnyDay{std::chrono::year(2000), std::chrono::June, std::chrono::day(1)};
    const bool isDate = writtenDate(small, kAnyDay, true) || writtenDate(small, kAnyDay, false);
    const auto first = std::regex_constants::format_first_only;
    const std::string left = std::regex_replace(small, kWord, "", first);
    return isDate ? std::regex_replace(left, kDate, "", first) : left;
}

}  // namespace

std::optional<TemperatureUnit> temperatureUnitIn(std::string_view text) {
    static const std::regex kFahrenheit(
        "(?:\u00b0\\s*f|\\d\\s*f|\\bdeg ?f|\\(f\\)|\\[f\\]|, ?f\\b|fahrenheit)\\b|\\(f\\)");
    static const std::regex kCelsius(
        "(?:\u00b0\\s*c|\\d\\s*c|\\bdeg ?c|\\(c\\)|\\[c\\]|, ?c\\b|celsius)\\b|\\(c\\)|_c\\b");
    const std::string small = smallOf(text);
    if (std::regex_search(small, kFahrenheit)) {
        return TemperatureUnit::Fahrenheit;
    }
    return std::regex_search(small, kCelsius) ? std::optional(TemperatureUnit::Celsius) : std::nullopt;
}

std::optional<WindUnit> windUnitIn(std::string_view text) {
    const std::string small = smallOf(text);
    const auto has = [&small](const char* word) { return small.find(word) != std::string::npos; };
    if (has("mph") || has("mi/h")) {
        return WindUnit::Mile;
    }
    if (has("km/h") || has("kmh") || has("kph")) {
        return WindUnit::KilometrePerHour;
    }
    if (has("m/s") || has("m_per_s")) {
        return WindUnit::MetrePerSecond;
    }
    return has("kt") || has("knot") || has("kn") ? std::optional(WindUnit::Knot) : std::nullopt;
}

PastedColumn columnOfHeading(std::string_view heading) {
    const std::string small = smallOf(heading);
    const auto has = [&small](std::initializer_list<const char*> words) {
        return std::any_of(words.begin(), words.end(),
                           [&small](const char* word) { return small.find(word) != std::string::npos; });
    };
    if (has({"humid", "rh"})) {
        return PastedColumn::Humidity;
    }
    if (has({"chance", "pop", "prob"})) {
        return PastedColumn::RainChance;
    }
    if (has({"rain", "precip"})) {
        return small.find('%') != std::string::npos ? PastedColumn::RainChance : PastedColumn::Rain;
    }
    if (has({"wind"}) && !has({"gust", "dir"})) {
        return PastedColumn::Wind;
    }
    if (has({"high", "max", "hi "}) || small == "hi") {
        return PastedColumn::High;
    }
    if (has({"low", "min", "lo "}) || small == "lo") {
        return PastedColumn::Low;
    }
    if (has({"cloud", "cover"})) {
        return PastedColumn::Cloud;
    }
    if (has({"sky", "weather", "condition", "outlook", "forecast", "description"})) {
        return PastedColumn::Sky;
    }
    return has({"date", "day"}) ? PastedColumn::Day : PastedColumn::Other;
}

PastedDate dayOfLine(std::string_view line, Date near, bool dayFirst) {
    const std::string small = smallOf(line);
    static const std::regex kWord(std::string(kDayWord) + "(.{0,8})");
    PastedDate day;
    day.date = writtenDate(small, near, dayFirst);
    std::smatch match;
    if (std::regex_search(small, match, kWord)) {
        const std::string word = match[1].str();
        day.isNight =
            word == "tonight" || word == "overnight" || match[2].str().find("night") != std::string::npos;
        if (word == "today" || word == "tonight" || word == "overnight") {
            day.fromFirst = 0;
        } else if (word == "tomorrow") {
            day.fromFirst = 1;
        } else {
            day.weekday = static_cast<unsigned>(
                std::find(kWeekdays.begin(), kWeekdays.end(), word.substr(0, 3)) - kWeekdays.begin());
        }
    }
    return day;
}

PastedDay dayOfWords(std::string_view text, int line) {
    PastedDay day;
    day.line = line;
    day.text = text;
    std::string left = withoutDay(smallOf(text));
    day.temperatureUnit = temperatureUnitIn(left);
    day.windByWord = windOfWords(left);
    const std::optional<double> sky = cloudOfWords(left);
    takeWind(left, day);
    takeShares(left, day);
    takeTemperatures(left, day);
    day.cloud_percent = day.cloud_percent ? day.cloud_percent : sky;
    return day;
}

PastedDay dayOfCells(const std::vector<std::string>& cells, const std::vector<PastedColumn>& columns,
                     int line) {
    static const std::regex kNumber("-?\\d+(?:[.,]\\d+)?");
    PastedDay day;
    day.line = line;
    for (std::size_t i = 0; i < cells.size(); ++i) {
        day.text += (i == 0 ? "" : " ") + cells[i];
        const std::string small = smallOf(cells[i]);
        std::smatch match;
        const bool hasNumber = std::regex_search(small, match, kNumber);
        const auto value = [&] { return hasNumber ? std::optional(numberOf(match.str())) : std::nullopt; };
        switch (columns[i]) {
            case PastedColumn::High:
                day.high = value();
                day.temperatureUnit = temperatureUnitIn(small);
                break;
            case PastedColumn::Low:
                day.low = value();
                break;
            case PastedColumn::Wind: {
                std::string wind = "wind " + small;
                day.windByWord = windOfWords(small);
                takeWind(wind, day);
                break;
            }
            case PastedColumn::Sky:
                day.cloud_percent = cloudOfWords(small);
                break;
            case PastedColumn::Cloud:
                day.cloud_percent = hasNumber ? value() : cloudOfWords(small);
                break;
            case PastedColumn::Humidity:
                day.humidity_percent = value();
                break;
            case PastedColumn::Rain:
                day.rain = value();
                day.isRainInInches =
                    small.find("in") != std::string::npos || small.find('"') != std::string::npos;
                break;
            case PastedColumn::RainChance:
                day.hasRainChance = true;
                break;
            case PastedColumn::Day:
            case PastedColumn::Other:
                break;
        }
    }
    return day;
}

}  // namespace engine
