#pragma once

#include "engine/ensemble/compare.h"
#include "engine/ensemble/measure.h"
#include "engine/plan/plan.h"

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace app {

enum class Command { Say, New, Explain, Check, Compare, Plan, Measure, OfLog, Changes };
enum class LogCommand { Log, Fit, Today, Incident, Review };

/// What a command about a pond's log is asked for; absent is the command's own default.
struct LogOptions {
    LogCommand command = LogCommand::Log;
    std::optional<engine::LocalTime> time;
    std::optional<std::string> head;
    std::string ledger;  ///< File of the consultant's starts; empty: none
    std::optional<int> members, layers;
    std::optional<double> largestStep;  ///< [s]
    std::uint64_t seed = 1;
    int threads = 0;
};

/// What `new` is told.
struct NewOptions {
    std::map<std::string, std::string> answers;  ///< By the names of the first questions' fields
    engine::UnitSystem units = engine::UnitSystem::Metric;
    std::string forecast;  ///< File with pasted weather; empty: none
    bool ask = false;      ///< Ask even where there is no terminal
};

/// What the command line asks for.
struct CliOptions {
    Command command = Command::Say;
    std::string said;  ///< Help or version, with Command::Say.
    std::vector<std::string>
        ponds;  ///< Paths as the user gave them; one except with Command::Check and Changes.
    std::vector<std::string> keys;  ///< With Command::Explain; none: the list of them.
    bool wholeReference = false;
    std::string out;  ///< Folder of the tables.
    engine::CompareOptions compare;
    engine::PlanOptions plan;
    LogOptions log;
    NewOptions fresh;
    engine::MeasureOptions measure;
    bool progress = false;
};

/// Options if and only if there is no fault; a fault is a sentence.
struct CliParse {
    std::optional<CliOptions> options;
    std::vector<std::string> faults;
};

[[nodiscard]] CliParse parseCommandLine(int argc, const char* const* argv);

}  // namespace app
