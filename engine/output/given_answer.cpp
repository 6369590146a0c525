#include "engine/output/given_answer.h"

#include "engine/base/error.h"
#include "engine/base/text_file.h"
#include "engine/output/advice_io.h"
#include "engine/plan/surface_air_ramp.h"
#include "engine/pond/csv.h"

namespace engine {
namespace {

std::map<std::string, std::string> fieldsOf(std::string_view csv) {
    std::map<std::string, std::string> fields;
    for (CsvRows rows(csv); rows.next();) {
        if (rows.cells().size() == 2) {
            fields.emplace(rows.cells()[0], rows.cells()[1]);
        }
    }
    return fields;
}

}  // namespace

GivenAnswer givenAnswer(const FrozenRun& run) {
    std::optional<RunStatement> made = readStatement(statementOf(run.files, run.stamp));
    ensure(made.has_value(), "a statement of a run reads back");
    return {std::move(*made), fieldsOf(adviceCsv(run.advice, nameOf(run)))};
}

std::optional<GivenAnswer> givenAnswer(const BundleFiles& bundle) {
    const auto statement = bundle.text(kFrozenStatement), advice = bundle.text("advice.csv");
    if (!statement || !advice) {
        return std::nullopt;
    }
    std::optional<RunStatement> made = readStatement(*statement);
    return made ? std::optional(GivenAnswer{std::move(*made), fieldsOf(*advice)}) : std::nullopt;
}

OpenedAnswer openAnswer(const std::filesystem::path& bundle) {
    OpenedAnswer out{readBundle(bundle), {}, {}};
    out.faults = verifyBundle(out.bundle).faults;
    if (!out.faults.empty()) {
        return out;
    }
    out.answer = givenAnswer(out.bundle);
    if (!out.answer) {
        out.faults.push_back("The bundle " + shownPath(bundle) +
                             " holds no answer (advice.csv); it was made by a version that gave none.");
    }
    return out;
}

std::variant<GivenAnswer, NoAnswer> answerAgain(const Pond& pond, const std::filesystem::path& path,
                                                const GivenAnswer& before, const std::string& version,
                                                std::chrono::sys_seconds time, const RunControl& control) {
    const auto frozen = freeze(pond, path);
    if (const auto* fault = std::get_if<std::string>(&frozen)) {
        return NoAnswer{*fault, false};
    }
    RunStamp stamp = before.made.stamp;
    stamp.version = version;
    stamp.time = time;
    stamp.ramp = rampMadeOf(pond, stamp.ramp);
    const FrozenRun run = runFrozen(std::get<FrozenPond>(frozen), stamp, {}, control);
    if (!run.advice.kind) {
        return NoAnswer{"The run ended before there was an answer.", true};
    }
    return givenAnswer(run);
}

}  // namespace engine
