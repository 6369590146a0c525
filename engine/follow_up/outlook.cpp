#include "engine/follow_up/outlook.h"

#include "engine/follow_up/constants_follow_up.h"
#include "engine/ramps/log.h"

#include <algorithm>

namespace engine {
namespace {

/// The row of a date, put in beside its nearest row if there is none.
WeatherDay& rowOf(std::vector<WeatherDay>& days, Date date) {
    auto at =
        std::find_if(days.begin(), days.end(), [date](const WeatherDay& day) { return day.date >= date; });
    if (at == days.end() || at->date != date) {
        WeatherDay day = at == days.end() ? days.back() : *at;
        day.date = date;
        at = days.insert(at, day);
    }
    while (at + 1 != days.end() && (at + 1)->date == date) {
        ++at;  // rows of one date: the last is the latest known
    }
    return *at;
}

double cloudPercentOf(Outlook outlook) {
    return outlook == Outlook::Clear        ? kClearOutlook_percent.value
           : outlook == Outlook::HalfCloudy ? kHalfOutlook_percent.value
                                            : kDullOutlook_percent.value;
}

}  // namespace

Pond withOutlook(Pond pond, Outlook outlook, LocalTime at) {
    if (outlook == Outlook::AsTheTable) {
        return pond;
    }
    Weather known = weatherKnownAt(pond, at);  // the rows are copied: none that came later
    if (known.days.empty()) {
        return pond;
    }
    pond.weather = std::move(known);
    const auto today = std::chrono::floor<std::chrono::days>(at);
    for (const auto day : {today, today + std::chrono::days(1)}) {
        WeatherDay& row = rowOf(pond.weather.days, Date(day));
        row.cloud_percent = Quantity(cloudPercentOf(outlook));
        if (outlook == Outlook::DullAndCalm) {
            row.wind = Quantity(kCalmOutlook.value);
        }
        row.forecast = true;
        row.knownAt.reset();
    }
    return pond;
}

}  // namespace engine
