// Whether a golden file that says something else is noticed.

#include "tests/golden/golden_line.h"

#include "engine/wording/sentence.h"
#include "tests/golden/name_of.h"

#include <gtest/gtest.h>

namespace engine::test {
namespace {

GoldenLine aNight() {
    GoldenLine line;
    line.text("\"at once\" night").number("", 3.0, 0, 0.0).number("low", 5.2504, 3, 0.005);
    return line;
}

TEST(GoldenLine, IsWordsAndNumbersWithOneSpaceBetweenThem) {
    EXPECT_EQ(aNight().asText(), "\"at once\" night 3 low=5.250");
}

TEST(GoldenLine, ANumberMayBeOffByItsToleranceAndNoMore) {
    EXPECT_TRUE(aNight().agreesWith("\"at once\" night 3 low=5.250"));
    EXPECT_TRUE(aNight().agreesWith("\"at once\" night 3 low=5.255"));
    EXPECT_TRUE(aNight().agreesWith("\"at once\" night 3 low=5.245"));
    EXPECT_FALSE(aNight().agreesWith("\"at once\" night 3 low=5.256"));
    EXPECT_FALSE(aNight().agreesWith("\"at once\" night 3 low=5.244"));
    EXPECT_FALSE(aNight().agreesWith("\"at once\" night 3 low=none"));
    EXPECT_FALSE(aNight().agreesWith("\"at once\" night 3 low=nan"));
}

TEST(GoldenLine, NothingElseMayBeOff) {
    EXPECT_FALSE(aNight().agreesWith("\"at once\" night 4 low=5.250"));
    EXPECT_FALSE(aNight().agreesWith("\"at once\" night 3.001 low=5.250"));
    EXPECT_FALSE(aNight().agreesWith("\"at once\" night 3 high=5.250"));
    EXPECT_FALSE(aNight().agreesWith("\"at once\" night 3 5.250"));
    EXPECT_FALSE(aNight().agreesWith("\"at  once\" night 3 low=5.250"));
    EXPECT_FALSE(aNight().agreesWith("\"at once\" night 3 low=5.250 "));
    EXPECT_FALSE(aNight().agreesWith("\"at once\" night 3"));
    EXPECT_FALSE(aNight().agreesWith(""));
}

TEST(GoldenLine, EveryLineThatDiffersIsTold) {
    const std::vector<GoldenLine> lines{aNight(), aNight(), aNight()};
    const std::string right = aNight().asText() + "\n", wrong = "\"at once\" night 3 low=5.300\n";
    EXPECT_EQ(asText(lines), right + right + right);
    EXPECT_EQ(differences(lines, asText(lines)), std::vector<std::string>{});
    const auto two = differences(lines, wrong + right + wrong);
    ASSERT_EQ(two.size(), 2U);
    EXPECT_EQ(
        two[1],
        "Line 3 is held to be\n  \"at once\" night 3 low=5.300\nand is now\n  \"at once\" night 3 low=5.250");
    EXPECT_EQ(differences(lines, right + right),
              std::vector<std::string>{"The file has 2 lines, and there are now 3."});
    EXPECT_EQ(differences(lines, "").size(), 1U);
    EXPECT_EQ(differences(lines, right + wrong + right + wrong).size(), 2U)
        << "the first and that one is too many";
    EXPECT_EQ(differences(lines, right + right + aNight().asText()).size(), 1U) << "the last line has no end";
}

TEST(NameOf, AnEnumeratorIsAsItIsWritten) {
    EXPECT_EQ(nameOf<SentenceKey::Count>(SentenceKey::FileTitle), "FileTitle");
    EXPECT_EQ(nameOf<SentenceKey::Count>(SentenceKey::CautionIce), "CautionIce");
    EXPECT_EQ(nameOf<SentencePart::Sensitivity>(SentencePart::DoNothing), "DoNothing");
    EXPECT_THROW(static_cast<void>(nameOf<SentenceKey::FileTitle>(SentenceKey::CautionIce)),
                 std::out_of_range);
}

}  // namespace
}  // namespace engine::test
