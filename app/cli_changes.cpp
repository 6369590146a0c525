#include "app/cli_changes.h"

#include "app/cli_say.h"
#include "app/cli_signals.h"
#include "engine/base/text_file.h"
#include "engine/output/given_answer.h"
#include "engine/output/run_tables.h"
#include "engine/plan/surface_air_ramp.h"
#include "engine/wording/sentence_changes.h"
#include "engine/wording/wording.h"

#include <chrono>
#include <filesystem>

namespace app {
namespace {

/// A bundle that is whole, and its answer; what is wrong with it is said.
struct Opened {
    engine::BundleFiles bundle;
    std::optional<engine::GivenAnswer> answer;
};

Opened opened(const std::string& path) {
    Opened out{engine::readBundle(path), {}};
    const engine::BundleCheck check = engine::verifyBundle(out.bundle);
    for (const std::string& fault : check.faults) {
        complain(fault);
    }
    if (!check.faults.empty()) {
        return out;
    }
    out.answer = engine::givenAnswer(out.bundle);
    if (!out.answer) {
        complain("The bundle " + engine::shownPath(path) +
                 " holds no answer (advice.csv); it was made by a version that gave none.");
    }
    return out;
}

bool isBundle(const std::string& path) {
    return std::filesystem::path(path).extension() == ".zip";
}

}  // namespace

int sayChanges(const CliOptions& options) {
    const StopOnSignal signals;
    const Opened before = opened(options.ponds.front());
    if (!before.answer) {
        return kBadInput;
    }
    const std::string& now = options.ponds.back();
    if (isBundle(now)) {
        const Opened after = opened(now);
        if (!after.answer) {
            return kBadInput;
        }
        return saidAll(engine::englishText(
            engine::sentencesOf(engine::changeOf(*before.answer, *after.answer),
                                engine::readBundledPond(after.bundle).pond.value_or(engine::Pond()))));
    }
    const engine::PondReading reading = readAloud(now);
    if (!reading.pond) {
        return kBadInput;
    }
    const auto frozen = engine::freeze(*reading.pond, now);
    if (const auto* fault = std::get_if<std::string>(&frozen)) {
        complain(*fault);
        return kBadInput;
    }
    engine::RunStamp stamp = before.answer->made.stamp;
    stamp.version = DAWNLINE_VERSION;
    stamp.time = std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
    stamp.ramp = engine::rampMadeOf(*reading.pond, stamp.ramp);
    const engine::FrozenRun run = engine::runFrozen(std::get<engine::FrozenPond>(frozen), stamp, {},
                                                    {signals.token(), progressOf(options)});
    if (!run.advice.kind) {
        complain("The run ended before there was an answer.");
        return kEndedEarly;
    }
    return saidAll(engine::englishText(
        engine::sentencesOf(engine::changeOf(*before.answer, engine::givenAnswer(run)), *reading.pond)));
}

}  // namespace app
