#pragma once

#include "engine/base/error.h"
#include "engine/follow_up/start_check.h"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace engine {

/// The starts of a consultant that were held against readings, kept in `starts.csv` beside the profile.
struct StartLedger {
    std::vector<StartCheck> starts;
    /// Mean of their distances from what was read, each start the same [g/m^3]; 0 without any.
    [[nodiscard]] double meanDistance() const;
};

/// The name of the ledger's file.
inline constexpr std::string_view kLedgerName = "starts.csv";

struct StartLedgerReading {
    std::optional<StartLedger>
        ledger;  ///< If and only if no diagnostic is an error; empty if there is no file
    Diagnostics diagnostics;
};
[[nodiscard]] StartLedgerReading readStartLedger(const std::filesystem::path& path);
/// The same from text. @param name  Stands in front of every diagnostic
[[nodiscard]] StartLedgerReading readStartLedgerText(std::string_view text, const std::string& name);

[[nodiscard]] std::string startLedgerCsv(const StartLedger& ledger);

/// What came of writing a start into a file.
struct NotedStart {
    std::optional<StartLedger> ledger;    ///< With the start; nothing if the file could not be read
    Diagnostics diagnostics;              ///< Of the file
    std::optional<std::string> notSaved;  ///< A sentence
};
/// Puts a start into the ledger of a file, which is made with its folder where it is missing. It is read and
/// written under one lock, so that of two at once neither is lost.
[[nodiscard]] NotedStart noteStart(const std::filesystem::path& path, const StartCheck& start);

/// The ledger with a start, in place of an earlier check of the same start (pond and first day).
[[nodiscard]] StartLedger withStart(StartLedger ledger, const StartCheck& start);

}  // namespace engine
