#include "engine/intake/joined_weather.h"

#include "engine/base/error.h"
#include "engine/base/text_file.h"
#include "engine/pond/local_time.h"

namespace engine {
namespace {

std::string spanOf(const std::vector<WeatherDay>& days) {
    return days.front().date == days.back().date
               ? formatDate(days.front().date)
               : formatDate(days.front().date) + " to " + formatDate(days.back().date);
}

void say(std::string& said, const std::string& sentence) {
    said += (said.empty() ? "" : " ") + sentence;
}

}  // namespace

JoinedWeather joinWeather(const Weather& there, const std::vector<WeatherDay>& pasted) {
    ensure(!pasted.empty(), "a forecast without a day");
    using std::chrono::days, std::chrono::sys_days;
    const sys_days first(pasted.front().date), last(pasted.back().date);
    std::vector<WeatherDay> before, after;
    for (const WeatherDay& day : there.days) {
        if (sys_days(day.date) < first) {
            before.push_back(day);
        } else if (sys_days(day.date) > last) {
            after.push_back(day);
        }
    }
    JoinedWeather out;
    if (!there.file.empty()) {
        say(out.said, "The hourly file " + shownText(there.file) + " is put away.");
    }
    if (before.size() + after.size() < there.days.size()) {
        say(out.said, "Days of the table with the same dates are replaced.");
    }
    const auto settle = [&out](std::vector<WeatherDay>& rest, bool joins, const char* where) {
        if (!rest.empty()) {
            say(out.said, "The weather " + std::string(where) + ", " + spanOf(rest) +
                              (joins ? ", stays." : ", goes out, since days in between are missing."));
        }
        if (!joins) {
            rest.clear();
        }
    };
    settle(before, !before.empty() && sys_days(before.back().date) + days(1) == first, "before it");
    settle(after, !after.empty() && sys_days(after.front().date) - days(1) == last, "after it");
    if (there.windHeight) {
        say(out.said,
            "The height of the wind meter stays as it is given; forecasts are of the wind at 10 m (33 ft).");
    }
    out.days = std::move(before);
    for (WeatherDay day : pasted) {
        day.forecast = there.observed;
        out.days.push_back(std::move(day));
    }
    out.days.insert(out.days.end(), after.begin(), after.end());
    return out;
}

}  // namespace engine
