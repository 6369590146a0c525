// An hourly weather file; a text that begins as a typical year does is read as one.
#include "engine/pond/epw.h"
#include "engine/pond/weather_csv.h"
#include "tests/fuzz/law.h"

#include <cmath>
#include <cstddef>
#include <cstdint>

using namespace engine;

namespace {

void readTypicalYear(std::string_view text) {
    Diagnostics said;
    const auto months = readEpw(text, "year.epw", {}, said);
    test::holdSaid(said, text);
    test::hold(hasErrors(said) || months.size() == 12, "a typical year has twelve months");
    for (std::size_t i = 0; i < months.size() && !hasErrors(said); ++i) {
        test::hold(months[i].airMin && months[i].airMax && *months[i].airMin <= *months[i].airMax &&
                       std::isfinite(*months[i].airMin) && std::isfinite(*months[i].airMax),
                   "a month has its air");
        test::hold(*months[i].cloud_percent >= 0.0 && *months[i].cloud_percent <= 100.0,
                   "and a sky that can be");
    }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    if (findTextFault(text)) {
        return 0;
    }
    if (text.starts_with("LOCATION")) {
        readTypicalYear(text);
        return 0;
    }
    Diagnostics said;
    const auto hours =
        readWeatherCsv(text, "hours.csv", size % 2 == 0 ? HourStamp::Start : HourStamp::End, said);
    test::holdSaid(said, text);
    if (hasErrors(said)) {
        return 0;
    }
    test::hold(hours.size() >= 24, "a weather file has a day at least");
    for (std::size_t i = 0; i < hours.size(); ++i) {
        test::hold(std::isfinite(hours[i].air) && hours[i].wind >= 0.0, "an hour has its numbers");
        test::hold(i == 0 || hours[i].start - hours[i - 1].start == std::chrono::hours(1),
                   "hours follow each other");
    }
    return 0;
}
