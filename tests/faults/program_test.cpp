// The programs that write into a folder, with each call failing, or the process killed at it, in turn.
#include "tests/pond_texts.h"
#include "tests/temporary_folder.h"

#include <gtest/gtest.h>

#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <fstream>
#include <iostream>
#include <map>
#include <sstream>
#include <string>
#include <sys/wait.h>
#include <vector>

namespace engine {
namespace {

namespace fs = std::filesystem;
using test::TemporaryFolder;

using Files = std::map<std::string, std::string>;

Files filesIn(const fs::path& folder) {
    Files files;
    for (const auto& entry : fs::directory_iterator(folder)) {
        files[entry.path().filename().string()] = test::fileText(entry.path());
    }
    return files;
}

bool isSlow() {
    const char* slow = std::getenv("DAWNLINE_SLOW");
    return slow != nullptr && std::string_view(slow) == "1";
}

bool isHidden(const std::string& name) {
    return name.starts_with('.');
}

/// What a child did that one call failed in, or that was killed at it.
struct Seen {
    int code = -1;
    std::string call, said;
    Files files;
};

/// What the folder holds before: files that the program replaces, and one that is none of its own.
const Files kOld{
    {"schedule.csv", "old"}, {"summary.csv", "old"}, {"bundle.zip", "old"}, {"notes.txt", "mine"}};

/// A program that writes into a folder "out".
class Program {
public:
    /// @param arguments  As a shell takes them, in a folder with "pond.toml"; OUT stands for the one to
    /// write.
    Program(const char* program, std::string arguments)
        : m_program(program), m_arguments(std::move(arguments)) {
        std::ofstream(folder.path() / "pond.toml", std::ios::binary)
            << test::fileText(DAWNLINE_SCENARIOS "/grandfathers-pond.toml") << test::kStartedLog;
        for (const char* name : {"out", "old", "seen"}) {
            fs::create_directory(folder.path() / name);
        }
        for (const auto& [name, content] : kOld) {
            folder.write("old/" + name, content);
            folder.write("out/" + name, content);
        }
    }

    [[nodiscard]] std::vector<Seen> inTurn(int error) const {
        const fs::path seen = folder.path() / "seen";
        fs::remove_all(seen);
        fs::create_directory(seen);
        const auto is = [&](const char* name, const std::string& value) {
            return name + ("='" + value + "' ");
        };
        EXPECT_EQ(run(m_arguments, is("DAWNLINE_FAULTS_IN", (folder.path() / "out").string()) +
                                       is("DAWNLINE_FAULTS_OLD", (folder.path() / "old").string()) +
                                       is("DAWNLINE_FAULTS_SEEN", seen.string()) +
                                       is("DAWNLINE_FAULTS_ERROR", std::to_string(error)) +
                                       is("LD_PRELOAD", DAWNLINE_FAIL_IN_TURN)),
                  0);
        std::vector<Seen> all;
        for (int number = 1; fs::exists(seen / (std::to_string(number) + ".end")); ++number) {
            Seen one;
            std::ifstream end(seen / (std::to_string(number) + ".end"));
            end >> one.code >> one.call;
            one.said = test::fileText(seen / (std::to_string(number) + ".said"));
            one.files = filesIn(seen / std::to_string(number));
            all.push_back(std::move(one));
        }
        return all;
    }

    [[nodiscard]] int run(const std::string& arguments, const std::string& variables) const {
        std::string absolute = arguments;
        absolute.replace(absolute.find("OUT"), 3, "'" + (folder.path() / "out").string() + "'");
        const std::string command = "cd '" + folder.path().string() +
                                    "' && QT_QPA_PLATFORM=offscreen SOURCE_DATE_EPOCH=1781000000 " +
                                    variables + "'" + m_program + "' " + absolute + " > log 2>&1";
        const int status = std::system(command.c_str());
        EXPECT_TRUE(WIFEXITED(status)) << test::fileText(folder.path() / "log");
        return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
    }

    TemporaryFolder folder;

private:
    const char* m_program;
    std::string m_arguments;
};

/// All is old and a sentence says so, or all is new; nothing is left over.
void expectAllOrNothing(const Program& program) {
    for (const int error : {ENOSPC, EIO}) {
        const std::vector<Seen> all = program.inTurn(error);
        ASSERT_GT(all.size(), 10U);
        EXPECT_EQ(all.back().code, 0) << all.back().said;
        EXPECT_EQ(all.back().call, "") << "the last one came through";
        std::cout << all.size() - 1 << " calls failed in turn with " << std::strerror(error) << "\n";
        const Files &old = kOld, fresh = all.back().files;
        ASSERT_NE(old, fresh);
        EXPECT_EQ(fresh.at("notes.txt"), "mine");
        for (std::size_t i = 0; i + 1 < all.size(); ++i) {
            SCOPED_TRACE(all[i].call + " failed as call " + std::to_string(i + 1));
            EXPECT_TRUE(all[i].files == old || all[i].files == fresh);
            EXPECT_TRUE(all[i].code == 0 || all[i].code == 2) << all[i].code << ": " << all[i].said;
            EXPECT_EQ(all[i].code == 0, all[i].files == fresh) << all[i].said;
            if (all[i].code != 0) {
                EXPECT_NE(all[i].said.find("Nothing was written."), std::string::npos) << all[i].said;
            }
            if (all[i].call == "write" || all[i].call == "fsync" || all[i].call == "rename") {
                EXPECT_EQ(all[i].code, 2) << "a call that failed is no success";
            }
        }
    }
}

/// A whole table stands under each name that had one, and the next run leaves nothing over.
void expectWholeFiles(const Program& program, const std::string& again) {
    const std::vector<Seen> all = program.inTurn(0);
    ASSERT_GT(all.size(), 10U);
    const Files &old = kOld, fresh = all.back().files;
    int renames = 0;
    for (std::size_t i = 0; i + 1 < all.size(); ++i) {
        SCOPED_TRACE("killed at " + all[i].call + ", call " + std::to_string(i + 1));
        renames += all[i].call == "rename" ? 1 : 0;
        EXPECT_EQ(all[i].code, -1);
        for (const auto& [name, content] : old) {
            const auto now = all[i].files.find(name);
            ASSERT_NE(now, all[i].files.end()) << name;
            EXPECT_TRUE(now->second == content || now->second == fresh.at(name)) << name;
        }
        for (const auto& [name, content] : all[i].files) {
            EXPECT_TRUE(isHidden(name) || old.contains(name) || content == fresh.at(name)) << name;
        }
    }
    std::cout << all.size() - 1 << " calls at which it was killed in turn, " << renames
              << " of them renames\n";
    const auto written = std::count_if(fresh.begin(), fresh.end(), [&old](const auto& file) {
        const auto before = old.find(file.first);
        return before == old.end() || before->second != file.second;
    });
    EXPECT_GE(renames, written) << "each file comes to its name by a rename";
    // As the last killed process but one left it.
    const fs::path out = program.folder.path() / "out";
    fs::remove_all(out);
    fs::copy(program.folder.path() / "seen" / std::to_string(all.size() / 2), out,
             fs::copy_options::recursive);
    EXPECT_EQ(program.run(again, ""), 0);
    for (const auto& [name, content] : filesIn(out)) {
        EXPECT_FALSE(isHidden(name)) << name;
    }
}

const std::string kCompare = "compare pond.toml --out OUT --days 2 --layers 14 --step-s 1800";

TEST(ProgramFaults, CompareWritesAllOrNothing) {
    const Program program(DAWNLINE_CLI, kCompare);
    expectAllOrNothing(program);
    expectWholeFiles(program, kCompare);
}

TEST(ProgramFaults, PlanWritesAllOrNothing) {
    if (!isSlow()) {
        GTEST_SKIP() << "a plan takes long";
    }
    const std::string plan = "plan pond.toml --out OUT --layers 14 --step-s 1800 --members 60";
    const Program program(DAWNLINE_CLI, plan);
    expectAllOrNothing(program);
    expectWholeFiles(program, plan);
}

TEST(ProgramFaults, TodayWritesAllOrNothing) {
    if (!isSlow()) {
        GTEST_SKIP() << "a plan takes long";
    }
    const Program program(DAWNLINE_CLI, "today pond.toml --out OUT --members 8 --layers 14 --step-s 1800");
    expectAllOrNothing(program);
}

#ifdef DAWNLINE_WINDOW
TEST(ProgramFaults, PapersAreWrittenAllOrNone) {
    const std::string papers = "--papers OUT --members 8 pond.toml";
    const Program program(DAWNLINE_WINDOW, papers);
    expectAllOrNothing(program);
    expectWholeFiles(program, papers);
}

TEST(ProgramFaults, ChartsAreWrittenAllOrNone) {
    if (!isSlow()) {
        GTEST_SKIP() << "what to measure takes long";
    }
    const std::string charts = "--charts OUT pond.toml";
    const Program program(DAWNLINE_WINDOW, charts);
    expectAllOrNothing(program);
    expectWholeFiles(program, charts);
}
#endif

}  // namespace
}  // namespace engine
