#include "app/cli_log.h"
#include "app/cli_options.h"
#include "app/cli_say.h"
#include "app/cli_signals.h"
#include "engine/error.h"
#include "engine/files.h"
#include "engine/pond_io.h"
#include "engine/results_io.h"
#include "engine/run.h"
#include "engine/sentence.h"
#include "engine/wording.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <exception>

namespace {

using app::complain;
using app::kBadInput;
using app::kDone;
using app::kEndedEarly;
using app::kOurFault;
using app::progressOf;
using app::readAloud;
using app::saidAll;

int check(const app::CliOptions& options) {
    int code = kDone;
    for (const std::string& path : options.ponds) {
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

int compare(const app::CliOptions& options) {
    const app::StopOnSignal signals;
    const engine::PondReading reading = readAloud(options.ponds.front());
    const auto folderFault = engine::folderFault(options.out);
    if (folderFault) {
        complain(*folderFault);
    }
    if (!reading.pond || folderFault) {
        return kBadInput;
    }
    const engine::Comparison comparison =
        engine::compare(*reading.pond, options.compare, {signals.token(), progressOf(options)});
    if (signals.token().stop_requested()) {
        complain("Stopped on request before the runs were done. Nothing was written.");
        return kEndedEarly;
    }
    if (endedEarly(comparison)) {
        return kEndedEarly;
    }
    std::vector<engine::Sentence> sentences = engine::sentencesOf(comparison);
    sentences.push_back(engine::filesWritten(engine::shownPath(options.out)));
    const std::string text = engine::englishText(sentences);
    if (const auto fault = engine::writeFiles(options.out, engine::comparisonFiles(comparison))) {
        complain(*fault + " Nothing was written.");
        return kBadInput;
    }
    return saidAll(text);
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
        case app::Command::Check:
            return check(*parse.options);
        case app::Command::Compare:
            return compare(*parse.options);
        case app::Command::OfLog:
            return app::runOnLog(*parse.options);
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
