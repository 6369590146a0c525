#include "tests/faults/failing_calls.h"

#include <cerrno>
#include <csignal>
#include <cstdarg>
#include <cstring>
#include <fcntl.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <unistd.h>
#include <utility>

namespace {

using engine::test::Call;

struct Watch {
    bool isOn = false;
    bool isBusy = false;  // noting a call makes calls
    int countdown = 0, error = 0;
    bool kills = false, hasFailed = false;
    char* note = nullptr;         // gets the name of the call that failed
    std::string under;            // only what lies there counts; empty: all
    std::function<void()> first;  // before the first call that counts
    std::vector<Call> calls;
};
Watch g_watch;

std::string pathOf(int handle) {
    char path[4096] = {};
    const std::string link = "/proc/self/fd/" + std::to_string(handle);
    const ssize_t length = ::readlink(link.c_str(), path, sizeof path - 1);
    return length > 0 ? std::string(path) : std::string();
}

bool counts(const std::string& path) {
    return g_watch.under.empty() || path == g_watch.under || path.starts_with(g_watch.under + '/');
}

/// Notes a call; true if it is to fail, errno is set then.
bool fails(const char* name, const std::string& path, bool isFolder = false) {
    if (!g_watch.isOn || g_watch.isBusy || !counts(path)) {
        return false;
    }
    if (g_watch.first) {
        g_watch.isBusy = true;
        std::exchange(g_watch.first, nullptr)();
        g_watch.isBusy = false;
    }
    g_watch.calls.push_back({name, path, isFolder});
    if (g_watch.countdown == 0 || --g_watch.countdown > 0) {
        return false;
    }
    if (g_watch.note != nullptr) {
        std::strcpy(g_watch.note, name);
    }
    if (g_watch.kills) {
        ::raise(SIGKILL);
    }
    g_watch.hasFailed = true;
    errno = g_watch.error;
    return true;
}

bool failsOn(const char* name, int handle) {
    if (!g_watch.isOn || g_watch.isBusy) {
        return false;
    }
    g_watch.isBusy = true;
    struct stat status {};
    const bool isFolder = ::fstat(handle, &status) == 0 && S_ISDIR(status.st_mode);
    const std::string path = pathOf(handle);
    g_watch.isBusy = false;
    return fails(name, path, isFolder);
}

}  // namespace

// These stand before the C library's.
extern "C" int open(const char* path, int flags, ...) {
    mode_t mode = 0;
    if ((flags & O_CREAT) != 0) {
        va_list rest;
        va_start(rest, flags);
        mode = va_arg(rest, mode_t);
        va_end(rest);
    }
    return fails("open", path) ? -1 : static_cast<int>(::syscall(SYS_openat, AT_FDCWD, path, flags, mode));
}
extern "C" ssize_t read(int handle, void* bytes, size_t count) {
    return failsOn("read", handle) ? -1 : ::syscall(SYS_read, handle, bytes, count);
}
extern "C" ssize_t write(int handle, const void* bytes, size_t count) {
    if (failsOn("write", handle)) {
        const int error = errno;
        ::syscall(SYS_write, handle, bytes, count / 2);
        errno = error;
        return -1;
    }
    return ::syscall(SYS_write, handle, bytes, count);
}
extern "C" int fsync(int handle) {
    return failsOn("fsync", handle) ? -1 : static_cast<int>(::syscall(SYS_fsync, handle));
}
extern "C" int fchmod(int handle, mode_t mode) {
    return failsOn("fchmod", handle) ? -1 : static_cast<int>(::syscall(SYS_fchmod, handle, mode));
}
extern "C" int close(int handle) {
    const bool isToFail = failsOn("close", handle);
    const int error = errno;
    const auto closed = static_cast<int>(::syscall(SYS_close, handle));
    errno = isToFail ? error : errno;
    return isToFail ? -1 : closed;
}
extern "C" int link(const char* from, const char* to) {
    return fails("link", to) ? -1 : static_cast<int>(::syscall(SYS_linkat, AT_FDCWD, from, AT_FDCWD, to, 0));
}
extern "C" int rename(const char* from, const char* to) {
    return fails("rename", to) ? -1
                               : static_cast<int>(::syscall(SYS_renameat2, AT_FDCWD, from, AT_FDCWD, to, 0));
}

namespace engine::test {

WatchedCalls::WatchedCalls() {
    g_watch = {};
    g_watch.isOn = true;
}

WatchedCalls::~WatchedCalls() {
    g_watch.isOn = false;
}

void WatchedCalls::failAt(int number, int error) {
    g_watch.countdown = number;
    g_watch.error = error;
    g_watch.kills = g_watch.hasFailed = false;
    g_watch.calls.clear();
}

void WatchedCalls::noteIn(char* memory) {
    g_watch.note = memory;
}

void WatchedCalls::onlyUnder(const std::string& folder) {
    g_watch.under = folder;
}

void WatchedCalls::beforeFirst(std::function<void()> act) {
    g_watch.first = std::move(act);
}

void WatchedCalls::killAt(int number) {
    failAt(number, 0);
    g_watch.kills = true;
}

bool WatchedCalls::hasFailed() const {
    return g_watch.hasFailed;
}

const std::vector<Call>& WatchedCalls::all() const {
    return g_watch.calls;
}

}  // namespace engine::test
