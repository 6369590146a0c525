#include "app/cli_options.h"

#include "app/cli_grammar.h"
#include "engine/base/text.h"
#include "engine/base/text_file.h"
#include "engine/pond/local_time.h"

#include <array>
#include <cmath>
#include <cstdint>
#include <sstream>

namespace app {
namespace {

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
        const std::string nearest = engine::nearest(name, known);
        faults.push_back("There is no option " + engine::shownText(name) +
                         (nearest.empty() ? "." : "; the nearest is " + nearest + "."));
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

/// What `compare`, `plan` and `measure` share: one pond file, a folder, and no options but theirs.
void runOptions(const Grammar& grammar, const CLI::App& command, const Texts& ponds, Texts known,
                CliOptions& options, Texts& faults) {
    options.ponds = ponds;
    options.progress = grammar.progress;
    known.insert(known.end(), {"--out", "--progress"});
    known.insert(known.end(), kGeneralOptions.begin(), kGeneralOptions.end());
    const std::string name = command.get_name();
    const bool hasUnknown = refuseExtras(command, known, faults);
    if (ponds.empty()) {
        faults.push_back("The command " + name + " needs a pond file.");
    } else if (ponds.size() > 1 && !hasUnknown) {
        // After an unknown option the second may be its value.
        faults.push_back("The command " + name + " takes one pond file; " + engine::shownText(ponds[1]) +
                         " is one too many.");
    }
    if (const auto out = oneOf("--out", grammar.out, faults)) {
        options.out = *out;
        if (out->empty()) {
            faults.emplace_back("The option --out is empty, but must name a folder.");
        }
    } else if (grammar.out.empty()) {
        faults.push_back("The command " + name + " needs --out and a folder for its tables.");
    }
}

template <std::size_t N>
Texts namesOf(const std::array<NumberOption, N>& numbers) {
    Texts names;
    for (const NumberOption& number : numbers) {
        names.emplace_back(number.name);
    }
    return names;
}

engine::Resolution resolutionOf(const Grammar& grammar, Texts& faults) {
    engine::Resolution resolution;
    resolution.layers = static_cast<int>(numberOf(grammar, kLayers, faults).value_or(resolution.layers));
    resolution.largestStep = numberOf(grammar, kStep, faults).value_or(resolution.largestStep);
    return resolution;
}

CliOptions measureOptions(const Grammar& grammar, Texts& faults) {
    CliOptions options;
    options.command = Command::Measure;
    Texts known = namesOf(kMeasureNumbers);
    known.emplace_back("--ramp");
    runOptions(grammar, *grammar.measure, grammar.measuredPonds, known, options, faults);
    if (const auto ramp = oneOf("--ramp", grammar.ramp, faults)) {
        options.measure.ramp = *ramp;
        if (ramp->empty()) {
            faults.emplace_back("The option --ramp is empty, but must name a ramp.");
        }
    }
    engine::MeasureOptions& asked = options.measure;
    asked.members = static_cast<int>(numberOf(grammar, kMeasureMembers, faults).value_or(asked.members));
    asked.seed = static_cast<std::uint64_t>(numberOf(grammar, kSeed, faults).value_or(1.0));
    asked.threads = static_cast<int>(numberOf(grammar, kThreads, faults).value_or(0.0));
    return options;
}

CliOptions compareOptions(const Grammar& grammar, Texts& faults) {
    CliOptions options;
    options.command = Command::Compare;
    runOptions(grammar, *grammar.compare, grammar.comparedPonds, namesOf(kNumbers), options, faults);
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
    CliOptions options;
    options.command = Command::Plan;
    runOptions(grammar, *grammar.plan, grammar.plannedPonds, namesOf(kPlanNumbers), options, faults);
    engine::PlanOptions& plan = options.plan;
    plan.line = numberOf(grammar, kLine, faults);
    plan.chance = numberOf(grammar, kChance, faults).value_or(plan.chance);
    plan.members = static_cast<int>(numberOf(grammar, kFreshMembers, faults).value_or(plan.members));
    plan.seed = static_cast<std::uint64_t>(numberOf(grammar, kSeed, faults).value_or(1.0));
    plan.threads = static_cast<int>(numberOf(grammar, kThreads, faults).value_or(0.0));
    plan.resolution = resolutionOf(grammar, faults);
    return options;
}

CliOptions changesOptions(const Grammar& grammar, Texts& faults) {
    CliOptions options;
    options.command = Command::Changes;
    options.ponds = grammar.changedBundles;
    options.progress = grammar.progress;
    Texts known(kGeneralOptions.begin(), kGeneralOptions.end());
    known.emplace_back("--progress");
    const bool hasUnknown = refuseExtras(*grammar.changes, known, faults);
    if (options.ponds.size() != 2 && !hasUnknown) {
        faults.push_back(
            "The command changes needs two files, a bundle and a later bundle or a pond file, but there " +
            std::string(options.ponds.size() == 1 ? "is " : "are ") + std::to_string(options.ponds.size()) +
            ".");
    }
    return options;
}

/// A date and time of the pond's own clock.
std::optional<engine::LocalTime> timeOf(const char* name, const Texts& values, Texts& faults) {
    const auto text = oneOf(name, values, faults);
    const auto time = text ? engine::parseLocalTime(*text) : std::nullopt;
    if (text && !time) {
        faults.push_back("The option " + std::string(name) + " is " + engine::shownText(*text) +
                         ", but must be a date and time such as \"2026-06-13 17:30\".");
    }
    return time;
}

CliOptions logOptions(const Grammar& grammar, std::size_t index, Texts& faults) {
    const LogCommandGrammar& one = kLogCommands[index];
    const std::string name = std::string("The command ") + one.name;
    CliOptions options;
    options.command = Command::OfLog;
    options.log.command = one.command;
    options.ponds = grammar.logPonds;
    options.progress = grammar.progress;
    Texts known(kGeneralOptions.begin(), kGeneralOptions.end());
    if (one.files != nullptr) {
        known.emplace_back("--out");
    }
    if (one.timeOption != nullptr) {
        known.emplace_back(one.timeOption);
        known.emplace_back("--progress");
        for (const NumberOption& number : kLogNumbers) {
            known.emplace_back(number.name);
        }
    } else {
        known.emplace_back("--head");
    }
    if (one.command == LogCommand::Review) {
        known.emplace_back("--ledger");
        options.log.ledger = oneOf("--ledger", grammar.ledger, faults).value_or("");
    }
    const bool hasUnknown = refuseExtras(*grammar.ofLog[index], known, faults);
    if (options.ponds.empty()) {
        faults.push_back(name + " needs a pond file.");
    } else if (options.ponds.size() > 1 && !hasUnknown) {
        faults.push_back(name + " takes one pond file; " + engine::shownText(options.ponds[1]) +
                         " is one too many.");
    }
    if (one.files != nullptr) {
        options.out = oneOf("--out", grammar.out, faults).value_or("");
        if (options.out.empty() && one.needsFolder && faults.empty()) {
            faults.push_back(name + " needs --out and a folder for its tables.");
        }
    }
    if (one.timeOption == nullptr) {
        options.log.head = oneOf("--head", grammar.head, faults);
        return options;
    }
    options.log.time = timeOf(one.timeOption, grammar.time, faults);
    if (const auto members = numberOf(grammar, kFitMembers, faults)) {
        options.log.members = static_cast<int>(*members);
    }
    options.log.seed = static_cast<std::uint64_t>(numberOf(grammar, kSeed, faults).value_or(1.0));
    options.log.threads = static_cast<int>(numberOf(grammar, kThreads, faults).value_or(0.0));
    if (const auto layers = numberOf(grammar, kLayers, faults)) {
        options.log.layers = static_cast<int>(*layers);
    }
    options.log.largestStep = numberOf(grammar, kStep, faults);
    return options;
}

CliOptions newOptions(const Grammar& grammar, Texts& faults) {
    CliOptions options;
    options.command = Command::New;
    options.ponds = grammar.newPonds;
    options.fresh.units = grammar.usUnits ? engine::UnitSystem::Us : engine::UnitSystem::Metric;
    options.fresh.ask = grammar.ask;
    options.fresh.forecast = oneOf("--forecast", grammar.forecast, faults).value_or("");
    Texts known(kGeneralOptions.begin(), kGeneralOptions.end());
    known.insert(known.end(), {"--us", "--ask", "--forecast"});
    for (const auto& [name, texts] : grammar.answers) {
        known.push_back("--" + name);
        if (const auto text = oneOf(known.back(), texts, faults)) {
            options.fresh.answers[name] = *text;
        }
    }
    const bool hasUnknown = refuseExtras(*grammar.fresh, known, faults);
    if (options.ponds.size() != 1 && !hasUnknown) {
        faults.emplace_back("The command new needs one name for the file that it makes, such as pond.toml.");
    }
    return options;
}

CliOptions explainOptions(const Grammar& grammar, Texts& faults) {
    CliOptions options;
    options.command = Command::Explain;
    options.keys = grammar.explainedKeys;
    options.wholeReference = grammar.wholeReference;
    Texts known(kGeneralOptions.begin(), kGeneralOptions.end());
    known.emplace_back("--all");
    refuseExtras(*grammar.explain, known, faults);
    return options;
}

/// "check, compare and plan"
std::string commandList(const std::string& last) {
    std::string list;
    for (std::size_t i = 0; i < kCommands.size(); ++i) {
        list += (i == 0                      ? ""
                 : i + 1 == kCommands.size() ? " " + last + " "
                                             : ", ") +
                std::string(kCommands[i]);
    }
    return list;
}

CliOptions optionsOf(const Grammar& grammar, Texts& faults) {
    const Texts words = grammar.app.remaining();
    if (grammar.fresh->parsed() && words.empty()) {
        return newOptions(grammar, faults);
    }
    if (grammar.explain->parsed() && words.empty()) {
        return explainOptions(grammar, faults);
    }
    if (grammar.check->parsed() && words.empty()) {
        return checkOptions(grammar, faults);
    }
    if (grammar.compare->parsed() && words.empty()) {
        return compareOptions(grammar, faults);
    }
    if (grammar.plan->parsed() && words.empty()) {
        return planOptions(grammar, faults);
    }
    if (grammar.measure->parsed() && words.empty()) {
        return measureOptions(grammar, faults);
    }
    if (grammar.changes->parsed() && words.empty()) {
        return changesOptions(grammar, faults);
    }
    for (std::size_t i = 0; i < kLogCommands.size(); ++i) {
        if (grammar.ofLog[i]->parsed() && words.empty()) {
            return logOptions(grammar, i, faults);
        }
    }
    if (words.empty()) {
        faults.push_back("A command is missing: " + commandList("or") + ".");
    } else if (words.front().starts_with('-')) {
        refuseExtras(grammar.app, {kGeneralOptions.begin(), kGeneralOptions.end()}, faults);
    } else {
        const std::string nearest = engine::nearest(words.front(), kCommands);
        faults.push_back("There is no command " + engine::shownText(words.front()) +
                         (nearest.empty() ? "; there are " + commandList("and") + "."
                                          : "; the nearest is " + nearest + "."));
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
