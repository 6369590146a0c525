#pragma once

#include <cstdlib>
#include <filesystem>
#include <optional>
#include <string>

namespace engine::test {

/// What a test that is skipped says in front of what it would have needed.
inline constexpr const char* kNoTrialData = "DAWNLINE_TRIAL_DATA does not name a folder with ";

/// The folder named by DAWNLINE_TRIAL_DATA if it holds `part`; nothing otherwise.
[[nodiscard]] inline std::optional<std::filesystem::path> trialData(const std::string& part) {
    const char* folder = std::getenv("DAWNLINE_TRIAL_DATA");
    if (folder == nullptr || !std::filesystem::exists(std::filesystem::path(folder) / part)) {
        return std::nullopt;
    }
    return folder;
}

}  // namespace engine::test
