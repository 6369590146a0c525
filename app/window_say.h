#pragma once

#include "engine/base/error.h"
#include "engine/base/files.h"

#include <filesystem>
#include <string>
#include <vector>

namespace app {

/// A sentence on standard error, after the window program's name.
void complain(const std::string& sentence);

/// What is to be said about a file, on standard error.
void complain(const engine::Diagnostics& diagnostics);

/// A line on standard output.
void say(const std::string& line);

/// The paths of files that were written, a line each, on standard output.
void sayWritten(const std::filesystem::path& folder, const std::vector<engine::TextFile>& files);

/// @return the exit code: 0 if standard output took all that was said, else 2.
[[nodiscard]] int saidAll();

}  // namespace app
