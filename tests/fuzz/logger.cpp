// A logger's file of readings. The first byte says what the pond file says of it.
#include "engine/pond/readings_csv.h"
#include "tests/fuzz/law.h"

#include <cmath>
#include <cstddef>
#include <cstdint>

using namespace engine;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    if (size == 0) {
        return 0;
    }
    const std::string_view text(reinterpret_cast<const char*>(data) + 1, size - 1);
    if (findTextFault(text)) {
        return 0;
    }
    ReadingsFile shape;
    if ((data[0] & 1U) != 0) {
        shape.depth = Quantity(0.5);
    }
    if ((data[0] & 2U) != 0) {
        shape.dateOrder = (data[0] & 4U) != 0 ? DateOrder::MonthFirst : DateOrder::DayFirst;
    }
    Diagnostics said;
    const auto readings = readReadingsCsv(text, "logger.csv", shape, 5.0, said);
    test::holdSaid(said, text);
    if (hasErrors(said)) {
        return 0;
    }
    for (const Reading& reading : readings) {
        test::hold(reading.at.has_value() && reading.depth.has_value(), "a reading has its time and depth");
        test::hold(reading.depth->value >= 0.0 && reading.depth->value <= 5.0, "it lies in the water");
        test::hold(!reading.oxygen || (reading.oxygen->value >= 0.0 && reading.oxygen->value <= 40.0),
                   "its oxygen is one");
    }
    return 0;
}
