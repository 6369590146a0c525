#include "tests/cli/run_cli.h"
#include "tests/pond_texts.h"
#include "tests/sentences.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <set>

namespace engine {
namespace {

namespace fs = std::filesystem;
using test::Cli;
using test::CliRun;
using test::expectContains;
using test::fileText;
using test::firstColumn;
using test::kPlainPond;
using test::placesSaid;
using test::saidIn;
using Texts = std::vector<std::string>;

constexpr std::array kFiles{"summary.csv", "daily.csv", "hourly.csv",  "layers.csv",
                            "budget.csv",  "gases.csv", "organic.csv", "advice.csv"};

class CliCompare : public Cli {
protected:
    void SetUp() override {
        Cli::SetUp();
        put("pond.toml", kPlainPond);
    }
    [[nodiscard]] std::set<std::string> names(const fs::path& folder) const {
        std::set<std::string> found;
        for (const auto& entry : fs::directory_iterator(m_folder / folder)) {
            found.insert(entry.path().filename().string());
        }
        return found;
    }
    /// Nothing but the pond file is there.
    void expectNothingWritten() const { EXPECT_EQ(names("."), std::set<std::string>{"pond.toml"}); }
    void expectSameFiles(const fs::path& a, const fs::path& b) const {
        for (const char* file : kFiles) {
            EXPECT_EQ(fileText(m_folder / a / file), fileText(m_folder / b / file)) << file;
        }
    }
    /// Another user than root, who may do everything; empty if that needs no change.
    [[nodiscard]] static std::string asSomeone() {
        return ::geteuid() == 0 ? "setpriv --reuid=65534 --regid=65534 --clear-groups" : "";
    }
};

TEST_F(CliCompare, WritesItsTablesAndSaysWhatTheyMean) {
    const CliRun run3 = run("compare pond.toml --days 3 --out new/deep");
    ASSERT_EQ(run3.code, 0) << run3.err;
    EXPECT_EQ(run3.err, "");
    EXPECT_EQ(names("new/deep"), std::set<std::string>(kFiles.begin(), kFiles.end()));
    EXPECT_TRUE(run3.out.starts_with("Test pond: 3 days from 2026-06-14.\n")) << run3.out;
    EXPECT_EQ(placesSaid(run3.out, SentenceKey::RampWorst, "ramp"), (Texts{"at once", "doubling", "gentle"}));
    EXPECT_EQ(saidIn(run3.out, SentenceKey::CautionComparison).size(), 1U);
    EXPECT_EQ(placesSaid(run3.out, SentenceKey::FilesWritten, "folder"), Texts{"\"new/deep\""});
    EXPECT_EQ(firstColumn(fileText(m_folder / "new/deep/summary.csv")),
              (Texts{"ramp", "do-nothing", "at once", "doubling", "gentle"}));
    // Design 6: the start, then each whole hour from 17:30 to noon after day 3; four runs.
    const std::string hourly = fileText(m_folder / "new/deep/hourly.csv");
    EXPECT_EQ(std::count(hourly.begin(), hourly.end(), '\n'), 1 + 4 * (1 + 7 + 3 * 24 + 12));
    const std::string budget = fileText(m_folder / "new/deep/budget.csv");
    EXPECT_EQ(std::count(budget.begin(), budget.end(), '\n'), 1 + 4 * (3 + 2)) << "days 0 to N + 1";
}

TEST_F(CliCompare, TheSameTwiceGivesTheSameBytesOnAnyNumberOfThreads) {
    ASSERT_EQ(run("compare pond.toml --days 4 --out a --seed 7").code, 0);
    ASSERT_EQ(run("compare pond.toml --days 4 --out b --seed 7").code, 0);
    ASSERT_EQ(run("compare pond.toml --days 4 --out c --seed 7 --threads 3").code, 0);
    expectSameFiles("a", "b");
    expectSameFiles("a", "c");
}

TEST_F(CliCompare, ACommaLocaleChangesNothing) {
    if (std::system("locale -a | grep -qix 'de_DE.utf-\\?8'") != 0) {
        GTEST_SKIP() << "There is no de_DE.UTF-8 here.";
    }
    ASSERT_EQ(run("compare pond.toml --days 3 --out a --step-s 600", "LC_ALL=C").code, 0);
    const CliRun comma = run("compare pond.toml --days 3 --out b --step-s 600.0", "LC_ALL=de_DE.UTF-8");
    ASSERT_EQ(comma.code, 0) << comma.err;
    expectSameFiles("a", "b");
    EXPECT_EQ(placesSaid(comma.out, SentenceKey::StressLine, "line"), Texts{"5.0"});
}

TEST_F(CliCompare, ReplacesItsOwnFilesAndNoOthers) {
    fs::create_directory(m_folder / "out");
    put("out/summary.csv", "old");
    put("out/notes.txt", "mine");
    ASSERT_EQ(run("compare pond.toml --days 2 --out out").code, 0);
    EXPECT_EQ(fileText(m_folder / "out/notes.txt"), "mine");
    EXPECT_EQ(firstColumn(fileText(m_folder / "out/summary.csv")).size(), 5U) << "header and four runs";
    EXPECT_EQ(names("out").size(), kFiles.size() + 1);
}

TEST_F(CliCompare, OptionsOfTheResolutionReachTheRun) {
    ASSERT_EQ(run("compare pond.toml --days 2 --out a --layers 20").code, 0);
    ASSERT_EQ(run("compare pond.toml --days 2 --out b --layers 20 --step-s 300").code, 0);
    const std::string layers = fileText(m_folder / "a/layers.csv");
    EXPECT_EQ(std::count(layers.begin(), layers.end(), '\n'), 1 + 4 * (1 + 7 + 2 * 24 + 12) * 20);
    EXPECT_NE(fileText(m_folder / "a/hourly.csv"), fileText(m_folder / "b/hourly.csv"));
}

TEST_F(CliCompare, ProgressGoesToStandardErrorAndOnlyThen) {
    const CliRun shown = run("compare pond.toml --days 2 --out out --progress");
    ASSERT_EQ(shown.code, 0);
    expectContains(shown.err, "100 %\n");
    EXPECT_EQ(shown.out.find(" %\n"), std::string::npos);
}

TEST_F(CliCompare, AFolderThatIsAFileIsRefused) {
    for (const char* folder : {"pond.toml", "pond.toml/below"}) {
        const CliRun refused = run(std::string("compare pond.toml --days 2 --out ") + folder);
        EXPECT_EQ(refused.code, 2);
        EXPECT_EQ(refused.out, "");
        expectContains(refused.err, "pond.toml\" is a file, not a folder.");
    }
    EXPECT_EQ(fileText(m_folder / "pond.toml"), kPlainPond);
    expectNothingWritten();
}

TEST_F(CliCompare, AReadOnlyFolderIsRefused) {
    if (!asSomeone().empty() && run("--version", asSomeone()).code != 0) {
        GTEST_SKIP() << "The program cannot be run as another user than root here.";
    }
    fs::create_directory(m_folder / "out");
    fs::permissions(m_folder / "out", fs::perms::owner_read | fs::perms::owner_exec | fs::perms::others_read |
                                          fs::perms::others_exec);
    for (const char* folder : {"out", "out/new"}) {
        const CliRun refused = run(std::string("compare pond.toml --days 2 --out ") + folder, asSomeone());
        EXPECT_EQ(refused.code, 2);
        EXPECT_EQ(refused.out, "");
        expectContains(refused.err, "cannot be written to");
        EXPECT_TRUE(names("out").empty());
    }
}

TEST_F(CliCompare, AFullDiskLeavesWhatWasThere) {
    fs::create_directory(m_folder / "out");
    put("out/summary.csv", "old");
    // A limit on the size of files stands for the full disk: 64 KiB hold the first tables, not the layers.
    const CliRun refused = run("compare pond.toml --days 3 --out out", "trap '' XFSZ; ulimit -f 64;");
    EXPECT_EQ(refused.code, 2) << refused.out;
    EXPECT_EQ(refused.out, "");
    expectContains(refused.err, ".csv\" cannot be written (");
    expectContains(refused.err, "Nothing was written.");
    EXPECT_EQ(fileText(m_folder / "out/summary.csv"), "old");
    EXPECT_EQ(names("out").size(), 1U);
}

TEST_F(CliCompare, AClosedStandardOutputIsSaid) {
    const CliRun refused = run("compare pond.toml --days 2 --out out > /dev/full");
    EXPECT_EQ(refused.code, 2);
    expectContains(refused.err, "Standard output cannot be written to.");
}

TEST_F(CliCompare, AnInterruptEndsTheRunEarlyAndWritesNothing) {
    // A year in many layers takes far longer than the second after which it is interrupted.
    const CliRun stopped = run("compare pond.toml --days 365 --layers 120 --out out",
                               "timeout --preserve-status --signal=INT 1");
    EXPECT_EQ(stopped.code, 1) << stopped.err;
    EXPECT_EQ(stopped.out, "");
    EXPECT_LT(stopped.seconds, 5.0) << "the request is heeded at the next step";
    expectContains(stopped.err, "Stopped on request before the runs were done. Nothing was written.");
    expectNothingWritten();
}

TEST_F(CliCompare, WhatNoLaptopHoldsIsRefusedAtOnce) {
    const CliRun refused = run("compare pond.toml --days 365 --layers 400 --out out");
    EXPECT_EQ(refused.code, 2);
    EXPECT_LT(refused.seconds, 5.0);
    expectContains(refused.err, "come to 584000 layer-days, but at most 200000 fit into memory.");
    expectNothingWritten();
}

TEST_F(CliCompare, WantOfMemoryIsAFaultOfOurs) {
#if defined(__SANITIZE_ADDRESS__)
    GTEST_SKIP() << "The address sanitizer needs more address space than the limit of this test leaves.";
#endif
    const CliRun broken = run("compare pond.toml --days 60 --out out", "ulimit -v 20000;");
    EXPECT_EQ(broken.code, 3);
    EXPECT_EQ(broken.out, "");
    expectContains(broken.err, "dawnline-cli: A fault of our own: ");
    expectNothingWritten();
}

TEST_F(CliCompare, EveryScenarioIsChecked) {
    const CliRun checked = run("check " + scenario("grandfathers-pond") + " " + scenario("new-clay") + " " +
                               scenario("courtyard-koi"));
    EXPECT_EQ(checked.code, 0) << checked.err;
    EXPECT_EQ(checked.err, "");
    Texts titles;
    for (const test::Places& line : saidIn(checked.out, SentenceKey::FileTitle)) {
        if (line.at("file").ends_with(".toml")) {  // else another sentence with a colon in it
            titles.push_back(line.at("title"));
        }
    }
    EXPECT_EQ(titles, (Texts{"Grandfather's Pond", "New Clay", "Courtyard Koi"}));
    const std::vector<test::Places> ramps = saidIn(checked.out, SentenceKey::FileRamp);
    EXPECT_TRUE(std::any_of(ramps.begin(), ramps.end(), [](const test::Places& ramp) {
        return ramp.at("ramp") == "gentle, twelve days" && ramp.at("kind") == englishTerm("table");
    })) << checked.out;
}

}  // namespace
}  // namespace engine
