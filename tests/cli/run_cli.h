#pragma once

#include "tests/temporary_folder.h"

#include <gtest/gtest.h>

#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <sys/wait.h>
#include <unistd.h>
#include <vector>

namespace engine::test {

/// What the command line did.
struct CliRun {
    int code = -1;  ///< Exit code; -1 if it did not exit by itself.
    std::string out, err;
    double seconds = 0.0;
};

/// Tests of the real program, each in a folder of its own.
class Cli : public testing::Test {
protected:
    void SetUp() override {
        const auto* test = testing::UnitTest::GetInstance()->current_test_info();
        std::string name = "dawnline-cli-" + std::string(test->name()) + "-" + std::to_string(::getpid());
        for (char& c : name) {
            c = c == '/' ? '-' : c;
        }
        m_folder = std::filesystem::temp_directory_path() / name;
        std::filesystem::remove_all(m_folder);
        std::filesystem::create_directory(m_folder);
    }
    void TearDown() override { std::filesystem::remove_all(m_folder); }

    /// Runs the program in the test's folder.
    /// @param arguments  As a shell takes them.
    /// @param before     Stands before the program: variables, limits, another user.
    CliRun run(const std::string& arguments, const std::string& before = "") const {
        const std::string command = "cd '" + m_folder.string() + "' && { " + before + " '" DAWNLINE_CLI "' " +
                                    arguments + "; } > '" + said("out") + "' 2> '" + said("err") + "'";
        const auto start = std::chrono::steady_clock::now();
        const int status = std::system(command.c_str());
        CliRun run;
        run.seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
        run.code = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
        run.out = fileText(said("out"));
        run.err = fileText(said("err"));
        std::filesystem::remove(said("out"));
        std::filesystem::remove(said("err"));
        return run;
    }

    void put(const std::string& name, std::string_view text) const {
        std::ofstream(m_folder / name, std::ios::binary) << text;
    }

    static std::string scenario(const std::string& name) {
        return "'" DAWNLINE_SCENARIOS "/" + name + ".toml'";
    }

    std::filesystem::path m_folder;

private:
    /// Beside the folder, so that a test can count what is in it.
    [[nodiscard]] std::string said(const char* what) const { return m_folder.string() + "." + what; }
};

/// The first cell of each line of a table, its header's among them; no cell holds a comma or a quotation
/// mark.
inline std::vector<std::string> firstColumn(const std::string& table) {
    std::vector<std::string> cells;
    std::istringstream lines(table);
    for (std::string line; std::getline(lines, line);) {
        cells.push_back(line.substr(0, line.find(',')));
    }
    return cells;
}

inline void expectContains(const std::string& text, const std::string& part) {
    EXPECT_NE(text.find(part), std::string::npos) << "\"" << part << "\" is not in:\n" << text;
}

}  // namespace engine::test
