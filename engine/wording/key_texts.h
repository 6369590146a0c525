#pragma once

#include "engine/water/constant.h"
#include "engine/water/priors.h"

#include <optional>
#include <span>
#include <string_view>

namespace engine {

/// What is taken where a key is left out, with its 5 and 95 % points and where it comes from.
struct UsualValue {
    double value = 0.0, low = 0.0, high = 0.0;
    std::string_view source;

    constexpr UsualValue(const Prior& prior)  // NOLINT: a prior is one
        : value(prior.value), low(prior.low), high(prior.high), source(prior.source) {}
    constexpr UsualValue(const Constant& constant)  // NOLINT: and so is a constant
        : value(constant.value), low(constant.low), high(constant.high), source(constant.source) {}
};

/// What a table or key of the pond file means. Kind, unit and range are those of pond_keys.h.
struct KeyText {
    std::string_view path;     ///< As in engine/pond/key_list.h
    std::string_view meaning;  ///< Whole sentences
    std::string_view absent;   ///< What is taken or done without it, a sentence; empty where it must be there
    std::string_view example;  ///< Its value as it stands in a file; empty for tables
    std::optional<UsualValue> usual;
};

// In the order of the file.
[[nodiscard]] std::span<const KeyText> keyTextsOfPond();   ///< Up to the profile
[[nodiscard]] std::span<const KeyText> keyTextsOfAir();    ///< Weather, climate, aerators
[[nodiscard]] std::span<const KeyText> keyTextsOfRamps();  ///< Limits, rules, ramps, readings, events

}  // namespace engine
