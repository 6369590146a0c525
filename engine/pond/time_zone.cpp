#include "engine/pond/time_zone.h"

#include "engine/base/text_file.h"

#include <algorithm>
#include <cctype>
#include <filesystem>

namespace engine {

bool isTimeZone(const std::string& name) {
    constexpr const char* kZones = "/usr/share/zoneinfo";  // of Debian's tzdata, as POSIX systems have it
    constexpr std::uintmax_t kMost_bytes = 64 << 10;
    const bool isPlain = std::all_of(name.begin(), name.end(), [](char c) {
        return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_' || c == '-' || c == '+' ||
               c == '/';
    });
    if (name.empty() || name.front() == '/' || !isPlain) {
        return false;
    }
    const FileText file = readWholeFile(std::filesystem::path(kZones) / name, kMost_bytes);
    return file.text && file.text->starts_with("TZif");
}

}  // namespace engine
