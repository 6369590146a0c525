// The small parsers of text that strangers write, all on the same text.
#include "engine/advice/run_statement.h"
#include "engine/base/csv_table.h"
#include "engine/base/text.h"
#include "engine/follow_up/log_chain.h"
#include "engine/pond/csv.h"
#include "engine/pond/local_time.h"
#include "engine/pond/logger_columns.h"
#include "engine/pond/time_zone.h"
#include "engine/pond/toml_node.h"
#include "tests/fuzz/law.h"

#include <cmath>
#include <cstddef>
#include <cstdint>

using namespace engine;
using engine::test::hold;

namespace {

void readTimes(std::string_view text) {
    if (const auto date = parseDate(text)) {
        hold(parseDate(formatDate(*date)) == date, "a date reads back");
    }
    if (const auto at = parseLocalTime(text)) {
        hold(parseLocalTime(formatIsoTime(*at)).has_value(), "a time reads back");
    }
    if (const auto clock = parseClock(text)) {
        hold(parseClock(formatClock(*clock)) == clock, "a clock reads back");
    }
    static_cast<void>(possibleOrders(text));
    static_cast<void>(loggerTime(text, DateOrder::DayFirst));
    static_cast<void>(loggerTime(text, DateOrder::MonthFirst));
}

void readNumbers(std::string_view text) {
    for (const auto& number : {toNumber(text), loggerNumber(text)}) {
        if (number) {
            hold(std::isfinite(*number) && toNumber(shortest(*number)) == number, "a number reads back");
        }
    }
    static_cast<void>(isBlank(text));
    static_cast<void>(columnMeaning(text));
    static_cast<void>(separatorOf(text));
}

void show(std::string_view text) {
    const std::string line = onOneLine(text);
    hold(!findTextFault(line) && line.find('\n') == std::string::npos, "a line is one plain line");
    hold(onOneLine(line) == line, "and stays so");
    hold(!findTextFault(shownText(text)) && onOneLine(shownText(text)) == shownText(text),
         "a shown text is too");
    hold(forTerminal(forTerminal(text)) == forTerminal(text), "as is what goes to a terminal");
    hold(shownPath(std::string(text)).size() >= 2, "a path is in quotes");
}

void throughTables(std::string_view text) {
    if (text.empty() || text.size() > kLongestCell_bytes || findTextFault(text)) {
        return;
    }
    const std::string table = "x," + csvText(text) + "\r\n";
    CsvRows rows(table);
    hold(rows.next() && rows.cells().size() == 2, "a text is one cell");
    hold(ofCsvText(rows.cells()[1]) == text, "and reads back");
    hold(std::string_view("=+-@").find(rows.cells()[1].front()) == std::string_view::npos,
         "and is no formula");
    const TomlParse parse = parseToml("a = " + tomlText(text));
    hold(parse.root && parse.root->find("a") != nullptr && parse.root->find("a")->text == text,
         "TOML holds any text");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    readTimes(text);
    readNumbers(text);
    show(text);
    throughTables(text);
    static_cast<void>(isTimeZone(std::string(text.substr(0, 100))));
    static_cast<void>(readStatement(text));
    static_cast<void>(readSums(text, "sha256 "));
    if (const auto head = parseLogHead(text)) {
        hold(parseLogHead(shown(*head)) == head, "a head reads back");
    }
    if (size <= 200) {
        hold(editDistance(text, "oxygen_mg_per_l") >= 0, "words have a distance");
    }
    return 0;
}
