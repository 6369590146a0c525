// What is said of pond files that are not well written: the place, and what would be right.
#include "engine/pond/pond_io.h"
#include "tests/pond_texts.h"

#include <gtest/gtest.h>

namespace engine::test {
namespace {

struct Slip {
    const char* name;
    const char* from;
    const char* to;
    int line;
    const char* fragment;
};

// clang-format off
constexpr Slip kSlips[] = {
    {"DecimalComma", "max_depth_m = 3.4", "max_depth_m = 3,4", 14, "write a decimal point: 3.4"},
    {"Thousands", "area_m2 = 8000", "area_m2 = 8,000", 13, "8000 if it parts thousands"},
    {"UnitBare", "area_m2 = 8000", "area_m2 = 2 acres", 13, "area_m2 = \"2 acres\""},
    {"UnitTight", "max_depth_m = 3.4", "max_depth_m = 11ft", 14, "stands in quotes"},
    {"NoQuotes", "title = \"Test pond\"", "title = Test pond", 2, "title = \"Test pond\""},
    {"OneQuote", "title = \"Test pond\"", "title = \"Test pond", 2, "closing quotation mark"},
    {"Curly", "title = \"Test pond\"", "title = \u201CTest pond\u201D", 2, "curly"},
    {"Colon", "elevation_m = 120", "elevation_m: 120", 8, "elevation_m = 120"},
    {"NoSign", "elevation_m = 120", "elevation_m 120", 8, "a key, an equals sign and a value"},
    {"NoValue", "elevation_m = 120", "elevation_m =", 8, "No value follows"},
    {"Space", "elevation_m = 120", "elevation m = 120", 8, "did you mean \"elevation_m\""},
    {"UsDate", "first_day = 2026-06-14", "first_day = 06/14/2026", 9, "year first"},
    {"PointDate", "first_day = 2026-06-14", "first_day = 14.6.2026", 9, "year first"},
    {"ShortDate", "first_day = 2026-06-14", "first_day = 2026-6-14", 9, "two digits"},
    {"NoSuchDay", "first_day = 2026-06-14", "first_day = 2026-06-31", 9, "no such day"},
    {"NoSeconds", "at = 2026-06-13T17:30:00", "at = 2026-06-13T17:30", 31, "2026-06-13T17:30:00"},
    {"NoBracket", "[place]", "[place", 5, "[place]"},
    {"OneBracket", "[[fish]]", "[[fish]", 26, "[[fish]]"},
    {"ListOpen", "depth_m = [0, 1, 2, 3]", "depth_m = [0, 1, 2, 3", 32, "closing ]"},
    {"ListBlanks", "depth_m = [0, 1, 2, 3]", "depth_m = [0 1 2 3]", 32, "commas"},
    {"Twice", "elevation_m = 120", "elevation_m = 120\nelevation_m = 130", 9, "stands twice"},
    {"TableTwice", "[limits]", "[place]", 57, "stands twice"},
    {"BareDot", "secchi_m = 0.45", "secchi_m = .45", 23, "a digit before"},
    {"Zero", "age_years = 48", "age_years = 048", 18, "zero in front"},
    {"Words", "smell = \"strong\"", "smell = strong", 20, "smell = \"strong\""},
};
// clang-format on

class NotWellWritten : public testing::TestWithParam<Slip> {};

TEST_P(NotWellWritten, IsSaidWithPlaceAndWhatWouldBeRight) {
    const Slip& slip = GetParam();
    const std::string text = with(kPlainPond, slip.from, slip.to);
    ASSERT_FALSE(text.empty());
    const PondReading reading = readPondText(text, "slip.toml");
    ASSERT_FALSE(reading.pond);
    const Diagnostic& said = reading.diagnostics.front();
    EXPECT_EQ(said.line, slip.line) << said.sentence;
    EXPECT_NE(said.sentence.find(slip.fragment), std::string::npos) << said.sentence;
    for (const char* jargon : {"TOML", "pars", "token", "encounter", "expect", "EOF", "saw"}) {
        EXPECT_EQ(said.sentence.find(jargon), std::string::npos) << said.sentence;
    }
}

INSTANTIATE_TEST_SUITE_P(Slips, NotWellWritten, testing::ValuesIn(kSlips),
                         [](const auto& slip) { return std::string(slip.param.name); });

std::string firstSaid(const std::string& text, const char* key) {
    for (const Diagnostic& said : readPondText(text, "slip.toml").diagnostics) {
        if (said.key == key) {
            return said.sentence;
        }
    }
    return "";
}

TEST(MisplacedKeys, AreSentWhereTheyBelong) {
    EXPECT_NE(firstSaid(with(kPlainPond, "[basin]", "[pond]"), "pond").find("did you mean \"basin\""),
              std::string::npos);
    EXPECT_NE(firstSaid(with(kPlainPond, "[place]", "[location]"), "location").find("\"place\""),
              std::string::npos);
    EXPECT_NE(firstSaid(with(kPlainPond, "[water]", "[watr]"), "watr").find("\"water\""), std::string::npos);
    EXPECT_NE(firstSaid(with(kPlainPond, "max_depth_m = 3.4", "max_depth_m = 3.4\nsecchi_m = 0.4"),
                        "basin.secchi_m")
                  .find("secchi_m belongs under [water] or [[reading]]"),
              std::string::npos);
    EXPECT_NE(
        firstSaid(with(kPlainPond, "chosen_ramp", "area_m2 = 3\nchosen_ramp"), "area_m2").find("[basin]"),
        std::string::npos);
    EXPECT_NE(firstSaid(with(kPlainPond, "secchi_m", "secci_m"), "water.secci_m").find("\"secchi_m\""),
              std::string::npos);
}

TEST(MisplacedKeys, CommasInListsAreSaid) {
    EXPECT_NE(
        firstSaid(with(kPlainPond, "[8.5, 6.8, 0.3, 0]", "[8,5, 6,8, 0,3, 0]"), "profile.oxygen_mg_per_l")
            .find("A decimal comma counts as two numbers"),
        std::string::npos);
}

}  // namespace
}  // namespace engine::test
