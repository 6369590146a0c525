#pragma once

#include "app/cli_options.h"
#include "engine/ensemble/ensemble.h"
#include "engine/ensemble/measure.h"

#include <CLI/CLI.hpp>

#include <array>
#include <map>
#include <string>
#include <vector>

namespace app {

using Texts = std::vector<std::string>;

/// A number that an option takes.
struct NumberOption {
    const char* name;
    double low, high;
    bool isWhole;
    const char* unit;  ///< As it stands in a sentence, with a space before it.
    const char* help;
};

// The ranges keep a run within what the grid and a day's patience allow.
inline constexpr NumberOption kDays{
    "--days", 1, 365, true, " days", "Days to run, 1 to 365 (default: 14 or the longest ramp plus 7)"};
inline constexpr NumberOption kMembers{
    "--members", 1,  engine::kMostMembers,
    true,        "", "Ponds like this one to run beside it, 1 to 10000 (default 1: none)"};
inline constexpr NumberOption kMeasureMembers{"--members",
                                              engine::kLeastMembersToMeasure,
                                              engine::kMostMembers,
                                              true,
                                              "",
                                              "Ponds like this one to run, 100 to 10000 (default 1000)"};
inline constexpr NumberOption kSeed{"--seed", 0,  999999999,
                                    true,     "", "Seed of the members' draws (default 1)"};
inline constexpr NumberOption kThreads{
    "--threads", 1,  1024,
    true,        "", "Threads to run on (default: as many as cores); the results are the same"};
inline constexpr NumberOption kLayers{"--layers", 12, 400,
                                      true,       "", "Layers of the water, 12 to 400 (default 40)"};
inline constexpr NumberOption kStep{
    "--step-s", 1, 3600, false, " s", "Longest time step in seconds, 1 to 3600 (default 600)"};
inline constexpr NumberOption kFitMembers{
    "--members", 8,  engine::kMostMembers,
    true,        "", "Ponds like this one, 8 to 10000 (default 200; 64 for today and review)"};
inline constexpr std::array kLogNumbers{kFitMembers, kSeed, kThreads, kLayers, kStep};
inline constexpr std::array kNumbers{kDays, kMembers, kSeed, kThreads, kLayers, kStep};

inline constexpr NumberOption kLine{
    "--line", 0, 20, false, " mg/L", "Line that the fish water is to keep (default: the stress line)"};
inline constexpr NumberOption kChance{
    "--chance", 0,  1,
    false,      "", "Share of ponds that the ramp may take below the stress line, 0 to 1 (default 0.05)"};
inline constexpr NumberOption kFreshMembers{
    "--members", 1,  engine::kMostMembers,
    true,        "", "Ponds like this one on which the answer is reported, 1 to 10000 (default 1000)"};
inline constexpr std::array kPlanNumbers{kLine, kChance, kFreshMembers, kSeed, kThreads, kLayers, kStep};
inline constexpr std::array kMeasureNumbers{kMeasureMembers, kSeed, kThreads};

inline constexpr std::array kCommands{"new", "explain", "check", "compare",  "plan",   "measure",
                                      "fit", "today",   "log",   "incident", "review", "changes"};

/// A command about a pond's log.
struct LogCommandGrammar {
    LogCommand command;
    const char* name;
    const char* help;
    const char* files;       ///< Help of --out; null where the command writes none
    const char* timeOption;  ///< Null where it takes no time
    const char* timeHelp;
    bool needsFolder = true;  ///< Of a command with `files`
};
inline constexpr std::array kLogCommands{
    LogCommandGrammar{LogCommand::Log, "log", "List a pond's log, its flags and its head", nullptr, nullptr,
                      nullptr},
    LogCommandGrammar{LogCommand::Fit, "fit",
                      "Fit what is uncertain to the readings and forecast the coming nights",
                      "Folder for fit.csv, forecast.csv and residuals.csv; made if missing", "--until",
                      "\"YYYY-MM-DD HH:MM\": use nothing later (default: the last reading)"},
    LogCommandGrammar{LogCommand::Today, "today", "Go, hold, back or stop, by this morning's readings",
                      "Folder for schedule.csv, planned anew from today; made if missing (default: no plan)",
                      "--at", "\"YYYY-MM-DD HH:MM\": this morning (default: the last reading)", false},
    LogCommandGrammar{LogCommand::Incident, "incident", "Fish in distress: what to do, from three readings",
                      nullptr, "--at", "\"YYYY-MM-DD HH:MM\": now (default: the last reading)"},
    LogCommandGrammar{LogCommand::Review, "review", "What has changed since the start, beyond the noise",
                      "Folder for review.csv; made if missing", "--until",
                      "\"YYYY-MM-DD HH:MM\": use nothing later (default: the last reading)"},
};
inline constexpr std::array kGeneralOptions{"--help", "--version"};

/// CLI11 finds the words; what they are worth is judged here, in our own sentences.
struct Grammar {
    explicit Grammar(const std::string& version);
    CLI::App app{
        "Compares how the dissolved oxygen of a pond would go under start-up ramps of bottom aeration."};
    CLI::App* fresh = nullptr;
    CLI::App* explain = nullptr;
    CLI::App* check = nullptr;
    CLI::App* compare = nullptr;
    CLI::App* plan = nullptr;
    CLI::App* measure = nullptr;
    CLI::App* changes = nullptr;
    std::vector<CLI::App*> ofLog;  ///< As in kLogCommands
    Texts newPonds, forecast, explainedKeys, checkedPonds, comparedPonds, plannedPonds, measuredPonds,
        logPonds, changedBundles, out, ramp, time, head, ledger;
    std::map<std::string, Texts> numbers;
    std::map<std::string, Texts> answers;  ///< Of `new`, by the fields' names
    bool progress = false;
    bool wholeReference = false;
    bool usUnits = false, ask = false;

private:
    void describe(const std::string& version);
    void addFileCommands();
    void addRunCommands(const std::string& version);
    void addLogCommands(const std::string& version);
};

}  // namespace app
