#pragma once

#include "engine/follow_up/today.h"
#include "engine/pond/local_time.h"
#include "tests/scenario.h"

/// The headline pond with a log.
namespace engine::test {

inline Reading readingOf(const char* at, double depth, double oxygen, double temperature) {
    Reading out;
    out.at = parseLocalTime(at);
    out.depth = Quantity(depth);
    out.oxygen = Quantity(oxygen);
    out.temperature = Quantity(temperature);
    return out;
}

/// Readings of three depths at one time.
inline void readAt(Pond& pond, const char* at, double top, double middle, double bottom,
                   double bottomTemperature = 21.0) {
    pond.readings.push_back(readingOf(at, 0.5, top, 27.0));
    pond.readings.push_back(readingOf(at, 1.5, middle, 25.0));
    pond.readings.push_back(readingOf(at, 2.9, bottom, bottomTemperature));
}

inline void happened(Pond& pond, const char* at, const char* kind) {
    Event event;
    event.at = parseLocalTime(at);
    event.kind = kind;
    pond.events.push_back(event);
}

/// The headline pond with its doubling ramp under way since the first day.
inline Pond startedPond() {
    Pond pond = scenario("grandfathers-pond");
    happened(pond, "2026-06-14 09:00", "started");
    pond.events.back().ramp = "doubling from 30 min";
    return pond;
}

/// Few members and layers, so that a test is quick.
inline TodayOptions quickOptions() {
    TodayOptions options;
    options.members = 8;
    options.resolution = {14, 1800.0};
    options.threads = 1;
    return options;
}

}  // namespace engine::test
