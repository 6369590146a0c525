#include "engine/files.h"

#include "engine/text_file.h"

#include <cerrno>
#include <cstddef>
#include <fcntl.h>
#include <string_view>
#include <system_error>
#include <unistd.h>

namespace engine {
namespace {

namespace fs = std::filesystem;

std::string because(int number) {
    return " (" + std::generic_category().message(number) + ").";
}

std::string cannotWrite(const fs::path& path, int number) {
    return "The file " + shownPath(path) + " cannot be written" + because(number);
}

/// A name beside the final one, hidden and of this process alone.
fs::path beside(const fs::path& folder, const std::string& name, std::string_view ending) {
    return folder / ("." + name + "." + std::to_string(::getpid()) + std::string(ending));
}

/// The error number of what went wrong, 0 if nothing did.
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

int writeNewFile(const fs::path& path, std::string_view text) {
    const int file = ::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
    if (file < 0) {
        return errno;
    }
    const int fault = writeAll(file, text);
    const int closed = ::close(file) == 0 ? 0 : errno;
    return fault != 0 ? fault : closed;
}

void flushFolder(const fs::path& folder) {
    const int handle = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (handle >= 0) {
        ::fsync(handle);  // some file systems refuse this for folders; the files themselves are flushed
        ::close(handle);
    }
}

/// What was done so far, undone at the end unless it was kept.
class Undo {
public:
    Undo() = default;
    Undo(const Undo&) = delete;
    Undo& operator=(const Undo&) = delete;
    ~Undo() {
        std::error_code ignored;  // there is nothing more to be tried
        for (auto step = m_steps.rbegin(); !m_isKept && step != m_steps.rend(); ++step) {
            if (step->to.empty()) {
                fs::remove(step->from, ignored);
            } else {
                fs::rename(step->from, step->to, ignored);
            }
        }
    }
    /// Later steps are undone first. A folder is only removed while it is empty.
    void byRemoving(const fs::path& path) { m_steps.push_back({path, {}}); }
    void byMovingBack(const fs::path& from, const fs::path& to) { m_steps.push_back({from, to}); }
    void keep() { m_isKept = true; }

private:
    struct Step {
        fs::path from, to;
    };
    std::vector<Step> m_steps;
    bool m_isKept = false;
};

std::optional<std::string> makeFolder(const fs::path& folder, Undo& undo) {
    std::vector<fs::path> missing;
    std::error_code fault;
    for (fs::path at = folder; !at.empty() && !fs::exists(at, fault); at = at.parent_path()) {
        if (at.has_filename()) {
            missing.push_back(at);
        }
    }
    for (auto at = missing.rbegin(); at != missing.rend(); ++at) {
        if (fs::create_directory(*at, fault)) {
            undo.byRemoving(*at);
        } else if (fault) {
            return "The folder " + shownPath(*at) + " cannot be made" + because(fault.value());
        }
    }
    return std::nullopt;
}

std::optional<std::string> moveIntoPlace(const fs::path& from, const fs::path& backup, const fs::path& to,
                                         Undo& undo) {
    std::error_code fault;
    const auto standing = fs::symlink_status(to, fault).type();
    if (standing == fs::file_type::directory) {
        return cannotWrite(to, EISDIR);
    }
    if (standing != fs::file_type::not_found) {
        fs::rename(to, backup, fault);
        if (fault) {
            return cannotWrite(to, fault.value());
        }
        undo.byMovingBack(backup, to);
    }
    fs::rename(from, to, fault);
    if (fault) {
        return cannotWrite(to, fault.value());
    }
    undo.byRemoving(to);
    return std::nullopt;
}

}  // namespace

std::string shownPath(const fs::path& path) {
    std::string text = path.string();
    const bool isPlain = !findTextFault(text) && text.find_first_of("\n\r\t\x1b\"") == std::string::npos;
    return isPlain ? '"' + text + '"' : shownText(text);
}

std::optional<std::string> folderFault(const fs::path& folder) {
    if (folder.empty()) {
        return "The name of the folder is empty.";
    }
    std::error_code fault;
    fs::path standing = fs::absolute(folder, fault);
    auto type = fs::status(standing, fault).type();
    while (type == fs::file_type::not_found && standing.has_relative_path()) {
        standing = standing.parent_path();
        type = fs::status(standing, fault).type();
    }
    if (type == fs::file_type::none || type == fs::file_type::unknown) {
        return "The folder " + shownPath(standing) + " cannot be looked at" + because(fault.value());
    }
    if (type != fs::file_type::directory) {
        return shownPath(standing) + " is a file, not a folder.";
    }
    if (::access(standing.c_str(), W_OK | X_OK) != 0) {
        return "The folder " + shownPath(standing) + " cannot be written to" + because(errno);
    }
    return std::nullopt;
}

std::optional<std::string> writeFiles(const fs::path& folder, const std::vector<TextFile>& files) {
    if (auto fault = folderFault(folder)) {
        return fault;
    }
    Undo undo;
    if (auto fault = makeFolder(folder, undo)) {
        return fault;
    }
    for (const TextFile& file : files) {
        const fs::path path = beside(folder, file.name, ".new");
        std::error_code ignored;
        fs::remove(path, ignored);  // left by a process of this number that was killed
        undo.byRemoving(path);
        const int fault = writeNewFile(path, file.text);
        if (fault != 0) {
            return cannotWrite(folder / file.name, fault);
        }
    }
    for (const TextFile& file : files) {
        if (auto fault = moveIntoPlace(beside(folder, file.name, ".new"), beside(folder, file.name, ".old"),
                                       folder / file.name, undo)) {
            return fault;
        }
    }
    undo.keep();
    for (const TextFile& file : files) {
        std::error_code ignored;  // most had nothing to replace
        fs::remove(beside(folder, file.name, ".old"), ignored);
    }
    flushFolder(folder);
    return std::nullopt;
}

}  // namespace engine
