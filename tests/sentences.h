#pragma once

#include "engine/wording/wording.h"

#include <algorithm>
#include <iterator>
#include <map>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace engine::test {

/// The first sentence with a key; null if it is not said.
inline const Sentence* find(const std::vector<Sentence>& sentences, SentenceKey key) {
    const auto found = std::find_if(sentences.begin(), sentences.end(),
                                    [key](const Sentence& sentence) { return sentence.key == key; });
    return found == sentences.end() ? nullptr : &*found;
}

inline bool isSaid(const std::vector<Sentence>& sentences, SentenceKey key) {
    return find(sentences, key) != nullptr;
}

inline const SentenceValue& valueOf(const Sentence& sentence, std::string_view name) {
    const auto found = std::find_if(sentence.values.begin(), sentence.values.end(),
                                    [name](const SentenceValue& value) { return value.name == name; });
    if (found == sentence.values.end()) {
        throw std::runtime_error("the sentence has no value " + std::string(name));
    }
    return *found;
}

/// A number of the first sentence with a key, in house units; nothing if it is not said.
inline std::optional<double> numberSaid(const std::vector<Sentence>& sentences, SentenceKey key,
                                        std::string_view name) {
    const Sentence* sentence = find(sentences, key);
    return sentence == nullptr ? std::nullopt : std::optional(valueOf(*sentence, name).number);
}

/// A name or term of the first sentence with a key; nothing if it is not said.
inline std::optional<std::string> textSaid(const std::vector<Sentence>& sentences, SentenceKey key,
                                           std::string_view name) {
    const Sentence* sentence = find(sentences, key);
    return sentence == nullptr ? std::nullopt : std::optional(valueOf(*sentence, name).text);
}

/// The English of the first sentence with a key; empty if it is not said.
inline std::string englishSaid(const std::vector<Sentence>& sentences, SentenceKey key) {
    const Sentence* sentence = find(sentences, key);
    return sentence == nullptr ? "" : english(*sentence);
}

/// All sentences with a key.
inline std::vector<Sentence> sentencesWith(const std::vector<Sentence>& sentences, SentenceKey key) {
    std::vector<Sentence> out;
    std::copy_if(sentences.begin(), sentences.end(), std::back_inserter(out),
                 [key](const Sentence& one) { return one.key == key; });
    return out;
}

/// The words or terms at one place of all sentences with a key, in their order.
inline std::vector<std::string> textsOf(const std::vector<Sentence>& sentences, SentenceKey key,
                                        std::string_view name) {
    std::vector<std::string> out;
    for (const Sentence& one : sentencesWith(sentences, key)) {
        out.push_back(valueOf(one, name).text);
    }
    return out;
}

/// The numbers there, in house units.
inline std::vector<double> numbersOf(const std::vector<Sentence>& sentences, SentenceKey key,
                                     std::string_view name) {
    std::vector<double> out;
    for (const Sentence& one : sentencesWith(sentences, key)) {
        out.push_back(valueOf(one, name).number);
    }
    return out;
}

/// What stands in the places of a sentence that a program printed, by their names.
using Places = std::map<std::string, std::string, std::less<>>;

/// Whether a line is the pattern with its places filled in; says with what.
inline bool fits(std::string_view pattern, std::string_view line, Places& places) {
    const std::size_t open = pattern.find('{');
    if (open == std::string_view::npos) {
        return pattern == line;
    }
    if (!line.starts_with(pattern.substr(0, open))) {
        return false;
    }
    line.remove_prefix(open);
    const std::size_t close = pattern.find('}', open);
    const std::string_view name = pattern.substr(open + 1, close - open - 1);
    pattern.remove_prefix(close + 1);
    for (std::size_t length = 0; length <= line.size(); ++length) {
        if (fits(pattern, line.substr(length), places)) {
            places[std::string(name)] = line.substr(0, length);
            return true;
        }
    }
    return false;
}

/// Every line that says a sentence with a key in the English that a program printed, in its order. Of a
/// template of places and a colon alone that may be any line with a colon. Sentences stand each on a line of
/// its own, in metric units.
inline std::vector<Places> saidIn(std::string_view text, SentenceKey key) {
    std::vector<Places> found;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find('\n'), text.size());
        std::string_view line = text.substr(0, end);
        line.remove_prefix(std::min(line.find_first_not_of(' '), line.size()));
        Places places;
        if (fits(englishTemplate(key), line, places)) {
            found.push_back(places);
        }
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return found;
}

/// What stood in one place of these sentences, one after the other.
inline std::vector<std::string> placesSaid(std::string_view text, SentenceKey key, std::string_view name) {
    std::vector<std::string> out;
    for (const Places& places : saidIn(text, key)) {
        const auto place = places.find(name);
        out.push_back(place == places.end() ? "" : place->second);
    }
    return out;
}

}  // namespace engine::test
