#include "engine/pond/pond_source.h"

#include "engine/base/text_file.h"

#include <algorithm>

namespace engine {

bool PondSource::isUnread(std::string_view path) const {
    for (; !path.empty(); path = parentOf(path)) {
        if (unread.contains(path)) {
            return true;
        }
    }
    return false;
}

int PondSource::lineOf(std::string_view path) const {
    if (lines.empty() && file.empty()) {
        return 0;
    }
    for (; !path.empty(); path = parentOf(path)) {
        if (const auto found = lines.find(path); found != lines.end()) {
            return found->second;
        }
    }
    return 1;
}

std::string_view parentOf(std::string_view path) {
    const auto end = path.find_last_of(".[");
    return end == std::string_view::npos ? std::string_view() : path.substr(0, end);
}

std::string childPath(std::string_view parent, std::string_view key) {
    const bool isPlain = !key.empty() && key.size() <= 40 && std::all_of(key.begin(), key.end(), [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' ||
               c == '-';
    });
    std::string path(parent);
    if (!path.empty()) {
        path += '.';
    }
    return path + (isPlain ? std::string(key) : shownText(key));
}

std::string itemPath(std::string_view list, std::size_t index) {
    return std::string(list) + '[' + std::to_string(index + 1) + ']';
}

}  // namespace engine
