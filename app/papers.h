#pragma once

#include "engine/advice/frozen_run.h"
#include "engine/output/consultant.h"
#include "engine/output/start_ledger.h"

#include <cstdint>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>

namespace app {

/// What papers are asked for.
struct PaperOptions {
    std::filesystem::path pond;
    std::filesystem::path folder;
    std::string profile;  ///< Of the consultant; empty: standardProfile(), if it is there
    int members = 200;
    std::uint64_t seed = 1;
    std::string ramp;  ///< Whose papers; empty: the one started by the log, or the pond file's chosen one
    bool isPlanned = false;  ///< A ramp is looked for first, and the papers are of that one
};

/// Writes every paper of a pond, its calendar and its bundle into a folder; says on standard output what it
/// wrote and on standard error what is wrong.
/// @return the exit code of the contract: 0 done, 1 ended early, 2 bad input.
[[nodiscard]] int writePapers(const PaperOptions& options);

/// Says whether a bundle is whole, and which run it holds.
/// @param isRecomputed  Its tables are computed again from its inputs and compared.
/// @return 0 if it is, 1 if its tables were to be computed again and could not be, else 2.
[[nodiscard]] int verifyBundle(const std::filesystem::path& bundle, bool isRecomputed = false);

/// `dawnline/consultant.toml` in the XDG config folder, whether it is there or not.
[[nodiscard]] std::filesystem::path standardProfile();

/// Who stands there, blank without a file; the logo may be no picture.
[[nodiscard]] engine::ConsultantReading standardConsultant();

/// The consultant of a profile, whose logo is a picture. @param profile  As in PaperOptions.
[[nodiscard]] engine::ConsultantReading consultantOf(const std::string& profile);

/// The file of the ledger of starts beside that profile, whether it is there or not.
[[nodiscard]] std::filesystem::path ledgerFile(const std::string& profile = {});
/// The ledger itself.
[[nodiscard]] engine::StartLedgerReading ledgerBeside(const std::string& profile = {});

/// A pond's run for papers, or a sentence why there is none and the exit code it means.
struct PaperRunReading {
    std::shared_ptr<const engine::FrozenRun> run;
    std::string fault;
    int code = 0;
};
/// @param path     Of the pond file, beside which its CSV files lie.
/// @param options  Its members, seed and ramp.
/// @param earlier  A comparison whose parts that still hold are taken over; may be null.
[[nodiscard]] PaperRunReading runForPapers(const engine::Pond& pond, const std::filesystem::path& path,
                                           const PaperOptions& options,
                                           const engine::RunControl& control = {},
                                           const engine::Comparison* earlier = nullptr);

}  // namespace app
