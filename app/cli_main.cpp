#include "app/cli_options.h"
#include "app/cli_signals.h"
#include "engine/error.h"
#include "engine/files.h"
#include "engine/plan_io.h"
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

constexpr int kDone = 0;
constexpr int kEndedEarly = 1;
constexpr int kBadInput = 2;
constexpr int kOurFault = 3;

void complain(const std::string& sentence) {
    std::fprintf(stderr, "dawnline-cli: %s\n", sentence.c_str());
}

/// @return false if standard output does not take it all.
bool say(const std::string& text) {
    return std::fwrite(text.data(), 1, text.size(), stdout) == text.size() && std::fflush(stdout) == 0;
}

int saidAll(const std::string& text) {
    if (say(text)) {
        return kDone;
    }
    complain("Standard output cannot be written to.");
    return kBadInput;
}

/// Reads a pond file and says all that is to be said about it.
engine::PondReading readAloud(const std::string& path) {
    engine::PondReading reading = engine::readPond(path);
    for (const engine::Diagnostic& diagnostic : reading.diagnostics) {
        std::fprintf(stderr, "%s\n", engine::format(diagnostic).c_str());
    }
    return reading;
}

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

/// Progress on standard error in whole percent, each said once.
std::function<void(double)> progressOf(const app::CliOptions& options) {
    if (!options.progress) {
        return {};
    }
    return [said = -1](double fraction) mutable {
        const int percent = static_cast<int>(std::floor(100.0 * fraction));
        if (percent > said) {
            said = percent;
            std::fprintf(stderr, "%d %%\n", percent);
        }
    };
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

/// The first schedule of a plan's search, on standard error, as long as the rest takes its time.
void sayFirst(const std::vector<engine::DayAction>& days) {
    std::string text = "First schedule found, min of air by day:";
    for (const engine::DayAction& day : days) {
        text += ' ';
        text += std::to_string(day.minutes);
    }
    std::fprintf(stderr, "%s\n", text.c_str());
}

int plan(const app::CliOptions& options) {
    const app::StopOnSignal signals;
    const engine::PondReading reading = readAloud(options.ponds.front());
    const auto folderFault = engine::folderFault(options.out);
    if (folderFault) {
        complain(*folderFault);
    }
    if (!reading.pond || folderFault) {
        return kBadInput;
    }
    const std::vector<std::string> faults = engine::planFaults(*reading.pond, options.plan);
    for (const std::string& fault : faults) {
        complain(fault);
    }
    if (!faults.empty()) {
        return kBadInput;
    }
    engine::PlanOptions asked = options.plan;
    if (options.progress) {
        asked.first = [](const std::vector<engine::DayAction>& days, engine::ClockTime) { sayFirst(days); };
    }
    const engine::Plan found = engine::makePlan(*reading.pond, asked, {signals.token(), progressOf(options)});
    if (found.end != engine::PlanEnd::Completed) {
        complain(found.message + " Nothing was written.");
        return kEndedEarly;
    }
    std::vector<engine::Sentence> sentences = engine::sentencesOf(found);
    sentences.push_back(engine::filesWritten(engine::shownPath(options.out)));
    const std::string text = engine::englishText(sentences);
    if (const auto fault = engine::writeFiles(
            options.out, engine::planFiles(found, *reading.pond, options.ponds.front(), options.out))) {
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
        case app::Command::Plan:
            return plan(*parse.options);
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
