#include "engine/output/run_tables.h"

#include "engine/pond/pond_io.h"
#include "tests/scenario.h"
#include "tests/temporary_folder.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace engine::test {
namespace {

const std::chrono::sys_seconds kTime = std::chrono::sys_days(std::chrono::year(2026) / 6 / 14);

/// The files of a bundle of a short run, without papers.
std::vector<TextFile> bundled(const std::string& name) {
    const auto frozen = freeze(scenario(name), {});
    const FrozenRun run = runFrozen(std::get<FrozenPond>(frozen), {"1.2", kTime, 3, 4, 0, ""}, 3);
    std::vector<TextFile> files = run.files;
    files.push_back({std::string(kFrozenStatement), statementOf(run.files, run.stamp)});
    for (TextFile& table : runTables(run)) {
        files.push_back(std::move(table));
    }
    return files;
}

BundleFiles read(const std::vector<TextFile>& files) {
    return readBundleBytes(bundleOf(files, kTime), "bundle.zip");
}

TextFile& fileOf(std::vector<TextFile>& files, std::string_view name) {
    return *std::find_if(files.begin(), files.end(), [&](const TextFile& file) { return file.name == name; });
}

TEST(RunTables, AreTheSameWhenComputedAgainFromTheBundle) {
    for (const char* name : {"grandfathers-pond", "windy-dugout", "courtyard-koi"}) {
        SCOPED_TRACE(name);
        const BundleFiles bundle = read(bundled(name));
        EXPECT_TRUE(verifyBundle(bundle).faults.empty());
        const Recomputation again = recompute(bundle, "1.2");
        EXPECT_FALSE(again.notRun) << *again.notRun;
        EXPECT_GE(again.tables, 8U);
        for (const std::string& fault : again.faults) {
            ADD_FAILURE() << fault;
        }
    }
}

TEST(RunTables, ATableThatTheInputsDoNotComeToIsNamedThoughAllSumsAreRight) {
    std::vector<TextFile> files = bundled("windy-dugout");
    fileOf(files, "summary.csv").text += "one more,,,,,,,,,,,,,\r\n";
    files.push_back({"review.csv", "day\r\n"});
    const BundleFiles bundle = read(files);
    EXPECT_TRUE(verifyBundle(bundle).faults.empty()) << "the list is made anew with the table";
    const Recomputation again = recompute(bundle, "1.2");
    ASSERT_EQ(again.faults.size(), 2U);
    EXPECT_EQ(again.faults[0],
              "The table \"summary.csv\" is not the one that the inputs in the bundle come to.");
    EXPECT_EQ(again.faults[1], "The table \"review.csv\" is none of this run.");
}

TEST(RunTables, OfAnotherVersionAreNotComputedAndSoIsSaid) {
    const Recomputation again = recompute(read(bundled("windy-dugout")), "1.3");
    ASSERT_TRUE(again.notRun);
    EXPECT_NE(again.notRun->find("made by version 1.2 and this is version 1.3"), std::string::npos);
    EXPECT_TRUE(again.faults.empty());
}

}  // namespace
}  // namespace engine::test
