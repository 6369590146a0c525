#pragma once

#include <memory>
#include <string>
#include <string_view>

namespace engine {

/// SHA-256 (FIPS 180-4) of some bytes, as 64 lower-case hexadecimal digits.
[[nodiscard]] std::string sha256(std::string_view bytes);

/// The same of bytes that come one part after the other.
class Sha256 {
public:
    Sha256();
    ~Sha256();
    Sha256(const Sha256&) = delete;
    Sha256& operator=(const Sha256&) = delete;
    void add(std::string_view part);
    [[nodiscard]] std::string take();  ///< Of all that was added; once

private:
    struct State;
    std::unique_ptr<State> m_state;
};

}  // namespace engine
