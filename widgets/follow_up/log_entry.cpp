#include "widgets/follow_up/log_entry.h"

#include "engine/pond/pond_io.h"
#include "engine/ramps/log.h"
#include "widgets/document/document.h"
#include "widgets/document/to_qstring.h"

#include <QStringList>

#include <algorithm>
#include <cmath>

namespace widgets {
namespace {

/// Entries as the end of a pond file.
std::string entriesText(const std::vector<engine::Reading>& readings,
                        const std::vector<engine::Event>& events) {
    engine::Pond pond;
    pond.readings = readings;
    pond.events = events;
    const std::string text = engine::writePond(pond);
    return text.substr(std::min(text.find("\n[[reading]]"), text.find("\n[[event]]")));
}

std::optional<engine::LocalTime> lastReading(const engine::Pond& pond) {
    std::optional<engine::LocalTime> last;
    for (const auto* readings : {&pond.readings, &pond.fileReadings}) {
        for (const engine::Reading& reading : *readings) {
            last = reading.at && (!last || *reading.at > *last) ? reading.at : last;
        }
    }
    return last;
}

/// Whether the pond's file is about these days: from its first day to a week behind what is known of it.
bool isDayOf(const engine::Pond& pond, engine::LocalTime now) {
    constexpr std::chrono::days kAfter{7};
    if (!pond.place.firstDay) {
        return false;
    }
    const engine::LocalTime first = std::chrono::local_days(*pond.place.firstDay);
    engine::LocalTime known = first;
    if (!pond.weather.days.empty()) {
        known = std::max<engine::LocalTime>(known, std::chrono::local_days(pond.weather.days.back().date));
    }
    if (!pond.weather.hours.empty()) {
        known = std::max<engine::LocalTime>(known, pond.weather.hours.back().start);
    }
    if (const auto last = engine::lastEntry(pond)) {
        known = std::max(known, *last);
    }
    return now >= first && now < known + kAfter;
}

}  // namespace

Entered enter(Document& document, const std::vector<engine::Reading>& readings,
              const std::vector<engine::Event>& events) {
    Entered out;
    const Document::Appended appended = document.append(
        [&](engine::Pond& pond) {
            pond.readings.insert(pond.readings.end(), readings.begin(), readings.end());
            pond.events.insert(pond.events.end(), events.begin(), events.end());
        },
        entriesText(readings, events));
    out.isInLog = appended.faults.empty();
    QStringList said;
    for (const engine::Diagnostic& fault : appended.faults) {
        said << toQString(fault.sentence);
    }
    if (appended.notWritten) {
        said << *appended.notWritten;
    }
    out.said = said.join(QLatin1Char(' '));
    return out;
}

std::optional<engine::LocalTime> nextDawn(const engine::Pond& pond, engine::LocalTime now) {
    const auto dawnOf = [](std::chrono::local_days day) { return day + std::chrono::minutes(330); };
    std::optional<engine::LocalTime> dawn;
    if (const auto last = lastReading(pond)) {
        dawn = dawnOf(std::chrono::floor<std::chrono::days>(*last) + std::chrono::days(1));
    } else if (pond.place.firstDay) {
        dawn = dawnOf(std::chrono::local_days(*pond.place.firstDay));
    }
    if (isDayOf(pond, now)) {
        const engine::LocalTime today = dawnOf(std::chrono::floor<std::chrono::days>(now));
        dawn = std::max(dawn.value_or(today), today);
    }
    return dawn;
}

std::optional<engine::LocalTime> nextVisit(const engine::Pond& pond, engine::LocalTime now) {
    return isDayOf(pond, now) ? std::chrono::floor<std::chrono::minutes>(now) : nextDawn(pond, now);
}

engine::LocalTime clockOf(const engine::Pond& pond) {
    const auto utc = std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
    const double offset_h = pond.place.utcOffset_h ? pond.place.utcOffset_h->value : 0.0;
    return engine::LocalTime(utc.time_since_epoch() + std::chrono::seconds(std::lround(3600.0 * offset_h)));
}

}  // namespace widgets
