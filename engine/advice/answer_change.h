#pragma once

#include "engine/advice/frozen_run.h"
#include "engine/advice/run_statement.h"

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace engine {

/// An answer as it was given: the fields of advice.csv, and what its run was made of.
struct GivenAnswer {
    RunStatement made;
    std::map<std::string, std::string> fields;  ///< As they are written, by their names
};

/// What an answer is made of.
enum class AnswerInput { Program, Draws, Ramp, Pond, Weather, Readings, Climate };

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
