#include "engine/base/text_file.h"

#include "engine/base/error.h"
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

TEST(TextFile, NothingThatMovesACursorOrTurnsTheWritingGetsToATerminal) {
    EXPECT_EQ(forTerminal("läufe 池 100 %\nnext"), "läufe 池 100 %\nnext");
    EXPECT_EQ(forTerminal("\x1B[2K\a\r\x7F"), "\\x1B[2K\\x07\\x0D\\x7F");
    EXPECT_EQ(forTerminal("a\xC2\x9B"
                          "1Ab"),
              "a\\u009B1Ab")
        << "a control of Latin-1";
    EXPECT_EQ(forTerminal("\xE2\x80\xAEgnp\xE2\x80\xAC"), "\\u202Egnp\\u202C") << "turned writing";
    EXPECT_EQ(forTerminal("\xE2\x81\xA6|\xE2\x80\x8F|\xD8\x9C|\xE2\x80\xA8"),
              "\\u2066|\\u200F|\\u061C|\\u2028");
    EXPECT_EQ(forTerminal("\xFF\xC2"), "\\xFF\\xC2");
    EXPECT_EQ(onOneLine("fine\n  Head of the log: 2"), "fine\\n  Head of the log: 2");
    // Every code point below U+10000 but the line break, whole.
    for (unsigned code = 0; code < 0x10000; ++code) {
        const bool isSurrogate = code >= 0xD800 && code <= 0xDFFF;
        std::string text;
        if (code < 0x80) {
            text = static_cast<char>(code);
        } else if (code < 0x800) {
            text = {static_cast<char>(0xC0U | code >> 6U), static_cast<char>(0x80U | (code & 0x3FU))};
        } else {
            text = {static_cast<char>(0xE0U | code >> 12U), static_cast<char>(0x80U | (code >> 6U & 0x3FU)),
                    static_cast<char>(0x80U | (code & 0x3FU))};
        }
        const bool isOurs = isSurrogate || code < 0x20 || (code >= 0x7F && code < 0xA0) || code == 0x61C ||
                            code == 0x200E || code == 0x200F || (code >= 0x2028 && code <= 0x202E) ||
                            (code >= 0x2066 && code <= 0x206F);
        EXPECT_EQ(onOneLine(text) == text, !isOurs) << std::hex << code;
    }
}

TEST(TextFile, ADiagnosticIsOneLineWhateverTheFileIsCalled) {
    const std::string said = format({Severity::Error, "a\nb\x1B[2J.toml", 3, "title", "Wrong."});
    EXPECT_EQ(said, "a\\nb\\x1B[2J.toml:3: title: Wrong.");
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
