#pragma once

#include "engine/base/error.h"
#include "engine/pond/pond.h"
#include "engine/pond/pond_keys.h"
#include "engine/pond/pond_source.h"
#include "engine/pond/pond_words.h"
#include "engine/pond/toml_node.h"

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace engine {

/// Visitor of pond_keys.h that fills a pond from TOML. It looks at types, words and unknown keys only;
/// ranges, missing keys and what keys have to do with each other are for checkPond.
/// Two things that a pond cannot show as missing are an exception: the kind of a ramp and the numbers
/// of a contour.
class TomlFields {
public:
    /// @param source  Gets the line of every known key and what could not be read.
    TomlFields(const TomlNode& root, PondSource& source, Diagnostics& faults);

    /// Reports the unknown keys of the top level; call after the walk.
    void finish() { leave(); }

    [[nodiscard]] bool isOfNewerVersion() const { return m_isOfNewerVersion; }
    /// The numbers that were written with a unit, for PondReading::typed.
    [[nodiscard]] std::map<std::string, std::string> takeTyped() { return std::move(m_typed); }

    void format(const char* key);
    void number(const char* key, MaybeQuantity& out, const NumberRule& rule, Need need);
    void number(const char* key, Quantity& out, const NumberRule& rule);
    void numbers(const char* key, std::vector<double>& out, const NumberRule& rule, Need need);
    void byDay(const char* key, std::optional<ByDay>& out, const NumberRule& rule);
    void text(const char* key, std::string& out, Need need);
    void truth(const char* key, bool& out, bool fallback);
    void date(const char* key, std::optional<Date>& out, Need need);
    void date(const char* key, Date& out);
    void dates(const char* key, std::vector<Date>& out);
    void time(const char* key, std::optional<LocalTime>& out, Need need);
    void clock(const char* key, std::optional<ClockTime>& out);
    void window(const char* key, std::optional<ClockWindow>& out);

    template <class E>
    void choice(const char* key, std::optional<E>& out) {
        if (const TomlNode* node = take(key)) {
            out = word<E>(*node, path(key));
        }
    }

    template <class E>
    void choice(const char* key, E& out) {
        if (const TomlNode* node = take(key)) {
            out = word<E>(*node, path(key)).value_or(out);
        } else {
            missing(key);
        }
    }

    template <class T, class Visit>
    void table(const char* key, T& out, Need, Visit visit) {
        if (const TomlNode* node = takeTable(key)) {
            enter(*node, path(key));
            visit(*this, out);
            leave();
        }
    }

    template <class T, class Visit>
    void maybeTable(const char* key, std::optional<T>& out, Visit visit) {
        if (const TomlNode* node = takeTable(key)) {
            enter(*node, path(key));
            visit(*this, out.emplace());
            leave();
        }
    }

    template <class T, class Visit>
    void tables(const char* key, std::vector<T>& out, Visit visit) {
        if (const TomlNode* node = takeTables(key)) {
            for (const TomlNode& item : node->items) {
                const std::string itsPath = itemPath(path(key), out.size());
                m_source.lines[itsPath] = item.line;
                enter(item, itsPath);
                visit(*this, out.emplace_back());
                leave();
            }
        }
    }

private:
    struct Frame {
        const TomlNode* table = nullptr;
        std::string path;
        std::vector<std::string_view> known;
    };

    void enter(const TomlNode& table, std::string path);
    void leave();
    [[nodiscard]] std::string path(const char* key) const { return childPath(m_frames.back().path, key); }
    const TomlNode* take(const char* key);
    const TomlNode* takeTable(const char* key);
    const TomlNode* takeTables(const char* key);
    void missing(const char* key);
    void say(int line, const std::string& path, std::string sentence);
    /// Says a fault of a known key, whose value is then taken as not read.
    void fault(int line, const std::string& path, std::string sentence);
    bool isTooLong(const TomlNode& list, const std::string& path, std::size_t most);
    void wrongType(const TomlNode& node, const std::string& path, const std::string& wanted);
    void unknownKeys(const TomlNode& table, const std::string& path,
                     const std::vector<std::string_view>& known);
    std::optional<Quantity> quantity(const TomlNode& node, const std::string& path, const NumberRule& rule);
    std::optional<Quantity> spread(const TomlNode& table, const std::string& path, const NumberRule& rule);
    /// A number, or one with its unit in quotes; says what is wrong otherwise, with `wanted` for other kinds.
    std::optional<double> plainNumber(const TomlNode& node, const std::string& path, const NumberRule& rule,
                                      const char* wanted);
    std::optional<ClockTime> clockOf(const TomlNode& node, const std::string& path);
    std::vector<double> listOf(const TomlNode& list, const std::string& path, const NumberRule& rule);

    template <class E>
    std::optional<E> word(const TomlNode& node, const std::string& itsPath) {
        for (const auto& candidate : wordsOf(E{})) {
            if (node.kind == TomlKind::Text && node.text == candidate.text) {
                return candidate.value;
            }
        }
        wrongType(node, itsPath, wordList(E{}));
        return std::nullopt;
    }

    PondSource& m_source;
    Diagnostics& m_faults;
    std::vector<Frame> m_frames;
    std::map<std::string, std::string> m_typed;
    bool m_isOfNewerVersion = false;
};

}  // namespace engine
