#pragma once

#include <vector>

namespace widgets {

/// Moves labels on a line apart, as little as possible in squares, so that neighbours keep a gap.
/// @param wanted  Places in any order; labels keep the order of their places.
/// @param gap     Least distance between two places.
/// @param low,high  Ends of the line. If it is too short for all, the gap is what fits.
/// @return one place a label, in the order of `wanted`.
[[nodiscard]] std::vector<double> spreadApart(const std::vector<double>& wanted, double gap, double low,
                                              double high);

}  // namespace widgets
