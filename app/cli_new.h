#pragma once

#include "app/cli_options.h"

namespace app {

/// `new`: makes a pond file from the first questions, which options answer or which are asked.
/// @return the exit code.
[[nodiscard]] int makeNewPond(const CliOptions& options);

}  // namespace app
