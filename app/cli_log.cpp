#include "app/cli_log.h"

#include "app/cli_say.h"
#include "app/cli_signals.h"
#include "engine/base/files.h"
#include "engine/base/text_file.h"
#include "engine/follow_up/fit.h"
#include "engine/follow_up/incident.h"
#include "engine/follow_up/replan.h"
#include "engine/follow_up/review.h"
#include "engine/follow_up/today.h"
#include "engine/output/fit_io.h"
#include "engine/output/plan_io.h"
#include "engine/output/review_io.h"
#include "engine/output/start_ledger.h"
#include "engine/run/run_bounds.h"
#include "engine/wording/sentence_incident.h"
#include "engine/wording/sentence_log.h"
#include "engine/wording/sentence_review.h"
#include "engine/wording/sentence_today.h"
#include "engine/wording/wording.h"

namespace app {
namespace {

constexpr int kDaysOfLog = 90;  // at most that a log is run over, with the days ahead

engine::FitOptions fitOptions(const LogOptions& options, int members) {
    engine::FitOptions out;
    out.until = options.time;
    out.members = options.members.value_or(members);
    out.seed = options.seed;
    out.threads = options.threads;
    out.resolution.layers = options.layers.value_or(out.resolution.layers);
    out.resolution.largestStep = options.largestStep.value_or(out.resolution.largestStep);
    return out;
}

int log(const engine::Pond& pond, const CliOptions& options) {
    return saidAll(engine::englishText(engine::sentencesOfLog(pond, options.log.head)));
}

int fit(const engine::Pond& pond, const CliOptions& options, const engine::RunControl& control) {
    const engine::FitResult result =
        engine::fitPond(pond, fitOptions(options.log, engine::kMembersOfBand), control);
    if (result.end != engine::FitEnd::Completed) {
        complain(result.message + " Nothing was written.");
        return result.end == engine::FitEnd::NoReadings ? kBadInput : kEndedEarly;
    }
    std::vector<engine::Sentence> sentences = engine::sentencesOf(result);
    sentences.push_back(engine::filesWritten(engine::shownPath(options.out)));
    const std::string text = engine::englishText(sentences);
    if (const auto fault = engine::writeFiles(options.out, engine::fitFiles(result))) {
        complain(*fault + " Nothing was written.");
        return kBadInput;
    }
    return saidAll(text);
}

engine::TodayOptions todayOptions(const LogOptions& options) {
    engine::TodayOptions out;
    out.at = options.time;
    out.members = options.members.value_or(out.members);
    out.seed = options.seed;
    out.threads = options.threads;
    out.resolution.layers = options.layers.value_or(out.resolution.layers);
    out.resolution.largestStep = options.largestStep.value_or(out.resolution.largestStep);
    return out;
}

int today(const engine::Pond& pond, const CliOptions& options, const engine::RunControl& control) {
    const engine::Today decided = engine::decideToday(pond, todayOptions(options.log), control);
    if (!decided.isDecided) {
        complain(decided.message);
        return control.stop.stop_requested() ? kEndedEarly : kBadInput;
    }
    // The verdict is there at once, whatever becomes of the new schedule.
    const int said = saidAll(engine::englishText(engine::sentencesOf(decided)));
    if (options.out.empty() || said != 0) {
        return said;
    }
    const engine::Plan plan = engine::replanned(decided, todayOptions(options.log), control);
    if (plan.end != engine::PlanEnd::Completed) {
        complain(plan.message + " Nothing was written.");
        return plan.end == engine::PlanEnd::NotRun ? kBadInput : kEndedEarly;
    }
    std::vector<engine::Sentence> sentences = engine::sentencesOf(plan);
    sentences.push_back(engine::filesWritten(engine::shownPath(options.out)));
    if (const auto fault = engine::writeFiles(options.out, {{"schedule.csv", engine::scheduleCsv(plan)}})) {
        complain(*fault + " Nothing was written.");
        return kBadInput;
    }
    std::string text =
        "\nThe verdict above and its limits on a day's dose come first. This is where the schedule would go "
        "from here if every morning says go:\n";
    text += engine::englishText(sentences);
    return saidAll(text);
}

int incident(const engine::Pond& pond, const CliOptions& options, const engine::RunControl& control) {
    const engine::Incident judged = engine::judgeIncident(pond, todayOptions(options.log), control);
    if (!judged.isJudged) {
        complain(judged.message);
        return control.stop.stop_requested() ? kEndedEarly : kBadInput;
    }
    return saidAll(engine::englishText(engine::sentencesOf(judged)));
}

/// Holds the start against its dawns and writes it into the consultant's ledger; nothing where it cannot,
/// which is said.
std::optional<std::vector<engine::Sentence>> noteStart(const engine::Pond& pond,
                                                       const std::filesystem::path& file,
                                                       const engine::RunControl& control) {
    const engine::StartCheck check = engine::checkStart(pond, control);
    if (!check.isChecked()) {
        complain(check.message + " Nothing was written.");
        return std::nullopt;
    }
    const engine::NotedStart noted = engine::noteStart(file, check);
    for (const engine::Diagnostic& one : noted.diagnostics) {
        complain(engine::format(one));
    }
    if (!noted.ledger) {
        return std::nullopt;
    }
    if (noted.notSaved) {
        complain(*noted.notSaved + " Nothing was written.");
        return std::nullopt;
    }
    return engine::sentencesOf(check, static_cast<int>(noted.ledger->starts.size()),
                               noted.ledger->meanDistance());
}

int review(const engine::Pond& pond, const CliOptions& options, const engine::RunControl& control) {
    const engine::Review done =
        engine::reviewPond(pond, fitOptions(options.log, todayOptions(options.log).members), control);
    if (!done.isDone) {
        complain(done.message + " Nothing was written.");
        return control.stop.stop_requested() ? kEndedEarly : kBadInput;
    }
    std::vector<engine::Sentence> sentences = engine::sentencesOf(done);
    if (!options.log.ledger.empty()) {
        const auto noted = noteStart(pond, options.log.ledger, control);
        if (!noted) {
            return kBadInput;
        }
        sentences.insert(sentences.end(), noted->begin(), noted->end());
    }
    sentences.push_back(engine::filesWritten(engine::shownPath(options.out)));
    const std::string text = engine::englishText(sentences);
    if (const auto fault = engine::writeFiles(options.out, {{"review.csv", engine::reviewCsv(done)}})) {
        complain(*fault + " Nothing was written.");
        return kBadInput;
    }
    return saidAll(text);
}

}  // namespace

int runOnLog(const CliOptions& options) {
    const StopOnSignal signals;
    const engine::PondReading reading = readAloud(options.ponds.front());
    const auto folderFault = options.out.empty() ? std::nullopt : engine::folderFault(options.out);
    if (folderFault) {
        complain(*folderFault);
    }
    if (!reading.pond || folderFault) {
        return kBadInput;
    }
    const engine::FitOptions asked = fitOptions(options.log, engine::kMembersOfBand);
    if (const auto fault = engine::sizeFault({2, kDaysOfLog, asked.members, asked.resolution})) {
        complain(*fault);
        return kBadInput;
    }
    const engine::RunControl control{signals.token(), progressOf(options)};
    switch (options.log.command) {
        case LogCommand::Log:
            return log(*reading.pond, options);
        case LogCommand::Fit:
            return fit(*reading.pond, options, control);
        case LogCommand::Today:
            return today(*reading.pond, options, control);
        case LogCommand::Incident:
            return incident(*reading.pond, options, control);
        case LogCommand::Review:
            return review(*reading.pond, options, control);
    }
    return kOurFault;
}

}  // namespace app
