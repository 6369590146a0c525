#include "app/cli_changes.h"
#include "app/cli_log.h"
#include "app/cli_new.h"
#include "app/cli_options.h"
#include "app/cli_say.h"
#include "app/cli_signals.h"
#include "engine/advice/frozen_run.h"
#include "engine/base/error.h"
#include "engine/base/files.h"
#include "engine/base/text.h"
#include "engine/base/text_file.h"
#include "engine/ensemble/compare.h"
#include "engine/ensemble/measure.h"
#include "engine/output/advice_io.h"
#include "engine/output/plan_io.h"
#include "engine/output/results_io.h"
#include "engine/pond/pond_io.h"
#include "engine/pond/readings_csv.h"
#include "engine/pond/readings_remarks.h"
#include "engine/run/run_bounds.h"
#include "engine/wording/key_reference.h"
#include "engine/wording/sentence.h"
#include "engine/wording/sentence_advice.h"
#include "engine/wording/sentence_measure.h"
#include "engine/wording/wording.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <exception>
#include <optional>

namespace {

using app::complain;
using app::kBadInput;
using app::kDone;
using app::kEndedEarly;
using app::kOurFault;
using app::progressOf;
using app::readAloud;
using app::saidAll;

int explain(const app::CliOptions& options) {
    if (options.keys.empty()) {
        return saidAll(options.wholeReference ? engine::keyReference() : engine::keyOverview());
    }
    int code = kDone;
    for (const std::string& key : options.keys) {
        const engine::Explanation explanation = engine::explain(key);
        if (!explanation.text) {
            complain(explanation.fault);
            code = kBadInput;
            continue;
        }
        code = std::max(code, saidAll(*explanation.text));
    }
    return code;
}

/// Says what would be taken of a logger's file that no pond names yet.
int previewLogger(const std::string& path) {
    const engine::FileText file = engine::readWholeFile(path, engine::kCsvFileLimit_bytes);
    const auto textFault = file.text ? engine::findTextFault(*file.text) : std::nullopt;
    if (!file.text || textFault) {
        complain(engine::shownPath(path) + ": " + (file.text ? textFault->sentence : file.fault));
        return kBadInput;
    }
    // A file without depths is of a logger that hangs somewhere, which the pond file says.
    engine::ReadingsFile shape;
    engine::Diagnostics said;
    std::vector<engine::Reading> readings = engine::readReadingsCsv(*file.text, path, shape, {}, said);
    const bool lacksDepth = std::any_of(said.begin(), said.end(), [](const engine::Diagnostic& one) {
        return one.key == "depth_m" && one.sentence.starts_with("This column is missing");
    });
    if (lacksDepth) {
        said.clear();
        shape.depth = engine::Quantity(0.0);
        readings = engine::readReadingsCsv(*file.text, path, shape, {}, said);
        for (engine::Reading& reading : readings) {
            reading.depth.reset();
        }
    }
    for (const engine::Diagnostic& one : said) {
        complain(engine::format(one));
    }
    if (engine::hasErrors(said)) {
        return kBadInput;
    }
    const std::string name = path.substr(path.find_last_of('/') + 1);
    return saidAll(
        engine::readingsTaken(readings) + "\nTo use them, write into the pond file beside it:\n\n" +
        "    [readings]\n    file = \"" + name + "\"\n" +
        (lacksDepth ? "    depth_m = 0.5   # where the logger hangs; the file does not say\n" : ""));
}

int check(const app::CliOptions& options) {
    int code = kDone;
    for (const std::string& path : options.ponds) {
        if (path.ends_with(".csv") || path.ends_with(".CSV") || path.ends_with(".tsv") ||
            path.ends_with(".txt")) {
            code = std::max(code, previewLogger(path));
            continue;
        }
        const engine::PondReading reading = readAloud(path);
        if (!reading.pond) {
            code = kBadInput;
            continue;
        }
        code = std::max(
            code,
            saidAll(engine::englishText(engine::sentencesOf(*reading.pond, path, reading.diagnostics))));
    }
    return code;
}

/// Says which runs did not complete; true if there is one.
bool endedEarly(const engine::Comparison& comparison) {
    bool isEarly = false;
    for (const engine::RampRun& run : comparison.runs) {
        if (run.end == engine::RunEnd::NotFinite) {
            complain(run.message + " Nothing was written.");
        }
        isEarly = isEarly || run.end != engine::RunEnd::Completed;
    }
    if (comparison.ensemble && comparison.ensemble->end != engine::EnsembleEnd::Completed) {
        complain(comparison.ensemble->message + " Nothing was written.");
        isEarly = true;
    }
    return isEarly;
}

/// The pond to run, unless it or the folder of the tables cannot be used, which is said.
engine::PondReading pondToRun(const app::CliOptions& options) {
    engine::PondReading reading = readAloud(options.ponds.front());
    const auto folderFault = engine::folderFault(options.out);
    if (folderFault) {
        complain(*folderFault);
        reading.pond.reset();
    }
    return reading;
}

/// Writes the tables and says the sentences, the last of which is where the tables went.
int finish(const app::CliOptions& options, std::vector<engine::Sentence> sentences,
           const std::vector<engine::TextFile>& files) {
    sentences.push_back(engine::filesWritten(engine::shownPath(options.out)));
    const std::string text = engine::englishText(sentences);
    if (const auto fault = engine::writeFiles(options.out, files)) {
        complain(*fault + " Nothing was written.");
        return kBadInput;
    }
    return saidAll(text);
}

int measure(const app::CliOptions& options) {
    const app::StopOnSignal signals;
    const engine::PondReading reading = pondToRun(options);
    const std::optional<engine::Pond>& pond = reading.pond;
    if (!pond) {
        return kBadInput;
    }
    if (!engine::rampToMeasure(*pond, options.measure.ramp)) {
        std::vector<std::string> names{"do-nothing"};
        for (const engine::Ramp& ramp : pond->ramps) {
            names.push_back(ramp.name);
        }
        const std::string nearest = engine::nearest(options.measure.ramp, names);
        complain("The pond file has no ramp " + engine::shownText(options.measure.ramp) +
                 (nearest.empty() ? "." : "; the nearest is " + engine::shownText(nearest) + "."));
        return kBadInput;
    }
    if (const auto fault = engine::sizeFault({2, engine::defaultDays(*pond), options.measure.members, {}})) {
        complain(*fault + " Nothing was written.");
        return kBadInput;
    }
    const engine::MeasureResult result =
        engine::measure(*pond, options.measure, {signals.token(), progressOf(options)});
    if (signals.token().stop_requested()) {
        complain("Stopped on request before the runs were done. Nothing was written.");
        return kEndedEarly;
    }
    if (result.end != engine::EnsembleEnd::Completed) {
        complain(result.message + " Nothing was written.");
        return kEndedEarly;
    }
    return finish(options, engine::sentencesOf(result), engine::measureFiles(result));
}

int compare(const app::CliOptions& options) {
    const app::StopOnSignal signals;
    const engine::PondReading reading = pondToRun(options);
    const std::optional<engine::Pond>& pond = reading.pond;
    if (!pond) {
        return kBadInput;
    }
    if (const auto fault = engine::compareFault(*pond, options.compare)) {
        complain(*fault + " Nothing was written.");
        return kBadInput;
    }
    const engine::Comparison comparison =
        engine::compare(*pond, options.compare, {signals.token(), progressOf(options)});
    if (signals.token().stop_requested()) {
        complain("Stopped on request before the runs were done. Nothing was written.");
        return kEndedEarly;
    }
    if (endedEarly(comparison)) {
        return kEndedEarly;
    }
    std::vector<engine::TextFile> files = engine::comparisonFiles(comparison);
    files.push_back(engine::adviceFile(engine::adviceOn(comparison, engine::plannedRamp(comparison))));
    return finish(options, engine::sentencesOf(comparison), files);
}

/// What a plan's search has so far, on standard error, as long as the rest takes its time.
void saySoFar(const engine::PlanSoFar& found) {
    std::string text = found.harm ? "Schedule taken" : "First schedule found";
    text += ", min of air by day:";
    for (const engine::DayAction& day : found.days) {
        text += ' ';
        text += std::to_string(day.minutes);
    }
    if (found.harm) {
        text += "; " + std::to_string(found.harm->count) + " of " + std::to_string(found.harm->members) +
                " ponds of the search go below the lethal line. It is now tried on other ponds.";
    }
    std::fprintf(stderr, "%s\n", text.c_str());
}

int plan(const app::CliOptions& options) {
    const app::StopOnSignal signals;
    const engine::PondReading reading = pondToRun(options);
    const std::optional<engine::Pond>& pond = reading.pond;
    if (!pond) {
        return kBadInput;
    }
    const std::vector<std::string> faults = engine::planFaults(*pond, options.plan);
    for (const std::string& fault : faults) {
        complain(fault);
    }
    if (!faults.empty()) {
        return kBadInput;
    }
    engine::PlanOptions asked = options.plan;
    if (options.progress) {
        asked.soFar = saySoFar;
    }
    const engine::Plan found = engine::makePlan(*pond, asked, {signals.token(), progressOf(options)});
    if (found.end != engine::PlanEnd::Completed) {
        complain(found.message + " Nothing was written.");
        return kEndedEarly;
    }
    const engine::Answered answer = engine::answered(found, asked.threads, {signals.token(), {}});
    if (signals.token().stop_requested()) {
        complain("Stopped on request before the answer was found. Nothing was written.");
        return kEndedEarly;
    }
    return finish(options, engine::sentencesOf(found, answer.advice),
                  engine::planFiles(found, answer, *pond, options.ponds.front(), options.out, reading.typed));
}

int run(int argc, char** argv) {
    const app::CliParse parse = app::parseCommandLine(argc, argv);
    for (const std::string& fault : parse.faults) {
        complain(fault);
    }
    if (!parse.options) {
        complain("Try dawnline-cli --help.");
        return kBadInput;
    }
    switch (parse.options->command) {
        case app::Command::Say:
            return saidAll(parse.options->said);
        case app::Command::New:
            return app::makeNewPond(*parse.options);
        case app::Command::Explain:
            return explain(*parse.options);
        case app::Command::Check:
            return check(*parse.options);
        case app::Command::Compare:
            return compare(*parse.options);
        case app::Command::Plan:
            return plan(*parse.options);
        case app::Command::OfLog:
            return app::runOnLog(*parse.options);
        case app::Command::Changes:
            return app::sayChanges(*parse.options);
        case app::Command::Measure:
            return measure(*parse.options);
    }
    return kOurFault;
}

}  // namespace

int main(int argc, char** argv) {
    try {
        return run(argc, argv);
    } catch (const engine::InternalError& fault) {
        complain(fault.what());  // says itself that the fault is ours
    } catch (const std::bad_alloc&) {
        complain("A fault of our own: there is not enough memory. Nothing was written.");
    } catch (const std::exception& fault) {
        complain(std::string("A fault of our own: ") + fault.what() + ".");
    }
    return kOurFault;
}
