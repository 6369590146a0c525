#pragma once

#include <array>
#include <cstddef>
#include <string_view>
#include <utility>

namespace engine::test {

/// The name of an enumerator as the compiler writes it, without its enumeration: "FileTitle".
template <auto kValue>
[[nodiscard]] constexpr std::string_view nameOfValue() {
    // GCC: "... [with auto kValue = engine::Key::FileTitle; std::string_view = ...]"; Clang: without what
    // follows.
    const std::string_view said = __PRETTY_FUNCTION__;
    const std::size_t end = said.find_first_of(";]", said.find("kValue = "));
    const std::size_t start = said.rfind(':', end) + 1;
    return said.substr(start, end - start);
}

/// The name of one of the values 0 to the greatest, which may be any of them. @throws std::out_of_range
template <auto kGreatest>
[[nodiscard]] std::string_view nameOf(decltype(kGreatest) value) {
    constexpr auto count = static_cast<std::size_t>(kGreatest) + 1;
    constexpr auto names = []<std::size_t... kAt>(std::index_sequence<kAt...>) {
        return std::array{nameOfValue<static_cast<decltype(kGreatest)>(kAt)>()...};
    }
    (std::make_index_sequence<count>());
    return names.at(static_cast<std::size_t>(value));
}

}  // namespace engine::test
