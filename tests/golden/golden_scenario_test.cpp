// What the program says of each scenario, beside what it said when the file of that name was last made and
// looked at.

#include "tests/golden/golden_scenario.h"

#include "engine/base/files.h"
#include "engine/base/text_file.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <set>

namespace engine::test {
namespace {

namespace fs = std::filesystem;

/// Names of the files in a folder that end so, without that end.
std::set<std::string> namesIn(const fs::path& folder, const std::string& end) {
    std::set<std::string> names;
    for (const auto& entry : fs::directory_iterator(folder)) {
        if (entry.path().extension() == end) {
            names.insert(entry.path().stem().string());
        }
    }
    return names;
}

class GoldenScenario : public testing::TestWithParam<std::string> {};

TEST_P(GoldenScenario, IsAsItsFileSays) {
    const std::vector<GoldenLine> lines = goldenLines(GetParam());
    const std::string name = GetParam() + ".txt";
    if (std::getenv("DAWNLINE_REMAKE_GOLDEN") != nullptr) {
        ASSERT_EQ(writeFiles(DAWNLINE_GOLDEN, {{name, asText(lines)}}), std::nullopt);
        GTEST_SKIP() << name << " is made anew and was not compared.";
    }
    const FileText held = readWholeFile(fs::path(DAWNLINE_GOLDEN) / name, kPondFileLimit_bytes);
    ASSERT_TRUE(held.text) << name << ": " << held.fault;
    std::vector<std::string> found = differences(lines, *held.text);
    EXPECT_EQ(found.size(), 0U) << name << ": `bash tests/run --golden` shows all of it.";
    found.resize(std::min<std::size_t>(found.size(), 10));
    for (const std::string& difference : found) {
        ADD_FAILURE() << difference;
    }
}

INSTANTIATE_TEST_SUITE_P(Of, GoldenScenario, testing::ValuesIn(namesIn(DAWNLINE_SCENARIOS, ".toml")),
                         [](const auto& scenario) {
                             std::string name = scenario.param;
                             std::replace(name.begin(), name.end(), '-', '_');
                             return name;
                         });

TEST(GoldenFiles, AreThoseOfTheScenarios) {
    const std::set<std::string> scenarios = namesIn(DAWNLINE_SCENARIOS, ".toml");
    EXPECT_EQ(scenarios.size(), 11U);
    if (std::getenv("DAWNLINE_REMAKE_GOLDEN") != nullptr) {
        GTEST_SKIP() << "They are being made.";
    }
    EXPECT_EQ(namesIn(DAWNLINE_GOLDEN, ".txt"), scenarios);
}

}  // namespace
}  // namespace engine::test
