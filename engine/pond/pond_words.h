#pragma once

#include "engine/pond/pond.h"

#include <array>
#include <optional>
#include <string>
#include <string_view>

namespace engine {

/// A word of the pond file and what it means.
template <class E>
struct Word {
    std::string_view text;
    E value;
};

/// Events from which something is computed. Other kinds are kept in the log as they are.
enum class EventKind {
    Started,   ///< A ramp is run from here on, its day 1 being this day
    Stopped,   ///< No air until the next start or run
    Run,       ///< Air from `at` to `until` or for `minutes`, whatever a ramp says of that day
    PowerCut,  ///< No air from `at` to `until`, or to the next start, run or PowerBack
    PowerBack,
    Treatment,  ///< Something put into the pond
    Feed,
    Rain,
    BloomChange,   ///< The water has changed its colour
    NotBought,     ///< A treatment that was offered and left out
    FishDistress,  ///< Fish at the surface or off their feed
    Kill           ///< Dead fish
};

inline constexpr std::array<Word<Confidence>, 3> kConfidenceWords{{
    {"measured", Confidence::Measured},
    {"estimated", Confidence::Estimated},
    {"guessed", Confidence::Guessed},
}};
inline constexpr std::array<Word<Smell>, 3> kSmellWords{{
    {"none", Smell::None},
    {"faint", Smell::Faint},
    {"strong", Smell::Strong},
}};
inline constexpr std::array<Word<SpeciesGroup>, 6> kSpeciesGroupWords{{
    {"sport", SpeciesGroup::Sport},
    {"catfish", SpeciesGroup::Catfish},
    {"carp", SpeciesGroup::Carp},
    {"koi", SpeciesGroup::Koi},
    {"trout", SpeciesGroup::Trout},
    {"percid", SpeciesGroup::Percid},
}};
inline constexpr std::array<Word<RampKind>, 5> kRampKindWords{{
    {"continuous", RampKind::Continuous},
    {"doubling", RampKind::Doubling},
    {"linear", RampKind::Linear},
    {"capped", RampKind::Capped},
    {"table", RampKind::Table},
}};
inline constexpr std::array<Word<UnitSystem>, 2> kUnitSystemWords{{
    {"metric", UnitSystem::Metric},
    {"us", UnitSystem::Us},
}};
inline constexpr std::array<Word<HourStamp>, 2> kHourStampWords{{
    {"start", HourStamp::Start},
    {"end", HourStamp::End},
}};

inline constexpr std::array<Word<FishBehaviour>, 3> kFishBehaviourWords{{
    {"normal", FishBehaviour::Normal},
    {"off feed", FishBehaviour::OffFeed},
    {"piping", FishBehaviour::Piping},
}};
inline constexpr std::array<Word<DateOrder>, 2> kDateOrderWords{{
    {"day first", DateOrder::DayFirst},
    {"month first", DateOrder::MonthFirst},
}};

inline constexpr std::array<Word<EventKind>, 13> kEventWords{{
    {"started", EventKind::Started},
    {"stopped", EventKind::Stopped},
    {"run", EventKind::Run},
    {"power_cut", EventKind::PowerCut},
    {"power_back", EventKind::PowerBack},
    {"treatment", EventKind::Treatment},
    {"algaecide", EventKind::Treatment},  // a treatment too
    {"feed", EventKind::Feed},
    {"rain", EventKind::Rain},
    {"bloom_change", EventKind::BloomChange},
    {"not_bought", EventKind::NotBought},
    {"fish_distress", EventKind::FishDistress},
    {"kill", EventKind::Kill},
}};

[[nodiscard]] constexpr const auto& wordsOf(Confidence) {
    return kConfidenceWords;
}
[[nodiscard]] constexpr const auto& wordsOf(Smell) {
    return kSmellWords;
}
[[nodiscard]] constexpr const auto& wordsOf(SpeciesGroup) {
    return kSpeciesGroupWords;
}
[[nodiscard]] constexpr const auto& wordsOf(RampKind) {
    return kRampKindWords;
}
[[nodiscard]] constexpr const auto& wordsOf(UnitSystem) {
    return kUnitSystemWords;
}
[[nodiscard]] constexpr const auto& wordsOf(HourStamp) {
    return kHourStampWords;
}
[[nodiscard]] constexpr const auto& wordsOf(FishBehaviour) {
    return kFishBehaviourWords;
}
[[nodiscard]] constexpr const auto& wordsOf(DateOrder) {
    return kDateOrderWords;
}

/// The word of the pond file for a value, such as "doubling".
template <class E>
[[nodiscard]] constexpr std::string_view wordOf(E value) {
    for (const auto& word : wordsOf(value)) {
        if (word.value == value) {
            return word.text;
        }
    }
    return "";
}

/// `"none", "faint" or "strong"`, for sentences.
template <class E>
[[nodiscard]] std::string wordList(E any) {
    const auto& words = wordsOf(any);
    std::string list;
    for (std::size_t i = 0; i < words.size(); ++i) {
        list += i == 0 ? "\"" : i + 1 == words.size() ? " or \"" : ", \"";
        list += words[i].text;
        list += '"';
    }
    return list;
}

/// The word of an event as its kind; nothing for a word of the author's own.
[[nodiscard]] constexpr std::optional<EventKind> eventKind(std::string_view text) {
    for (const auto& word : kEventWords) {
        if (word.text == text) {
            return word.value;
        }
    }
    return std::nullopt;
}

}  // namespace engine
