#include "app/cli_grammar.h"

#include "engine/intake/first_questions.h"
#include "engine/pond/key_list.h"
#include "engine/pond/pond_units.h"

#include <algorithm>
#include <memory>

namespace app {
namespace {

/// The way a command is called.
class Usage : public CLI::Formatter {
public:
    std::string make_usage(const CLI::App* command, std::string) const override {
        const std::string& name = command->get_name();
        const auto ofLog = std::find_if(kLogCommands.begin(), kLogCommands.end(),
                                        [&](const LogCommandGrammar& one) { return name == one.name; });
        const std::string call =
            name == "new"       ? "new POND [OPTIONS]"
            : name == "explain" ? "explain [KEY...] [OPTIONS]"
            : name == "check"   ? "check POND..."
            : name == "compare" ? "compare POND --out DIR [OPTIONS]"
            : name == "plan"    ? "plan POND --out DIR [OPTIONS]"
            : name == "measure" ? "measure POND --out DIR [OPTIONS]"
            : name == "changes" ? "changes BUNDLE POND-OR-BUNDLE [OPTIONS]"
            : ofLog != kLogCommands.end()
                ? name + (ofLog->files != nullptr && ofLog->needsFolder ? " POND --out DIR [OPTIONS]"
                                                                        : " POND [OPTIONS]")
                : "COMMAND ...";
        return "Usage: dawnline-cli " + call + "\n";
    }
};

CLI::Option* addText(CLI::App& command, const char* name, Texts& values, const char* placeholder,
                     const char* help) {
    return command.add_option(name, values, help)
        ->expected(1)
        ->allow_extra_args(false)
        ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll)
        ->option_text(placeholder);
}

}  // namespace

Grammar::Grammar(const std::string& version) {
    describe(version);
    addFileCommands();
    addRunCommands(version);
    addLogCommands(version);
}

void Grammar::describe(const std::string& version) {
    app.name("dawnline-cli");
    app.set_version_flag("--version", version, "Print the version and exit");
    app.set_help_flag("--help", "Print this help and exit");
    app.formatter(std::make_shared<Usage>());
    app.get_formatter()->column_width(26);
    app.get_formatter()->label("Subcommands", "Commands");
    app.allow_extras();
    app.footer(
        "Exit: 0 done, 1 the run ended early, 2 bad input, 3 a fault of our own.\n"
        "Results compare ramps under stated assumptions; they are no prediction of survival.");
}

void Grammar::addFileCommands() {
    fresh =
        app.add_subcommand("new", "Make a pond file from about twelve questions, asked or given as options");
    fresh->add_option("POND", newPonds, "File to make, such as pond.toml")->option_text(" ");
    for (const engine::FirstQuestion& question : engine::firstQuestions()) {
        for (const engine::FirstField& field : question.fields) {
            std::string help = field.label;
            for (std::size_t i = 0; i < field.words.size(); ++i) {
                help += (i == 0 ? ": " : ", ") + std::string(field.words[i]);
            }
            const std::string unit = field.key != nullptr ? engine::findKey(field.key)->rule.unit : "";
            help += unit.empty() || unit == field.name
                        ? ""
                        : ", " + unit + " or with its unit: " + engine::unitList(unit);
            addText(*fresh, ("--" + std::string(field.name)).c_str(), answers[field.name], "ANSWER",
                    help.c_str());
        }
    }
    addText(*fresh, "--forecast", forecast, "FILE",
            "Weather pasted from a web page or spreadsheet: day, high, low, wind, sky");
    fresh->add_flag("--us", usUnits, "Feet, acres, degF, mph and cfm, in answers and in the file")
        ->disable_flag_override();
    fresh->add_flag("--ask", ask, "Ask even where standard input is no terminal")->disable_flag_override();
    explain =
        app.add_subcommand("explain", "Say what the keys of a pond file mean, with unit, range and default");
    explain->add_option("KEY", explainedKeys, "Keys or tables, such as area_m2 or basin (default: list them)")
        ->option_text(" ");
    explain->add_flag("--all", wholeReference, "The whole reference")->disable_flag_override();
}

void Grammar::addRunCommands(const std::string& version) {
    check = app.add_subcommand(
        "check", "Read pond files or loggers' tables (.csv), say every fault and what they hold");
    check->add_option("POND", checkedPonds, "Pond files")->option_text(" ");

    compare = app.add_subcommand("compare", "Run do-nothing and every ramp of a pond file");
    compare->add_option("POND", comparedPonds, "Pond file")->option_text(" ");
    addText(
        *compare, "--out", out, "DIR",
        "Folder for summary.csv, daily.csv, hourly.csv, layers.csv, budget.csv, organic.csv and gases.csv; "
        "made if missing");
    for (const NumberOption& number : kNumbers) {
        addText(*compare, number.name, numbers[number.name], "N", number.help);
    }

    plan = app.add_subcommand("plan", "Find the ramp that harms few ponds in few days, or say not to start");
    plan->add_option("POND", plannedPonds, "Pond file")->option_text(" ");
    addText(*plan, "--out", out, "DIR",
            "Folder for schedule.csv, summary.csv and pond.toml; made if missing");
    for (const NumberOption& number : kPlanNumbers) {
        addText(*plan, number.name, numbers[number.name], "N", number.help);
    }

    measure = app.add_subcommand("measure", "Say which input to measure next for a ramp");
    measure->add_option("POND", measuredPonds, "Pond file")->option_text(" ");
    addText(*measure, "--out", out, "DIR", "Folder for measure.csv and measure_gain.csv; made if missing");
    addText(*measure, "--ramp", ramp, "NAME",
            "Ramp of the pond file, or do-nothing (default: the chosen ramp, else the first)");
    for (const NumberOption& number : kMeasureNumbers) {
        addText(*measure, number.name, numbers[number.name], "N", number.help);
    }
    changes = app.add_subcommand("changes", "Say how the answer of a bundle has changed since");
    changes->add_option("BUNDLE", changedBundles, "The earlier bundle, then a later one or a pond file")
        ->option_text(" ");
    for (CLI::App* command : {compare, plan, measure, changes}) {
        command->add_flag("--progress", progress, "Write progress to standard error")
            ->disable_flag_override();
    }
    for (CLI::App* command : {fresh, explain, check, compare, plan, measure, changes}) {
        command->set_version_flag("--version", version, "Print the version and exit");
        command->allow_extras();
    }
}

void Grammar::addLogCommands(const std::string& version) {
    for (const LogCommandGrammar& one : kLogCommands) {
        CLI::App* command = app.add_subcommand(one.name, one.help);
        command->add_option("POND", logPonds, "Pond file")->option_text(" ");
        if (one.files != nullptr) {
            addText(*command, "--out", out, "DIR", one.files);
        }
        if (one.timeOption != nullptr) {
            addText(*command, one.timeOption, time, "TIME", one.timeHelp);
            for (const NumberOption& number : kLogNumbers) {
                addText(*command, number.name, numbers[number.name], "N", number.help);
            }
            command->add_flag("--progress", progress, "Write progress to standard error")
                ->disable_flag_override();
        } else {
            addText(*command, "--head", head, "HEAD", "A head that was printed: is this still that log?");
        }
        if (one.command == LogCommand::Review) {
            addText(*command, "--ledger", ledger, "FILE",
                    "Hold the start against the dawns read and note it in this file, the starts.csv beside "
                    "consultant.toml, from which papers say how far off starts were computed");
        }
        command->set_version_flag("--version", version, "Print the version and exit");
        command->allow_extras();
        ofLog.push_back(command);
    }
}

}  // namespace app
