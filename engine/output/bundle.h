#pragma once

#include "engine/base/files.h"

#include <chrono>
#include <cstdint>
#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace engine {

inline constexpr std::string_view kBundleName = "bundle.zip";
inline constexpr std::string_view kBundleSums = "SHA256SUMS";

/// Files as one ZIP archive, with a list of their SHA-256 as `sha256sum -c` reads it. The same files and time
/// give the same bytes.
/// @param time  That every file in it bears, UTC; ZIP knows the years 1980 to 2107.
[[nodiscard]] std::string bundleOf(std::vector<TextFile> files, std::chrono::sys_seconds time);

/// An archive written anew with that time on every file, so that the same content gives the same bytes.
/// @param bytes  A ZIP archive that another library has made in memory.
/// @param more   Files that go in as well, each in place of one of the same name.
[[nodiscard]] std::string restamped(const std::string& bytes, std::chrono::sys_seconds time,
                                    std::vector<TextFile> more = {});

/// What is read of a bundle: its bytes, those that it unpacks to, and those of one file that are looked into
/// and not summed alone, as papers and inputs are. No more than the bytes and one such file is in memory.
inline constexpr std::uintmax_t kLargestBundle_bytes = std::uintmax_t{256} << 20;
inline constexpr std::uintmax_t kMostUnpacked_bytes = std::uintmax_t{1024} << 20;
inline constexpr std::uintmax_t kLargestInBundle_bytes = std::uintmax_t{64} << 20;

/// A bundle as it was read, packed, and what its files come to.
struct BundleFiles {
    struct File {
        std::uint64_t place = 0;  ///< Within the archive
        std::uint64_t size_bytes = 0;
        std::string sum;  ///< SHA-256
    };
    std::map<std::string, File> files;  ///< Those that can be read whole
    std::vector<std::string> faults;    ///< What is wrong with it as an archive: sentences
    std::optional<std::uint32_t> time;  ///< As ZIP holds date and time, where all files bear the same
    std::string packed;                 ///< The archive

    /// Unpacks a file; nothing if there is none of that name, or it is larger than kLargestInBundle_bytes.
    [[nodiscard]] std::optional<std::string> text(std::string_view name) const;
};
[[nodiscard]] BundleFiles readBundle(const std::filesystem::path& path);
/// The same of one in memory. @param name  As it stands in sentences
[[nodiscard]] BundleFiles readBundleBytes(std::string bytes, const std::string& name);

/// What the check of a bundle found.
struct BundleCheck {
    std::vector<std::string> faults;  ///< Sentences; empty if the bundle is whole
    std::string run;                  ///< Name of its run, if it holds a statement of one
    std::vector<std::string> names;   ///< Of the files that its list names
};

/// Holds every file of a bundle against the bundle's own list, the run's files against the run's statement,
/// the statement and with it the run's name against what the inputs in the bundle make anew, each paper
/// against the name of the run, and every byte against the form of a bundle (engine/output/bundle_layout.h).
/// Shows that nothing was changed since by accident or by hand in one place. A change of a file together with
/// the list and the statement that name it shows only against the run's name on a paper handed over earlier.
[[nodiscard]] BundleCheck verifyBundle(const std::filesystem::path& path);
/// The same of one that was read.
[[nodiscard]] BundleCheck verifyBundle(const BundleFiles& read);

/// Why the bundle among files that are to be written could not be read again, as a sentence; nothing if it
/// can, or if there is none.
[[nodiscard]] std::optional<std::string> bundleFault(const std::vector<TextFile>& files);

}  // namespace engine
