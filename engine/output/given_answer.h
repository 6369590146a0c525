#pragma once

#include "engine/advice/answer_change.h"
#include "engine/output/bundle.h"

#include <optional>

namespace engine {

/// The answer of a run, as its bundle would hold it.
[[nodiscard]] GivenAnswer givenAnswer(const FrozenRun& run);

/// The answer that a bundle holds; nothing without a statement of a run or without advice.csv.
[[nodiscard]] std::optional<GivenAnswer> givenAnswer(const BundleFiles& bundle);

}  // namespace engine
