#pragma once

#include <QString>

#include <filesystem>
#include <optional>
#include <string_view>

namespace widgets {

/// What becomes of what a file held before.
enum class OldFile { KeptAsBak, Replaced };

/// Puts a text into a file so that at any moment, a power cut included, the file holds either what it held
/// or the text: written beside it, flushed, moved into its place, and the folder flushed. Read back and
/// compared. What stood there before can be kept
/// as `NAME.bak`.
///
/// A link is followed, and the file's permissions are kept.
/// @return a sentence that names the file if it could not be done; the file is then as it was.
[[nodiscard]] std::optional<QString> saveDurably(const std::filesystem::path& path, std::string_view text,
                                                 OldFile old = OldFile::KeptAsBak);

}  // namespace widgets
