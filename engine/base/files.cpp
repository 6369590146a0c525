#include "engine/base/files.h"

#include "engine/base/durable.h"
#include "engine/base/text_file.h"

#include <cerrno>
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
                if (!ignored) {  // two names of one file both stay after a rename
                    fs::remove(step->from, ignored);
                }
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

/// A second name for what stands under the first one; a copy where the file system knows no second names.
int keepOld(const fs::path& standing, const fs::path& second) {
    if (::link(standing.c_str(), second.c_str()) == 0) {
        return 0;
    }
    std::error_code fault;
    fs::copy(standing, second, fs::copy_options::copy_symlinks, fault);
    return fault.value();
}

/// At every moment there is a whole file under the name, the old one or the new one.
std::optional<std::string> moveIntoPlace(const fs::path& to, Undo& undo) {
    std::error_code fault;
    const auto standing = fs::symlink_status(to, fault).type();
    if (standing == fs::file_type::directory) {
        return cannotWrite(to, EISDIR);
    }
    if (standing != fs::file_type::not_found) {
        if (const int number = keepOld(to, oldBeside(to)); number != 0) {
            return cannotWrite(to, number);
        }
        undo.byMovingBack(oldBeside(to), to);
    } else {
        undo.byRemoving(to);
    }
    if (::rename(newBeside(to).c_str(), to.c_str()) != 0) {
        return cannotWrite(to, errno);
    }
    return std::nullopt;
}

}  // namespace

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
    Undo folders;
    if (auto fault = makeFolder(folder, folders)) {
        return fault;
    }
    const FolderLock lock(folder);
    if (lock.fault()) {
        return lock.fault();
    }
    removeLeftovers(folder);
    Undo undo;
    for (const TextFile& file : files) {
        const fs::path path = newBeside(folder / file.name);
        undo.byRemoving(path);
        if (const int fault = writeNewFile(path, file.text); fault != 0) {
            return cannotWrite(folder / file.name, fault);
        }
    }
    for (const TextFile& file : files) {
        if (auto fault = moveIntoPlace(folder / file.name, undo)) {
            return fault;
        }
    }
    if (const int fault = flushFolder(folder); fault != 0) {
        return cannotWrite(folder, fault);
    }
    undo.keep();
    folders.keep();
    for (const TextFile& file : files) {
        ::unlink(oldBeside(folder / file.name).c_str());  // most had nothing to replace
    }
    return std::nullopt;
}

}  // namespace engine
