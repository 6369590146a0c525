#include "engine/pond/toml_node.h"

#include "engine/base/text_file.h"
#include "engine/pond/toml_fault.h"

#include <toml++/toml.h>

#include <algorithm>

namespace engine {
namespace {

/// Tables nested deeper than this are refused before parsing: the parser frees them by recursion, so
/// that a key of a million parts would overflow the stack.
constexpr int kMostKeyParts = 8;
/// Ten years of weather by day are 40,000 values.
constexpr int kMostValues = 100000;

/// Steps over a quoted text that starts at `at`; its content may hold dots of any number. The content of a
/// long one may end in up to two quotes, which stand before the three that close it.
std::size_t afterString(std::string_view text, std::size_t at) {
    const char quote = text[at];
    const bool isLong = text.substr(at, 3) == std::string(3, quote);
    std::size_t i = at + (isLong ? 3 : 1);
    while (i < text.size()) {
        if (quote == '"' && text[i] == '\\') {
            i += 2;
        } else if (isLong && text.substr(i, 3) == std::string(3, quote)) {
            return std::min({text.find_first_not_of(quote, i), i + 5, text.size()});
        } else if (!isLong && (text[i] == quote || text[i] == '\n')) {
            return i + 1;
        } else {
            ++i;
        }
    }
    return text.size();
}

/// The word around a place, up to spaces and what parts keys from values.
std::string_view wordAt(std::string_view text, std::size_t at) {
    constexpr std::string_view kEnds = " \t\r\n=[]{},.#\"'";
    const std::size_t before = text.substr(0, at).find_last_of(kEnds);
    const std::size_t first = before == std::string_view::npos ? 0 : before + 1;
    return text.substr(first, text.find_first_of(kEnds, at) - first);
}

/// Looks before parsing for what no pond file has and what would take the parser too long or too deep.
std::optional<TomlParse> findTooMuch(std::string_view text) {
    int parts = 1;
    int values = 0;
    int line = 1;
    std::size_t at = 0;
    while (at < text.size()) {
        const char c = text[at];
        if (c == '"' || c == '\'') {
            const std::size_t end = std::min(afterString(text, at), text.size());
            line += static_cast<int>(std::count(text.begin() + static_cast<std::ptrdiff_t>(at),
                                                text.begin() + static_cast<std::ptrdiff_t>(end), '\n'));
            at = end;
            continue;
        }
        if (c == '#') {
            at = std::min(text.find('\n', at), text.size());
            continue;
        }
        if (static_cast<unsigned char>(c) >= 0x80 && !(at < 3 && text.starts_with("\xEF\xBB\xBF"))) {
            // TOML 1.0 has letters beyond ASCII in quotes and comments only, and the parser stumbles over
            // some of them elsewhere.
            const auto word = wordAt(text, at);
            if (hasCurlyQuotes(word)) {
                return TomlParse{std::nullopt, line, std::string(kCurlyQuotes)};
            }
            return TomlParse{std::nullopt, line,
                             "The text " + shownText(word) +
                                 " holds a letter that may only stand in quotation marks or a comment."};
        }
        parts += c == '.' ? 1 : 0;
        line += c == '\n' ? 1 : 0;
        if (c == '\n' || c == '=' || c == ',' || c == '[' || c == '{') {
            parts = 1;
            values += c == '\n' ? 0 : 1;
        }
        if (parts > kMostKeyParts) {
            return TomlParse{std::nullopt, line,
                             "This key has more than " + std::to_string(kMostKeyParts) +
                                 " parts, which no pond file needs."};
        }
        if (values > kMostValues) {
            return TomlParse{std::nullopt, line,
                             "More than " + std::to_string(kMostValues) +
                                 " values stand before this place, which no pond file needs."};
        }
        ++at;
    }
    return std::nullopt;
}

int lineOf(const toml::node& node, int parentLine) {
    const auto line = node.source().begin.line;
    return line > 0 ? static_cast<int>(line) : parentLine;
}

Date toDate(const toml::date& date) {
    return {std::chrono::year(static_cast<int>(date.year)),
            std::chrono::month(static_cast<unsigned>(date.month)),
            std::chrono::day(static_cast<unsigned>(date.day))};
}

void setDateTime(const toml::date_time& from, TomlNode& to) {
    to.kind = from.is_local() ? TomlKind::DateTime : TomlKind::ZonedDateTime;
    to.at = std::chrono::local_days(toDate(from.date)) + std::chrono::hours(from.time.hour) +
            std::chrono::minutes(from.time.minute) + std::chrono::seconds(from.time.second);
    to.hasFraction = from.time.nanosecond != 0;
}

TomlNode convert(const toml::node& from, int parentLine) {
    TomlNode to;
    to.line = lineOf(from, parentLine);
    if (const auto* table = from.as_table()) {
        to.kind = TomlKind::Table;
        for (const auto& [key, value] : *table) {
            to.items.push_back(convert(value, to.line));
            to.items.back().key = std::string(key.str());
        }
    } else if (const auto* array = from.as_array()) {
        to.kind = TomlKind::List;
        for (const auto& value : *array) {
            to.items.push_back(convert(value, to.line));
        }
    } else if (const auto* text = from.as_string()) {
        to.kind = TomlKind::Text;
        to.text = text->get();
    } else if (const auto* whole = from.as_integer()) {
        to.kind = TomlKind::Whole;
        to.number = static_cast<double>(whole->get());
    } else if (const auto* real = from.as_floating_point()) {
        to.kind = TomlKind::Real;
        to.number = real->get() + 0.0;  // -0.0 is written and read as 0
    } else if (const auto* truth = from.as_boolean()) {
        to.kind = TomlKind::Truth;
        to.truth = truth->get();
    } else if (const auto* date = from.as_date()) {
        to.kind = TomlKind::DateOnly;
        to.date = toDate(date->get());
    } else if (const auto* at = from.as_date_time()) {
        setDateTime(at->get(), to);
    } else {
        to.kind = TomlKind::TimeOnly;
    }
    return to;
}

}  // namespace

const TomlNode* TomlNode::find(std::string_view wanted) const {
    const auto found =
        std::find_if(items.begin(), items.end(), [&](const TomlNode& item) { return item.key == wanted; });
    return found == items.end() ? nullptr : &*found;
}

std::string describe(const TomlNode& node) {
    switch (node.kind) {
        case TomlKind::Text:
            return "the text " + shownText(node.text);
        case TomlKind::Whole:
        case TomlKind::Real:
            return "the number " + shownNumber(node.number);
        case TomlKind::Truth:
            return node.truth ? "true" : "false";
        case TomlKind::DateOnly:
            return "a date";
        case TomlKind::TimeOnly:
            return "a time of day";
        case TomlKind::DateTime:
            return "a date with a time";
        case TomlKind::ZonedDateTime:
            return "a date and time with a zone";
        case TomlKind::List:
            return "a list";
        case TomlKind::Table:
            return "a table";
    }
    return "something else";
}

TomlParse parseToml(std::string_view text) {
    if (auto tooMuch = findTooMuch(text)) {
        return std::move(*tooMuch);
    }
    try {
        const toml::table table = toml::parse(text);
        return {convert(table, 1), 0, ""};
    } catch (const toml::parse_error& fault) {
        TomlFault said = tomlFault(text, static_cast<int>(fault.source().begin.line), fault.description());
        return {std::nullopt, said.line, std::move(said.sentence)};
    }
}

std::string tomlText(std::string_view text) {
    constexpr std::string_view kDigits = "0123456789ABCDEF";
    std::string out = "\"";
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        switch (c) {
            case '"':
                out += "\\\"";
                break;
            case '\\':
                out += "\\\\";
                break;
            case '\n':
                out += "\\n";
                break;
            case '\t':
                out += "\\t";
                break;
            case '\r':
                out += "\\r";
                break;
            default:
                if (byte < 0x20 || byte == 0x7F) {
                    out += {'\\', 'u', '0', '0', kDigits[byte / 16U], kDigits[byte % 16U]};
                } else {
                    out += c;
                }
        }
    }
    return out + '"';
}

}  // namespace engine
