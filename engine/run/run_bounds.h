#pragma once

#include "engine/run/run.h"

#include <cstddef>
#include <optional>
#include <string>

namespace engine {

inline constexpr int kMostDays = 365;  ///< Of a run

/// What a computation keeps of its central runs, in layers times days: 200,000 take about 1.2 GB with their
/// tables. A pond with five ramps takes 5,000 by default, and 90,000 over a year.
inline constexpr double kMostLayerDays = 200000;
/// What a computation takes, in members times runs times layers times days, more with steps shorter than the
/// default: 10^9 take two processors a night. A pond with five ramps and 1,000 members takes 5 million.
inline constexpr double kMostMemberLayerDays = 1000000000;

/// What is asked of a computation.
struct RunSize {
    std::size_t runs = 1;
    int days = 14;
    int members = 1;
    Resolution resolution;
};

/// Why a computation is too large to be begun, as a sentence with its size and the most; nothing if it is
/// not.
[[nodiscard]] std::optional<std::string> sizeFault(const RunSize& size);

}  // namespace engine
