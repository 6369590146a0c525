#include "engine/pond/toml_fields.h"

#include "engine/base/text.h"
#include "engine/pond/key_list.h"

#include <algorithm>

namespace engine {
namespace {

/// A file with more faults than this is not a pond file; the rest is not kept.
constexpr std::size_t kMostFaults = 2000;
/// The nearest key is looked up for this many unknown keys at most, to stay quick on rubbish.
constexpr std::size_t kMostSuggestions = 200;
constexpr std::size_t kLongestKey = 60;

/// A table's header or the key with the table where it belongs, as it ends a sentence.
std::string belongs(const std::vector<std::string>& paths, std::string_view key) {
    std::string tables;
    for (const std::string& path : paths) {
        const KeyFact* fact = findKey(path);
        if (fact != nullptr && fact->name() == key && !fact->table().empty()) {
            const KeyFact* table = findKey(fact->table());
            tables += (tables.empty() ? "" : " or ") +
                      (table->kind == KeyKind::Tables ? "[[" + table->path + "]]" : "[" + table->path + "]");
        }
    }
    return tables.empty() ? "" : "; " + std::string(key) + " belongs under " + tables + ".";
}

/// The end of the sentence on an unknown key: what was meant, or where it belongs.
std::string meantInstead(const TomlNode& item, const std::string& path,
                         const std::vector<std::string_view>& known) {
    const bool isTable =
        item.kind == TomlKind::Table ||
        (item.kind == TomlKind::List && !item.items.empty() && item.items[0].kind == TomlKind::Table);
    if (path.empty() && isTable) {
        const TomlNode& first = item.kind == TomlKind::Table ? item : item.items[0];
        std::vector<std::string_view> keys;
        for (const TomlNode& key : first.items) {
            keys.push_back(key.key);
        }
        const std::string meant = tableMeant(item.key, keys);
        return meant.empty() ? "." : "; did you mean \"" + meant + "\"?";
    }
    const std::vector<std::string> paths = keysLike(item.key);
    if (std::string where = belongs(paths, item.key); !where.empty()) {
        return where;
    }
    if (const std::string near = nearest(item.key, known); !near.empty()) {
        return "; did you mean \"" + near + "\"?";
    }
    return paths.empty() ? "." : "; did you mean " + paths.front() + "?";
}

}  // namespace

TomlFields::TomlFields(const TomlNode& root, PondSource& source, Diagnostics& faults)
    : m_source(source), m_faults(faults) {
    enter(root, "");
}

void TomlFields::enter(const TomlNode& table, std::string path) {
    m_frames.push_back({&table, std::move(path), {}});
}

void TomlFields::leave() {
    const Frame frame = std::move(m_frames.back());
    m_frames.pop_back();
    unknownKeys(*frame.table, frame.path, frame.known);
}

void TomlFields::unknownKeys(const TomlNode& table, const std::string& path,
                             const std::vector<std::string_view>& known) {
    for (const TomlNode& item : table.items) {
        if (std::find(known.begin(), known.end(), item.key) != known.end()) {
            continue;
        }
        const bool isQuick = m_faults.size() < kMostSuggestions && item.key.size() <= kLongestKey;
        std::string sentence =
            path.empty() ? "A pond file has no key or table of this name" : "There is no such key here";
        sentence += isQuick ? meantInstead(item, path, known) : ".";
        say(item.line, childPath(path, item.key), sentence);
    }
}

const TomlNode* TomlFields::take(const char* key) {
    Frame& frame = m_frames.back();
    frame.known.emplace_back(key);
    const TomlNode* node = frame.table->find(key);
    if (node != nullptr) {
        m_source.lines[path(key)] = node->line;
    }
    return node;
}

const TomlNode* TomlFields::takeTable(const char* key) {
    const TomlNode* node = take(key);
    if (node != nullptr && node->kind != TomlKind::Table) {
        const std::string itsPath = path(key);
        wrongType(*node, itsPath, "one table, written [" + itsPath + "]");
        return nullptr;
    }
    return node;
}

const TomlNode* TomlFields::takeTables(const char* key) {
    const TomlNode* node = take(key);
    if (node == nullptr) {
        return nullptr;
    }
    const bool isList = node->kind == TomlKind::List;
    if (isList && std::all_of(node->items.begin(), node->items.end(),
                              [](const TomlNode& item) { return item.kind == TomlKind::Table; })) {
        return isTooLong(*node, path(key), kMostTables) ? nullptr : node;
    }
    // The dotted name as it is written, without the numbers that we count.
    std::string header = path(key);
    while (header.find('[') != std::string::npos) {
        header.erase(header.find('['), header.find(']') - header.find('[') + 1);
    }
    wrongType(*node, path(key), "a list of tables, each written [[" + header + "]]");
    return nullptr;
}

void TomlFields::missing(const char* key) {
    fault(m_source.lineOf(m_frames.back().path), path(key), "This key is missing.");
}

void TomlFields::say(int line, const std::string& path, std::string sentence) {
    if (m_faults.size() < kMostFaults) {
        m_faults.push_back({Severity::Error, m_source.file, line, path, std::move(sentence)});
    }
}

void TomlFields::fault(int line, const std::string& path, std::string sentence) {
    m_source.unread.insert(path);
    say(line, path, std::move(sentence));
}

void TomlFields::wrongType(const TomlNode& node, const std::string& path, const std::string& wanted) {
    fault(node.line, path, "This is " + describe(node) + ", but must be " + wanted + ".");
}

bool TomlFields::isTooLong(const TomlNode& list, const std::string& path, std::size_t most) {
    if (list.items.size() <= most) {
        return false;
    }
    fault(list.line, path,
          "The list has " + std::to_string(list.items.size()) + " items, but may have at most " +
              std::to_string(most) + ".");
    return true;
}

}  // namespace engine
