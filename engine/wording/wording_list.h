#pragma once

#include "engine/wording/sentence.h"

#include <span>
#include <string_view>

namespace engine {

/// The English of one sentence; of one term.
struct Template {
    SentenceKey key;
    std::string_view text;
};
struct TermWord {
    std::string_view term, text;
};

// Parts of the list that englishTemplate() and englishTerm() look in, each in a file of its own.
[[nodiscard]] std::span<const Template> templatesOfRuns();
[[nodiscard]] std::span<const TermWord> termsOfRuns();
[[nodiscard]] std::span<const Template> templatesOfAssumptions();
[[nodiscard]] std::span<const Template> templatesOfLog();
[[nodiscard]] std::span<const TermWord> termsOfLog();
[[nodiscard]] std::span<const Template> templatesBeforeRuns();
[[nodiscard]] std::span<const Template> templatesOfMeasuring();
[[nodiscard]] std::span<const TermWord> termsOfMeasuring();
[[nodiscard]] std::span<const Template> templatesOfAdvice();
[[nodiscard]] std::span<const TermWord> termsOfAdvice();
[[nodiscard]] std::span<const Template> templatesOfChanges();
[[nodiscard]] std::span<const TermWord> termsOfChanges();
[[nodiscard]] std::span<const Template> templatesOfPlans();
[[nodiscard]] std::span<const TermWord> termsOfPlans();

}  // namespace engine
