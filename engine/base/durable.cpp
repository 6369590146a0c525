#include "engine/base/durable.h"

#include "engine/base/text_file.h"

#include <cerrno>
#include <chrono>
#include <cstddef>
#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <system_error>
#include <thread>
#include <unistd.h>

namespace engine {
namespace {

namespace fs = std::filesystem;

constexpr std::chrono::milliseconds kBetweenTries(10);
constexpr int kMostTries = 1000;  // ten seconds, longer than any save takes
constexpr int kMostLinks = 40;    // as the kernel follows
constexpr std::string_view kNewEnding = ".dawnline-new";
constexpr std::string_view kOldEnding = ".dawnline-old";

std::string notSaved(const fs::path& path, const std::string& why) {
    return "The file " + shownPath(path) + " was not saved: " + why;
}

std::string notSaved(const fs::path& path, int number) {
    return notSaved(path, std::generic_category().message(number) + ".");
}

fs::path beside(const fs::path& file, std::string_view ending) {
    return folderOf(file) / ("." + file.filename().string() + std::string(ending));
}

int writeAll(int file, std::string_view text) {
    while (!text.empty()) {
        const ssize_t written = ::write(file, text.data(), text.size());
        if (written < 0 && errno != EINTR) {
            return errno;
        }
        text.remove_prefix(written > 0 ? static_cast<std::size_t>(written) : 0U);
    }
    return ::fsync(file) == 0 ? 0 : errno;
}

/// Puts a text into a file by way of a new one beside it.
std::optional<std::string> replace(const fs::path& path, std::string_view text,
                                   std::optional<unsigned> mode) {
    const fs::path fresh = newBeside(path);
    ::unlink(fresh.c_str());  // left by a process that was killed
    int fault = writeNewFile(fresh, text, mode);
    if (fault == 0) {
        const FileText back = readWholeFile(fresh, text.size());
        if (!back.text || *back.text != text) {
            ::unlink(fresh.c_str());
            return notSaved(path, "it does not read back as written.");
        }
        fault = ::rename(fresh.c_str(), path.c_str()) == 0 ? 0 : errno;
    }
    if (fault != 0) {
        ::unlink(fresh.c_str());
        return notSaved(path, fault);
    }
    return std::nullopt;
}

}  // namespace

FolderLock::FolderLock(const fs::path& folder)
    : m_handle(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC)) {
    for (int i = 0; m_handle >= 0 && ::flock(m_handle, LOCK_EX | LOCK_NB) != 0; ++i) {
        if (errno != EWOULDBLOCK && errno != EINTR) {
            return;  // a file system without such locks
        }
        if (i == kMostTries) {
            m_fault = "Another program has been writing into the folder " + shownPath(folder) +
                      " for ten seconds. Nothing was written; try again.";
            return;
        }
        std::this_thread::sleep_for(kBetweenTries);
    }
}

FolderLock::~FolderLock() {
    if (m_handle >= 0) {
        ::close(m_handle);
    }
}

fs::path folderOf(const fs::path& file) {
    return file.has_parent_path() ? file.parent_path() : fs::path(".");
}

fs::path linkTarget(fs::path path) {
    std::error_code fault;
    for (int i = 0; i < kMostLinks && fs::is_symlink(path, fault); ++i) {
        const fs::path next = fs::read_symlink(path, fault);
        if (fault) {
            return path;
        }
        path = folderOf(path) / next;
    }
    return path;
}

fs::path newBeside(const fs::path& file) {
    return beside(file, kNewEnding);
}

fs::path oldBeside(const fs::path& file) {
    return beside(file, kOldEnding);
}

void removeLeftovers(const fs::path& folder) {
    std::error_code fault;  // what cannot be listed or removed stays, and does no harm
    for (fs::directory_iterator at(folder, fault), end; !fault && at != end; at.increment(fault)) {
        const std::string name = at->path().filename().string();
        if (name.starts_with('.') && (name.ends_with(kNewEnding) || name.ends_with(kOldEnding))) {
            ::unlink(at->path().c_str());
        }
    }
}

int writeNewFile(const fs::path& path, std::string_view text, std::optional<unsigned> mode) {
    const int file = ::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
    if (file < 0) {
        return errno;
    }
    int fault = mode && ::fchmod(file, *mode) != 0 ? errno : 0;
    fault = fault != 0 ? fault : writeAll(file, text);
    const int closed = ::close(file) == 0 ? 0 : errno;
    return fault != 0 ? fault : closed;
}

int flushFolder(const fs::path& folder) {
    const int handle = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (handle < 0) {
        return errno == EACCES ? 0 : errno;  // a folder that may be written to and not listed
    }
    const int fault = ::fsync(handle) == 0 || errno == EINVAL || errno == ENOTSUP ? 0 : errno;
    ::close(handle);
    return fault;
}

std::optional<std::string> saveDurably(const FolderLock& lock, const fs::path& path, std::string_view text,
                                       OldFile old) {
    if (lock.fault()) {
        return lock.fault();
    }
    const fs::path name = linkTarget(path);
    struct stat status {};
    const bool isThere = ::stat(name.c_str(), &status) == 0;
    if (!isThere && errno != ENOENT) {
        return notSaved(name, errno);
    }
    const std::optional<unsigned> mode = isThere ? std::optional(status.st_mode & 07777U) : std::nullopt;
    if (isThere && old == OldFile::KeptAsBak) {
        const FileText before = readWholeFile(name, kCsvFileLimit_bytes);
        if (!before.text) {
            return notSaved(name, before.fault);
        }
        if (*before.text == text) {
            return std::nullopt;
        }
        if (auto fault = replace(name.string() + ".bak", *before.text, mode)) {
            return notSaved(name, "what it held cannot be kept beside it. " + *fault);
        }
    }
    if (auto fault = replace(name, text, mode)) {
        return fault;
    }
    if (const int fault = flushFolder(folderOf(name)); fault != 0) {
        return "The file " + shownPath(name) +
               " was written, but the disk did not confirm it: " + std::generic_category().message(fault) +
               ". Save it once more.";
    }
    return std::nullopt;
}

std::optional<std::string> saveDurably(const fs::path& path, std::string_view text, OldFile old) {
    const FolderLock lock(folderOf(linkTarget(path)));
    return saveDurably(lock, path, text, old);
}

}  // namespace engine
