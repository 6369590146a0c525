#pragma once

#include <functional>
#include <string>
#include <vector>

/// System calls of this program that note themselves and, when asked to, fail or kill the process.
namespace engine::test {

/// One call of open, read, fchmod, write, fsync, close, link or rename.
struct Call {
    std::string name;
    std::string path;  ///< Of the file behind the handle; for link and rename the new name
    bool isFolder = false;
};

/// Notes all calls until it is destroyed; one at a time.
class WatchedCalls {
public:
    WatchedCalls();
    ~WatchedCalls();
    WatchedCalls(const WatchedCalls&) = delete;
    WatchedCalls& operator=(const WatchedCalls&) = delete;

    /// The call of this number, counted from 1 at now, fails with this error number; 0 for none. A write that
    /// fails has written half of what was asked.
    void failAt(int number, int error);
    /// The process is killed right before the call of this number.
    void killAt(int number);
    /// The name of the call that fails, or at which the process is killed, is written there.
    /// @param memory  Shared with another process.
    void noteIn(char* memory);
    /// Only calls on a folder and what lies below it count.
    void onlyUnder(const std::string& folder);
    /// Called once, before the first call that counts.
    void beforeFirst(std::function<void()> act);
    /// True if the call that was to fail was made.
    [[nodiscard]] bool hasFailed() const;
    [[nodiscard]] const std::vector<Call>& all() const;
};

}  // namespace engine::test
