#pragma once

#include "engine/plan.h"
#include "engine/run.h"

#include <optional>
#include <string>
#include <vector>

namespace app {

enum class Command { Say, Check, Compare, Plan };

/// What the command line asks for.
struct CliOptions {
    Command command = Command::Say;
    std::string said;                ///< Help or version, with Command::Say.
    std::vector<std::string> ponds;  ///< Paths as the user gave them; one with the others.
    std::string out;                 ///< Folder of the tables.
    engine::CompareOptions compare;
    engine::PlanOptions plan;
    bool progress = false;
};

/// Options if and only if there is no fault; a fault is a sentence.
struct CliParse {
    std::optional<CliOptions> options;
    std::vector<std::string> faults;
};

[[nodiscard]] CliParse parseCommandLine(int argc, const char* const* argv);

}  // namespace app
