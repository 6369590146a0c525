#pragma once

#include "app/cli_options.h"

namespace app {

/// Runs log, fit, today, incident or review; returns the exit code.
[[nodiscard]] int runOnLog(const CliOptions& options);

}  // namespace app
