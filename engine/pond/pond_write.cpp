#include "engine/base/text.h"
#include "engine/pond/local_time.h"
#include "engine/pond/pond_io.h"
#include "engine/pond/pond_keys.h"
#include "engine/pond/pond_source.h"
#include "engine/pond/pond_units.h"
#include "engine/pond/pond_words.h"
#include "engine/pond/toml_node.h"

#include <map>
#include <utility>

namespace engine {
namespace {

std::string number(double value) {
    return shortest(value == 0.0 ? 0.0 : value);  // no minus before zero
}

/// Visitor of pond_keys.h that writes what is there.
class TomlWriter {
public:
    explicit TomlWriter(const std::map<std::string, std::string>& typed) : m_typed(typed) {}

    std::string out;

    void format(const char* key) { line(key, "1"); }

    void number(const char* key, const MaybeQuantity& quantity, const NumberRule& rule, Need) {
        if (quantity) {
            number(key, *quantity, rule);
        }
    }
    void number(const char* key, const Quantity& quantity, const NumberRule& rule) {
        line(key, withSpread(quantity, childPath(m_path, key), rule));
    }

    void numbers(const char* key, const std::vector<double>& values, const NumberRule& rule, Need) {
        if (!values.empty()) {
            line(key, numberList(values, childPath(m_path, key), rule));
        }
    }
    void byDay(const char* key, const std::optional<ByDay>& days, const NumberRule& rule) {
        if (days && days->isList) {
            line(key, numberList(days->values, childPath(m_path, key), rule));
        } else if (days && !days->values.empty()) {
            line(key, asTyped(days->values.front(), childPath(m_path, key), rule));
        }
    }
    void text(const char* key, const std::string& text, Need) {
        if (!text.empty()) {
            line(key, tomlText(text));
        }
    }
    void truth(const char* key, bool value, bool fallback) {
        if (value != fallback) {
            line(key, value ? "true" : "false");
        }
    }
    void date(const char* key, Date date) {
        if (date.ok()) {
            line(key, formatDate(date));
        }
    }
    void dates(const char* key, const std::vector<Date>& dates) {
        std::string list;
        for (const Date& date : dates) {
            list.append(list.empty() ? "[" : ", ").append(formatDate(date));
        }
        if (!dates.empty()) {
            line(key, list.append("]"));
        }
    }
    void date(const char* key, const std::optional<Date>& maybe, Need) { date(key, maybe.value_or(Date{})); }
    void time(const char* key, const std::optional<LocalTime>& at, Need) {
        if (at) {
            line(key, formatIsoTime(*at));
        }
    }
    void clock(const char* key, const std::optional<ClockTime>& time) {
        if (time) {
            line(key, tomlText(formatClock(*time)));
        }
    }
    void window(const char* key, const std::optional<ClockWindow>& window) {
        if (window) {
            const std::string from = tomlText(formatClock(window->from));
            const std::string to = tomlText(formatClock(window->to));
            line(key, std::string("[").append(from).append(", ").append(to).append("]"));
        }
    }
    template <class E>
    void choice(const char* key, const std::optional<E>& value) {
        if (value) {
            choice(key, *value);
        }
    }
    template <class E>
    void choice(const char* key, const E& value) {
        line(key, tomlText(wordOf(value)));
    }

    /// A table that is always there: its header is left out if nothing stands under it.
    template <class T, class Visit>
    void table(const char* key, const T& value, Need, Visit visit) {
        const std::string before = out;
        const std::string header = begin(key, "[", "]");
        inside(key, value, visit);
        if (out.compare(before.size(), std::string::npos, header) == 0) {
            out = before;
        } else if (out.compare(before.size() + header.size(), 2, "\n[") == 0) {
            out.erase(before.size(), header.size());  // only sub-tables, whose headers name this one
        }
    }
    template <class T, class Visit>
    void maybeTable(const char* key, const std::optional<T>& value, Visit visit) {
        if (value) {
            begin(key, "[", "]");
            inside(key, *value, visit);
        }
    }
    template <class T, class Visit>
    void tables(const char* key, const std::vector<T>& values, Visit visit) {
        const std::string list = childPath(m_path, key);
        for (std::size_t i = 0; i < values.size(); ++i) {
            begin(key, "[[", "]]");
            inside(key, values[i], visit, itemPath(list, i));
        }
    }

private:
    /// The number as it was written with its unit, as long as that still reads as this number.
    std::string asTyped(double value, const std::string& path, const NumberRule& rule) const {
        const auto found = m_typed.find(path);
        return found != m_typed.end() && readTyped(found->second, rule.unit).value == value
                   ? tomlText(found->second)
                   : engine::number(value);
    }

    std::string numberList(const std::vector<double>& values, const std::string& path,
                           const NumberRule& rule) const {
        std::string list = "[";
        for (std::size_t i = 0; i < values.size(); ++i) {
            list += (i > 0 ? ", " : "") + asTyped(values[i], itemPath(path, i), rule);
        }
        return list + ']';
    }

    std::string withSpread(const Quantity& quantity, const std::string& path, const NumberRule& rule) const {
        const std::string inTable = childPath(path, "value");
        const std::string value = asTyped(quantity.value, m_typed.contains(inTable) ? inTable : path, rule);
        if (!quantity.low && !quantity.high && !quantity.confidence && quantity.source.empty()) {
            return value;
        }
        std::string spread = "{ value = " + value;
        if (quantity.low) {
            spread += ", low = " + asTyped(*quantity.low, childPath(path, "low"), rule);
        }
        if (quantity.high) {
            spread += ", high = " + asTyped(*quantity.high, childPath(path, "high"), rule);
        }
        if (quantity.confidence) {
            spread += ", sure = " + tomlText(wordOf(*quantity.confidence));
        }
        if (!quantity.source.empty()) {
            spread += ", source = " + tomlText(quantity.source);
        }
        return spread + " }";
    }

    void line(const char* key, const std::string& value) { out += std::string(key) + " = " + value + '\n'; }

    std::string begin(const char* key, const char* open, const char* close) {
        std::string header = "\n";
        header.append(open).append(m_prefix).append(key).append(close).append("\n");
        out += header;
        return header;
    }
    template <class T, class Visit>
    void inside(const char* key, const T& value, Visit visit, std::string path = "") {
        const std::string outer = m_prefix;
        const std::string outerPath = std::exchange(m_path, path.empty() ? childPath(m_path, key) : path);
        m_prefix += std::string(key) + '.';
        visit(*this, value);
        m_prefix = outer;
        m_path = outerPath;
    }

    const std::map<std::string, std::string>& m_typed;
    std::string m_prefix;  ///< Of the headers
    std::string m_path;    ///< The same with the numbers of lists
};

}  // namespace

std::string writePond(const Pond& pond, const TypedNumbers& typed) {
    TomlWriter writer(typed);
    visitPond(writer, pond);
    return std::move(writer.out);
}

}  // namespace engine
