// The tutorial, run as it stands: each block of the shell must end well, what it quotes must be said, and its
// pictures must be those that its own command draws. With DAWNLINE_REMAKE_GOLDEN they are drawn anew.
#include "tests/cli/run_cli.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>
#include <regex>
#include <sstream>

namespace engine {
namespace {

using test::Cli;

// The window's program draws the pictures; a build without it has none to compare.
#ifdef DAWNLINE_WINDOW
constexpr const char* kWindow = "dawnline() { '" DAWNLINE_WINDOW "' \"$@\" < /dev/null; }\n";
#else
constexpr const char* kWindow = "";
#endif

/// Text with each run of white space as one blank, since a terminal's line ends are no part of a sentence.
std::string flowing(const std::string& text) {
    std::istringstream words(text);
    std::string all;
    for (std::string word; words >> word;) {
        all += (all.empty() ? "" : " ") + word;
    }
    return all;
}

/// What a drawing says: its title and its description, which has the lows of all lines. What it shows is
/// drawn as outlines.
std::string wordsOf(const std::string& svg) {
    static const std::regex kWords("<(title|desc)[^>]*>([^<]*)<");
    std::string all;
    for (std::sregex_iterator one(svg.begin(), svg.end(), kWords), end; one != end; ++one) {
        all += flowing((*one)[2]) + '\n';
    }
    return all;
}

/// The same words, with numbers that may differ by one in their last digit: processors round differently.
void expectSameWords(const std::string& shown, const std::string& drawn) {
    static const std::regex kNumber("\\d+(\\.\\d+)?");
    EXPECT_EQ(std::regex_replace(shown, kNumber, "#"), std::regex_replace(drawn, kNumber, "#"));
    const std::sregex_iterator end;
    std::sregex_iterator a(shown.begin(), shown.end(), kNumber), b(drawn.begin(), drawn.end(), kNumber);
    for (; a != end && b != end; ++a, ++b) {
        const double lastDigit = (*a)[1].matched ? std::pow(10.0, 1 - (*a)[1].length()) : 1.0;
        EXPECT_NEAR(std::stod(a->str()), std::stod(b->str()), 1.01 * lastDigit) << drawn;
    }
}

class Tutorial : public Cli {
protected:
    static std::filesystem::path beside(const std::string& name) {
        return std::filesystem::path(DAWNLINE_SCENARIOS) / ".." / "resources" / name;
    }

    /// @param name  As the tutorial shows it: "tutorial_night.svg" is the program's "night.svg".
    void expectDrawn(const std::string& name) const {
        constexpr std::uintmax_t kLargest_bytes = 150000;
        const std::filesystem::path drawn =
            m_folder / "pictures" / name.substr(std::string_view("tutorial_").size());
        if (std::getenv("DAWNLINE_REMAKE_GOLDEN") != nullptr) {
            std::filesystem::copy_file(drawn, beside(name),
                                       std::filesystem::copy_options::overwrite_existing);
        }
        const std::string shown = wordsOf(test::fileText(beside(name)));
        EXPECT_GT(shown.size(), 200U) << name;
        expectSameWords(shown, wordsOf(test::fileText(drawn)));
        EXPECT_LT(std::filesystem::file_size(beside(name)), kLargest_bytes) << name;
    }
};

TEST_F(Tutorial, RunsAsItStands) {
    std::istringstream page(test::fileText(beside("tutorial.md")));
    std::string said, block;
    bool isBlock = false;
    int blocks = 0, quotes = 0, pictures = 0;
    for (std::string line; std::getline(page, line);) {
        if (line == "```sh") {
            isBlock = true;
            block =
                "set -e\ndawnline-cli() { '" DAWNLINE_CLI "' \"$@\" < /dev/null; }\n" + std::string(kWindow);
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
        } else if (line.starts_with("![")) {
            ++pictures;
            const std::size_t at = line.find("](") + 2;
            if (!std::string_view(kWindow).empty()) {
                expectDrawn(line.substr(at, line.rfind(')') - at));
            }
        }
    }
    EXPECT_GE(blocks, 6);
    EXPECT_GE(quotes, 4);
    EXPECT_GE(pictures, 2);
    EXPECT_TRUE(std::filesystem::exists(m_folder / "plan" / "pond.toml"));
}

}  // namespace
}  // namespace engine
