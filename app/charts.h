#pragma once

#include <filesystem>

namespace app {

/// Writes every view of a pond as PNG and SVG, and its numbers as CSV, into a folder; says on standard output
/// what it wrote and on standard error what is wrong.
/// @return the exit code of the contract: 0 done, 1 ended early, 2 bad input.
[[nodiscard]] int writeCharts(const std::filesystem::path& pond, const std::filesystem::path& folder);

}  // namespace app
