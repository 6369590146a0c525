// How the single values of a pond file are read; the tables are in toml_fields.cpp.
#include "engine/base/text.h"
#include "engine/base/text_file.h"
#include "engine/pond/local_time.h"
#include "engine/pond/pond_units.h"
#include "engine/pond/toml_fields.h"

#include <array>

namespace engine {
namespace {

bool isNumber(const TomlNode& node) {
    return node.kind == TomlKind::Whole || node.kind == TomlKind::Real;
}

/// True for a text that somebody meant as a number with its unit.
bool startsLikeNumber(const std::string& text) {
    const auto first = text.find_first_not_of(' ');
    return first != std::string::npos && !toNumber(text) &&
           std::string_view("0123456789+-.").find(text[first]) != std::string_view::npos;
}

constexpr const char* kNumberWanted =
    "a number, or a number with its spread such as { value = 14, low = 6, high = 30 }";
constexpr const char* kDateWanted = "a date without quotes and without a time, such as 2026-06-14";
constexpr const char* kTimeWanted =
    "a date with a time on the pond's own clock, without quotes and without a zone, such as "
    "2026-06-13T17:30:00";

}  // namespace

void TomlFields::format(const char* key) {
    const TomlNode* node = take(key);
    if (node == nullptr) {
        fault(1, key, "This key is missing; a pond file begins with format = 1.");
    } else if (isNumber(*node) && node->number > 1.0) {
        m_isOfNewerVersion = true;
        fault(node->line, key,
              "This file has format " + shownNumber(node->number) +
                  " and was written by a newer version of this program; this version reads format 1.");
    } else if (node->kind != TomlKind::Whole || node->number < 1.0) {
        wrongType(*node, key, "the whole number 1");
    }
}

std::optional<double> TomlFields::plainNumber(const TomlNode& node, const std::string& path,
                                              const NumberRule& rule, const char* wanted) {
    if (isNumber(node)) {
        return node.number;
    }
    if (node.kind != TomlKind::Text || !startsLikeNumber(node.text)) {
        wrongType(node, path, wanted);
        return std::nullopt;
    }
    const TypedNumber typed = readTyped(node.text, rule.unit);
    if (!typed.value) {
        fault(node.line, path, "This is " + describe(node) + ", but must be a number. " + typed.fault);
    } else {
        m_typed[path] = node.text;
    }
    return typed.value;
}

std::optional<Quantity> TomlFields::quantity(const TomlNode& node, const std::string& path,
                                             const NumberRule& rule) {
    if (node.kind == TomlKind::Table) {
        return spread(node, path, rule);
    }
    const auto number = plainNumber(node, path, rule, kNumberWanted);
    return number ? std::optional<Quantity>(*number) : std::nullopt;
}

std::optional<Quantity> TomlFields::spread(const TomlNode& table, const std::string& path,
                                           const NumberRule& rule) {
    static constexpr std::array<const char*, 3> kParts{"value", "low", "high"};
    const std::size_t faultsBefore = m_faults.size();
    std::array<std::optional<double>, 3> parts;
    std::vector<std::string_view> known(kParts.begin(), kParts.end());
    for (std::size_t i = 0; i < kParts.size(); ++i) {
        const std::string itsPath = childPath(path, kParts[i]);
        const TomlNode* node = table.find(kParts[i]);
        if (node != nullptr) {
            m_source.lines[itsPath] = node->line;
            parts[i] = plainNumber(*node, itsPath, rule, "a number");
        }
    }
    Quantity quantity(parts[0].value_or(0.0));
    quantity.low = parts[1];
    quantity.high = parts[2];
    known.emplace_back("sure");
    if (const TomlNode* node = table.find("sure")) {
        quantity.confidence = word<Confidence>(*node, childPath(path, "sure"));
    }
    known.emplace_back("source");
    if (const TomlNode* node = table.find("source")) {
        quantity.source = node->text;
        if (node->kind != TomlKind::Text) {
            wrongType(*node, childPath(path, "source"), "a text in quotes");
        }
    }
    if (table.find("value") == nullptr) {
        fault(table.line, childPath(path, "value"),
              "This key is missing; a number with its spread needs its value.");
    }
    unknownKeys(table, path, known);
    if (m_faults.size() == faultsBefore) {
        return quantity;
    }
    m_source.unread.insert(path);
    return std::nullopt;
}

void TomlFields::number(const char* key, MaybeQuantity& out, const NumberRule& rule, Need) {
    if (const TomlNode* node = take(key)) {
        out = quantity(*node, path(key), rule);
    }
}

void TomlFields::number(const char* key, Quantity& out, const NumberRule& rule) {
    if (const TomlNode* node = take(key)) {
        out = quantity(*node, path(key), rule).value_or(Quantity());
    } else {
        missing(key);
    }
}

std::vector<double> TomlFields::listOf(const TomlNode& list, const std::string& path,
                                       const NumberRule& rule) {
    std::vector<double> values;
    if (isTooLong(list, path, kLongestList)) {
        return values;
    }
    for (const TomlNode& item : list.items) {
        const std::string itsPath = itemPath(path, values.size());
        m_source.lines[itsPath] = item.line;
        const auto number = plainNumber(item, itsPath, rule, "a plain number");
        if (!number) {
            m_source.unread.insert(path);
        }
        values.push_back(number.value_or(0.0));
    }
    return values;
}

void TomlFields::numbers(const char* key, std::vector<double>& out, const NumberRule& rule, Need) {
    const TomlNode* node = take(key);
    if (node == nullptr) {
        return;
    }
    if (node->kind == TomlKind::List) {
        out = listOf(*node, path(key), rule);
    } else {
        wrongType(*node, path(key), "a list of numbers, such as [0, 0.5, 1]");
    }
}

void TomlFields::byDay(const char* key, std::optional<ByDay>& out, const NumberRule& rule) {
    const TomlNode* node = take(key);
    if (node == nullptr) {
        return;
    }
    if (node->kind == TomlKind::List) {
        out = ByDay{listOf(*node, path(key), rule), true};
    } else if (const auto one = plainNumber(*node, path(key), rule,
                                            "one plain number, or a list with a number for each day")) {
        out = ByDay{{*one}, false};
    }
}

void TomlFields::text(const char* key, std::string& out, Need) {
    const TomlNode* node = take(key);
    if (node != nullptr && node->kind == TomlKind::Text) {
        out = node->text;
    } else if (node != nullptr) {
        wrongType(*node, path(key), "a text in quotes");
    }
}

void TomlFields::truth(const char* key, bool& out, bool) {
    const TomlNode* node = take(key);
    if (node != nullptr && node->kind == TomlKind::Truth) {
        out = node->truth;
    } else if (node != nullptr) {
        wrongType(*node, path(key), "true or false, without quotes");
    }
}

void TomlFields::date(const char* key, Date& out) {
    const TomlNode* node = take(key);
    if (node != nullptr && node->kind == TomlKind::DateOnly) {
        out = node->date;
    } else if (node != nullptr) {
        wrongType(*node, path(key), kDateWanted);
    }
}

void TomlFields::dates(const char* key, std::vector<Date>& out) {
    const TomlNode* node = take(key);
    if (node == nullptr) {
        return;
    }
    if (node->kind != TomlKind::List) {
        wrongType(*node, path(key), "a list of dates without quotes, such as [2026-06-17]");
        return;
    }
    const std::string list = path(key);
    if (isTooLong(*node, list, kLongestList)) {
        return;
    }
    for (const TomlNode& item : node->items) {
        const std::string itsPath = itemPath(list, out.size());
        m_source.lines[itsPath] = item.line;
        if (item.kind != TomlKind::DateOnly) {
            wrongType(item, itsPath, kDateWanted);
            m_source.unread.insert(list);
        }
        out.push_back(item.date);
    }
}

void TomlFields::date(const char* key, std::optional<Date>& out, Need) {
    Date found{};
    date(key, found);
    if (found.ok()) {
        out = found;
    }
}

void TomlFields::time(const char* key, std::optional<LocalTime>& out, Need) {
    const TomlNode* node = take(key);
    if (node == nullptr) {
        return;
    }
    if (node->kind != TomlKind::DateTime) {
        wrongType(*node, path(key), kTimeWanted);
    } else if (node->hasFraction) {
        fault(node->line, path(key), "This time has a part of a second, but must be in whole seconds.");
    } else {
        out = node->at;
    }
}

std::optional<ClockTime> TomlFields::clockOf(const TomlNode& node, const std::string& path) {
    const auto time = node.kind == TomlKind::Text ? parseClock(node.text) : std::nullopt;
    if (!time) {
        wrongType(node, path, "a time of day in quotes from \"00:00\" to \"23:59\"");
    }
    return time;
}

void TomlFields::clock(const char* key, std::optional<ClockTime>& out) {
    if (const TomlNode* node = take(key)) {
        out = clockOf(*node, path(key));
    }
}

void TomlFields::window(const char* key, std::optional<ClockWindow>& out) {
    const TomlNode* node = take(key);
    if (node == nullptr) {
        return;
    }
    const std::string itsPath = path(key);
    if (node->kind != TomlKind::List || node->items.size() != 2) {
        wrongType(*node, itsPath, "a list of two times of day, such as [\"10:00\", \"16:00\"]");
        return;
    }
    const auto from = clockOf(node->items[0], itsPath);
    const auto to = clockOf(node->items[1], itsPath);
    if (from && to) {
        out = ClockWindow{*from, *to};
    }
}

}  // namespace engine
