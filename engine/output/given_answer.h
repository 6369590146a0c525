#pragma once

#include "engine/advice/answer_change.h"
#include "engine/output/bundle.h"

#include <chrono>
#include <filesystem>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace engine {

/// The answer of a run, as its bundle would hold it.
[[nodiscard]] GivenAnswer givenAnswer(const FrozenRun& run);

/// The answer that a bundle holds; nothing without a statement of a run or without advice.csv.
[[nodiscard]] std::optional<GivenAnswer> givenAnswer(const BundleFiles& bundle);

/// A bundle that is whole, and its answer; sentences where it is not.
struct OpenedAnswer {
    BundleFiles bundle;
    std::optional<GivenAnswer> answer;  ///< If and only if there is no fault
    std::vector<std::string> faults;
};
[[nodiscard]] OpenedAnswer openAnswer(const std::filesystem::path& bundle);

/// Why there is no answer.
struct NoAnswer {
    std::string sentence;
    bool hasEndedEarly = false;  ///< The run did; else the pond could not be frozen
};

/// The answer about a pond as it is now, asked as an earlier one was: the same ramp, members and seed.
/// @param version  Of the program that answers. @param time  Of the new answer, UTC.
[[nodiscard]] std::variant<GivenAnswer, NoAnswer> answerAgain(
    const Pond& pond, const std::filesystem::path& path, const GivenAnswer& before,
    const std::string& version, std::chrono::sys_seconds time, const RunControl& control = {});

}  // namespace engine
