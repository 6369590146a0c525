#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

namespace engine {

/// Holds off every other writer of this program who would write into the same folder, in any process, until
/// it is destroyed. What must not change between being compared and being written is compared and written
/// under one.
///
/// The folder itself is locked, so that no file is left behind. Where the file system knows no such locks,
/// work goes on without one. Not to be taken twice by one thread: the second waits for the first.
class FolderLock {
public:
    /// Waits up to ten seconds for others. A folder that is not there is not locked.
    explicit FolderLock(const std::filesystem::path& folder);
    ~FolderLock();
    FolderLock(const FolderLock&) = delete;
    FolderLock& operator=(const FolderLock&) = delete;

    /// Why nothing may be written, as a sentence; nothing if all is well.
    [[nodiscard]] const std::optional<std::string>& fault() const { return m_fault; }

private:
    int m_handle = -1;
    std::optional<std::string> m_fault;
};

/// The folder that holds a file, "." for a bare name.
[[nodiscard]] std::filesystem::path folderOf(const std::filesystem::path& file);

/// Where a link leads, through further links; the path itself where it is none.
[[nodiscard]] std::filesystem::path linkTarget(std::filesystem::path path);

/// What becomes of what a file held before.
enum class OldFile { KeptAsBak, Replaced };

/// Puts a text into a file so that at any moment, a power cut and a full disk included, the file holds either
/// what it held or the text: written beside it, flushed, read back, moved into its place, and the folder
/// flushed. What stood there before can be kept as `NAME.bak`.
///
/// A link at `path` is followed; one at `NAME.bak` is replaced and never followed. Both files have the
/// permissions that the file had.
/// @param lock  Of the folder that holds the file that a link leads to.
/// @return a sentence that names the file if any step failed; the file is then as it was, unless the sentence
/// says
///         that only the last flush failed.
[[nodiscard]] std::optional<std::string> saveDurably(const FolderLock& lock,
                                                     const std::filesystem::path& path, std::string_view text,
                                                     OldFile old = OldFile::KeptAsBak);
/// The same under a lock of its own.
[[nodiscard]] std::optional<std::string> saveDurably(const std::filesystem::path& path, std::string_view text,
                                                     OldFile old = OldFile::KeptAsBak);

/// A hidden name beside a file, for what is not in its place yet or about to go.
[[nodiscard]] std::filesystem::path newBeside(const std::filesystem::path& file);
[[nodiscard]] std::filesystem::path oldBeside(const std::filesystem::path& file);

/// Removes what a writer that was killed has left beside its files. For the holder of the folder's lock.
void removeLeftovers(const std::filesystem::path& folder);

/// Writes a file of this name, which must not be there yet, and flushes it to the disk.
/// @param mode  Permissions; those of any new file if not given.
/// @return the error number of what went wrong, 0 if nothing did.
[[nodiscard]] int writeNewFile(const std::filesystem::path& path, std::string_view text,
                               std::optional<unsigned> mode = std::nullopt);

/// Flushes the names that a folder holds. File systems that cannot do so for folders are taken as having done
/// it.
/// @return the error number of what went wrong, 0 if nothing did.
[[nodiscard]] int flushFolder(const std::filesystem::path& folder);

}  // namespace engine
