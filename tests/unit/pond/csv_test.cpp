// RFC 4180 (Shafranovich 2005), section 2: the rules are numbered as there.
#include "engine/pond/csv.h"

#include <gtest/gtest.h>

namespace engine {
namespace {

using Rows = std::vector<std::vector<std::string>>;

struct Outcome {
    Rows rows;
    std::vector<int> lines;
    std::string fault;
};

Outcome read(std::string_view text) {
    Outcome outcome;
    CsvRows rows(text);
    while (rows.next()) {
        outcome.rows.push_back(rows.cells());
        outcome.lines.push_back(rows.line());
    }
    outcome.fault = rows.fault();
    return outcome;
}

TEST(Csv, Rules1To4LineEndsAndCommas) {
    const Rows wanted{{"a", "b"}, {"c", "d"}};
    for (const auto* text : {"a,b\r\nc,d\r\n", "a,b\r\nc,d", "a,b\nc,d\n", "a,b\nc,d",
                             "\xEF\xBB\xBF"
                             "a,b\nc,d\r\n",
                             "\n\na,b\n\r\nc,d\n\n"}) {
        const Outcome outcome = read(text);
        EXPECT_EQ(outcome.rows, wanted) << text;
        EXPECT_EQ(outcome.fault, "");
    }
    EXPECT_EQ(read("a,,\n,b,\n").rows, (Rows{{"a", "", ""}, {"", "b", ""}}));
    EXPECT_EQ(read(" a , b\n").rows, (Rows{{" a ", " b"}}));  // spaces are part of a cell
    EXPECT_EQ(read("a\rb,c\n").rows, (Rows{{"a\rb", "c"}}));
    EXPECT_TRUE(read("").rows.empty());
    EXPECT_TRUE(read("\r\n\n").rows.empty());
}

TEST(Csv, Rules5To7Quotes) {
    EXPECT_EQ(read("\"a\",\"b\"\r\n").rows, (Rows{{"a", "b"}}));
    EXPECT_EQ(read("\"a,b\",\"\"\n").rows, (Rows{{"a,b", ""}}));
    EXPECT_EQ(read("\"a\r\nb\",c\nd,e").rows, (Rows{{"a\r\nb", "c"}, {"d", "e"}}));
    EXPECT_EQ(read("\"a\"\"b\"\"\",c").rows, (Rows{{"a\"b\"", "c"}}));
}

TEST(Csv, LinesAreCountedThroughQuotesAndEmptyLines) {
    EXPECT_EQ(read("a\n\"b\n\nc\"\n\n\nd\n").lines, (std::vector<int>{1, 2, 7}));
}

TEST(Csv, BrokenQuotesAreSaid) {
    EXPECT_EQ(read("a,\"b\nc,d\n").fault, "The quote that is opened in this row is never closed.");
    EXPECT_EQ(read("a,b\"c\"\n").fault, "A quote stands inside a cell that does not begin with one.");
    EXPECT_EQ(read("\"a\"b,c\n").fault, "Text follows the closing quote of a cell.");
    EXPECT_EQ(read("x,y\n\"a\"b,c\n").rows.size(), 1U);
}

TEST(Csv, TooManyColumnsAreSaid) {
    EXPECT_EQ(read(std::string(2000, ',')).fault, "The row has more than 1000 cells.");
    EXPECT_EQ(read(std::string(999, ',')).fault, "") << "a thousand";
}

TEST(Csv, ShowsTwentyFaultsAndCountsTheOthers) {
    CsvFaults faults("f.csv");
    for (int i = 0; i < 23; ++i) {
        faults.add(i + 1, "k", "S.");
    }
    const Diagnostics said = faults.take();
    ASSERT_EQ(said.size(), 21U);
    EXPECT_EQ(format(said[19]), "f.csv:20: k: S.");
    EXPECT_EQ(format(said[20]), "f.csv: There are 3 more faults.");

    CsvFaults few("f.csv");
    for (int i = 0; i < 21; ++i) {
        few.add(i + 1, "k", "S.");
    }
    EXPECT_EQ(format(few.take().back()), "f.csv: There is 1 more fault.");
}

}  // namespace
}  // namespace engine
