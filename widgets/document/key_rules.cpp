#include "widgets/document/key_rules.h"

#include "engine/base/error.h"
#include "engine/pond/key_list.h"

#include <string>

namespace widgets {

engine::NumberRule keyRule(std::string_view path) {
    const engine::KeyFact* fact = engine::findKey(path);
    engine::ensure(fact != nullptr, "each field of a form is a key of the pond file");
    return fact->rule;
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
