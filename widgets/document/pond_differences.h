#pragma once

#include "engine/pond/pond.h"

#include <QString>

#include <string>
#include <vector>

namespace widgets {

/// A key in which two versions of a pond differ, as pond files write it.
struct PondDifference {
    std::string key;          ///< Such as "bottom.oxygen_debt_mg_per_l" or "ramp \"gentle\".minutes"
    std::string here, there;  ///< Empty where it is missing
    bool operator==(const PondDifference&) const = default;
};

/// All keys in which they differ, in the order of the file. Ramps go by their names, the rest by its place.
[[nodiscard]] std::vector<PondDifference> differencesOf(const engine::Pond& here, const engine::Pond& there);

}  // namespace widgets
