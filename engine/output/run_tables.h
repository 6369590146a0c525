#pragma once

#include "engine/advice/frozen_run.h"
#include "engine/output/bundle.h"
#include "engine/pond/pond_io.h"

#include <optional>
#include <string>
#include <vector>

namespace engine {

/// All tables of a frozen run that its bundle holds: the answer, the schedule or the later one, the review
/// where there is one, and those of the comparison.
/// @pre the run is whole, and is about a ramp.
[[nodiscard]] std::vector<TextFile> runTables(const FrozenRun& run);

/// The pond of a bundle with the files that it names, as the bundle holds them.
[[nodiscard]] PondReading readBundledPond(const BundleFiles& bundle);

/// What came of computing a bundle's tables again.
struct Recomputation {
    std::vector<std::string> faults;  ///< Sentences; empty if all tables are those of the bundle, to the byte
    std::optional<std::string> notRun;  ///< Why nothing was computed; nothing if it was
    std::size_t tables = 0;             ///< That were compared
};

/// Computes the tables of a bundle again from the inputs inside, and holds them against those inside. The
/// same version gives the same bytes on any machine; of another version nothing is computed, since its
/// numbers may differ for good reason.
/// @param bundle   In which verifyBundle() found no fault.
/// @param version  Of this program.
[[nodiscard]] Recomputation recompute(const BundleFiles& bundle, const std::string& version,
                                      const RunControl& control = {});

}  // namespace engine
