#include "engine/ramps/ramp_names.h"

#include <algorithm>

namespace engine {

bool hasRamp(const Pond& pond, const std::string& name) {
    return std::any_of(pond.ramps.begin(), pond.ramps.end(),
                       [&](const Ramp& ramp) { return ramp.name == name; });
}

std::string freeRampName(const Pond& pond, const std::string& wish) {
    std::string name = wish;
    for (int number = 2; name == "do-nothing" || hasRamp(pond, name); ++number) {
        name = wish + ' ' + std::to_string(number);
    }
    return name;
}

}  // namespace engine
