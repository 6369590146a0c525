#include "app/cli_options.h"

#include "engine/ensemble.h"
#include "engine/text.h"
#include "engine/text_file.h"

#include <CLI/CLI.hpp>

#include <array>
#include <cmath>
#include <cstdint>
#include <map>
#include <memory>
#include <span>
#include <sstream>

namespace app {
namespace {

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
constexpr NumberOption kDays{
    "--days", 1, 365, true, " days", "Days to run, 1 to 365 (default: 14 or the longest ramp plus 7)"};
constexpr NumberOption kMembers{
    "--members", 1,  engine::kMostMembers,
    true,        "", "Ponds like this one to run beside it, 1 to 10000 (default 1: none)"};
constexpr NumberOption kSeed{"--seed", 0, 999999999, true, "", "Seed of the members' draws (default 1)"};
constexpr NumberOption kThreads{
    "--threads", 1,  1024,
    true,        "", "Threads to run on (default: as many as cores); the results are the same"};
constexpr NumberOption kLayers{"--layers", 12, 400, true, "", "Layers of the water, 12 to 400 (default 40)"};
constexpr NumberOption kStep{"--step-s", 1,    3600,
                             false,      " s", "Longest time step in seconds, 1 to 3600 (default 360)"};
constexpr std::array kNumbers{kDays, kMembers, kSeed, kThreads, kLayers, kStep};

constexpr NumberOption kLine{
    "--line", 0, 20, false, " mg/L", "Line that the fish water is to keep (default: the stress line)"};
constexpr NumberOption kChance{
    "--chance", 0,  1,
    false,      "", "Wanted share of ponds that the plan takes below the line, 0 to 1 (default 0.05)"};
constexpr NumberOption kFreshMembers{
    "--members", 1,  engine::kMostMembers,
    true,        "", "Ponds like this one on which the plan is reported, 1 to 10000 (default 1000)"};
constexpr std::array kPlanNumbers{kLine, kChance, kFreshMembers, kSeed, kThreads, kLayers, kStep};

constexpr std::array kNotBuilt{"measure", "fit", "today"};
constexpr std::array kCommands{"check", "compare", "plan", "measure", "fit", "today"};
constexpr std::array kGeneralOptions{"--help", "--version"};
// Of the commands to come, so that they are not taken for slips.
constexpr std::array kOptionsToCome{"--ramp", "--until", "--at"};

/// The way a command is called.
class Usage : public CLI::Formatter {
public:
    std::string make_usage(const CLI::App* command, std::string) const override {
        const std::string& name = command->get_name();
        const std::string call = name == "check"     ? "check POND..."
                                 : name == "compare" ? "compare POND --out DIR [OPTIONS]"
                                 : name == "plan"    ? "plan POND --out DIR [OPTIONS]"
                                                     : "COMMAND ...";
        return "Usage: dawnline-cli " + call + "\n";
    }
};

/// CLI11 finds the words; what they are worth is judged here, in our own sentences.
struct Grammar {
    explicit Grammar(const std::string& version);
    CLI::App app{
        "Compares how the dissolved oxygen of a pond would go under start-up ramps of bottom aeration."};
    CLI::App* check = nullptr;
    CLI::App* compare = nullptr;
    CLI::App* plan = nullptr;
    std::vector<CLI::App*> notBuilt;
    Texts checkedPonds, runPonds, out;
    std::map<std::string, Texts> numbers;
    bool progress = false;
};

CLI::Option* addText(CLI::App& command, const char* name, Texts& values, const char* placeholder,
                     const char* help) {
    return command.add_option(name, values, help)
        ->expected(1)
        ->allow_extra_args(false)
        ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll)
        ->option_text(placeholder);
}

Grammar::Grammar(const std::string& version) {
    app.name("dawnline-cli");
    app.set_version_flag("--version", version, "Print the version and exit");
    app.set_help_flag("--help", "Print this help and exit");
    app.formatter(std::make_shared<Usage>());
    app.get_formatter()->column_width(26);
    app.get_formatter()->label("Subcommands", "Commands");
    app.allow_extras();
    app.footer(
        "Exit: 0 done, 1 the run ended early, 2 bad input, 3 a fault of our own.\n"
        "Results compare plans under stated assumptions; they are no prediction of survival.");

    check = app.add_subcommand("check", "Read pond files, say every fault and what they hold");
    check->add_option("POND", checkedPonds, "Pond files")->option_text(" ");

    compare = app.add_subcommand("compare", "Run do-nothing and every ramp of a pond file");
    plan = app.add_subcommand("plan", "Find the ramp that adds little risk in few days, or say not to start");
    const auto addRun = [this](CLI::App& command, std::span<const NumberOption> options, const char* files) {
        command.add_option("POND", runPonds, "Pond file")->option_text(" ");
        addText(command, "--out", out, "DIR", files);
        for (const NumberOption& number : options) {
            addText(command, number.name, numbers[number.name], "N", number.help);
        }
        command.add_flag("--progress", progress, "Write progress to standard error")->disable_flag_override();
    };
    addRun(*compare, kNumbers,
           "Folder for summary.csv, daily.csv, hourly.csv, layers.csv and budget.csv; made if missing");
    addRun(*plan, kPlanNumbers, "Folder for schedule.csv, summary.csv and pond.toml; made if missing");
    for (CLI::App* command : {check, compare, plan}) {
        command->set_version_flag("--version", version, "Print the version and exit");
        command->allow_extras();
    }
    for (const char* name : kNotBuilt) {
        notBuilt.push_back(app.add_subcommand(name, "Not built yet"));
        notBuilt.back()->set_help_flag();
        notBuilt.back()->allow_extras();
    }
}

std::string rangeOf(const NumberOption& option) {
    return std::string(option.isWhole ? "a whole number from " : "a number from ") +
           engine::shortest(option.low) + " to " + engine::shortest(option.high) + option.unit;
}

/// A text option's only value; says what is wrong otherwise.
std::optional<std::string> oneOf(const std::string& name, const Texts& values, Texts& faults) {
    if (values.size() > 1) {
        faults.push_back("The option " + name + " is given more than once.");
    } else if (!values.empty() && values.front().starts_with("--")) {
        faults.push_back("The option " + name + " needs a value, but is followed by the option " +
                         engine::shownText(values.front()) + ".");
    } else if (!values.empty()) {
        return values.front();
    }
    return std::nullopt;
}

std::optional<double> numberOf(const Grammar& grammar, const NumberOption& option, Texts& faults) {
    const auto text = oneOf(option.name, grammar.numbers.at(option.name), faults);
    if (!text) {
        return std::nullopt;
    }
    const auto value = engine::toNumber(*text);
    const bool isGood = value && *value >= option.low && *value <= option.high &&
                        (!option.isWhole || std::floor(*value) == *value);
    if (!isGood) {
        faults.push_back("The option " + std::string(option.name) + " is " + engine::shownText(*text) +
                         ", but must be " + rangeOf(option) + ".");
        return std::nullopt;
    }
    return value;
}

/// Says what is no option of the command; true if there is any.
bool refuseExtras(const CLI::App& command, const Texts& known, Texts& faults) {
    bool hasOption = false;
    for (const std::string& extra : command.remaining()) {
        if (!extra.starts_with('-')) {
            continue;
        }
        hasOption = true;
        const std::string name = extra.substr(0, extra.find('='));
        const bool isToCome =
            std::find(kOptionsToCome.begin(), kOptionsToCome.end(), name) != kOptionsToCome.end();
        const std::string nearest = engine::nearest(name, known);
        faults.push_back(isToCome          ? "The option " + name + " is not built yet."
                         : nearest.empty() ? "There is no option " + engine::shownText(name) + "."
                                           : "There is no option " + engine::shownText(name) +
                                                 "; the nearest is " + nearest + ".");
    }
    return hasOption;
}

CliOptions checkOptions(const Grammar& grammar, Texts& faults) {
    CliOptions options;
    options.command = Command::Check;
    options.ponds = grammar.checkedPonds;
    refuseExtras(*grammar.check, {kGeneralOptions.begin(), kGeneralOptions.end()}, faults);
    if (options.ponds.empty()) {
        faults.emplace_back("The command check needs at least one pond file.");
    }
    return options;
}

/// Pond file, folder and progress of a command that runs one pond.
CliOptions runOptions(const Grammar& grammar, const CLI::App& command, std::span<const NumberOption> numbers,
                      Texts& faults) {
    const std::string name = "The command " + command.get_name();
    CliOptions options;
    options.ponds = grammar.runPonds;
    options.progress = grammar.progress;
    Texts known{"--out", "--progress"};
    known.insert(known.end(), kGeneralOptions.begin(), kGeneralOptions.end());
    for (const NumberOption& number : numbers) {
        known.emplace_back(number.name);
    }
    const bool hasUnknown = refuseExtras(command, known, faults);
    if (options.ponds.empty()) {
        faults.push_back(name + " needs a pond file.");
    } else if (options.ponds.size() > 1 && !hasUnknown) {
        // After an unknown option the second may be its value.
        faults.push_back(name + " takes one pond file; " + engine::shownText(options.ponds[1]) +
                         " is one too many.");
    }
    if (const auto out = oneOf("--out", grammar.out, faults)) {
        options.out = *out;
        if (out->empty()) {
            faults.emplace_back("The option --out is empty, but must name a folder.");
        }
    } else if (grammar.out.empty()) {
        faults.push_back(name + " needs --out and a folder for its tables.");
    }
    return options;
}

engine::Resolution resolutionOf(const Grammar& grammar, Texts& faults) {
    engine::Resolution resolution;
    resolution.layers = static_cast<int>(numberOf(grammar, kLayers, faults).value_or(resolution.layers));
    resolution.largestStep = numberOf(grammar, kStep, faults).value_or(resolution.largestStep);
    return resolution;
}

CliOptions compareOptions(const Grammar& grammar, Texts& faults) {
    CliOptions options = runOptions(grammar, *grammar.compare, kNumbers, faults);
    options.command = Command::Compare;
    if (const auto days = numberOf(grammar, kDays, faults)) {
        options.compare.days = static_cast<int>(*days);
    }
    options.compare.members = static_cast<int>(numberOf(grammar, kMembers, faults).value_or(1.0));
    options.compare.seed = static_cast<std::uint64_t>(numberOf(grammar, kSeed, faults).value_or(1.0));
    options.compare.threads = static_cast<int>(numberOf(grammar, kThreads, faults).value_or(0.0));
    options.compare.resolution = resolutionOf(grammar, faults);
    return options;
}

CliOptions planOptions(const Grammar& grammar, Texts& faults) {
    CliOptions options = runOptions(grammar, *grammar.plan, kPlanNumbers, faults);
    options.command = Command::Plan;
    engine::PlanOptions& plan = options.plan;
    plan.line = numberOf(grammar, kLine, faults);
    plan.chance = numberOf(grammar, kChance, faults).value_or(plan.chance);
    plan.members = static_cast<int>(numberOf(grammar, kFreshMembers, faults).value_or(plan.members));
    plan.seed = static_cast<std::uint64_t>(numberOf(grammar, kSeed, faults).value_or(1.0));
    plan.threads = static_cast<int>(numberOf(grammar, kThreads, faults).value_or(0.0));
    plan.resolution = resolutionOf(grammar, faults);
    return options;
}

CliOptions optionsOf(const Grammar& grammar, Texts& faults) {
    for (const CLI::App* command : grammar.notBuilt) {
        if (command->parsed()) {
            faults.push_back("The command " + command->get_name() + " is not built yet.");
            return {};
        }
    }
    const Texts words = grammar.app.remaining();
    if (grammar.check->parsed() && words.empty()) {
        return checkOptions(grammar, faults);
    }
    if (grammar.compare->parsed() && words.empty()) {
        return compareOptions(grammar, faults);
    }
    if (grammar.plan->parsed() && words.empty()) {
        return planOptions(grammar, faults);
    }
    if (words.empty()) {
        faults.emplace_back("A command is missing: check, compare or plan.");
    } else if (words.front().starts_with('-')) {
        refuseExtras(grammar.app, {kGeneralOptions.begin(), kGeneralOptions.end()}, faults);
    } else {
        const std::string nearest = engine::nearest(words.front(), kCommands);
        faults.push_back(
            "There is no command " + engine::shownText(words.front()) +
            (nearest.empty() ? "; there are check, compare and plan." : "; the nearest is " + nearest + "."));
    }
    return {};
}

/// What CLI11 itself refuses: an option at the end without its value, a flag with one.
std::string faultOf(const CLI::ParseError& error) {
    const std::string what = error.what();
    if (what.find("flag override") != std::string::npos) {
        return "The option --" + what.substr(0, what.find(' ')) + " takes no value.";
    }
    if (error.get_name() == "ArgumentMismatch") {
        return "The option " + what.substr(0, what.find(':')) + " needs a value.";
    }
    return "The command line cannot be read: " + what + ".";
}

}  // namespace

CliParse parseCommandLine(int argc, const char* const* argv) {
    Grammar grammar("dawnline-cli " DAWNLINE_VERSION);
    CliParse parse;
    try {
        grammar.app.parse(argc, argv);
    } catch (const CLI::Success& help) {
        std::ostringstream said, ignored;
        grammar.app.exit(help, said, ignored);
        parse.options = CliOptions{};
        parse.options->said = said.str();
        return parse;
    } catch (const CLI::ParseError& error) {
        parse.faults.push_back(faultOf(error));
        return parse;
    }
    CliOptions options = optionsOf(grammar, parse.faults);
    if (parse.faults.empty()) {
        parse.options = std::move(options);
    }
    return parse;
}

}  // namespace app
