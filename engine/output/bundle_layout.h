#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace engine {

/// What the bytes of an archive are, beside what a ZIP library makes of them.
struct BundleLayout {
    std::vector<std::string> faults;  ///< Sentences; empty if every byte has its place
    std::optional<std::uint32_t>
        time;  ///< Date and time of all files, as ZIP holds them; nothing where they differ
};

/// Holds the bytes of an archive against the form in which bundles are written (engine/output/bundle.h): the
/// files one behind the other from the first byte on, each with its header and its content and nothing else,
/// one directory that says the same of them, and its end. Other programs may show what stands elsewhere: in
/// front, between, behind, in comments and extra fields, behind the end of a packed file, or in a directory
/// that says something else. Names are once each and lie in the folder that the bundle is unpacked into.
///
/// By the ZIP format (PKWARE APPNOTE 6.3, from memory) and RFC 1951; nothing that we bundle needs the form
/// for 64 bits. Only which version of a ZIP library has written it is not looked at.
[[nodiscard]] BundleLayout layoutOf(std::string_view bytes);

}  // namespace engine
