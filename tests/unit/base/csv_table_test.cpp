#include "engine/base/csv_table.h"

#include <gtest/gtest.h>

namespace engine {
namespace {

TEST(CsvTable, NoTextOfTheUserIsAFormula) {
    CsvWriter table("name,number");
    for (const char* text : {"=1+1", "+1", "-1", "@sum", "\t=1", "'=1", "it's", "a=b", "'tis", "", "'"}) {
        table.text(text).number(-1.5).end();
    }
    EXPECT_EQ(table.take(),
              "name,number\r\n'=1+1,-1.5\r\n'+1,-1.5\r\n'-1,-1.5\r\n'@sum,-1.5\r\n'\t=1,-1.5\r\n''=1,-1.5\r\n"
              "it's,-1.5\r\na=b,-1.5\r\n'tis,-1.5\r\n,-1.5\r\n',-1.5\r\n")
        << "numbers are never marked";
    EXPECT_EQ(csvText("=a,\"b\""), "\"'=a,\"\"b\"\"\"");
}

TEST(CsvTable, AMarkedTextIsReadBackAsItWas) {
    for (const char* text : {"=1+1", "+1", "-1", "@sum", "'=1", "''-", "it's", "a=b", "'tis", "", "'"}) {
        EXPECT_EQ(ofCsvText(csvText(text)), text);
    }
}

}  // namespace
}  // namespace engine
