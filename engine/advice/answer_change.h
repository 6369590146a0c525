#pragma once

#include "engine/advice/frozen_run.h"

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace engine {

/// Lines "DIGEST  NAME" behind a word, the digest by the name; nothing if one of them is no such line.
/// @param before  At the start of the lines that count, may be empty.
[[nodiscard]] std::optional<std::map<std::string, std::string>> readSums(std::string_view text,
                                                                         std::string_view before);

/// A statement of a run (statementOf) read back.
struct RunStatement {
    RunStamp stamp;
    std::map<std::string, std::string> sums;  ///< SHA-256 of each file, by its name
};
/// @return nothing if the text is no statement of a run.
[[nodiscard]] std::optional<RunStatement> readStatement(std::string_view text);

/// An answer as it was given: the fields of advice.csv, and what its run was made of.
struct GivenAnswer {
    RunStatement made;
    std::map<std::string, std::string> fields;  ///< As they are written, by their names
};

/// What an answer is made of.
enum class AnswerInput { Program, Draws, Ramp, Pond, Weather, Readings };

/// A field of an answer that reads differently, as it is shown: chances of 100, oxygen to a tenth.
struct ChangedField {
    std::string field, before, now;  ///< A value that there is not is empty
};

struct AnswerChange {
    std::chrono::sys_seconds before, now;  ///< When the answers were given, UTC
    std::vector<AnswerInput> inputs;       ///< That are not the same
    std::vector<ChangedField> fields;      ///< In the order of advice.csv
};
[[nodiscard]] AnswerChange changeOf(const GivenAnswer& before, const GivenAnswer& now);

}  // namespace engine
