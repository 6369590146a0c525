#pragma once

#include "engine/intake/first_pond.h"
#include "engine/pond/pond_keys.h"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace engine {

/// One answer of the first questions: a text, a day, a number of a key, or one of some words.
struct FirstField {
    const char* name;   ///< Also the option that gives it: "max-depth"
    const char* label;  ///< What it is, in a few words
    /// Of which key of the pond file it is, by which a number has its unit and range; null for other answers.
    const char* key = nullptr;
    double FirstAnswers::*number = nullptr;
    std::optional<double> FirstAnswers::*maybe = nullptr;  ///< A number that may stay open
    std::vector<const char*> words = {};                        ///< Of a choice, for the command line
    std::vector<const char*> texts = {};                        ///< The same in full
    int (*chosen)(const FirstAnswers&) = nullptr;
    void (*choose)(FirstAnswers&, int) = nullptr;
    bool mustBeTold = false;  ///< No usual answer would do

    [[nodiscard]] bool isNumber() const { return number != nullptr || maybe != nullptr; }
};

/// A question with its answers.
struct FirstQuestion {
    const char* question;
    const char* help;
    std::vector<FirstField> fields;
};

/// The questions that an owner can answer over the telephone, in the order in which they are asked; the
/// window and the command line ask the same.
[[nodiscard]] const std::vector<FirstQuestion>& firstQuestions();

/// Takes one answer as it is typed: a number with its unit or in the unit of `units`, a day such as
/// 2026-06-14, a word of a choice or its number.
/// @return a sentence if it cannot be taken; empty otherwise.
[[nodiscard]] std::string takeAnswer(FirstAnswers& answers, const FirstField& field, std::string_view text,
                                     UnitSystem units);

/// The answer that stands there as one would type it: "0.5", "2.5 ac", "faint"; empty for one that is open.
[[nodiscard]] std::string answerText(const FirstAnswers& answers, const FirstField& field, UnitSystem units);

}  // namespace engine
