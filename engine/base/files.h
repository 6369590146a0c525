#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace engine {

/// A file to be written.
struct TextFile {
    std::string name;  ///< Within its folder.
    std::string text;
};

/// Why files could not be put into a folder, as a sentence that names it; nothing if they can, as far as
/// one can tell without writing. Changes nothing.
[[nodiscard]] std::optional<std::string> folderFault(const std::filesystem::path& folder);

/// Writes all files into a folder, or leaves everything as it was and says why in a sentence.
///
/// The folder and its parents are made if they are missing. Files of the same names are replaced, all
/// others left alone. The texts go to files of other names first, are flushed to the disk and only then
/// take their places; if one of them cannot, those before it give way to what stood there. At every moment,
/// also when the process is killed, a whole file stands under each name that had one. One process at a time
/// writes into a folder, and removes what one that was killed has left there.
[[nodiscard]] std::optional<std::string> writeFiles(const std::filesystem::path& folder,
                                                    const std::vector<TextFile>& files);

}  // namespace engine
