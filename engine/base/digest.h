#pragma once

#include <string>
#include <string_view>

namespace engine {

/// SHA-256 (FIPS 180-4) of some bytes, as 64 lower-case hexadecimal digits.
[[nodiscard]] std::string sha256(std::string_view bytes);

}  // namespace engine
