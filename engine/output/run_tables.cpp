#include "engine/output/run_tables.h"

#include "engine/advice/answer_change.h"
#include "engine/base/digest.h"
#include "engine/base/text_file.h"
#include "engine/output/advice_io.h"
#include "engine/output/results_io.h"
#include "engine/output/review_io.h"
#include "engine/output/run_list.h"

#include <algorithm>

namespace engine {
namespace {

/// The run of a bundle anew, or why there is none.
struct RunAgain {
    std::optional<FrozenRun> run;
    std::string fault;
};

RunAgain runAgain(const BundleFiles& bundle, const RunStamp& stamp, const RunControl& control) {
    PondReading reading = readBundledPond(bundle);
    if (!reading.pond) {
        return {std::nullopt,
                "The pond in the bundle cannot be read: " + format(reading.diagnostics.front())};
    }
    CompareOptions size;
    size.days = stamp.nights;
    size.members = stamp.members;
    if (const auto fault = compareFault(*reading.pond, size)) {
        return {std::nullopt, *fault};
    }
    FrozenPond frozen{std::move(*reading.pond), {}};
    for (const std::string_view name : kFrozenInputs) {
        if (auto text = bundle.text(name)) {
            frozen.files.push_back({std::string(name), std::move(*text)});
        }
    }
    FrozenRun run = runFrozen(frozen, stamp, stamp.nights, control);
    if (!isWhole(run.comparison) || run.advice.run == 0) {
        return {std::nullopt, control.stop.stop_requested() ? "Stopped on request." : "The run ended early."};
    }
    return {std::move(run), {}};
}

}  // namespace

std::vector<TextFile> runTables(const FrozenRun& run) {
    std::vector<TextFile> tables{adviceFile(run.advice, nameOf(run))};
    const bool starts = run.advice.mayStart();
    const std::string runs = runListCsv(runList(run.comparison, run.advice.run), run.advice.surfaceAir);
    tables.push_back({"schedule.csv", starts ? runs : runListCsv({})});
    if (!starts) {
        tables.push_back({"later.csv", runs});
    }
    if (run.review) {
        tables.push_back({"review.csv", reviewCsv(*run.review)});
    }
    for (TextFile& table : comparisonFiles(run.comparison)) {
        tables.push_back(std::move(table));
    }
    return tables;
}

PondReading readBundledPond(const BundleFiles& bundle) {
    const auto textOf = [&](const std::string& name) -> FileText {
        auto text = bundle.text(name);
        return text ? FileText{std::move(text), ""}
                    : FileText{std::nullopt, "There is no such file in the bundle."};
    };
    const FileText pond = textOf(std::string(kFrozenPond));
    if (!pond.text) {
        return {std::nullopt, {}, {{Severity::Error, std::string(kFrozenPond), 0, "", pond.fault}}};
    }
    return readPondText(*pond.text, kFrozenPond, textOf);
}

Recomputation recompute(const BundleFiles& bundle, const std::string& version, const RunControl& control) {
    Recomputation out;
    const auto statement = bundle.text(kFrozenStatement);
    const auto made = statement ? readStatement(*statement) : std::nullopt;
    if (!made) {
        out.notRun = "The bundle has no statement of a run (run.txt) that can be read.";
        return out;
    }
    if (made->stamp.version != version) {
        out.notRun =
            "The bundle was made by version " + made->stamp.version + " and this is version " + version +
            ", whose numbers may differ for good reason, so that its tables were not computed again. "
            "Use the version that made it.";
        return out;
    }
    const RunAgain again = runAgain(bundle, made->stamp, control);
    if (!again.run) {
        out.notRun = "The tables were not computed again. " + again.fault;
        return out;
    }
    std::vector<TextFile> tables = runTables(*again.run);
    for (const TextFile& table : tables) {
        const auto file = bundle.files.find(table.name);
        if (file == bundle.files.end()) {
            out.faults.push_back("The table " + shownText(table.name) + " is not in the bundle.");
        } else if (file->second.sum != sha256(table.text)) {
            out.faults.push_back("The table " + shownText(table.name) +
                                 " is not the one that the inputs in the bundle come to.");
        }
    }
    // One that the run does not have is as false as one that differs.
    for (const char* name : {"later.csv", "review.csv"}) {
        const bool isOfRun = std::any_of(tables.begin(), tables.end(),
                                         [&](const TextFile& table) { return table.name == name; });
        if (!isOfRun && bundle.files.contains(name)) {
            out.faults.push_back("The table " + shownText(name) + " is none of this run.");
        }
    }
    out.tables = tables.size();
    return out;
}

}  // namespace engine
