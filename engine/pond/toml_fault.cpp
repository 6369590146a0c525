#include "engine/pond/toml_fault.h"

#include "engine/base/text.h"
#include "engine/base/text_file.h"
#include "engine/pond/key_list.h"

#include <algorithm>
#include <optional>
#include <vector>

namespace engine {
namespace {

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}

bool isLetter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

std::string_view trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(" \t\r");
    return first == std::string_view::npos ? std::string_view()
                                           : text.substr(first, text.find_last_not_of(" \t\r") - first + 1);
}

/// The line without its remark; a # inside quotes is no remark.
std::string_view withoutRemark(std::string_view line) {
    bool isQuoted = false;
    for (std::size_t i = 0; i < line.size(); ++i) {
        isQuoted = line[i] == '"' ? !isQuoted : isQuoted;
        if (line[i] == '#' && !isQuoted) {
            return trimmed(line.substr(0, i));
        }
    }
    return trimmed(line);
}

std::string_view lineOf(std::string_view text, int line) {
    for (int i = 1; i < line && !text.empty(); ++i) {
        text.remove_prefix(std::min(text.find('\n'), text.size() - 1) + 1);
    }
    return withoutRemark(text.substr(0, text.find('\n')));
}

/// Its digits as 0 and its letters as a, for comparing forms: "14.6.2026" is "00.0.0000".
std::string formOf(std::string_view value) {
    std::string form;
    for (const char c : value) {
        form += isDigit(c) ? '0' : isLetter(c) ? 'a' : c;
    }
    return form;
}

/// A form with runs of digits cut to one: "0.0.0".
std::string shortForm(std::string_view value) {
    std::string form = formOf(value);
    form.erase(std::unique(form.begin(), form.end(), [](char a, char b) { return a == '0' && b == '0'; }),
               form.end());
    return form;
}

/// A line as it should be, as long as it is short enough to be shown.
std::string written(std::string_view key, const std::string& value) {
    constexpr std::size_t kMostShown = 60;
    return key.size() + value.size() > kMostShown ? std::string(key.substr(0, kMostShown)) + " = ..."
                                                  : std::string(key) + " = " + value;
}

/// A date or a time that is not written as a pond file wants it.
std::string timeFault(std::string_view value, const std::string& form) {
    const std::string brief = shortForm(value);
    if (brief == "0/0/0" || brief == "0.0.0" || (brief == "0-0-0" && form != "0000-00-00") ||
        brief.starts_with("0/0/0 ")) {
        return "The date " + shownText(value) +
               " must be written with the year first and two digits each for "
               "month and day, such as 2026-06-14.";
    }
    if (form == "0000-00-00a00:00" || form == "0000-00-00 00:00") {
        return "The time " + shownText(value) + " lacks its seconds; write " +
               std::string(value.substr(0, 10)) + "T" + std::string(value.substr(11)) + ":00.";
    }
    if (form.starts_with("0000-00-00")) {
        return "There is no such day or time as " + shownText(value) +
               "; write it such as 2026-06-14 or 2026-06-14T17:30:00.";
    }
    return "";
}

/// A number that is not written as a pond file wants it.
std::string numberFault(std::string_view key, std::string_view value) {
    const std::string_view digits =
        value.starts_with('-') || value.starts_with('+') ? value.substr(1) : value;
    std::string pointed(value);
    std::replace(pointed.begin(), pointed.end(), ',', '.');
    if (std::count(value.begin(), value.end(), ',') == 1 && toNumber(pointed)) {
        const bool isGroup = value.size() - value.find(',') == 4 && value.find('.') == std::string_view::npos;
        std::string joined(value);
        joined.erase(joined.find(','), 1);
        return "The number " + shownText(value) + " has a comma; write " +
               (isGroup ? joined + " if it parts thousands, or a decimal point: " + pointed + "."
                        : "a decimal point: " + pointed + ".");
    }
    if (digits.starts_with('.') || digits.ends_with('.')) {
        return "The number " + shownText(value) + " needs a digit before and behind its point, such as 0.5.";
    }
    if (!digits.empty() && std::all_of(digits.begin(), digits.end(), isDigit) && digits[0] != '0') {
        return "The number " + shownText(value) + " is larger than any of a pond file.";
    }
    if (digits.size() > 1 && digits[0] == '0' && isDigit(digits[1])) {
        return "The number " + shownText(value) + " must be written without a zero in front.";
    }
    const auto unit = std::find_if(digits.begin(), digits.end(),
                                   [](char c) { return !isDigit(c) && c != '.' && c != ','; });
    if (!digits.empty() && isDigit(digits[0]) && unit != digits.end()) {
        return "A number with its unit stands in quotes: " + written(key, '"' + std::string(value) + '"') +
               ".";
    }
    return "";
}

std::string bracketFault(std::string_view value) {
    const char open = value.front();
    const char close = open == '[' ? ']' : '}';
    if (value.find(close) == std::string_view::npos) {
        return std::string("The closing ") + close + " of this " + (open == '[' ? "list" : "group") +
               " is missing.";
    }
    if (open == '[' && value.find(',') == std::string_view::npos) {
        return "The values of a list are parted by commas, such as [0, 0.5, 1].";
    }
    return open == '[' ? "This list cannot be read; write its values with commas between them, such as "
                         "[0, 0.5, 1] or [2026-06-15, 2026-06-18]."
                       : "This cannot be read; a number with its spread is written such as "
                         "{ value = 14, low = 6, high = 30 }.";
}

std::string valueFault(std::string_view key, std::string_view value) {
    if (value.empty()) {
        return "No value follows the equals sign.";
    }
    if (value.front() == '[' || value.front() == '{') {
        return bracketFault(value);
    }
    if (value.front() == '"') {
        return value.size() == 1 || value.find('"', 1) == std::string_view::npos
                   ? "The closing quotation mark is missing."
                   : "This text cannot be read: write it between two quotation marks, a backslash twice, and "
                     "nothing behind it but a # with a remark.";
    }
    const std::string form = formOf(value);
    if (form == "0:00" || form == "00:00" || form == "00:00:00") {
        return "A time of day stands in quotes: " + written(key, '"' + std::string(value) + '"') + ".";
    }
    if (std::string time = timeFault(value, form); !time.empty()) {
        return time;
    }
    std::string small;
    for (const char c : value) {
        small += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    }
    if (small == "true" || small == "yes" || small == "on") {
        return "Write true, in small letters.";
    }
    if (small == "false" || small == "no" || small == "off") {
        return "Write false, in small letters.";
    }
    if (std::string number = numberFault(key, value); !number.empty()) {
        return number;
    }
    const bool isWords = static_cast<unsigned char>(value.front()) >= 0x80 || isLetter(value.front());
    return isWords
               ? "A text stands in quotes: " + written(key, '"' + std::string(value.substr(0, 40)) + '"') +
                     "."
               : "The value " + shownText(value) + " is no number, text in quotes, date or list.";
}

std::string headerFault(std::string_view line) {
    const bool isDouble = line.starts_with("[[");
    std::string name(trimmed(line.substr(isDouble ? 2 : 1)));
    name.erase(std::min(name.find(']'), name.size()));
    const std::string right = isDouble ? "[[" + name + "]]" : "[" + name + "]";
    if (name.find(' ') != std::string::npos) {
        const std::string meant = tableMeant(name, {});
        return "The name of a table has no spaces" +
               (meant.empty() ? "." : "; did you mean [" + meant + "]?");
    }
    return line == right ? "This table cannot begin here; does it stand above already, or is it a key too?"
                         : "The name of a table stands in brackets: " + right + ".";
}

std::string lineFault(std::string_view line) {
    if (hasCurlyQuotes(line)) {
        return std::string(kCurlyQuotes);
    }
    if (line.starts_with('[')) {
        return headerFault(line);
    }
    const std::size_t sign = line.find('=');
    if (sign == std::string_view::npos) {
        const std::size_t colon = line.find(':');
        return colon != std::string_view::npos
                   ? "A key and its value are parted by an equals sign, not by a colon: " +
                         written(trimmed(line.substr(0, colon)),
                                 std::string(trimmed(line.substr(colon + 1)))) +
                         "."
                   : "A line must be a key, an equals sign and a value, or a table in brackets; a remark "
                     "begins "
                     "with #.";
    }
    const std::string_view key = trimmed(line.substr(0, sign));
    const bool isPlain = !key.empty() && std::all_of(key.begin(), key.end(), [](char c) {
        return isLetter(c) || isDigit(c) || c == '_' || c == '-' || c == '.' || c == '"';
    });
    if (!isPlain) {
        std::string joined(key);
        std::replace(joined.begin(), joined.end(), ' ', '_');
        const std::vector<std::string> near = keysLike(joined);
        const KeyFact* fact = near.empty() ? nullptr : findKey(near.front());
        return "The key " + shownText(key) + " must be of letters, digits and underscores without spaces" +
               (fact == nullptr ? "." : "; did you mean \"" + fact->name() + "\"?");
    }
    return valueFault(key, trimmed(line.substr(sign + 1)));
}

/// The line before on which a list or text was opened that is still open at `line`.
std::optional<int> openedBefore(std::string_view text, int line) {
    constexpr int kFarthest = 40;
    for (int before = line - 1; before >= std::max(1, line - kFarthest); --before) {
        const std::string_view one = lineOf(text, before);
        const std::size_t sign = one.find('=');
        if (sign == std::string_view::npos) {
            continue;
        }
        const std::string_view value = trimmed(one.substr(sign + 1));
        const bool isOpen = value.starts_with('[') && value.find(']') == std::string_view::npos;
        return isOpen ? std::optional(before) : std::nullopt;
    }
    return std::nullopt;
}

}  // namespace

bool hasCurlyQuotes(std::string_view text) {
    for (const std::string_view mark :
         {"\u201C", "\u201D", "\u201E", "\u2018", "\u2019", "\u00AB", "\u00BB"}) {
        if (text.find(mark) != std::string_view::npos) {
            return true;
        }
    }
    return false;
}

TomlFault tomlFault(std::string_view text, int line, std::string_view description) {
    const int place = std::max(line, 1);
    const std::string_view one = lineOf(text, place);
    if (description.find("redefin") != std::string_view::npos ||
        description.find("already") != std::string_view::npos) {
        const bool isTable = one.starts_with('[');
        const std::string_view name =
            isTable ? trimmed(one.substr(one.find_first_not_of('['))) : trimmed(one.substr(0, one.find('=')));
        const std::string plain(name.substr(0, name.find(']')));
        const KeyFact* fact = isTable ? findKey(plain) : nullptr;
        return {place, (isTable ? "The table " : "The key ") + shownText(plain) +
                           " stands twice; leave one of them out" +
                           (fact != nullptr && fact->kind == KeyKind::Tables
                                ? ", or write [[" + plain + "]] for each of several."
                                : ".")};
    }
    if (const auto opened = openedBefore(text, place)) {
        return {*opened, "The closing ] of this list is missing, or a comma between its values."};
    }
    return {place, lineFault(one)};
}

}  // namespace engine
