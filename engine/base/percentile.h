#pragma once

#include <array>
#include <span>

namespace engine {

/// The percentiles of results, in the order of hourly.csv's columns.
inline constexpr std::array<double, 5> kPercentiles{0.05, 0.25, 0.50, 0.75, 0.95};
using Percentiles = std::array<double, kPercentiles.size()>;

/// The value that a share of a sample does not exceed, interpolated linearly between the order statistics:
/// type 7 of Hyndman and Fan (1996), The American Statistician 50:361.
/// @param sorted  Rising, at least one.
/// @param share   0 to 1.
[[nodiscard]] double sortedQuantile(std::span<const float> sorted, double share);

/// All five of a sample in any order, which is sorted on the way.
[[nodiscard]] Percentiles percentilesOf(std::span<float> sample);

/// The same of a sample whose values weigh differently; with equal weights the same numbers. A value stands
/// at half its own weight beyond that of the smaller ones, and the first and the last at the ends.
/// @param weights  As many, none negative and not all 0; empty: equal ones. The sample is sorted on the way.
[[nodiscard]] Percentiles percentilesOf(std::span<float> sample, std::span<const double> weights);

}  // namespace engine
