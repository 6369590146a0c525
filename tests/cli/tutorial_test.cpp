// The tutorial, run as it stands: each block of the shell must end well, and what it quotes must be said.
#include "tests/cli/run_cli.h"

#include <gtest/gtest.h>

#include <sstream>

namespace engine {
namespace {

using test::Cli;

/// Text with each run of white space as one blank, since a terminal's line ends are no part of a sentence.
std::string flowing(const std::string& text) {
    std::istringstream words(text);
    std::string all;
    for (std::string word; words >> word;) {
        all += (all.empty() ? "" : " ") + word;
    }
    return all;
}

class Tutorial : public Cli {};

TEST_F(Tutorial, RunsAsItStands) {
    std::istringstream page(test::fileText(DAWNLINE_SCENARIOS "/../resources/tutorial.md"));
    std::string said, block;
    bool isBlock = false;
    int blocks = 0, quotes = 0;
    for (std::string line; std::getline(page, line);) {
        if (line == "```sh") {
            isBlock = true;
            block = "set -e\ndawnline-cli() { '" DAWNLINE_CLI "' \"$@\" < /dev/null; }\n";
        } else if (line == "```" && isBlock) {
            isBlock = false;
            ++blocks;
            std::ofstream(m_folder / "block.sh") << block;
            const std::string command = "cd '" + m_folder.string() + "' && bash block.sh > said.txt 2>&1";
            const int status = std::system(command.c_str());
            said = flowing(test::fileText(m_folder / "said.txt"));
            EXPECT_EQ(status, 0) << block << said;
        } else if (isBlock) {
            block += line + '\n';
        } else if (line.starts_with("> ")) {
            ++quotes;
            EXPECT_NE(said.find(line.substr(2)), std::string::npos) << line << "\nis not said:\n" << said;
        }
    }
    EXPECT_GE(blocks, 6);
    EXPECT_GE(quotes, 4);
    EXPECT_TRUE(std::filesystem::exists(m_folder / "plan" / "pond.toml"));
}

}  // namespace
}  // namespace engine
