#include "engine/pond/local_time.h"

#include <charconv>

namespace engine {
namespace {

/// All of `text` as digits.
std::optional<int> digits(std::string_view text) {
    int value = 0;
    for (const char c : text) {
        if (c < '0' || c > '9') {
            return std::nullopt;
        }
        value = 10 * value + (c - '0');
    }
    return value;
}

std::string padded(int value, std::size_t width) {
    const std::string plain = std::to_string(value);
    return plain.size() < width ? std::string(width - plain.size(), '0') + plain : plain;
}

}  // namespace

std::optional<Date> parseDate(std::string_view text) {
    if (text.size() != 10 || text[4] != '-' || text[7] != '-') {
        return std::nullopt;
    }
    const auto year = digits(text.substr(0, 4));
    const auto month = digits(text.substr(5, 2));
    const auto day = digits(text.substr(8, 2));
    if (!year || !month || !day) {
        return std::nullopt;
    }
    const Date date{std::chrono::year(*year), std::chrono::month(static_cast<unsigned>(*month)),
                    std::chrono::day(static_cast<unsigned>(*day))};
    return date.ok() ? std::optional(date) : std::nullopt;
}

std::optional<ClockTime> parseClock(std::string_view text) {
    if (text.size() != 5 || text[2] != ':') {
        return std::nullopt;
    }
    const auto hour = digits(text.substr(0, 2));
    const auto minute = digits(text.substr(3, 2));
    if (!hour || !minute || *hour > 23 || *minute > 59) {
        return std::nullopt;
    }
    return ClockTime{60 * *hour + *minute};
}

std::optional<LocalTime> parseLocalTime(std::string_view text) {
    if ((text.size() != 16 && text.size() != 19) || (text[10] != ' ' && text[10] != 'T')) {
        return std::nullopt;
    }
    const auto date = parseDate(text.substr(0, 10));
    const auto clock = parseClock(text.substr(11, 5));
    std::optional<int> second = 0;
    if (text.size() == 19) {
        second = text[16] == ':' ? digits(text.substr(17, 2)) : std::nullopt;
    }
    if (!date || !clock || !second || *second > 59) {
        return std::nullopt;
    }
    return std::chrono::local_days(*date) + std::chrono::minutes(clock->minutes) +
           std::chrono::seconds(*second);
}

int dayOfYear(Date date) {
    const auto newYear = std::chrono::sys_days(date.year() / std::chrono::January / 1);
    return static_cast<int>((std::chrono::sys_days(date) - newYear).count()) + 1;
}

std::string formatDate(Date date) {
    return padded(static_cast<int>(date.year()), 4) + '-' +
           padded(static_cast<int>(static_cast<unsigned>(date.month())), 2) + '-' +
           padded(static_cast<int>(static_cast<unsigned>(date.day())), 2);
}

std::string formatLocalTime(LocalTime at) {
    std::string text = formatIsoTime(at);
    text[10] = ' ';
    if (text.ends_with(":00")) {
        text.resize(text.size() - 3);
    }
    return text;
}

std::string formatIsoTime(LocalTime at) {
    const auto day = std::chrono::floor<std::chrono::days>(at);
    const auto second = static_cast<int>((at - day).count());
    return formatDate(Date(day)) + 'T' + formatClock(ClockTime{second / 60}) + ':' + padded(second % 60, 2);
}

std::string formatClock(ClockTime time) {
    return padded(time.minutes / 60, 2) + ':' + padded(time.minutes % 60, 2);
}

}  // namespace engine
