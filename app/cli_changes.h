#pragma once

#include "app/cli_options.h"

namespace app {

/// Says how the answer of a bundle has changed: to that of another bundle, or of a pond file, which is run as
/// the bundle was. @return the exit code.
[[nodiscard]] int sayChanges(const CliOptions& options);

}  // namespace app
