// Processes that save again and again, killed at moments that nobody has chosen: 60, 1,000 with
// DAWNLINE_SLOW=1.
#include "engine/base/durable.h"
#include "engine/base/files.h"
#include "tests/temporary_folder.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <csignal>
#include <cstdlib>
#include <fstream>
#include <functional>
#include <iostream>
#include <random>
#include <sstream>
#include <string>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>

namespace engine {
namespace {

namespace fs = std::filesystem;
using test::TemporaryFolder;

constexpr unsigned kSeed = 20261130;

int kills() {
    const char* slow = std::getenv("DAWNLINE_SLOW");
    return slow != nullptr && std::string_view(slow) == "1" ? 1000 : 60;
}

/// A text of its own for each number, long enough for several writes.
std::string textOf(int number) {
    std::string text = std::to_string(number) + "\n";
    for (int line = 0; line < 600; ++line) {
        text += "line " + std::to_string(line) + " of " + std::to_string(number) + "\n";
    }
    return text;
}

/// The number of a whole text, -1 for anything else.
int numberOf(const std::string& text) {
    const int number = std::atoi(text.c_str());
    return !text.empty() && textOf(number) == text ? number : -1;
}

/// Lets a process save one number after the other until it is killed. @return the last that it reported.
int killWhile(const std::function<bool(int)>& save, int from, std::chrono::microseconds after) {
    int ends[2] = {};
    EXPECT_EQ(::pipe(ends), 0);
    const pid_t child = ::fork();
    if (child == 0) {
        for (int number = from;; ++number) {
            if (!save(number) ||
                ::write(ends[1], &number, sizeof number) != static_cast<ssize_t>(sizeof number)) {
                ::_exit(1);
            }
        }
    }
    ::close(ends[1]);
    std::this_thread::sleep_for(after);
    ::kill(child, SIGKILL);
    int status = 0;
    EXPECT_EQ(::waitpid(child, &status, 0), child);
    EXPECT_TRUE(WIFSIGNALED(status)) << "it saved without a fault until it was killed";
    int last = from - 1;
    while (::read(ends[0], &last, sizeof last) == static_cast<ssize_t>(sizeof last)) {
    }
    ::close(ends[0]);
    return last;
}

/// Moments within the first few saves, however long those take here.
class Moments {
public:
    explicit Moments(const std::function<bool(int)>& save) : m_random(kSeed) {
        const auto start = std::chrono::steady_clock::now();
        for (int number = 0; number < kTimed; ++number) {
            EXPECT_TRUE(save(number));
        }
        m_save =
            std::chrono::duration_cast<std::chrono::microseconds>(std::chrono::steady_clock::now() - start) /
            kTimed;
    }
    std::chrono::microseconds some() {
        return std::chrono::microseconds(
            std::uniform_int_distribution<long>(0, 6 * m_save.count())(m_random));
    }

private:
    static constexpr int kTimed = 5;
    std::mt19937_64 m_random;
    std::chrono::microseconds m_save{};
};

TEST(Kills, LoseNothingThatASaveHasReported) {
    const TemporaryFolder folder;
    const fs::path file = folder.path() / "pond.toml";
    Moments moments([&](int number) { return !saveDurably(file, textOf(number)); });
    int last = numberOf(test::fileText(file)), saves = 0;
    for (int kill = 0; kill < kills(); ++kill) {
        const OldFile old = kill % 3 == 2 ? OldFile::Replaced : OldFile::KeptAsBak;  // recovery files too
        const int reported = killWhile([&](int number) { return !saveDurably(file, textOf(number), old); },
                                       last + 1, moments.some());
        const int now = numberOf(test::fileText(file));
        ASSERT_GE(now, reported) << "kill " << kill << " of seed " << kSeed;
        ASSERT_LE(now, reported + 1);
        if (fs::exists(file.string() + ".bak")) {
            ASSERT_GE(numberOf(test::fileText(file.string() + ".bak")), 0) << "kill " << kill;
        }
        saves += reported - last;
        last = now;
    }
    ASSERT_FALSE(saveDurably(file, textOf(last + 1)));
    EXPECT_EQ(std::distance(fs::directory_iterator(folder.path()), {}), 2) << "nothing is left over";
    std::cout << kills() << " kills while saving, seed " << kSeed << ", " << saves
              << " saves reported, none lost\n";
    EXPECT_GT(saves, kills() / 4) << "most kills come while it saves";
}

TEST(Kills, LeaveAWholeTableUnderEachName) {
    const TemporaryFolder folder;
    const auto filesOf = [](int number) {
        return std::vector<TextFile>{
            {"a.csv", textOf(number)}, {"b.csv", textOf(number)}, {"c.csv", textOf(number)}};
    };
    Moments moments([&](int number) { return !writeFiles(folder.path(), filesOf(number)); });
    int last = numberOf(test::fileText(folder.path() / "a.csv"));
    for (int kill = 0; kill < kills() / 2; ++kill) {
        const int reported =
            killWhile([&](int number) { return !writeFiles(folder.path(), filesOf(number)); }, last + 1,
                      moments.some());
        for (const char* name : {"a.csv", "b.csv", "c.csv"}) {
            const int now = numberOf(test::fileText(folder.path() / name));
            ASSERT_GE(now, reported) << name << ", kill " << kill << " of seed " << kSeed;
            ASSERT_LE(now, reported + 1);
        }
        last = reported + 2;
        ASSERT_FALSE(writeFiles(folder.path(), filesOf(last))) << "the next run goes through";
    }
    ASSERT_FALSE(writeFiles(folder.path(), filesOf(last + 1)));
    EXPECT_EQ(std::distance(fs::directory_iterator(folder.path()), {}), 3) << "nothing is left over";
}

}  // namespace
}  // namespace engine
