#include "app/cli_changes.h"

#include "app/cli_say.h"
#include "app/cli_signals.h"
#include "engine/output/given_answer.h"
#include "engine/output/run_tables.h"
#include "engine/wording/sentence_changes.h"
#include "engine/wording/wording.h"

#include <chrono>
#include <filesystem>

namespace app {
namespace {

engine::OpenedAnswer opened(const std::string& path) {
    engine::OpenedAnswer out = engine::openAnswer(path);
    for (const std::string& fault : out.faults) {
        complain(fault);
    }
    return out;
}

bool isBundle(const std::string& path) {
    return std::filesystem::path(path).extension() == ".zip";
}

}  // namespace

int sayChanges(const CliOptions& options) {
    const StopOnSignal signals;
    const engine::OpenedAnswer before = opened(options.ponds.front());
    if (!before.answer) {
        return kBadInput;
    }
    const std::string& now = options.ponds.back();
    if (isBundle(now)) {
        const engine::OpenedAnswer after = opened(now);
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
    const auto again =
        engine::answerAgain(*reading.pond, now, *before.answer, DAWNLINE_VERSION,
                            std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now()),
                            {signals.token(), progressOf(options)});
    if (const auto* none = std::get_if<engine::NoAnswer>(&again)) {
        complain(none->sentence);
        return none->hasEndedEarly ? kEndedEarly : kBadInput;
    }
    return saidAll(engine::englishText(engine::sentencesOf(
        engine::changeOf(*before.answer, std::get<engine::GivenAnswer>(again)), *reading.pond)));
}

}  // namespace app
