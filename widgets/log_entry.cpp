#include "widgets/log_entry.h"

#include "engine/log.h"
#include "engine/pond_io.h"
#include "widgets/document.h"
#include "widgets/shown.h"

#include <QStringList>

#include <algorithm>

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
        said << shown(fault.sentence);
    }
    if (appended.notWritten) {
        said << *appended.notWritten;
    }
    out.said = said.join(QLatin1Char(' '));
    return out;
}

std::optional<engine::LocalTime> nextDawn(const engine::Pond& pond) {
    constexpr std::chrono::minutes kDawn{330};
    std::optional<engine::LocalTime> last;
    for (const auto* readings : {&pond.readings, &pond.fileReadings}) {
        for (const engine::Reading& reading : *readings) {
            last = reading.at && (!last || *reading.at > *last) ? reading.at : last;
        }
    }
    if (last) {
        return std::chrono::floor<std::chrono::days>(*last) + std::chrono::days(1) + kDawn;
    }
    return pond.place.firstDay
               ? std::optional<engine::LocalTime>(std::chrono::local_days(*pond.place.firstDay) + kDawn)
               : std::nullopt;
}

}  // namespace widgets
