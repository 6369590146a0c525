#include "engine/output/bundle.h"

#include "engine/advice/run_statement.h"
#include "engine/base/digest.h"
#include "engine/base/error.h"
#include "engine/base/text_file.h"
#include "engine/output/bundle_layout.h"

#include <algorithm>
#include <iterator>
#include <map>
#include <memory>
#include <optional>
#include <zip.h>

namespace engine {
namespace {

constexpr zip_int64_t kMostFiles = 1000;
constexpr std::size_t kBlock_bytes = 1 << 16;
constexpr std::string_view kOpenDocumentType = "mimetype";  // stands unpacked at the front, says ODF

/// An archive that is discarded unless it was closed.
struct Discard {
    void operator()(zip_t* archive) const { zip_discard(archive); }
};
using Archive = std::unique_ptr<zip_t, Discard>;

struct Release {
    void operator()(zip_source_t* source) const { zip_source_free(source); }
};
using Source = std::unique_ptr<zip_source_t, Release>;

/// Date and time as ZIP holds them: seconds in twos, no zone.
std::pair<zip_uint16_t, zip_uint16_t> dosTime(std::chrono::sys_seconds time) {
    const auto day = std::chrono::floor<std::chrono::days>(time);
    const std::chrono::year_month_day date(day);
    const std::chrono::hh_mm_ss clock(time - day);
    const unsigned year = static_cast<unsigned>(std::clamp(static_cast<int>(date.year()), 1980, 2107) - 1980);
    const unsigned dosDate =
        (year << 9U) | (static_cast<unsigned>(date.month()) << 5U) | static_cast<unsigned>(date.day());
    const auto dosClock = static_cast<unsigned>(
        (clock.hours().count() << 11) | (clock.minutes().count() << 5) | (clock.seconds().count() / 2));
    return {static_cast<zip_uint16_t>(dosClock), static_cast<zip_uint16_t>(dosDate)};
}

std::string readSource(zip_source_t* source) {
    zip_stat_t stat;
    ensure(zip_source_stat(source, &stat) == 0 && zip_source_open(source) == 0, "an archive in memory opens");
    std::string bytes(static_cast<std::size_t>(stat.size), '\0');
    const zip_int64_t read = zip_source_read(source, bytes.data(), bytes.size());
    zip_source_close(source);
    ensure(read == static_cast<zip_int64_t>(bytes.size()), "an archive in memory reads whole");
    return bytes;
}

std::string sumsOf(const std::vector<TextFile>& files) {
    std::string sums;
    for (const TextFile& file : files) {
        sums += sha256(file.text) + "  " + file.name + '\n';
    }
    return sums;
}

/// Unpacks a file of an archive, one block after the other. @return false if it is not as long as is said or
/// its check sum is another.
template <class Take>
bool unpack(zip_t* archive, zip_uint64_t place, zip_uint64_t size, Take take) {
    zip_file_t* file = zip_fopen_index(archive, place, 0);
    if (file == nullptr) {
        return false;
    }
    std::vector<char> block(kBlock_bytes);
    zip_uint64_t taken = 0;
    zip_int64_t read = 0;
    // Only a read to the end compares the check sum and shows content beyond the size.
    while (taken <= size && (read = zip_fread(file, block.data(), block.size())) > 0) {
        take(std::string_view(block.data(), static_cast<std::size_t>(read)));
        taken += static_cast<zip_uint64_t>(read);
    }
    zip_fclose(file);
    return read == 0 && taken == size;
}

std::optional<std::string> readFile(zip_t* archive, zip_uint64_t place, zip_uint64_t size) {
    std::string bytes;
    const bool isWhole = unpack(archive, place, size, [&](std::string_view block) { bytes += block; });
    return isWhole ? std::optional(std::move(bytes)) : std::nullopt;
}

/// An archive in memory; null if the bytes are none. They must outlive it.
Archive openBytes(std::string_view bytes) {
    zip_error_t fault;
    zip_error_init(&fault);
    zip_source_t* source = zip_source_buffer_create(bytes.data(), bytes.size(), 0, &fault);
    ensure(source != nullptr, "there is memory for an archive");
    Archive archive(zip_open_from_source(source, ZIP_RDONLY | ZIP_CHECKCONS, &fault));
    if (archive == nullptr) {
        zip_source_free(source);
    }
    return archive;
}

/// Why an archive is too much to be unpacked, by what it says of itself; nothing if it is not.
std::optional<std::string> boundFault(zip_t* archive) {
    const zip_int64_t count = zip_get_num_entries(archive, 0);
    if (count > kMostFiles) {
        return "The bundle holds " + std::to_string(count) + " files; one of ours has at most " +
               std::to_string(kMostFiles) + ".";
    }
    std::uintmax_t left = kMostUnpacked_bytes;
    for (zip_int64_t i = 0; i < count; ++i) {
        zip_stat_t stat;
        if (zip_stat_index(archive, static_cast<zip_uint64_t>(i), 0, &stat) != 0) {
            continue;  // said by who reads it
        }
        if (stat.size > left) {  // subtracted, since a sum of 64-bit sizes may wrap
            return "The files of the bundle come to more than " + std::to_string(kMostUnpacked_bytes >> 20) +
                   " MiB, the most that is read.";
        }
        left -= stat.size;
    }
    return std::nullopt;
}

/// All files of an archive, or a fault said.
std::map<std::string, BundleFiles::File> filesOf(zip_t* archive, std::vector<std::string>& faults) {
    std::map<std::string, BundleFiles::File> files;
    for (zip_int64_t i = 0; i < zip_get_num_entries(archive, 0); ++i) {
        const auto place = static_cast<zip_uint64_t>(i);
        zip_stat_t stat;
        if (zip_stat_index(archive, place, 0, &stat) != 0) {
            faults.push_back("File " + std::to_string(i + 1) + " of the bundle cannot be looked at.");
            continue;
        }
        const std::string name = stat.name;
        Sha256 sum;
        if (!unpack(archive, place, stat.size, [&](std::string_view block) { sum.add(block); })) {
            faults.push_back("The file " + shownText(name) + " cannot be read whole from the bundle.");
        } else if (!files.emplace(name, BundleFiles::File{place, stat.size, sum.take()}).second) {
            faults.push_back("There are two files " + shownText(name) + " in the bundle.");
        }
    }
    return files;
}

void compareSums(const std::map<std::string, BundleFiles::File>& files,
                 const std::map<std::string, std::string>& sums, const std::string& list,
                 std::vector<std::string>& faults) {
    for (const auto& [name, sum] : sums) {
        const auto file = files.find(name);
        if (file == files.end()) {
            faults.push_back("The file " + shownText(name) + " is missing, which " + list + " names.");
        } else if (file->second.sum != sum) {
            faults.push_back("The file " + shownText(name) + " is not the one that " + list + " names.");
        }
    }
}

/// The inputs of a run that a bundle holds, in the order of a statement.
std::vector<TextFile> inputsOf(const BundleFiles& read) {
    std::vector<TextFile> inputs;
    for (const std::string_view name : kFrozenInputs) {
        if (auto text = read.text(name)) {
            inputs.push_back({std::string(name), std::move(*text)});
        }
    }
    return inputs;
}

void checkRun(const BundleFiles& read, BundleCheck& check) {
    const auto statement = read.text(kFrozenStatement);
    if (!statement) {
        check.faults.emplace_back("There is no statement of a run (run.txt) in the bundle.");
        return;
    }
    check.run = sha256(*statement);
    const auto sums = readSums(*statement, "sha256 ");
    if (!sums || sums->empty()) {
        check.faults.emplace_back("The statement of the run (run.txt) names no file.");
        return;
    }
    compareSums(read.files, *sums, "the run (run.txt)", check.faults);
    const auto made = readStatement(*statement);
    if (!made || statementOf(inputsOf(read), made->stamp) != *statement) {
        check.faults.emplace_back(
            "The statement of the run (run.txt) is not the one that the inputs in the bundle make.");
    } else if (const auto [clock, date] = dosTime(made->stamp.time);
               read.time != (std::uint32_t{date} << 16U | clock)) {
        check.faults.emplace_back("The files of the bundle do not bear the time of the run.");
    }
    for (const auto& [name, file] : read.files) {
        if (!name.ends_with(".pdf")) {
            continue;
        }
        const auto paper = read.text(name);
        if (!paper || paper->find(check.run) == std::string::npos) {
            check.faults.push_back("The paper " + shownText(name) + " is of another run.");
        }
    }
}

/// Files as an archive, in their order.
std::string archiveOf(const std::vector<TextFile>& files, std::chrono::sys_seconds time) {
    zip_error_t fault;
    zip_error_init(&fault);
    Source store(zip_source_buffer_create(nullptr, 0, 0, &fault));
    ensure(store != nullptr, "there is memory for an archive");
    Archive archive(zip_open_from_source(store.get(), ZIP_CREATE | ZIP_TRUNCATE, &fault));
    ensure(archive != nullptr, "an archive in memory is made");
    zip_source_keep(store.get());  // the archive has one reference, this function the other
    const auto [clock, date] = dosTime(time);
    for (const TextFile& file : files) {
        zip_source_t* content = zip_source_buffer(archive.get(), file.text.data(), file.text.size(), 0);
        const zip_int64_t index =
            zip_file_add(archive.get(), file.name.c_str(), content, ZIP_FL_ENC_UTF_8 | ZIP_FL_OVERWRITE);
        ensure(index >= 0, "a file goes into the archive");
        const auto place = static_cast<zip_uint64_t>(index);
        ensure(zip_set_file_compression(archive.get(), place,
                                        file.name == kOpenDocumentType ? ZIP_CM_STORE : ZIP_CM_DEFLATE,
                                        6) == 0 &&
                   zip_file_set_dostime(archive.get(), place, clock, date, 0) == 0 &&
                   zip_file_set_external_attributes(archive.get(), place, 0, ZIP_OPSYS_UNIX,
                                                    0100644U << 16U) == 0,
               "a file of the archive takes its dress");
    }
    ensure(zip_close(archive.get()) == 0, "an archive in memory closes");
    [[maybe_unused]] zip_t* const closed = archive.release();
    return readSource(store.get());
}

}  // namespace

std::string bundleOf(std::vector<TextFile> files, std::chrono::sys_seconds time) {
    files.push_back({std::string(kBundleSums), sumsOf(files)});
    return archiveOf(files, time);
}

std::string restamped(const std::string& bytes, std::chrono::sys_seconds time, std::vector<TextFile> more) {
    const Archive archive = openBytes(bytes);
    ensure(archive != nullptr, "an archive of our own can be read");
    std::vector<TextFile> files;
    for (zip_int64_t i = 0; i < zip_get_num_entries(archive.get(), 0); ++i) {
        zip_stat_t stat;
        ensure(zip_stat_index(archive.get(), static_cast<zip_uint64_t>(i), 0, &stat) == 0,
               "a file of an archive of our own can be looked at");
        std::optional<std::string> text = readFile(archive.get(), static_cast<zip_uint64_t>(i), stat.size);
        ensure(text.has_value(), "a file of an archive of our own is whole");
        files.push_back({stat.name, std::move(*text)});
    }
    files.insert(files.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
    return archiveOf(files, time);
}

std::optional<std::string> BundleFiles::text(std::string_view name) const {
    const auto file = files.find(std::string(name));
    if (file == files.end() || file->second.size_bytes > kLargestInBundle_bytes) {
        return std::nullopt;
    }
    const Archive archive = openBytes(packed);
    ensure(archive != nullptr, "an archive that was read can be read again");
    return readFile(archive.get(), file->second.place, file->second.size_bytes);
}

BundleFiles readBundle(const std::filesystem::path& path) {
    FileText whole = readWholeFile(path, kLargestBundle_bytes);
    if (!whole.text) {
        BundleFiles out;
        out.faults.push_back("The bundle " + shownPath(path) + " cannot be read: " + whole.fault);
        return out;
    }
    return readBundleBytes(std::move(*whole.text), shownPath(path));
}

BundleFiles readBundleBytes(std::string bytes, const std::string& name) {
    BundleFiles out;
    out.packed = std::move(bytes);
    const Archive archive = openBytes(out.packed);
    if (archive == nullptr) {
        out.faults.push_back(name + " is not a bundle: it cannot be read as a ZIP archive.");
        return out;
    }
    if (auto fault = boundFault(archive.get())) {  // before anything is unpacked
        out.faults.push_back(std::move(*fault));
        return out;
    }
    BundleLayout layout = layoutOf(out.packed);
    out.time = layout.time;
    out.faults = std::move(layout.faults);
    std::vector<std::string> more;
    out.files = filesOf(archive.get(), more);
    for (std::string& one : more) {  // the same may be said twice
        if (std::find(out.faults.begin(), out.faults.end(), one) == out.faults.end()) {
            out.faults.push_back(std::move(one));
        }
    }
    return out;
}

BundleCheck verifyBundle(const std::filesystem::path& path) {
    return verifyBundle(readBundle(path));
}

BundleCheck verifyBundle(const BundleFiles& read) {
    BundleCheck check;
    const auto& files = read.files;
    check.faults = read.faults;
    if (files.empty() && !check.faults.empty()) {
        return check;
    }
    const auto list = read.text(kBundleSums);
    const auto sums = list ? readSums(*list, {}) : std::nullopt;
    if (!sums || sums->empty()) {
        check.faults.emplace_back("There is no list of sums (SHA256SUMS) in the bundle that can be read.");
        return check;
    }
    compareSums(files, *sums, "the list (SHA256SUMS)", check.faults);
    for (const auto& [name, file] : files) {
        if (name != kBundleSums && !sums->contains(name)) {
            check.faults.push_back("The file " + shownText(name) + " is not in the list (SHA256SUMS).");
        }
    }
    for (const auto& [name, sum] : *sums) {
        check.names.push_back(name);
    }
    checkRun(read, check);
    return check;
}

std::optional<std::string> bundleFault(const std::vector<TextFile>& files) {
    const auto bundle = std::find_if(files.begin(), files.end(),
                                     [](const TextFile& file) { return file.name == kBundleName; });
    if (bundle == files.end()) {
        return std::nullopt;
    }
    const std::string shown = "The bundle of these papers";
    if (bundle->text.size() > kLargestBundle_bytes) {
        return shown + " is larger than " + std::to_string(kLargestBundle_bytes >> 20) +
               " MiB, the most that is read of one. Ask for fewer nights or ramps.";
    }
    const BundleFiles back = readBundleBytes(bundle->text, shown);
    return back.faults.empty() ? std::nullopt
                               : std::optional(shown + " could not be verified. " + back.faults.front());
}

}  // namespace engine
