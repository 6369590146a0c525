#include "engine/base/text.h"
#include "engine/pond/local_time.h"
#include "engine/pond/pond_io.h"
#include "engine/pond/pond_keys.h"
#include "engine/pond/pond_words.h"
#include "engine/pond/toml_node.h"

namespace engine {
namespace {

std::string number(double value) {
    return shortest(value == 0.0 ? 0.0 : value);  // no minus before zero
}

std::string numberList(const std::vector<double>& values) {
    std::string out = "[";
    for (const double value : values) {
        out += (out.size() > 1 ? ", " : "") + number(value);
    }
    return out + ']';
}

std::string withSpread(const Quantity& quantity) {
    if (!quantity.low && !quantity.high && !quantity.confidence && quantity.source.empty()) {
        return number(quantity.value);
    }
    std::string out = "{ value = " + number(quantity.value);
    if (quantity.low) {
        out += ", low = " + number(*quantity.low);
    }
    if (quantity.high) {
        out += ", high = " + number(*quantity.high);
    }
    if (quantity.confidence) {
        out += ", sure = " + tomlText(wordOf(*quantity.confidence));
    }
    if (!quantity.source.empty()) {
        out += ", source = " + tomlText(quantity.source);
    }
    return out + " }";
}

/// Visitor of pond_keys.h that writes what is there.
class TomlWriter {
public:
    std::string out;

    void format(const char* key) { line(key, "1"); }

    void number(const char* key, const MaybeQuantity& quantity, const NumberRule& rule, Need) {
        if (quantity) {
            number(key, *quantity, rule);
        }
    }
    void number(const char* key, const Quantity& quantity, const NumberRule&) {
        line(key, withSpread(quantity));
    }

    void numbers(const char* key, const std::vector<double>& values, const NumberRule&, Need) {
        if (!values.empty()) {
            line(key, numberList(values));
        }
    }
    void byDay(const char* key, const std::optional<ByDay>& days, const NumberRule&) {
        if (days && days->isList) {
            line(key, numberList(days->values));
        } else if (days && !days->values.empty()) {
            line(key, engine::number(days->values.front()));
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
        for (const T& value : values) {
            begin(key, "[[", "]]");
            inside(key, value, visit);
        }
    }

private:
    void line(const char* key, const std::string& value) { out += std::string(key) + " = " + value + '\n'; }

    std::string begin(const char* key, const char* open, const char* close) {
        std::string header = "\n";
        header.append(open).append(m_prefix).append(key).append(close).append("\n");
        out += header;
        return header;
    }
    template <class T, class Visit>
    void inside(const char* key, const T& value, Visit visit) {
        const std::string outer = m_prefix;
        m_prefix += std::string(key) + '.';
        visit(*this, value);
        m_prefix = outer;
    }

    std::string m_prefix;
};

}  // namespace

std::string writePond(const Pond& pond) {
    TomlWriter writer;
    visitPond(writer, pond);
    return std::move(writer.out);
}

}  // namespace engine
