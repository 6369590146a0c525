#pragma once

#include <array>

namespace engine::test {

/// The ponds of the scenarios folder by their files' names without ".toml".
inline constexpr std::array<const char*, 11> kScenarioNames{
    "courtyard-koi", "fee-cats",  "grandfathers-pond", "high-meadow",    "new-clay",    "old-quarry",
    "pea-soup",      "salt-lens", "spring-trout",      "weedy-woodland", "windy-dugout"};

}  // namespace engine::test
