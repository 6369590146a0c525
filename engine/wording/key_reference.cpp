#include "engine/wording/key_reference.h"

#include "engine/base/error.h"
#include "engine/base/text.h"
#include "engine/base/text_file.h"
#include "engine/pond/pond_units.h"

#include <algorithm>
#include <map>

namespace engine {
namespace {

constexpr std::size_t kWidth = 78;

/// A text as lines under each other, each after `indent`.
std::string wrapped(const std::string& text, const std::string& indent) {
    std::string lines;
    std::string line = indent;
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t end = std::min(text.find(' ', at), text.size());
        const std::string word = text.substr(at, end - at);
        if (line.size() > indent.size() && countCharacters(line) + 1 + countCharacters(word) > kWidth) {
            lines += line + '\n';
            line = indent;
        }
        line += (line.size() > indent.size() ? " " : "") + word;
        at = end + 1;
    }
    return lines + line + '\n';
}

std::string rangeOf(const NumberRule& rule) {
    return (rule.above ? "above " + shortest(rule.low) + " up to " : shortest(rule.low) + " to ") +
           shortest(rule.high);
}

std::string numberKind(const KeyFact& fact, const char* one, const char* many) {
    const NumberRule& rule = fact.rule;
    std::string kind = (fact.kind == KeyKind::Number ? one : many);
    const std::vector<std::string> units = unitsKnown(rule.unit);
    if (*rule.unit != '\0') {
        kind += std::string(" in ") + rule.unit;
    }
    std::string others;
    for (std::size_t i = 1; i < units.size(); ++i) {
        others += (others.empty() ? "" : ", ") + units[i];
    }
    kind += others.empty() ? "" : " (or with its unit in quotes: " + others + ")";
    return kind + ", " + rangeOf(rule);
}

/// Their keys, for tables.
std::string keysOf(const std::string& table) {
    std::string names;
    for (const KeyFact& fact : pondKeys()) {
        if (fact.table() == table && !fact.isTable()) {
            names += (names.empty() ? "" : ", ") + fact.name();
        }
    }
    return names;
}

std::string header(const KeyFact& fact) {
    return fact.kind == KeyKind::Tables ? "[[" + fact.path + "]]" : "[" + fact.path + "]";
}

std::string usualOf(const UsualValue& usual) {
    std::string text = "Usual: " + shortest(usual.value);
    if (usual.low < usual.high) {
        text += ", in nine of ten ponds " + shortest(usual.low) + " to " + shortest(usual.high);
    }
    return text + " (" + std::string(usual.source) + ").";
}

std::string_view withoutBrackets(std::string_view word) {
    while (word.starts_with('[')) {
        word.remove_prefix(1);
    }
    while (word.ends_with(']') && word.find('[') == std::string_view::npos) {
        word.remove_suffix(1);
    }
    return word;
}

}  // namespace

const KeyText& keyText(std::string_view path) {
    static const std::map<std::string_view, const KeyText*> kByPath = [] {
        std::map<std::string_view, const KeyText*> texts;
        for (const auto& part : {keyTextsOfPond(), keyTextsOfAir(), keyTextsOfRamps()}) {
            for (const KeyText& text : part) {
                texts[text.path] = &text;
            }
        }
        return texts;
    }();
    const auto found = kByPath.find(path);
    ensure(found != kByPath.end(), "each key of the pond file has its text");
    return *found->second;
}

std::string kindOf(const KeyFact& fact) {
    std::string kind;
    switch (fact.kind) {
        case KeyKind::Number:
        case KeyKind::Numbers:
            kind = numberKind(fact, fact.rule.whole ? "Whole number" : "Number", "List of numbers");
            break;
        case KeyKind::ByDay:
            kind = numberKind(fact, "", "Number, or list with a number for each day,");
            break;
        case KeyKind::Text:
            kind = "Text in quotes";
            break;
        case KeyKind::Truth:
            kind = "true or false";
            break;
        case KeyKind::Day:
            kind = "Date without quotes, year first";
            break;
        case KeyKind::Days:
            kind = "List of dates without quotes";
            break;
        case KeyKind::Time:
            kind = "Date and time without quotes, on the pond's own clock";
            break;
        case KeyKind::Clock:
            kind = "Time of day in quotes";
            break;
        case KeyKind::Window:
            kind = "List of two times of day";
            break;
        case KeyKind::Choice:
            kind = "One of " + fact.words;
            break;
        case KeyKind::Table:
            kind = "Table";
            break;
        case KeyKind::Tables:
            kind = "Table that may stand several times";
            break;
    }
    return kind + (fact.isRequired ? "; needed." : ".");
}

std::string exampleOf(const KeyFact& fact) {
    return fact.isTable() ? header(fact) : fact.name() + " = " + std::string(keyText(fact.path).example);
}

std::string explained(const KeyFact& fact) {
    const std::string indent = "    ";
    const KeyText& text = keyText(fact.path);
    std::string said = (fact.isTable() ? header(fact) : fact.path) + '\n';
    said += wrapped(std::string(text.meaning), indent) + wrapped(kindOf(fact), indent);
    if (!text.absent.empty()) {
        said += wrapped("Without it: " + std::string(text.absent), indent);
    }
    if (text.usual) {
        said += wrapped(usualOf(*text.usual), indent);
    }
    if (!fact.isTable()) {
        return said + indent + "Example: " + exampleOf(fact) + '\n';
    }
    const std::string keys = keysOf(fact.path);
    return said + (keys.empty() ? "" : wrapped("Keys: " + keys + ".", indent));
}

Explanation explain(std::string_view word) {
    const std::string_view bare = withoutBrackets(word);
    if (const KeyFact* fact = findKey(plainPath(bare))) {
        std::string text = explained(*fact);
        for (const KeyFact& key : pondKeys()) {
            text += fact->isTable() && key.table() == fact->path ? '\n' + explained(key) : "";
        }
        return {std::move(text), ""};
    }
    std::string all;
    for (const KeyFact& fact : pondKeys()) {
        all += fact.name() == bare ? (all.empty() ? "" : "\n") + explained(fact) : "";
    }
    if (!all.empty()) {
        return {std::move(all), ""};
    }
    std::string near;
    for (const std::string& path : keysLike(bare)) {
        near += (near.empty() ? "" : ", ") + path;
    }
    return {std::nullopt,
            "The pond file has no key or table " + shownText(word) +
                (near.empty() ? "; explain without a word lists them all." : "; near to it: " + near + ".")};
}

std::string keyOverview() {
    std::string text = "At the top of the file\n" + wrapped(keysOf(""), "    ");
    for (const KeyFact& fact : pondKeys()) {
        if (fact.isTable()) {
            const std::string keys = keysOf(fact.path);
            text += header(fact) + (fact.isRequired ? "  needed" : "") + '\n';
            text += keys.empty() ? "" : wrapped(keys, "    ");
        }
    }
    return text;
}

std::string keyReference() {
    std::string text;
    for (const KeyFact& fact : pondKeys()) {
        text += (text.empty() ? "" : "\n") + explained(fact);
    }
    return text;
}

}  // namespace engine
