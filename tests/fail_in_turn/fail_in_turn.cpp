// A library that is loaded before a program (LD_PRELOAD): when the program is about to touch a folder for the
// first time, the rest of the program is run again and again in children, in each of which one call more
// passes before one fails, or the process is killed there, until a child comes through. So what comes before
// is computed once.
//
// Variables of the environment:
//   DAWNLINE_FAULTS_IN     the folder
//   DAWNLINE_FAULTS_OLD    what it holds before each child
//   DAWNLINE_FAULTS_SEEN   gets, of each child, what the folder holds afterwards (N), what it said (N.said)
//   and
//                          "CODE CALL" (N.end): its exit code, or -1 if it was killed, and the call that
//                          failed
//   DAWNLINE_FAULTS_ERROR  number of the error, or 0 to kill
#include "tests/faults/failing_calls.h"

#include <algorithm>
#include <cstdlib>
#include <fcntl.h>
#include <filesystem>
#include <fstream>
#include <string>
#include <sys/mman.h>
#include <sys/wait.h>
#include <unistd.h>

namespace {

namespace fs = std::filesystem;
using engine::test::WatchedCalls;

constexpr int kMostCalls = 2000;
constexpr unsigned kPatience_s = 120;

std::string variable(const char* name) {
    const char* value = std::getenv(name);
    return value == nullptr ? std::string() : std::string(value);
}

void putBack(const fs::path& folder, const fs::path& old) {
    for (const auto& entry : fs::directory_iterator(folder)) {
        fs::remove_all(entry.path());
    }
    fs::copy(old, folder, fs::copy_options::recursive);
}

void inTurn(WatchedCalls& calls, const fs::path& folder) {
    const fs::path old = variable("DAWNLINE_FAULTS_OLD"), seen = variable("DAWNLINE_FAULTS_SEEN");
    const int error = std::atoi(variable("DAWNLINE_FAULTS_ERROR").c_str());
    // A child that is killed cannot say what was called.
    auto* const noted =
        static_cast<char*>(::mmap(nullptr, 4096, PROT_READ | PROT_WRITE, MAP_SHARED | MAP_ANONYMOUS, -1, 0));
    for (int number = 1; number <= kMostCalls; ++number) {
        putBack(folder, old);
        const fs::path said = seen / (std::to_string(number) + ".said");
        noted[0] = '\0';
        const pid_t child = ::fork();
        if (child == 0) {
            ::alarm(kPatience_s);
            const int to = ::open(said.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600);
            ::dup2(to, 1);
            ::dup2(to, 2);
            calls.noteIn(noted);
            error == 0 ? calls.killAt(number) : calls.failAt(number, error);
            return;
        }
        int status = 0;
        ::waitpid(child, &status, 0);
        fs::copy(folder, seen / std::to_string(number), fs::copy_options::recursive);
        std::ofstream(seen / (std::to_string(number) + ".end"))
            << (WIFEXITED(status) ? WEXITSTATUS(status) : -1) << ' ' << noted << '\n';
        if (noted[0] == '\0') {
            ::_exit(0);  // it came through
        }
    }
    ::_exit(1);
}

const struct Begin {
    Begin() {
        const std::string folder = variable("DAWNLINE_FAULTS_IN");
        if (folder.empty()) {
            return;
        }
        ::unsetenv("LD_PRELOAD");              // what it runs is not watched
        auto* const calls = new WatchedCalls;  // as long as the program
        calls->onlyUnder(folder);
        calls->beforeFirst([calls, folder] { inTurn(*calls, folder); });
    }
} kBegin;

}  // namespace
