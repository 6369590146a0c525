#include "app/papers.h"

#include "app/main_window_words.h"
#include "app/window_say.h"
#include "engine/base/files.h"
#include "engine/base/text_file.h"
#include "engine/output/bundle.h"
#include "engine/output/run_tables.h"
#include "engine/plan/plan.h"
#include "engine/pond/pond_io.h"
#include "engine/wording/wording.h"
#include "widgets/document/to_qstring.h"
#include "widgets/papers/paper_parts.h"
#include "widgets/papers/papers.h"

#include <QDir>
#include <QFileInfo>

#include <algorithm>
#include <chrono>

namespace app {
namespace {

/// Now, or the time that SOURCE_DATE_EPOCH gives (reproducible-builds.org), so that a run can be made anew to
/// the bit.
std::chrono::sys_seconds runTime() {
    bool isGiven = false;
    const qlonglong given = qEnvironmentVariable("SOURCE_DATE_EPOCH").toLongLong(&isGiven);
    return isGiven && given >= 0 ? std::chrono::sys_seconds(std::chrono::seconds(given))
                                 : std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
}

/// The pond with the ramp that was found for it, or why there are no papers of one.
struct PlannedPond {
    std::optional<engine::Pond> pond;
    std::string ramp;
    std::string fault;
    int code = 0;
};

PlannedPond planned(engine::Pond pond, const PaperOptions& options) {
    engine::PlanOptions asked;
    asked.members = std::max(options.members, engine::fewestMembers(asked.chance));
    asked.seed = options.seed;
    asked.isBrief = true;  // what the papers do not print is not searched for
    if (const auto faults = engine::planFaults(pond, asked); !faults.empty()) {
        return {std::nullopt, {}, faults.front(), 2};
    }
    const engine::Plan plan = engine::makePlan(pond, asked);
    if (plan.end != engine::PlanEnd::Completed) {
        return {std::nullopt, {}, plan.message, 1};
    }
    // Hold days are taken out and surface air is added with the papers' own run, as in any answer.
    pond.ramps = plan.comparison.model.pond.ramps;
    const std::size_t run = engine::spokenOf(plan);
    return {std::move(pond),
            run > 0 ? plan.comparison.runs[run].name : engine::adviceOn(plan.comparison, 0).leastHarmful,
            {},
            0};
}

}  // namespace

std::filesystem::path standardProfile() {
    // A relative path in the variable is to be ignored (XDG base directories 0.8).
    QString folder = qEnvironmentVariable("XDG_CONFIG_HOME");
    if (!QDir::isAbsolutePath(folder)) {
        folder = QDir::homePath() + QStringLiteral("/.config");
    }
    return (folder + QStringLiteral("/dawnline/consultant.toml")).toStdString();
}

engine::ConsultantReading standardConsultant() {
    const std::filesystem::path path = standardProfile();
    if (!QFileInfo::exists(widgets::toQString(path.string()))) {
        return {engine::Consultant(), {}};  // all of it blank
    }
    return engine::readConsultant(path);
}

engine::ConsultantReading consultantOf(const std::string& profile) {
    engine::ConsultantReading reading =
        profile.empty() ? standardConsultant() : engine::readConsultant(profile);
    if (reading.consultant) {
        if (const auto fault = widgets::logoFault(*reading.consultant)) {
            const std::string path = profile.empty() ? standardProfile().string() : profile;
            reading.diagnostics.push_back({engine::Severity::Error, path, 0, "logo", *fault});
            reading.consultant.reset();
        }
    }
    return reading;
}

std::filesystem::path ledgerFile(const std::string& profile) {
    const std::filesystem::path beside = profile.empty() ? standardProfile() : std::filesystem::path(profile);
    return beside.parent_path() / engine::kLedgerName;
}

engine::StartLedgerReading ledgerBeside(const std::string& profile) {
    return engine::readStartLedger(ledgerFile(profile));
}

PaperRunReading runForPapers(const engine::Pond& pond, const std::filesystem::path& path,
                             const PaperOptions& options, const engine::RunControl& control,
                             const engine::Comparison* earlier) {
    if (pond.ramps.empty()) {
        return {nullptr, "The pond has no ramp, so there is nothing to put on paper.", 2};
    }
    if (!options.ramp.empty() &&
        std::none_of(pond.ramps.begin(), pond.ramps.end(),
                     [&](const engine::Ramp& ramp) { return ramp.name == options.ramp; })) {
        return {nullptr, "The pond has no ramp of the name " + engine::shownText(options.ramp) + ".", 2};
    }
    engine::CompareOptions size;
    size.members = options.members;
    if (const auto fault = engine::compareFault(pond, size)) {
        return {nullptr, *fault, 2};
    }
    const auto frozen = engine::freeze(pond, path);
    if (const auto* fault = std::get_if<std::string>(&frozen)) {
        return {nullptr, *fault, 2};
    }
    auto run = std::make_shared<const engine::FrozenRun>(
        engine::runFrozen(std::get<engine::FrozenPond>(frozen),
                          {DAWNLINE_VERSION, runTime(), options.seed, options.members, 0, options.ramp},
                          engine::defaultDays(pond), control, earlier));
    if (const QString fault = endedEarly(run->comparison); !fault.isEmpty()) {
        return {nullptr, fault.toStdString(), 1};
    }
    const auto& ensemble = run->comparison.ensemble;
    if (ensemble && ensemble->end != engine::EnsembleEnd::Completed) {
        return {nullptr, ensemble->message, 1};
    }
    return {std::move(run), {}, 0};
}

int writePapers(const PaperOptions& options) {
    const engine::PondReading pond = engine::readPond(options.pond);
    complain(pond.diagnostics);
    const engine::ConsultantReading consultant = consultantOf(options.profile);
    complain(consultant.diagnostics);
    const engine::StartLedgerReading ledger = ledgerBeside(options.profile);
    complain(ledger.diagnostics);
    const auto folderFault = engine::folderFault(options.folder);
    if (folderFault) {
        complain(*folderFault);
    }
    if (!pond.pond || !consultant.consultant || !ledger.ledger || folderFault) {
        return 2;
    }
    PlannedPond own{*pond.pond, options.ramp, {}, 0};
    if (options.isPlanned) {
        own = planned(*pond.pond, options);
        if (!own.pond) {
            complain(own.fault + " Nothing was written.");
            return own.code;
        }
    }
    PaperOptions asked = options;
    asked.ramp = own.ramp;
    const PaperRunReading run = runForPapers(*own.pond, options.pond, asked);
    if (run.run == nullptr) {
        complain(run.fault + " Nothing was written.");
        return run.code;
    }
    const auto files =
        widgets::paperFiles(widgets::paperRun(run.run, *consultant.consultant, *ledger.ledger));
    auto fault = engine::bundleFault(files);
    if (!fault) {
        fault = engine::writeFiles(options.folder, files);
    }
    if (fault) {
        complain(*fault + " Nothing was written.");
        return 2;
    }
    sayWritten(options.folder, files);
    say("Run " + engine::nameOf(*run.run));
    return saidAll();
}

int verifyBundle(const std::filesystem::path& path, bool isRecomputed) {
    const engine::BundleFiles bundle = engine::readBundle(path);
    const engine::BundleCheck check = engine::verifyBundle(bundle);
    for (const std::string& fault : check.faults) {
        complain(fault);
    }
    if (!check.faults.empty()) {
        return 2;
    }
    say("The bundle is whole: " + std::to_string(check.names.size()) + " files of run " + check.run + ".");
    if (isRecomputed) {
        const engine::Recomputation again = engine::recompute(bundle, DAWNLINE_VERSION);
        for (const std::string& fault : again.faults) {
            complain(fault);
        }
        if (again.notRun) {
            complain(*again.notRun);
        }
        if (again.notRun || !again.faults.empty()) {
            return again.notRun ? 1 : 2;
        }
        say("Its " + std::to_string(again.tables) +
            " tables were computed again from the inputs inside and are the same, to the byte. Papers and "
            "charts "
            "were held against their sums alone.");
    }
    return saidAll();
}

}  // namespace app
