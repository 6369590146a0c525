#include "engine/base/text_file.h"

#include "tests/temporary_folder.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace engine {
namespace {

TEST(TextFile, KnowsUtf8) {
    // The table of well-formed sequences of The Unicode Standard, 3.9 (table 3-7): its corners.
    for (const auto* good : {"", "plain", "\x7F", "\xC2\x80", "\xDF\xBF", "\xE0\xA0\x80", "\xED\x9F\xBF",
                             "\xEE\x80\x80", "\xEF\xBF\xBF", "\xF0\x90\x80\x80", "\xF4\x8F\xBF\xBF"}) {
        EXPECT_FALSE(findTextFault(good)) << good;
    }
    for (const auto* bad :
         {"\x80", "\xBF", "\xC0\x80", "\xC1\xBF", "\xC2", "\xC2\x41", "\xE0\x9F\xBF", "\xE1\x80",
          "\xED\xA0\x80", "\xF0\x8F\xBF\xBF", "\xF4\x90\x80\x80", "\xF5\x80\x80\x80", "\xFF"}) {
        EXPECT_TRUE(findTextFault(bad)) << bad;
    }
    EXPECT_EQ(findTextFault(std::string_view("a\nb\n\0c", 6))->line, 3);
    EXPECT_EQ(countCharacters("a\xC3\xA4\xE6\xB1\xA0"), 3U);
}

TEST(TextFile, ShowsTextOfTheUserSafely) {
    EXPECT_EQ(shownText("plain"), "\"plain\"");
    EXPECT_EQ(shownText("a\nb\x1B[2J"), "\"a\\nb\\x1B[2J\"");
    EXPECT_EQ(shownText(std::string(41, 'x')), "\"" + std::string(40, 'x') + "...\"");
    EXPECT_EQ(shownText("\xFF"), "\"\\xFF\"");
    EXPECT_EQ(shownNumber(std::nan("")), "not a number (nan)");
    EXPECT_EQ(shownNumber(-std::numeric_limits<double>::infinity()), "minus infinite");
}

TEST(TextFile, HoldsTheLimitToTheByte) {
    const test::TemporaryFolder folder;
    const auto path = folder.write("limit", std::string(100, 'x'));
    EXPECT_EQ(readWholeFile(path, 100).text, std::string(100, 'x'));
    EXPECT_FALSE(readWholeFile(path, 99).text);
    folder.write("limit", "");
    EXPECT_EQ(readWholeFile(path, 99).text, "");
}

TEST(ShownPath, LeavesATerminalAsItIs) {
    EXPECT_EQ(shownPath("out/läufe"), "\"out/läufe\"");
    EXPECT_EQ(shownPath("a\x1b[2J"), "\"a\\x1B[2J\"");
}

}  // namespace
}  // namespace engine
