#pragma once

#include "app/cli_options.h"
#include "engine/pond/pond_io.h"

#include <functional>
#include <string>

namespace app {

inline constexpr int kDone = 0;
inline constexpr int kEndedEarly = 1;
inline constexpr int kBadInput = 2;
inline constexpr int kOurFault = 3;

/// A sentence on standard error, after the program's name.
void complain(const std::string& sentence);

/// Text on standard output; the exit code says whether it took it all.
[[nodiscard]] int saidAll(const std::string& text);

/// Reads a pond file and says all that is to be said about it on standard error.
[[nodiscard]] engine::PondReading readAloud(const std::string& path);

/// Progress on standard error in whole percent, each said once; empty unless it was asked for.
[[nodiscard]] std::function<void(double)> progressOf(const CliOptions& options);

}  // namespace app
