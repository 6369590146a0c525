#include "engine/pond/readings_remarks.h"

#include "engine/base/text.h"
#include "engine/pond/local_time.h"
#include "engine/pond/pond_units.h"

#include <algorithm>
#include <chrono>
#include <map>
#include <tuple>
#include <utility>

namespace engine {

std::vector<Reading> withoutRepeats(std::vector<Reading> readings, CsvFaults& faults) {
    std::map<std::tuple<LocalTime, double, std::string>, std::size_t> places;
    std::vector<Reading> kept;
    int twice = 0, firstTwice = 0, apart = 0, firstApart = 0;
    for (Reading& reading : readings) {
        if (reading.at && reading.depth) {
            const auto [place, isNew] =
                places.try_emplace(std::tuple(*reading.at, reading.depth->value, reading.meter), kept.size());
            if (!isNew) {
                Reading before = kept[place->second];
                before.line = reading.line;
                if (before == reading) {
                    firstTwice = twice++ == 0 ? reading.line : firstTwice;
                    continue;
                }
                firstApart = apart++ == 0 ? reading.line : firstApart;
            }
        }
        kept.push_back(std::move(reading));
    }
    if (twice > 0) {
        faults.warn(firstTwice, "",
                    countOf(twice, "row says", "rows say") +
                        " what a row before said already and counts once; the first is this one.");
    }
    if (apart > 0) {
        faults.warn(
            firstApart, "",
            countOf(apart, "row gives", "rows give") +
                " another value for a time and depth that a row before has; both are kept. The first is "
                "this one.");
    }
    return kept;
}

void warnOfClock(const std::vector<Reading>& readings, CsvFaults& faults) {
    std::map<std::pair<std::string, double>, const Reading*> last;
    int back = 0, firstBack = 0;
    long minutes = 0;
    for (const Reading& reading : readings) {
        if (!reading.at) {
            continue;
        }
        const Reading*& before = last[{reading.meter, reading.depth ? reading.depth->value : 0.0}];
        if (before != nullptr && *reading.at < *before->at && back++ == 0) {
            firstBack = reading.line;
            minutes = std::chrono::duration_cast<std::chrono::minutes>(*before->at - *reading.at).count();
        }
        before = &reading;
    }
    if (back > 0) {
        faults.warn(
            firstBack, "",
            "The clock goes back " + countOf(back, "time", "times") + ", here by " + std::to_string(minutes) +
                " min" +
                (minutes <= 60 ? ", as at the end of daylight-saving time, which the pond's clock does "
                                 "not have"
                               : "") +
                ". The rows are sorted by their times.");
    }
}

std::string countOf(int count, const char* one, const char* many) {
    return std::to_string(count) + " " + (count == 1 ? one : many);
}

namespace {

/// "0.5 to 3 m" of what a member holds; empty if nothing does.
std::string spanOf(const std::vector<Reading>& readings, MaybeQuantity Reading::*member,
                   const KeyUnit& unit) {
    std::optional<double> least, most;
    for (const Reading& reading : readings) {
        if (const MaybeQuantity& value = reading.*member) {
            const double shown = unit.toShown(value->value);
            least = std::min(least.value_or(shown), shown);
            most = std::max(most.value_or(shown), shown);
        }
    }
    if (!least) {
        return "";
    }
    return (*least == *most ? figures(*least) : figures(*least) + " to " + figures(*most)) + " " + unit.text;
}

}  // namespace

std::string readingsTaken(const std::vector<Reading>& readings, UnitSystem units) {
    if (readings.empty()) {
        return "No reading is taken.";
    }
    const auto [first, last] = std::minmax_element(
        readings.begin(), readings.end(), [](const Reading& a, const Reading& b) { return a.at < b.at; });
    std::string sentence = countOf(static_cast<int>(readings.size()), "reading is", "readings are") +
                           " taken, from " + formatLocalTime(*first->at) + " to " +
                           formatLocalTime(*last->at);
    const auto add = [&](const char* what, const std::string& span) {
        sentence += span.empty() ? "" : std::string(", ") + what + " " + span;
    };
    add("at", spanOf(readings, &Reading::depth, unitIn("m", units)));
    add("temperature", spanOf(readings, &Reading::temperature, unitIn("degC", units)));
    add("oxygen", spanOf(readings, &Reading::oxygen, unitIn("mg/L", units)));
    add("Secchi depth", spanOf(readings, &Reading::secchi, unitIn("m", units)));
    return sentence + ".";
}

}  // namespace engine
