#include "engine/pond/logger_columns.h"

#include "engine/base/text.h"
#include "engine/base/units.h"
#include "engine/pond/local_time.h"

#include <algorithm>
#include <array>

namespace engine {
namespace {

constexpr double kMilligramsPerMicromole = 0.031998;  // of O2, molar mass 31.998

char small(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

bool isLetter(char c) {
    return c >= 'a' && c <= 'z';
}

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}

/// The words of a heading, small: "DO (mg/L)" gives do, mg, l; a percent sign is a word.
std::vector<std::string> wordsOfHeading(std::string_view heading) {
    std::vector<std::string> words(1);
    for (const char c : heading) {
        const char s = small(c);
        if (isLetter(s) || isDigit(s)) {
            words.back() += s;
        } else if (c == '%') {
            words.emplace_back("percent");
            words.emplace_back();
        } else if (!words.back().empty()) {
            words.emplace_back();
        }
    }
    std::erase(words, "");
    return words;
}

bool has(const std::vector<std::string>& words, std::initializer_list<std::string_view> any) {
    return std::any_of(words.begin(), words.end(), [&](const std::string& word) {
        return std::find(any.begin(), any.end(), word) != any.end();
    });
}

bool begins(const std::vector<std::string>& words, std::string_view with) {
    return std::any_of(words.begin(), words.end(),
                       [with](const std::string& word) { return word.starts_with(with); });
}

std::vector<int> numbersOf(std::string_view text, std::string_view separators) {
    std::vector<int> numbers;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find_first_of(separators), text.size());
        const auto part = text.substr(0, end);
        if (part.empty() || part.size() > 4 || !std::all_of(part.begin(), part.end(), isDigit)) {
            return {};
        }
        numbers.push_back(static_cast<int>(*toNumber(part)));
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return numbers;
}

/// The part before the first space or T, and what follows.
std::pair<std::string_view, std::string_view> dateAndClock(std::string_view text) {
    const std::size_t space = text.find_first_of(" T");
    return space == std::string_view::npos ? std::pair(text, std::string_view())
                                           : std::pair(text.substr(0, space), text.substr(space + 1));
}

std::optional<std::chrono::seconds> clockOf(std::string_view text) {
    bool isAfternoon = false, isTwelve = false;
    std::string plain;
    for (const char c : text) {
        plain += small(c);
    }
    for (const std::string_view half : {" am", " pm", "am", "pm"}) {
        if (plain.ends_with(half)) {
            isTwelve = true;
            isAfternoon = half.find('p') != std::string_view::npos;
            plain.erase(plain.size() - half.size());
            break;
        }
    }
    const std::vector<int> parts = numbersOf(plain, ":");
    if (parts.size() < 2 || parts.size() > 3 || parts[1] > 59 || (parts.size() == 3 && parts[2] > 59)) {
        return std::nullopt;
    }
    int hour = parts[0];
    if (isTwelve && (hour < 1 || hour > 12)) {
        return std::nullopt;
    }
    hour = isTwelve ? hour % 12 + (isAfternoon ? 12 : 0) : hour;
    if (hour > 23) {
        return std::nullopt;
    }
    return std::chrono::hours(hour) + std::chrono::minutes(parts[1]) +
           std::chrono::seconds(parts.size() == 3 ? parts[2] : 0);
}

}  // namespace

ColumnMeaning columnMeaning(std::string_view heading) {
    const std::vector<std::string> words = wordsOfHeading(heading);
    ColumnMeaning out;
    const auto unit = [&](std::string name, double factor, double offset = 0.0, bool isGiven = true) {
        out.unit = std::move(name);
        out.factor = factor;
        out.offset = offset;
        out.isUnitGiven = isGiven;
    };
    if (begins(words, "depth")) {
        out.column = LoggerColumn::Depth;
        const bool isFeet = has(words, {"ft", "feet", "foot"}), isCentimetre = has(words, {"cm"});
        unit(isFeet         ? "ft"
             : isCentimetre ? "cm"
                            : "m",
             isFeet         ? kMetrePerFoot
             : isCentimetre ? 0.01
                            : 1.0,
             0.0, isFeet || isCentimetre || has(words, {"m", "metre", "metres", "meter", "meters"}));
    } else if (has(words, {"do", "odo", "ldo", "o2", "oxygen", "rdo"})) {
        const bool isShare = has(words, {"percent", "sat", "saturation", "pct"});
        const bool isMicromole = has(words, {"umol", "mmol", "micromol"});
        out.column = isShare ? LoggerColumn::OxygenPercent : LoggerColumn::Oxygen;
        unit(isMicromole ? "umol/L" : "mg/L", isMicromole ? kMilligramsPerMicromole : 1.0, 0.0,
             isMicromole || has(words, {"mg", "ppm", "g", "mgl"}));
    } else if (begins(words, "temp") && !has(words, {"air"})) {
        out.column = LoggerColumn::Temperature;
        const bool isFahrenheit = has(words, {"f", "degf", "fahrenheit"});
        unit(isFahrenheit ? "degF" : "degC", isFahrenheit ? 5.0 / 9.0 : 1.0, isFahrenheit ? 32.0 : 0.0,
             isFahrenheit || has(words, {"c", "degc", "celsius"}));
    } else if (begins(words, "secchi")) {
        out.column = LoggerColumn::Secchi;
        const bool isCentimetre = has(words, {"cm"});
        unit(isCentimetre ? "cm" : "m", isCentimetre ? 0.01 : 1.0, 0.0, isCentimetre || has(words, {"m"}));
    } else if (has(words, {"at", "datetime", "timestamp"}) ||
               (has(words, {"date"}) && has(words, {"time"}))) {
        out.column = LoggerColumn::At;
    } else if (has(words, {"date"})) {
        out.column = LoggerColumn::DateOnly;
    } else if (has(words, {"time"})) {
        out.column = LoggerColumn::ClockOnly;
    } else if (has(words, {"meter", "sensor", "logger", "probe", "serial"})) {
        out.column = LoggerColumn::Meter;
    } else if (has(words, {"note", "notes", "remark", "remarks"})) {
        out.column = LoggerColumn::Note;
    }
    return out;
}

std::optional<double> clockOfHeading(std::string_view heading) {
    constexpr double kMinutesPerHour = 60.0;
    std::string plain;
    for (const char c : heading) {
        plain += small(c);
    }
    const std::size_t at = std::min(plain.find("utc"), plain.find("gmt"));
    if (at == std::string::npos) {
        return std::nullopt;
    }
    std::string_view rest = std::string_view(plain).substr(at + 3);
    rest = rest.substr(std::min(rest.find_first_not_of(' '), rest.size()));
    if (rest.empty() || (rest[0] != '+' && rest[0] != '-')) {
        return 0.0;
    }
    const double sign = rest[0] == '-' ? -1.0 : 1.0;
    rest.remove_prefix(1);
    const std::size_t end = std::min(rest.find_first_not_of("0123456789:"), rest.size());
    const std::vector<int> parts = numbersOf(rest.substr(0, end), ":");
    const bool isJoined = parts.size() == 1 && parts[0] >= 100;  // +0530
    const int hours = parts.empty() ? 0 : isJoined ? parts[0] / 100 : parts[0];
    const int minutes = parts.size() == 2 ? parts[1] : isJoined ? parts[0] % 100 : 0;
    return sign * (hours + minutes / kMinutesPerHour);
}

char separatorOf(std::string_view text) {
    const std::string_view start = text.substr(0, 4096);
    char best = ',';
    std::ptrdiff_t most = 0;
    // A semicolon or a tab separates even if there are more decimal commas, if most lines have one: titles
    // and footers have none, and a note here and there may.
    for (const char candidate : {';', '\t'}) {
        std::ptrdiff_t lines = 0, with = 0;
        for (std::string_view left = start; !left.empty();) {
            const std::string_view line = left.substr(0, left.find('\n'));
            left.remove_prefix(std::min(line.size() + 1, left.size()));
            lines += line.empty() ? 0 : 1;
            with += line.find(candidate) != std::string_view::npos ? 1 : 0;
        }
        const auto count = std::count(start.begin(), start.end(), candidate);
        if (2 * with > lines && count > most) {
            best = candidate;
            most = count;
        }
    }
    return best;
}

std::optional<double> loggerNumber(std::string_view text) {
    if (std::count(text.begin(), text.end(), ',') != 1 || text.find('.') != std::string_view::npos) {
        return toNumber(text);
    }
    std::string plain(text);
    plain[plain.find(',')] = '.';
    return toNumber(plain);
}

bool isBlank(std::string_view text) {
    constexpr std::array<std::string_view, 12> kBlanks{"",    "na",    "n/a",  "nan",  "-",    "--",
                                                       "---", "-9999", "-999", "null", "none", "#n/a"};
    std::string plain;
    for (const char c : text) {
        plain += small(c);
    }
    return std::find(kBlanks.begin(), kBlanks.end(), plain) != kBlanks.end();
}

DateOrders possibleOrders(std::string_view text) {
    const std::string_view date = dateAndClock(text).first;
    const std::vector<int> parts = numbersOf(date, "./-");
    if (parts.size() != 3 || parts[0] > 31) {
        return {};
    }
    if (date.find('.') != std::string_view::npos) {
        return {true, false};
    }
    return {parts[1] <= 12, parts[0] <= 12};
}

std::optional<LocalTime> loggerTime(std::string_view text, DateOrder order) {
    if (const auto iso = parseLocalTime(text)) {
        return iso;
    }
    const auto [dateText, clockText] = dateAndClock(text);
    std::vector<int> parts = numbersOf(dateText, "./-");
    const auto clock = clockOf(clockText);
    if (parts.size() != 3 || !clock) {
        return std::nullopt;
    }
    if (parts[0] > 31) {
        std::swap(parts[0], parts[2]);  // the year is first: day, month, year
    } else if (order == DateOrder::MonthFirst && dateText.find('.') == std::string_view::npos) {
        std::swap(parts[0], parts[1]);
    }
    const int year = parts[2] < 100 ? 2000 + parts[2] : parts[2];
    const Date date{std::chrono::year(year), std::chrono::month(static_cast<unsigned>(parts[1])),
                    std::chrono::day(static_cast<unsigned>(parts[0]))};
    return date.ok() ? std::optional<LocalTime>(std::chrono::local_days(date) + *clock) : std::nullopt;
}

}  // namespace engine
