#pragma once

#include "tests/golden/golden_line.h"

#include <string>
#include <vector>

namespace engine::test {

/// What `check` and the central run of `compare`, with its usual days, say of a scenario: sentences in the
/// order in which they are said, then the runs in the order of the file and their nights.
[[nodiscard]] std::vector<GoldenLine> goldenLines(const std::string& scenario);

}  // namespace engine::test
