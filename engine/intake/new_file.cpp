#include "engine/intake/new_file.h"

#include "engine/base/text.h"
#include "engine/pond/numbers_only.h"
#include "engine/pond/pond_io.h"
#include "engine/pond/pond_keys.h"
#include "engine/pond/pond_source.h"
#include "engine/pond/pond_units.h"
#include "engine/wording/key_reference.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

namespace engine {
namespace {

/// The unit as it is typed: no file needs a degree sign.
std::string typedName(const KeyUnit& unit) {
    return std::string_view(unit.text) == "\u00b0F" ? "degF" : unit.text;
}

/// Visitor of pond_keys.h that turns numbers into those of another system.
class UnitChange : public NumbersOnly {
public:
    explicit UnitChange(TypedNumbers& typed) : m_typed(typed) {}

    void number(const char* key, MaybeQuantity& quantity, const NumberRule& rule, Need) {
        if (quantity) {
            number(key, *quantity, rule);
        }
    }
    void number(const char* key, Quantity& quantity, const NumberRule& rule) {
        const std::string path = childPath(m_path, key);
        change(quantity.value, path, rule);
        if (quantity.low && quantity.high) {
            change(*quantity.low, childPath(path, "low"), rule);
            change(*quantity.high, childPath(path, "high"), rule);
            quantity.low = std::min(*quantity.low, quantity.value);
            quantity.high = std::max(*quantity.high, quantity.value);
        }
    }
    void numbers(const char* key, std::vector<double>& values, const NumberRule& rule, Need) {
        for (std::size_t i = 0; i < values.size(); ++i) {
            change(values[i], itemPath(childPath(m_path, key), i), rule);
        }
    }
    void byDay(const char* key, std::optional<ByDay>& days, const NumberRule& rule) {
        const std::string path = childPath(m_path, key);
        for (std::size_t i = 0; days && i < days->values.size(); ++i) {
            change(days->values[i], days->isList ? itemPath(path, i) : path, rule);
        }
    }
    template <class T, class Visit>
    void table(const char* key, T& value, Need, Visit visit) {
        within(childPath(m_path, key), value, visit);
    }
    template <class T, class Visit>
    void maybeTable(const char* key, std::optional<T>& value, Visit visit) {
        if (value) {
            within(childPath(m_path, key), *value, visit);
        }
    }
    template <class T, class Visit>
    void tables(const char* key, std::vector<T>& values, Visit visit) {
        for (std::size_t i = 0; i < values.size(); ++i) {
            within(itemPath(childPath(m_path, key), i), values[i], visit);
        }
    }

private:
    template <class T, class Visit>
    void within(std::string path, T& value, Visit visit) {
        std::swap(m_path, path);
        visit(*this, value);
        std::swap(m_path, path);
    }

    void change(double& value, const std::string& path, const NumberRule& rule) {
        const KeyUnit unit = unitIn(rule.unit, UnitSystem::Us);
        if (m_typed.contains(path) || (unit.factor == 1.0 && unit.offset == 0.0)) {
            return;
        }
        std::string text = figures(unit.toShown(value));
        text = shortest(toNumber(text).value_or(0.0)) + ' ' + typedName(unit);
        if (const TypedNumber read = readTyped(text, rule.unit); read.value) {
            const double kept = std::clamp(*read.value, rule.low, rule.high);
            m_typed[path] = text;
            value = kept;
        }
    }

    TypedNumbers& m_typed;
    std::string m_path;
};

/// The first sentence of a text.
std::string firstSentence(std::string_view text) {
    const std::size_t end = text.find(". ");
    return std::string(text.substr(0, end == std::string_view::npos ? text.size() : end + 1));
}

}  // namespace

void writeIn(UnitSystem units, Pond& pond, TypedNumbers& typed) {
    if (units == UnitSystem::Us) {
        pond.units = units;
        UnitChange change(typed);
        visitPond(change, pond);
    }
}

std::string commentedPond(const Pond& pond, const TypedNumbers& typed) {
    const std::string plain = writePond(pond, typed);
    std::string text =
        "# Made from what was told; change what you know better. dawnline-cli explain KEY says more of any "
        "key,\n"
        "# dawnline-cli check whether the file is sound. What is left out is taken as usual, and said.\n";
    std::string table;
    std::set<std::string> seen;
    std::size_t at = 0;
    while (at < plain.size()) {
        const std::size_t end = plain.find('\n', at);
        const std::string line = plain.substr(at, end - at);
        at = end + 1;
        if (line.starts_with('[')) {
            table = line.substr(line.find_first_not_of('['));
            table.erase(table.find(']'));
            text += seen.insert(table).second ? "# " + firstSentence(keyText(table).meaning) + '\n' : "";
            text += line + '\n';
            continue;
        }
        const std::size_t sign = line.find(" = ");
        const std::string path =
            sign == std::string::npos ? "" : (table.empty() ? "" : table + ".") + line.substr(0, sign);
        const bool isNew = findKey(path) != nullptr && seen.insert(path).second;
        text += line + (isNew ? "  # " + firstSentence(keyText(path).meaning) : "") + '\n';
    }
    return text;
}

}  // namespace engine
