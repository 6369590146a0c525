#include "engine/pond/key_list.h"

#include "engine/base/text.h"
#include "engine/pond/pond_source.h"
#include "engine/pond/pond_words.h"

#include <algorithm>
#include <array>
#include <utility>

namespace engine {
namespace {

/// Visitor of pond_keys.h that writes down what it is shown.
class KeyWalk {
public:
    std::vector<KeyFact> facts;

    void format(const char* key) { add(key, KeyKind::Number, {1.0, 1.0, "", false, true}, true); }
    void number(const char* key, const MaybeQuantity&, const NumberRule& rule, Need need) {
        add(key, KeyKind::Number, rule, need == Need::Required);
    }
    void number(const char* key, const Quantity&, const NumberRule& rule) {
        add(key, KeyKind::Number, rule, true);
    }
    void numbers(const char* key, const std::vector<double>&, const NumberRule& rule, Need need) {
        add(key, KeyKind::Numbers, rule, need == Need::Required);
    }
    void byDay(const char* key, const std::optional<ByDay>&, const NumberRule& rule) {
        add(key, KeyKind::ByDay, rule, false);
    }
    void text(const char* key, const std::string&, Need need) {
        add(key, KeyKind::Text, {}, need == Need::Required);
    }
    void truth(const char* key, bool, bool) { add(key, KeyKind::Truth, {}, false); }
    void date(const char* key, const std::optional<Date>&, Need need) {
        add(key, KeyKind::Day, {}, need == Need::Required);
    }
    void date(const char* key, const Date&) { add(key, KeyKind::Day, {}, true); }
    void dates(const char* key, const std::vector<Date>&) { add(key, KeyKind::Days, {}, false); }
    void time(const char* key, const std::optional<LocalTime>&, Need need) {
        add(key, KeyKind::Time, {}, need == Need::Required);
    }
    void clock(const char* key, const std::optional<ClockTime>&) { add(key, KeyKind::Clock, {}, false); }
    void window(const char* key, const std::optional<ClockWindow>&) { add(key, KeyKind::Window, {}, false); }
    template <class E>
    void choice(const char* key, const std::optional<E>&) {
        add(key, KeyKind::Choice, {}, false);
        facts.back().words = wordList(E{});
    }
    template <class E>
    void choice(const char* key, const E&) {
        add(key, KeyKind::Choice, {}, true);
        facts.back().words = wordList(E{});
    }
    template <class T, class Visit>
    void table(const char* key, const T&, Need need, Visit visit) {
        within<T>(key, KeyKind::Table, need == Need::Required, visit);
    }
    template <class T, class Visit>
    void maybeTable(const char* key, const std::optional<T>&, Visit visit) {
        within<T>(key, KeyKind::Table, false, visit);
    }
    template <class T, class Visit>
    void tables(const char* key, const std::vector<T>&, Visit visit) {
        within<T>(key, KeyKind::Tables, false, visit);
    }

private:
    void add(const char* key, KeyKind kind, const NumberRule& rule, bool isRequired) {
        facts.push_back({childPath(m_table, key), kind, rule, isRequired, ""});
    }
    template <class T, class Visit>
    void within(const char* key, KeyKind kind, bool isRequired, Visit visit) {
        add(key, kind, {}, isRequired);
        std::string outer = std::exchange(m_table, childPath(m_table, key));
        const T any{};
        visit(*this, any);
        m_table = std::move(outer);
    }

    std::string m_table;
};

/// What people call a table before they know its name.
constexpr std::array<std::pair<std::string_view, std::string_view>, 22> kOtherNames{{
    {"pond", "basin"},         {"lake", "basin"},       {"shape", "basin"},
    {"size", "basin"},         {"depth", "basin"},      {"location", "place"},
    {"site", "place"},         {"position", "place"},   {"muck", "bottom"},
    {"sediment", "bottom"},    {"mud", "bottom"},       {"algae", "water"},
    {"clarity", "water"},      {"owner", "client"},     {"customer", "client"},
    {"forecast", "weather"},   {"diffuser", "aerator"}, {"aeration", "aerator"},
    {"compressor", "aerator"}, {"species", "fish"},     {"fountain", "surface_aerator"},
    {"log", "reading"},
}};

}  // namespace

std::string KeyFact::table() const {
    const auto dot = path.rfind('.');
    return dot == std::string::npos ? "" : path.substr(0, dot);
}

std::string KeyFact::name() const {
    const auto dot = path.rfind('.');
    return dot == std::string::npos ? path : path.substr(dot + 1);
}

const std::vector<KeyFact>& pondKeys() {
    static const std::vector<KeyFact> kAll = [] {
        KeyWalk walk;
        const Pond any;
        visitPond(walk, any);
        return std::move(walk.facts);
    }();
    return kAll;
}

const KeyFact* findKey(std::string_view path) {
    const auto found = std::find_if(pondKeys().begin(), pondKeys().end(),
                                    [path](const KeyFact& fact) { return fact.path == path; });
    return found == pondKeys().end() ? nullptr : &*found;
}

std::string plainPath(std::string_view path) {
    std::string plain;
    bool isInside = false;
    for (const char c : path) {
        isInside = c == '[' || (isInside && c != ']');
        if (!isInside && c != ']') {
            plain += c;
        }
    }
    return plain;
}

std::vector<std::string> keysLike(std::string_view word) {
    constexpr std::size_t kMost = 3;
    constexpr std::size_t kLongest = 60;  // of a word that may be a key
    const std::string plain = plainPath(word.substr(0, kLongest + 1));
    std::vector<std::pair<int, std::string>> near;
    if (plain.empty() || plain.size() > kLongest) {
        return {};
    }
    for (const KeyFact& fact : pondKeys()) {
        const std::string name = fact.name();
        const auto longer = static_cast<int>(std::max(plain.size(), name.size()));
        int distance =
            std::min(editDistance(plain, name, longer / 3), editDistance(plain, fact.path, longer / 3));
        // A part that somebody remembers, such as "longitude" or "oxygen debt".
        const bool holds = plain.size() > 2 && fact.path.find(plain) != std::string::npos;
        if (plain.size() >= 4 && name.size() > plain.size()) {  // without its unit
            distance = std::min(distance, 1 + editDistance(plain, name.substr(0, plain.size()), longer / 3));
        }
        if (holds || 3 * distance <= longer) {
            near.emplace_back(holds ? std::min(distance, 1) : distance, fact.path);
        }
    }
    std::stable_sort(near.begin(), near.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    std::vector<std::string> paths;
    for (std::size_t i = 0; i < std::min(near.size(), kMost); ++i) {
        paths.push_back(near[i].second);
    }
    return paths;
}

std::string tableMeant(std::string_view name, const std::vector<std::string_view>& keys) {
    std::vector<std::string> tables;
    std::string best;
    int most = 0;
    for (const KeyFact& fact : pondKeys()) {
        if (!fact.isTable() || !fact.table().empty()) {
            continue;
        }
        tables.push_back(fact.path);
        const auto count =
            static_cast<int>(std::count_if(keys.begin(), keys.end(), [&](std::string_view key) {
                return findKey(fact.path + "." + std::string(key)) != nullptr;
            }));
        if (count > most) {
            most = count;
            best = fact.path;
        }
    }
    if (const std::string near = nearest(name, tables);
        !near.empty() && 3 * editDistance(name, near) <= static_cast<int>(name.size()) + 2) {
        return near;
    }
    if (most > 0) {
        return best;
    }
    const auto other = std::find_if(kOtherNames.begin(), kOtherNames.end(),
                                    [name](const auto& one) { return one.first == name; });
    return other == kOtherNames.end() ? "" : std::string(other->second);
}

}  // namespace engine
