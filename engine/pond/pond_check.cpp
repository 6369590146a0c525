#include "engine/pond/pond_check.h"

#include "engine/base/text_file.h"
#include "engine/pond/local_time.h"
#include "engine/pond/pond_keys.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

std::string withUnit(double value, const NumberRule& rule) {
    const std::string unit = std::isfinite(value) && *rule.unit != '\0' ? std::string(" ") + rule.unit : "";
    return shownNumber(value) + unit;
}

bool keeps(double value, const NumberRule& rule) {
    return value >= rule.low && value <= rule.high && !(rule.above && value <= rule.low);
}

bool isWhole(double value) {
    return std::floor(value) == value;
}

/// Visitor of pond_keys.h that checks each key by itself.
class KeyCheck {
public:
    explicit KeyCheck(const PondFaults& faults) : m_faults(faults) {}

    void format(const char*) {}

    void number(const char* key, const MaybeQuantity& quantity, const NumberRule& rule, Need need) {
        if (quantity) {
            number(key, *quantity, rule);
        } else if (need == Need::Required) {
            m_faults.missing(path(key));
        }
    }

    void number(const char* key, const Quantity& quantity, const NumberRule& rule) {
        const std::string itsPath = path(key);
        const bool hasParts = m_faults.isWritten(childPath(itsPath, "value"));
        const bool isSane = range(hasParts ? childPath(itsPath, "value") : itsPath, quantity.value, rule);
        if (quantity.low.has_value() != quantity.high.has_value()) {
            m_faults.add(itsPath, "The low and the high end must be given together.");
        } else if (quantity.low && range(childPath(itsPath, "low"), *quantity.low, rule) &&
                   range(childPath(itsPath, "high"), *quantity.high, rule) && isSane &&
                   !(*quantity.low <= quantity.value && quantity.value <= *quantity.high)) {
            m_faults.add(itsPath, "The value " + withUnit(quantity.value, rule) +
                                      " must lie between its low end " + withUnit(*quantity.low, rule) +
                                      " and its high end " + withUnit(*quantity.high, rule) + ".");
        }
    }

    void numbers(const char* key, const std::vector<double>& values, const NumberRule& rule, Need need) {
        const std::string itsPath = path(key);
        if (values.empty() && need == Need::Required) {
            m_faults.add(itsPath, m_faults.isWritten(itsPath) ? "The list must not be empty."
                                                              : "This key is missing.");
        }
        notLonger(itsPath, values.size(), kLongestList);
        for (std::size_t i = 0; i < values.size(); ++i) {
            range(itemPath(itsPath, i), values[i], rule);
        }
    }

    void byDay(const char* key, const std::optional<ByDay>& days, const NumberRule& rule) {
        if (!days) {
            return;
        }
        const std::string itsPath = path(key);
        if (days->values.empty()) {
            m_faults.add(itsPath, "The list must not be empty.");
        }
        notLonger(itsPath, days->values.size(), kLongestList);
        for (std::size_t i = 0; i < days->values.size(); ++i) {
            range(days->isList ? itemPath(itsPath, i) : itsPath, days->values[i], rule);
        }
    }

    void text(const char* key, const std::string& text, Need need) {
        if (text.empty() && need == Need::Required) {
            const std::string itsPath = path(key);
            m_faults.add(itsPath, m_faults.isWritten(itsPath) ? "The text must not be empty."
                                                              : "This key is missing.");
        }
        if (text.size() > kLongestText_bytes) {
            m_faults.add(path(key), "The text has " + std::to_string(text.size()) +
                                        " bytes, but may have at most " + std::to_string(kLongestText_bytes) +
                                        ".");
        }
    }

    void date(const char* key, Date date) {
        if (date == Date{}) {
            m_faults.missing(path(key));
        } else {
            sane(path(key), date);
        }
    }

    void dates(const char* key, const std::vector<Date>& dates) {
        notLonger(path(key), dates.size(), kLongestList);
        for (std::size_t i = 0; i < dates.size(); ++i) {
            sane(itemPath(path(key), i), dates[i]);
        }
    }
    void date(const char* key, const std::optional<Date>& maybe, Need need) {
        if (maybe || need == Need::Required) {
            date(key, maybe.value_or(Date{}));
        }
    }

    void time(const char* key, const std::optional<LocalTime>& at, Need need) {
        if (at) {
            date(key, Date(std::chrono::floor<std::chrono::days>(*at)));
        } else if (need == Need::Required) {
            m_faults.missing(path(key));
        }
    }

    void truth(const char*, bool, bool) {}
    template <class E>
    void choice(const char*, const E&) {}

    void clock(const char*, const std::optional<ClockTime>&) {}
    void window(const char* key, const std::optional<ClockWindow>& window) {
        if (window && window->from == window->to) {
            m_faults.add(path(key), "The window must not end when it begins.");
        }
    }

    template <class T, class Visit>
    void table(const char* key, const T& value, Need need, Visit visit) {
        if (need == Need::Required && m_faults.hasFile() && !m_faults.isWritten(path(key))) {
            m_faults.add(path(key), std::string("The table [") + key + "] is missing.");
            return;
        }
        inside(path(key), value, visit);
    }

    template <class T, class Visit>
    void maybeTable(const char* key, const std::optional<T>& value, Visit visit) {
        if (value) {
            inside(path(key), *value, visit);
        }
    }

    template <class T, class Visit>
    void tables(const char* key, const std::vector<T>& values, Visit visit) {
        notLonger(path(key), values.size(), kMostTables);
        for (std::size_t i = 0; i < values.size(); ++i) {
            inside(itemPath(path(key), i), values[i], visit);
        }
    }

private:
    template <class T, class Visit>
    void inside(std::string itsPath, const T& value, Visit visit) {
        std::swap(m_path, itsPath);
        visit(*this, value);
        std::swap(m_path, itsPath);
    }

    [[nodiscard]] std::string path(const char* key) const { return childPath(m_path, key); }

    void sane(const std::string& itsPath, Date date) {
        if (!date.ok() || !isSaneYear(date)) {
            m_faults.add(itsPath, "The date " + formatDate(date) + " must lie in the years 1900 to 2200.");
        }
    }

    void notLonger(const std::string& itsPath, std::size_t size, std::size_t most) {
        if (size > most) {
            m_faults.add(itsPath, "The list has " + std::to_string(size) + " items, but may have at most " +
                                      std::to_string(most) + ".");
        }
    }

    bool range(const std::string& itsPath, double value, const NumberRule& rule) {
        if (!keeps(value, rule)) {
            m_faults.add(itsPath, "The value is " + withUnit(value, rule) + ", but must be " +
                                      (rule.above ? "above " : "from ") + shownNumber(rule.low) +
                                      (rule.above ? " and at most " : " to ") + withUnit(rule.high, rule) +
                                      ".");
            return false;
        }
        if (rule.whole && !isWhole(value)) {
            m_faults.add(itsPath, "The value is " + withUnit(value, rule) + ", but must be a whole number.");
            return false;
        }
        return true;
    }

    const PondFaults& m_faults;
    std::string m_path;
};

}  // namespace

void PondFaults::add(const std::string& path, std::string sentence) const {
    if (!m_source.isUnread(path)) {
        m_out.push_back({Severity::Error, m_source.file, m_source.lineOf(path), path, std::move(sentence)});
    }
}

void PondFaults::warn(const std::string& path, std::string sentence) const {
    if (!m_source.isUnread(path)) {
        m_out.push_back({Severity::Warning, m_source.file, m_source.lineOf(path), path, std::move(sentence)});
    }
}

std::optional<double> deepestPoint(const BasinShape& basin) {
    if (!basin.contours.empty()) {
        return basin.contours.back().depth.value;
    }
    return basin.maxDepth ? std::optional(basin.maxDepth->value) : std::nullopt;
}

bool isSaneYear(Date date) {
    return date.year() >= std::chrono::year(1900) && date.year() <= std::chrono::year(2200);
}

void checkKeys(const Pond& pond, const PondFaults& faults) {
    KeyCheck check(faults);
    visitPond(check, pond);
}

Diagnostics checkPond(const Pond& pond, const PondSource& source) {
    Diagnostics out;
    const PondFaults faults(source, out);
    checkKeys(pond, faults);
    checkTables(pond, faults);
    checkRamps(pond, faults);
    checkTogether(pond, faults);
    if (!hasErrors(out) && source.unread.empty()) {
        checkUsual(pond, faults);
    }
    return out;
}

}  // namespace engine
