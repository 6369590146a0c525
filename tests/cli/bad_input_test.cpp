#include "engine/pond/pond_io.h"
#include "tests/cli/run_cli.h"
#include "tests/pond_texts.h"

#include <gtest/gtest.h>

namespace engine {
namespace {

using test::Cli;
using test::CliRun;
using test::expectContains;
using test::kPlainPond;
using test::with;

constexpr double kLongestRefusal_s = 1.0;  // the house's own limit for bad input

class CliBadInput : public Cli {
protected:
    /// What the engine says of a file in the test's folder, under the name that the program is given.
    [[nodiscard]] Diagnostics faultsOf(const std::string& pond) const {
        Diagnostics faults = readPond(m_folder / pond).diagnostics;
        for (Diagnostic& fault : faults) {
            fault.file = pond;
        }
        return faults;
    }
    static std::string lines(const Diagnostics& faults) {
        std::string text;
        for (const Diagnostic& fault : faults) {
            text += format(fault) + '\n';
        }
        return text;
    }
    /// Both commands refuse `pond` within a second with its one fault and nothing else, and write nothing.
    void expectRefused(const std::string& pond, int line, const std::string& key,
                       const std::string& sentence) const {
        SCOPED_TRACE(pond + ": " + sentence);
        const Diagnostics faults = faultsOf(pond);
        ASSERT_EQ(faults.size(), 1U) << lines(faults);
        EXPECT_EQ(faults[0].line, line);
        EXPECT_EQ(faults[0].key, key);
        expectContains(faults[0].sentence, sentence);
        for (const std::string& arguments : {"check " + pond, "compare " + pond + " --out out/deep"}) {
            const CliRun refused = run(arguments);
            EXPECT_EQ(refused.code, 2) << refused.err;
            EXPECT_LT(refused.seconds, kLongestRefusal_s);
            EXPECT_EQ(refused.out, "");
            EXPECT_EQ(refused.err, lines(faults));
            EXPECT_FALSE(std::filesystem::exists(m_folder / "out"));
        }
    }
    /// The same of the plain pond file with one place changed.
    void expectTextRefused(std::string_view from, std::string_view to, int line, const std::string& key,
                           const std::string& sentence) const {
        const std::string text = with(kPlainPond, from, to);
        ASSERT_FALSE(text.empty()) << from;
        put("bad.toml", text);
        expectRefused("bad.toml", line, key, sentence);
    }
};

TEST_F(CliBadInput, ThePlainPondIsGood) {
    put("good.toml", kPlainPond);
    EXPECT_EQ(run("check good.toml").code, 0);
}

TEST_F(CliBadInput, WhatIsNoPondFile) {
    expectRefused("missing.toml", 0, "", "There is no such file.");
    std::filesystem::create_directory(m_folder / "folder.toml");
    expectRefused("folder.toml", 0, "", "This is a directory, not a file.");
    put("empty.toml", "");
    const CliRun empty = run("check empty.toml");
    EXPECT_EQ(empty.code, 2);
    EXPECT_EQ(empty.out, "");
    EXPECT_EQ(empty.err, lines(faultsOf("empty.toml")));
    EXPECT_EQ(faultsOf("empty.toml").front().key, "format");
    put("binary.toml", std::string("\x7f"
                                   "ELF\x02\x01\x01\0\0\0\xff\xfe",
                                   12));
    expectRefused("binary.toml", 1, "", "not a text in UTF-8");
    std::filesystem::create_symlink("/dev/zero", m_folder / "zeros.toml");
    expectRefused("zeros.toml", 0, "", "not a regular file");
}

TEST_F(CliBadInput, AHundredMebibytesOfGarbage) {
    std::string block(1 << 20, '\0');
    unsigned state = 1;  // a fixed sequence, so that the test repeats
    for (char& c : block) {
        state = state * 1664525U + 1013904223U;
        c = static_cast<char>(state >> 24U);
    }
    {
        std::ofstream garbage(m_folder / "garbage.toml", std::ios::binary);
        for (int i = 0; i < 100; ++i) {
            garbage << block;
        }
    }
    expectRefused("garbage.toml", 0, "", "larger than 4 MiB");
    put("small.toml", block);
    expectRefused("small.toml", 1, "", "not a text in UTF-8");
}

TEST_F(CliBadInput, WrongTypesAndNumbersThatAreNone) {
    expectTextRefused("area_m2 = 8000", "area_m2 = \"8000\"", 13, "basin.area_m2", "must be a number");
    expectTextRefused("area_m2 = 8000", "area_m2 = nan", 13, "basin.area_m2", "not a number");
    expectTextRefused("area_m2 = 8000", "area_m2 = -8000", 13, "basin.area_m2", "-8000");
    expectTextRefused("area_m2 = 8000", "area_m2 = 1e300", 13, "basin.area_m2", "1e+300");
    expectTextRefused("area_m2 = 8000", "area_m2 = inf", 13, "basin.area_m2", "infinite");
    expectTextRefused("secchi_m = 0.45", "secchi_m = true", 23, "water.secchi_m", "must be a number");
    expectTextRefused("depth_m = [0, 1, 2, 3]", "depth_m = 3", 32, "profile.depth_m", "a list of numbers");
}

TEST_F(CliBadInput, DepthsBelowTheBottom) {
    expectTextRefused("diffusers = 2\ndepth_m = 3\n", "diffusers = 2\ndepth_m = 3.5\n", 55, "aerator.depth_m",
                      "3.4");
    expectTextRefused("depth_m = [0, 1, 2, 3]", "depth_m = [0, 1, 2, 30]", 32, "profile.depth_m[4]", "30");
}

TEST_F(CliBadInput, RampsOfOneNameOrOfAKeptOne) {
    expectTextRefused("name = \"doubling\"", "name = \"at once\"", 65, "ramp[2].name", "at once");
    expectTextRefused("name = \"at once\"", "name = \"do-nothing\"", 61, "ramp[1].name", "do-nothing");
}

TEST_F(CliBadInput, SlipsAndSyntax) {
    put("bad.toml", with(kPlainPond, "area_m2 = 8000", "aera_m2 = 8000"));
    const Diagnostics slip = faultsOf("bad.toml");
    ASSERT_EQ(slip.size(), 2U) << "one key is missing and one too many";
    EXPECT_EQ(slip[0].key, "basin.area_m2");
    EXPECT_EQ(slip[1].key, "basin.aera_m2");
    EXPECT_EQ(slip[1].line, 13);
    EXPECT_EQ(slip[1].sentence, "There is no such key here; did you mean \"area_m2\"?");
    EXPECT_EQ(run("check bad.toml").err, lines(slip));
    expectTextRefused("area_m2 = 8000", "area_m2 = = 8000", 13, "", "is no number, text in quotes, date or list");
}

TEST_F(CliBadInput, EveryFaultOfEveryFileIsSaid) {
    put("good.toml", kPlainPond);
    put("bad.toml",
        with(with(kPlainPond, "area_m2 = 8000", "area_m2 = -1"), "secchi_m = 0.45", "secchi_m = 0"));
    const CliRun checked = run("check missing.toml bad.toml good.toml");
    EXPECT_EQ(checked.code, 2);
    const Diagnostics bad = faultsOf("bad.toml");
    ASSERT_EQ(bad.size(), 2U);
    EXPECT_EQ(bad[0].key, "basin.area_m2");
    EXPECT_EQ(bad[0].line, 13);
    EXPECT_EQ(bad[1].key, "water.secchi_m");
    EXPECT_EQ(bad[1].line, 23);
    EXPECT_EQ(checked.err, "missing.toml: There is no such file.\n" + lines(bad));
    EXPECT_TRUE(checked.out.starts_with("good.toml: Test pond\n")) << checked.out;
}

}  // namespace
}  // namespace engine
