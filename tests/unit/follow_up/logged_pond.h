#pragma once

#include "engine/follow_up/today.h"
#include "engine/pond/local_time.h"
#include "engine/wording/sentence.h"
#include "tests/scenario.h"

#include <algorithm>
#include <initializer_list>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

/// The headline pond with a log, and what is said of it.
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

/// Sentences with a key.
inline std::vector<Sentence> sentencesWith(const std::vector<Sentence>& sentences, SentenceKey key) {
    std::vector<Sentence> out;
    std::copy_if(sentences.begin(), sentences.end(), std::back_inserter(out),
                 [key](const Sentence& one) { return one.key == key; });
    return out;
}

inline const SentenceValue& valueNamed(const Sentence& sentence, std::string_view name) {
    const auto found = std::find_if(sentence.values.begin(), sentence.values.end(),
                                    [name](const SentenceValue& one) { return one.name == name; });
    if (found == sentence.values.end()) {
        throw std::runtime_error("a sentence has no value " + std::string(name));
    }
    return *found;
}

/// The words or terms at one place of all sentences with a key, in their order.
inline std::vector<std::string> textsOf(const std::vector<Sentence>& sentences, SentenceKey key,
                                        std::string_view name) {
    std::vector<std::string> out;
    for (const Sentence& one : sentencesWith(sentences, key)) {
        out.push_back(valueNamed(one, name).text);
    }
    return out;
}

/// The numbers there, in house units.
inline std::vector<double> numbersOf(const std::vector<Sentence>& sentences, SentenceKey key,
                                     std::string_view name) {
    std::vector<double> out;
    for (const Sentence& one : sentencesWith(sentences, key)) {
        out.push_back(valueNamed(one, name).number);
    }
    return out;
}

}  // namespace engine::test
