// An hourly weather file.
#include "engine/pond/weather_csv.h"
#include "tests/fuzz/law.h"

#include <cmath>
#include <cstddef>
#include <cstdint>

using namespace engine;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    if (findTextFault(text)) {
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
