#pragma once

#include <cmath>
#include <vector>

namespace engine::test {

/// Order of convergence from errors at halved steps: the mean slope over the whole ladder, log2 of the first
/// error over the last divided by the number of halvings.
inline double measuredOrder(const std::vector<double>& errors) {
    return std::log2(errors.front() / errors.back()) / static_cast<double>(errors.size() - 1);
}

}  // namespace engine::test
