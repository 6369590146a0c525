#include "widgets/document/pond_differences.h"

#include "engine/pond/pond_io.h"

#include <map>
#include <sstream>

namespace widgets {
namespace {

struct Entry {
    std::string key, value;
};

/// Our own form of a pond file as keys and values; it has one key a line.
std::vector<Entry> entriesOf(const engine::Pond& pond) {
    std::vector<Entry> entries;
    std::istringstream text(engine::writePond(pond));
    std::string table;
    std::map<std::string, int> counts;
    for (std::string line; std::getline(text, line);) {
        if (line.starts_with("[[")) {
            const std::string name = line.substr(2, line.find(']') - 2);
            table = name + ' ' + std::to_string(++counts[name]);
        } else if (line.starts_with('[')) {
            table = line.substr(1, line.find(']') - 1);
        } else if (const auto equals = line.find(" = "); equals != std::string::npos) {
            const std::string key = line.substr(0, equals), value = line.substr(equals + 3);
            if (table.starts_with("ramp ") && key == "name") {
                table = "ramp " + value;
            }
            entries.push_back({table.empty() ? key : table + '.' + key, value});
        }
    }
    return entries;
}

}  // namespace

std::vector<PondDifference> differencesOf(const engine::Pond& here, const engine::Pond& there) {
    const auto a = entriesOf(here), b = entriesOf(there);
    std::map<std::string, std::string> inA, inB;
    for (const Entry& entry : a) {
        inA[entry.key] = entry.value;
    }
    for (const Entry& entry : b) {
        inB[entry.key] = entry.value;
    }
    std::vector<PondDifference> found;
    for (const Entry& entry : a) {
        const auto other = inB.find(entry.key);
        if (other == inB.end() || other->second != entry.value) {
            found.push_back({entry.key, entry.value, other == inB.end() ? std::string() : other->second});
        }
    }
    for (const Entry& entry : b) {
        if (inA.find(entry.key) == inA.end()) {
            found.push_back({entry.key, {}, entry.value});
        }
    }
    return found;
}

}  // namespace widgets
