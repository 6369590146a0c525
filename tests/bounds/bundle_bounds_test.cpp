// How much memory a bundle takes that unpacks to far more than it is.
#include "engine/output/bundle.h"
#include "tests/temporary_folder.h"

#include <gtest/gtest.h>

#include <chrono>
#include <fstream>
#include <string>
#include <vector>

namespace engine::test {
namespace {

/// A figure of this process, such as VmHWM, the most memory since it was last asked to forget [MiB].
double memory_mib(const std::string& name) {
    std::ifstream status("/proc/self/status");
    for (std::string line; std::getline(status, line);) {
        if (line.starts_with(name + ':')) {
            return std::stod(line.substr(name.size() + 1)) / 1024.0;
        }
    }
    return -1.0;
}

/// A bundle of tables that come to 480 MiB, written in a scope of its own.
std::filesystem::path writeLarge(const TemporaryFolder& folder) {
    std::vector<TextFile> files;
    for (int table = 0; table < 8; ++table) {
        std::string rows;
        rows.reserve(std::size_t{60} << 20);
        while (rows.size() + 32 < std::size_t{60} << 20) {
            rows += "gentle, twelve days,0,0.5,24,5\r\n";
        }
        files.push_back({"table" + std::to_string(table) + ".csv", std::move(rows)});
    }
    const auto time = std::chrono::sys_days(std::chrono::year(2026) / 6 / 14);
    return folder.write("bundle.zip", bundleOf(std::move(files), time));
}

TEST(BundleBounds, WhatItUnpacksToIsNotInMemoryAtOnce) {
    const TemporaryFolder folder;
    const auto path = writeLarge(folder);
    std::ofstream("/proc/self/clear_refs") << 5;  // forget the most, says proc(5)
    const double before_mib = memory_mib("VmRSS");
    ASSERT_GT(before_mib, 0.0);
    ASSERT_LT(memory_mib("VmHWM") - before_mib, 20.0) << "it has forgotten";
    const BundleCheck check = verifyBundle(path);
    EXPECT_EQ(check.names.size(), 8U);
    ASSERT_EQ(check.faults.size(), 1U) << "it holds no run";
    EXPECT_LT(memory_mib("VmHWM") - before_mib, static_cast<double>(kLargestInBundle_bytes >> 20));
}

}  // namespace
}  // namespace engine::test
