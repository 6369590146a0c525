#pragma once

#include <QString>

#include <filesystem>
#include <vector>

namespace app {

/// A pond that a new one may start from.
struct Template {
    QString title;
    std::filesystem::path path;
};

/// The invented ponds that come with the program, by title: beside an installed program in
/// share/dawnline/scenarios, beside a built one in the source's own folder. None if there is neither.
[[nodiscard]] std::vector<Template> templates();

}  // namespace app
