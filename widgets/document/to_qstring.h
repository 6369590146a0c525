#pragma once

#include <QString>

#include <string_view>

namespace widgets {

/// Text of the engine, which is UTF-8, for the screen.
[[nodiscard]] inline QString toQString(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

}  // namespace widgets
