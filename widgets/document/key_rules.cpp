#include "widgets/document/key_rules.h"

#include "engine/base/error.h"

#include <optional>
#include <string>
#include <vector>

namespace widgets {
namespace {

/// Visitor of pond_keys.h that looks for the rule of one key by its path.
class RuleSearch {
public:
    explicit RuleSearch(std::string_view path) : m_path(path) {}

    void format(const char*) {}
    void number(const char* key, const engine::MaybeQuantity&, const engine::NumberRule& rule, engine::Need) {
        look(key, rule);
    }
    void number(const char* key, const engine::Quantity&, const engine::NumberRule& rule) { look(key, rule); }
    void numbers(const char* key, const std::vector<double>&, const engine::NumberRule& rule, engine::Need) {
        look(key, rule);
    }
    void byDay(const char* key, const std::optional<engine::ByDay>&, const engine::NumberRule& rule) {
        look(key, rule);
    }
    void text(const char*, const std::string&, engine::Need) {}
    void truth(const char*, bool, bool) {}
    template <class E>
    void choice(const char*, const E&) {}
    void clock(const char*, const std::optional<engine::ClockTime>&) {}
    void window(const char*, const std::optional<engine::ClockWindow>&) {}
    template <class D>
    void date(const char*, const D&, engine::Need = engine::Need::Required) {}
    void dates(const char*, const std::vector<engine::Date>&) {}
    void time(const char*, const std::optional<engine::LocalTime>&, engine::Need) {}
    template <class T, class Visit>
    void table(const char* key, const T& value, engine::Need, Visit visit) {
        within(key, value, visit);
    }
    template <class T, class Visit>
    void maybeTable(const char* key, const std::optional<T>&, Visit visit) {
        within(key, T(), visit);
    }
    template <class T, class Visit>
    void tables(const char* key, const std::vector<T>&, Visit visit) {
        within(key, T(), visit);
    }

    [[nodiscard]] engine::NumberRule found() const {
        engine::ensure(m_rule.has_value(), "each field of a form is a key of the pond file");
        return *m_rule;
    }

private:
    template <class T, class Visit>
    void within(const char* key, const T& value, Visit visit) {
        const std::string outer = m_prefix;
        m_prefix += std::string(key) + '.';
        visit(*this, value);
        m_prefix = outer;
    }
    void look(const char* key, const engine::NumberRule& rule) {
        if (m_path == m_prefix + key) {
            m_rule = rule;
        }
    }

    std::string_view m_path;
    std::string m_prefix;
    std::optional<engine::NumberRule> m_rule;
};

}  // namespace

engine::NumberRule keyRule(std::string_view path) {
    RuleSearch search(path);
    const engine::Pond any;
    engine::visitPond(search, any);
    return search.found();
}

engine::NumberRule rampRule(std::string_view key) {
    return keyRule("ramp." + std::string(key));
}

engine::NumberRule limitsRule(std::string_view key) {
    return keyRule("limits." + std::string(key));
}

engine::NumberRule aeratorRule(std::string_view key) {
    return keyRule("aerator." + std::string(key));
}

}  // namespace widgets
