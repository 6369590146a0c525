#pragma once

#include "engine/files.h"
#include "engine/run.h"

#include <chrono>
#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace engine {

/// What besides its files decides the numbers of a run, and when it was made.
struct RunStamp {
    std::string version;            ///< Of the program
    std::chrono::sys_seconds time;  ///< When the run was frozen, UTC
    std::uint64_t seed = 1;
    int members = 1;
    int nights = 0;
};

/// One run, whose numbers stand on every paper of a pond.
struct FrozenRun {
    /// "pond.toml" in our own form, then the CSV files that it names, under names of their own beside it.
    std::vector<TextFile> files;
    RunStamp stamp;
    Comparison comparison;
};

inline constexpr std::string_view kFrozenPond = "pond.toml";
inline constexpr std::string_view kFrozenStatement = "run.txt";

/// The text whose SHA-256 names a run: program version, time, seed, members, nights, and the SHA-256 of each
/// file. LF line ends, so that `sha256sum` of it gives the same name.
[[nodiscard]] std::string statementOf(const std::vector<TextFile>& files, const RunStamp& stamp);

/// The name of a run: SHA-256 of its statement.
[[nodiscard]] std::string nameOf(const FrozenRun& run);

/// A pond's own text and the bytes of its CSV files, and the pond read anew from just these bytes.
struct FrozenPond {
    Pond pond;
    std::vector<TextFile> files;
};

/// @param path  Of the pond file; the CSV files are looked for beside it.
/// @return a sentence if a CSV file cannot be read or no longer holds what a run can use.
[[nodiscard]] std::variant<FrozenPond, std::string> freeze(const Pond& pond,
                                                           const std::filesystem::path& path);

/// Runs everything that the papers print, once: curves, causes, end states and members.
/// @param stamp    Its nights are filled in.
/// @param nights   As in CompareOptions.
[[nodiscard]] FrozenRun runFrozen(const FrozenPond& frozen, RunStamp stamp, std::optional<int> nights,
                                  const RunControl& control = {});

/// The ramp that the papers are about: the pond file's chosen one; without one the ramp whose members least
/// often go below the stress line though do-nothing does not, of equals the one with the higher worst night.
/// 0 (do-nothing) without a ramp that completed.
[[nodiscard]] std::size_t plannedRamp(const Comparison& comparison);

/// The ramp that the plan is held against: the completed one that comes to continuous air first, of equals
/// the one with the greatest dose; nothing if that is the plan itself.
[[nodiscard]] std::optional<std::size_t> fastestRamp(const Comparison& comparison);

}  // namespace engine
