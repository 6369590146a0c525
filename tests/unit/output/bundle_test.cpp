#include "engine/output/bundle.h"

#include "engine/advice/frozen_run.h"
#include "engine/base/digest.h"
#include "engine/output/bundle_layout.h"
#include "tests/temporary_folder.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdint>
#include <ctime>
#include <limits>
#include <optional>
#define ZLIB_CONST  // its input is not written to
#include <zlib.h>

namespace engine {
namespace {

using test::TemporaryFolder;

const std::chrono::sys_seconds kTime = std::chrono::sys_days(std::chrono::year(2026) / 6 / 14);

std::vector<TextFile> goodFiles() {
    const std::vector<TextFile> inputs{{"pond.toml", "format = 1\n"}, {"weather.csv", "at\r\n"}};
    const std::string statement = statementOf(inputs, {"1", kTime, 1, 8, 19, "fast"});
    std::vector<TextFile> files = inputs;
    files.push_back({"run.txt", statement});
    files.push_back({"a.pdf", "%PDF run " + sha256(statement)});
    return files;
}

BundleCheck checked(const std::vector<TextFile>& files) {
    const TemporaryFolder folder;
    return verifyBundle(folder.write("bundle.zip", bundleOf(files, kTime)));
}

/// A file of an archive that is put together by hand, where the archive may lie about it.
struct Packed {
    std::string name, content;
    std::optional<std::uint64_t> claimedSize;  ///< bytes
    std::optional<std::uint32_t> claimedCrc;
    std::string behindStream;  ///< Within the size that the packed content is said to have
    std::string stream;        ///< In place of the packed content
};

/// Bytes of an archive that belong to none of its files.
struct Hidden {
    std::string inFront, between, behindDirectory, behindEnd;
    std::string comment, fileComment, extraHere, extraInDirectory;
};

/// Lowest byte first, as ZIP writes numbers.
std::string lowFirst(std::uint64_t number, int bytes) {
    std::string text;
    for (int i = 0; i < bytes; ++i) {
        text += static_cast<char>((number >> (8 * i)) & 0xFFU);
    }
    return text;
}

/// The CRC-32 of ZIP: bits reflected, polynomial EDB88320.
std::uint32_t crcOf(std::string_view text) {
    std::uint32_t crc = ~0U;
    for (const char c : text) {
        crc ^= static_cast<unsigned char>(c);
        for (int bit = 0; bit < 8; ++bit) {
            crc = (crc >> 1U) ^ ((crc & 1U) != 0 ? 0xEDB88320U : 0U);
        }
    }
    return ~crc;
}

/// A deflate stream of one last block that is not compressed (RFC 1951, 3.2.4).
std::string deflated(const std::string& content) {
    return '\x01' + lowFirst(content.size(), 2) + lowFirst(~content.size(), 2) + content;
}

/// Sizes above 32 bits go into an extra field, as ZIP64 has it.
std::string archiveOf(const std::vector<Packed>& files, const Hidden& hidden = {}) {
    constexpr std::uint64_t kMost = std::numeric_limits<std::uint32_t>::max();
    std::string bytes = hidden.inFront, directory;
    for (const Packed& file : files) {
        const std::string stream =
            file.stream.empty() ? deflated(file.content) + file.behindStream : file.stream;
        const std::uint64_t size = file.claimedSize.value_or(file.content.size());
        const bool isWide = size >= kMost;
        const std::string extra =
            isWide ? lowFirst(1, 2) + lowFirst(16, 2) + lowFirst(size, 8) + lowFirst(stream.size(), 8)
                   : hidden.extraHere;
        const std::string extraInDirectory =
            isWide ? lowFirst(1, 2) + lowFirst(8, 2) + lowFirst(size, 8) : hidden.extraInDirectory;
        // Version 4.5, name in UTF-8, deflate, midnight of 14 June 2026, check sum.
        const std::string both = lowFirst(45, 2) + lowFirst(0x800, 2) + lowFirst(8, 2) +
                                 lowFirst(std::uint64_t{46U << 9U | 6U << 5U | 14U} << 16U, 4) +
                                 lowFirst(file.claimedCrc.value_or(crcOf(file.content)), 4);
        const std::string sizeAndName = lowFirst(std::min(size, kMost), 4) + lowFirst(file.name.size(), 2);
        directory += "PK\x01\x02" + lowFirst(3 << 8 | 45, 2) + both + lowFirst(stream.size(), 4) +
                     sizeAndName + lowFirst(extraInDirectory.size(), 2) +
                     lowFirst(hidden.fileComment.size(), 2) + lowFirst(0, 4) +
                     lowFirst(std::uint64_t{0100644} << 16U, 4) + lowFirst(bytes.size(), 4) + file.name +
                     extraInDirectory + hidden.fileComment;
        bytes += "PK\x03\x04" + both + lowFirst(isWide ? kMost : stream.size(), 4) + sizeAndName +
                 lowFirst(extra.size(), 2) + file.name + extra + stream + hidden.between;
    }
    const std::string end = "PK\x05\x06" + lowFirst(0, 4) + lowFirst(files.size(), 2) +
                            lowFirst(files.size(), 2) + lowFirst(directory.size(), 4) +
                            lowFirst(bytes.size(), 4) + lowFirst(hidden.comment.size(), 2);
    return bytes + directory + hidden.behindDirectory + end + hidden.comment + hidden.behindEnd;
}

/// The good files and their list, to be put together by hand.
std::vector<Packed> goodPacked() {
    std::vector<Packed> packed;
    std::string sums;
    for (const TextFile& file : goodFiles()) {
        packed.push_back({file.name, file.text, {}, {}, {}, {}});
        sums += sha256(file.text) + "  " + file.name + '\n';
    }
    packed.push_back({std::string(kBundleSums), sums, {}, {}, {}, {}});
    return packed;
}

BundleCheck checkedByHand(const std::vector<Packed>& files, const Hidden& hidden = {}) {
    const TemporaryFolder folder;
    return verifyBundle(folder.write("bundle.zip", archiveOf(files, hidden)));
}

bool says(const BundleCheck& check, const std::string& part) {
    return std::any_of(check.faults.begin(), check.faults.end(),
                       [&](const std::string& fault) { return fault.find(part) != std::string::npos; });
}

TEST(Bundle, OfARunIsWholeAndTheSameBytesTwice) {
    const BundleCheck check = checked(goodFiles());
    EXPECT_TRUE(check.faults.empty()) << check.faults.front();
    EXPECT_EQ(check.run, sha256(goodFiles()[2].text));
    EXPECT_EQ(check.names.size(), 4U);
    EXPECT_EQ(bundleOf(goodFiles(), kTime), bundleOf(goodFiles(), kTime));
}

TEST(Bundle, AnInputThatIsNotTheRunsIsNamed) {
    auto files = goodFiles();
    files[0].text += "# changed\n";
    EXPECT_TRUE(says(checked(files), "\"pond.toml\" is not the one that the run (run.txt) names"));
}

TEST(Bundle, APaperOfAnotherRunIsNamed) {
    auto files = goodFiles();
    files[3].text = "%PDF run 0000";
    EXPECT_TRUE(says(checked(files), "\"a.pdf\" is of another run"));
}

TEST(Bundle, WithoutAStatementIsNone) {
    EXPECT_TRUE(says(checked({{"pond.toml", "x"}}), "no statement of a run"));
}

TEST(Bundle, ABitThatFellOverIsFound) {
    const TemporaryFolder folder;
    std::string bytes = bundleOf(goodFiles(), kTime);
    int found = 0, places = 0;
    for (std::size_t at = 0; at < bytes.size(); ++at) {
        const int bit = 1 << (at % 8);
        bytes[at] = static_cast<char>(bytes[at] ^ bit);
        const BundleCheck check = verifyBundle(folder.write("bundle.zip", bytes));
        bytes[at] = static_cast<char>(bytes[at] ^ bit);
        found += check.faults.empty() ? 0 : 1;
        ++places;
    }
    // What is not found is, of each file, the byte that says which version of a ZIP library wrote it, and
    // bits that fill up the last byte of its packed content.
    const int files = static_cast<int>(goodFiles().size()) + 1;
    EXPECT_GE(found, places - 2 * files);
}

TEST(Bundle, WhatIsNoArchiveIsRefusedInWords) {
    const TemporaryFolder folder;
    EXPECT_TRUE(says(verifyBundle(folder.write("x.zip", "no archive")), "cannot be read as a ZIP archive"));
    EXPECT_TRUE(says(verifyBundle(folder.path() / "none.zip"), "cannot be read"));
    EXPECT_TRUE(says(verifyBundle(folder.path()), "cannot be read"));
}

TEST(Bundle, PutTogetherByHandIsWhole) {
    const BundleCheck check = checkedByHand(goodPacked());
    EXPECT_TRUE(check.faults.empty()) << check.faults.front();
    EXPECT_EQ(check.names.size(), 4U);
}

TEST(Bundle, SizesWhoseSumWrapsAreRefusedInWords) {
    auto files = goodPacked();
    files[1].claimedSize = std::numeric_limits<std::uint64_t>::max() - files[0].content.size() + 1;
    EXPECT_TRUE(says(checkedByHand(files), "come to more than 1024 MiB"));
}

/// A deflate stream of zeros that a small part of is repeated in: a full flush forgets what was before it.
std::string packedZeros(std::size_t parts, std::size_t part_bytes) {
    const std::string zeros(part_bytes, '\0');
    std::string part(part_bytes / 100, '\0');
    z_stream stream{};
    EXPECT_EQ(deflateInit2(&stream, 9, Z_DEFLATED, -MAX_WBITS, 8, Z_DEFAULT_STRATEGY), Z_OK);
    stream.next_in = reinterpret_cast<const Bytef*>(zeros.data());
    stream.avail_in = static_cast<uInt>(zeros.size());
    stream.next_out = reinterpret_cast<Bytef*>(part.data());
    stream.avail_out = static_cast<uInt>(part.size());
    EXPECT_EQ(deflate(&stream, Z_FULL_FLUSH), Z_OK);
    part.resize(stream.total_out);
    deflateEnd(&stream);
    std::string all;
    for (std::size_t i = 0; i < parts; ++i) {
        all += part;
    }
    return all;
}

double busy_s() {
    return static_cast<double>(std::clock()) / CLOCKS_PER_SEC;
}

TEST(Bundle, WhatWouldFillTheMemoryIsRefusedBeforeAnythingIsUnpacked) {
    constexpr std::size_t kParts = 80, kPart_bytes = std::size_t{16} << 20;
    auto files = goodPacked();
    files[1].stream = packedZeros(kParts, kPart_bytes) + deflated("");
    files[1].claimedSize = kParts * kPart_bytes;
    const std::string bytes = archiveOf(files);
    ASSERT_LT(bytes.size(), std::size_t{4} << 20);
    double start = busy_s();
    EXPECT_TRUE(layoutOf(bytes).faults.empty()) << "else it would be refused for another reason";
    const double unpacked_s = busy_s() - start;
    start = busy_s();
    const BundleCheck check = verifyBundle(readBundleBytes(bytes, "bundle.zip"));
    EXPECT_LT(busy_s() - start, unpacked_s / 10.0);
    EXPECT_EQ(check.faults,
              std::vector<std::string>{"The files of the bundle come to more than 1024 MiB, the "
                                       "most that is read."});
}

TEST(Bundle, AFileThatGoesOnBehindItsSizeIsNamed) {
    auto files = goodPacked();
    files[1].claimedSize = files[1].content.size();
    files[1].content += "2026-06-14T12:00,99\r\n";
    EXPECT_TRUE(says(checkedByHand(files), "\"weather.csv\" cannot be read whole"));
}

TEST(Bundle, BytesBehindTheEndOfAPackedFileAreFound) {
    auto files = goodPacked();
    files[1].behindStream = "99,one row more";
    EXPECT_TRUE(says(checkedByHand(files), "\"weather.csv\" cannot be read whole"));
}

TEST(Bundle, ADirectoryThatSaysSomethingElseThanTheFilesIsFound) {
    const TemporaryFolder folder;
    const std::string bytes = archiveOf(goodPacked());
    std::string other = bytes;
    other.replace(other.rfind("weather.csv"), 11, "weathex.csv");
    EXPECT_FALSE(verifyBundle(folder.write("bundle.zip", other)).faults.empty());
    // A second directory in front of the one that counts, which a careless reader takes.
    const std::size_t directory = bytes.find("PK\x01\x02");
    other = bytes.substr(0, directory) + bytes.substr(directory, bytes.size() - 22 - directory) +
            bytes.substr(directory);
    const std::size_t end = other.size() - 22;
    other.replace(end + 16, 4, lowFirst(directory + (bytes.size() - 22 - directory), 4));
    EXPECT_TRUE(
        says(verifyBundle(folder.write("bundle.zip", other)), "bytes that belong to none of its files"));
}

TEST(Bundle, NamesAreOnceAndLeadNowhereElse) {
    auto files = goodPacked();
    files.push_back(files.front());
    EXPECT_FALSE(checkedByHand(files).faults.empty());
    const BundleLayout twice = layoutOf(archiveOf(files));
    ASSERT_EQ(twice.faults.size(), 1U);
    EXPECT_EQ(twice.faults.front(), "There are two files \"pond.toml\" in the bundle.");
    for (const char* name : {"../x", "/x", "a/../../x", "a\\b", "a\nb", "x/"}) {
        files = goodPacked();
        files.push_back({name, "x", {}, {}, {}, {}});
        EXPECT_TRUE(says(checkedByHand(files), "is none of ours")) << name;
    }
}

TEST(Bundle, TheRunsNameIsMadeAnewFromTheInputs) {
    // A file that the statement does not name, though list and statement are whole.
    std::vector<TextFile> files;
    for (const char* name : {"readings.csv", "climate.epw"}) {
        files = goodFiles();
        files.push_back({name, "at\r\n"});
        EXPECT_TRUE(says(checked(files), "not the one that the inputs in the bundle make")) << name;
    }
    // A line that no statement of ours has.
    files = goodFiles();
    files[2].text += "and more\n";
    files[3].text = "%PDF run " + sha256(files[2].text);
    EXPECT_TRUE(says(checked(files), "not the one that the inputs in the bundle make"));
    const TemporaryFolder folder;
    const auto other = folder.write("bundle.zip", bundleOf(goodFiles(), kTime + std::chrono::hours(1)));
    EXPECT_TRUE(says(verifyBundle(other), "do not bear the time of the run"));
}

TEST(Bundle, AFileOfAnotherCheckSumIsNamed) {
    auto files = goodPacked();
    files[0].claimedCrc = crcOf(files[0].content) ^ 1U;
    EXPECT_TRUE(says(checkedByHand(files), "\"pond.toml\" cannot be read whole"));
}

TEST(Bundle, BytesThatBelongToNoFileAreRefused) {
    const std::string bytes = "99,one row more\r\n";
    std::string Hidden::*const places[] = {
        &Hidden::inFront,     &Hidden::between,   &Hidden::behindDirectory, &Hidden::comment,
        &Hidden::fileComment, &Hidden::extraHere, &Hidden::extraInDirectory};
    for (const auto place : places) {
        Hidden hidden;
        hidden.*place = place == &Hidden::extraHere || place == &Hidden::extraInDirectory
                            ? lowFirst(0xCAFE, 2) + lowFirst(bytes.size(), 2) + bytes
                            : bytes;
        EXPECT_TRUE(says(checkedByHand(goodPacked(), hidden), "holds bytes that belong to none of its files"))
            << "place " << std::find(std::begin(places), std::end(places), place) - std::begin(places);
    }
    Hidden hidden;
    hidden.behindEnd = bytes;
    EXPECT_TRUE(says(checkedByHand(goodPacked(), hidden), "cannot be read as a ZIP archive"));
}

}  // namespace
}  // namespace engine
