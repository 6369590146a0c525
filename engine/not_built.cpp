#include "engine/not_built.h"

#include <algorithm>
#include <array>

namespace engine {
namespace {

struct NotBuilt {
    std::string_view path;  ///< Without the numbers of list items.
    std::string_view what;  ///< "... is not built yet, so it cannot be used."
};

/// An entry goes when its term comes. Reading and writing of these keys is complete.
constexpr std::array<NotBuilt, 2> kNotBuiltYet{{
    {"water.alkalinity_mg_per_l", "Alkalinity"},
    {"event", "The log of events"},
}};

/// "ramp[2].window" without its numbers.
std::string withoutNumbers(std::string_view path) {
    std::string plain;
    bool isNumber = false;
    for (const char c : path) {
        isNumber = c == '[' || (isNumber && c != ']');
        if (!isNumber && c != ']') {
            plain += c;
        }
    }
    return plain;
}

}  // namespace

Diagnostics refuseNotBuilt(const PondSource& source) {
    Diagnostics refused;
    for (const auto& [path, line] : source.lines) {
        if (path.ends_with(']')) {
            continue;  // an item; its list has a line of its own
        }
        const std::string plain = withoutNumbers(path);
        const auto found = std::find_if(kNotBuiltYet.begin(), kNotBuiltYet.end(),
                                        [&](const NotBuilt& entry) { return entry.path == plain; });
        if (found != kNotBuiltYet.end()) {
            const std::string sentence =
                std::string(found->what) + " is not built yet, so it cannot be used.";
            refused.push_back({Severity::Error, source.file, line, path, sentence});
        }
    }
    return refused;
}

}  // namespace engine
