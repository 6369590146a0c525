#include "widgets/key_rules.h"

#include "engine/error.h"

#include <optional>
#include <vector>

namespace widgets {
namespace {

/// Visitor of pond_keys.h that looks for the rule of one key.
class RuleSearch {
public:
    explicit RuleSearch(std::string_view key) : m_key(key) {}

    void number(const char* key, const engine::MaybeQuantity&, const engine::NumberRule& rule, engine::Need) {
        look(key, rule);
    }
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

    [[nodiscard]] engine::NumberRule found() const {
        engine::ensure(m_rule.has_value(), "each field of a form is a key of the pond file");
        return *m_rule;
    }

private:
    void look(const char* key, const engine::NumberRule& rule) {
        if (m_key == key) {
            m_rule = rule;
        }
    }

    std::string_view m_key;
    std::optional<engine::NumberRule> m_rule;
};

}  // namespace

engine::NumberRule rampRule(std::string_view key) {
    RuleSearch search(key);
    const engine::Ramp any;
    engine::visitRamp(search, any);
    return search.found();
}

engine::NumberRule limitsRule(std::string_view key) {
    RuleSearch search(key);
    const engine::Limits any;
    engine::visitLimits(search, any);
    return search.found();
}

engine::NumberRule aeratorRule(std::string_view key) {
    RuleSearch search(key);
    const engine::Aerator any;
    engine::visitAerator(search, any);
    return search.found();
}

}  // namespace widgets
