// A pond frozen with the files that it names, version, time, seed, members and ramp, with everything run once
// (from the window: but for what its last outcome has already). The run is named by the SHA-256 of a
// statement of these (kFrozenStatement). The sums of a bundle (engine/output/bundle.h) show later change, by
// accident or in one place; who rewrites all of it is found out by the run's name on a paper that was handed
// over, and by nothing else.
#pragma once

#include "engine/advice/advice.h"
#include "engine/advice/run_statement.h"
#include "engine/base/files.h"
#include "engine/ensemble/compare.h"
#include "engine/follow_up/review.h"

#include <chrono>
#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace engine {

/// One run, whose numbers stand on every paper of a pond.
struct FrozenRun {
    /// "pond.toml" in our own form, then the files that it names, under names of their own beside it.
    std::vector<TextFile> files;
    RunStamp stamp;
    Comparison comparison;
    Advice advice = {};                 ///< About the ramp of the stamp
    std::optional<Review> review = {};  ///< Where the log has a start and readings to look back on
};

/// Members of the review on paper, fewer than those of the comparison, as each is fitted.
inline constexpr int kReviewMembers = 64;

/// The name of a run: SHA-256 of its statement.
[[nodiscard]] std::string nameOf(const FrozenRun& run);

/// A pond's own text and the bytes of the files that it names, and the pond read anew from just these bytes.
struct FrozenPond {
    Pond pond;
    std::vector<TextFile> files;
};

/// @param path  Of the pond file; the files that it names are looked for beside it.
/// @return a sentence if one of them cannot be read or no longer holds what a run can use.
[[nodiscard]] std::variant<FrozenPond, std::string> freeze(const Pond& pond,
                                                           const std::filesystem::path& path);

/// Runs everything that the papers print, once: curves, attribution, end states and members.
/// @param stamp    Its nights are filled in, and its ramp by plannedRamp() if it is empty or not one's name.
/// @param nights   As in CompareOptions.
/// @param earlier  As in CompareOptions: what of it still holds is taken over, to the bit.
[[nodiscard]] FrozenRun runFrozen(const FrozenPond& frozen, RunStamp stamp, std::optional<int> nights,
                                  const RunControl& control = {}, const Comparison* earlier = nullptr);

/// The ramp that the papers are about: that of the name asked for, else the one that the log says was
/// started, else the pond file's chosen one; without one that completed the ramp whose members least often go
/// below the stress line though do-nothing does not, of equals the one with the higher worst night. 0
/// (do-nothing) without a ramp that completed.
[[nodiscard]] std::size_t plannedRamp(const Comparison& comparison, std::string_view asked = {});

/// The ramp that a plan is held against: the completed one that comes to continuous air first, of equals the
/// one with the greatest dose; nothing if that is the plan itself.
[[nodiscard]] std::optional<std::size_t> fastestRamp(const Comparison& comparison, std::size_t plan);

}  // namespace engine
