// Tables of a run in a folder, with each call failing or the process killed in turn.

#include "engine/base/files.h"

#include "tests/faults/failing_calls.h"
#include "tests/temporary_folder.h"

#include <gtest/gtest.h>

#include <cerrno>
#include <csignal>
#include <fstream>
#include <iterator>
#include <sstream>
#include <string>
#include <sys/wait.h>
#include <unistd.h>

namespace engine {
namespace {

namespace fs = std::filesystem;
using test::TemporaryFolder;

constexpr int kMostCalls = 100;
const std::vector<TextFile> kOld{{"a.csv", "old a"}, {"b.csv", "old b"}};
const std::vector<TextFile> kNew{{"a.csv", "new a"}, {"b.csv", "new b"}, {"c.csv", "new c"}};

TEST(FilesFaults, AllIsOldOrAllIsNewWhicheverCallFails) {
    for (const int error : {ENOSPC, EIO}) {
        bool hasPassed = false;
        for (int number = 1; !hasPassed; ++number) {
            ASSERT_LT(number, kMostCalls);
            const TemporaryFolder folder;
            ASSERT_EQ(writeFiles(folder.path(), kOld), std::nullopt);
            std::optional<std::string> fault;
            {
                test::WatchedCalls calls;
                calls.failAt(number, error);
                fault = writeFiles(folder.path(), kNew);
                hasPassed = !calls.hasFailed();
            }
            SCOPED_TRACE(number);
            const bool isNew = test::fileText(folder.path() / "a.csv") == "new a";
            EXPECT_EQ(test::fileText(folder.path() / "a.csv"), isNew ? "new a" : "old a");
            EXPECT_EQ(test::fileText(folder.path() / "b.csv"), isNew ? "new b" : "old b");
            EXPECT_EQ(fs::exists(folder.path() / "c.csv"), isNew);
            EXPECT_EQ(isNew, !fault.has_value());
            EXPECT_EQ(std::distance(fs::directory_iterator(folder.path()), {}), isNew ? 3 : 2);
        }
    }
}

TEST(FilesFaults, AWholeTableStandsUnderEachNameWheneverTheProcessIsKilled) {
    bool hasPassed = false;
    for (int number = 1; !hasPassed; ++number) {
        ASSERT_LT(number, kMostCalls);
        const TemporaryFolder folder;
        ASSERT_EQ(writeFiles(folder.path(), kOld), std::nullopt);
        const pid_t child = ::fork();
        if (child == 0) {
            test::WatchedCalls calls;
            calls.killAt(number);
            ::_exit(writeFiles(folder.path(), kNew) ? 1 : 0);
        }
        int status = 0;
        ASSERT_EQ(::waitpid(child, &status, 0), child);
        hasPassed = WIFEXITED(status);
        SCOPED_TRACE(number);
        ASSERT_TRUE(hasPassed ? WEXITSTATUS(status) == 0 : WTERMSIG(status) == SIGKILL);
        for (const std::string name : {"a", "b"}) {
            const std::string text = test::fileText(folder.path() / (name + ".csv"));
            EXPECT_TRUE(text == "old " + name || text == "new " + name) << name << ": " << text;
        }
        EXPECT_EQ(writeFiles(folder.path(), kNew), std::nullopt) << "the next run is not held up";
        EXPECT_EQ(std::distance(fs::directory_iterator(folder.path()), {}), 3) << "and removes what was left";
    }
}

}  // namespace
}  // namespace engine
