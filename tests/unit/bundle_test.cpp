#include "engine/bundle.h"

#include "engine/digest.h"
#include "engine/frozen_run.h"
#include "tests/temporary_folder.h"

#include <gtest/gtest.h>

#include <algorithm>

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
    for (std::size_t at = 0; at < bytes.size(); at += 7) {
        bytes[at] = static_cast<char>(bytes[at] ^ 0x10);
        const BundleCheck check = verifyBundle(folder.write("bundle.zip", bytes));
        bytes[at] = static_cast<char>(bytes[at] ^ 0x10);
        found += check.faults.empty() ? 0 : 1;
        ++places;
    }
    // What is not found are bits of the archive's own dress: times, attributes, versions of tools.
    EXPECT_GT(found, places * 7 / 10);
}

TEST(Bundle, WhatIsNoArchiveIsRefusedInWords) {
    const TemporaryFolder folder;
    EXPECT_TRUE(says(verifyBundle(folder.write("x.zip", "no archive")), "cannot be read as a ZIP archive"));
    EXPECT_TRUE(says(verifyBundle(folder.path() / "none.zip"), "cannot be read"));
    EXPECT_TRUE(says(verifyBundle(folder.path()), "cannot be read"));
}

}  // namespace
}  // namespace engine
