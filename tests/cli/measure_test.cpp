#include "tests/cli/run_cli.h"
#include "tests/pond_texts.h"
#include "tests/sentences.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace engine {
namespace {

using test::Cli;
using test::CliRun;
using test::expectContains;
using test::fileText;
using test::firstColumn;
using test::kPlainPond;
using test::placesSaid;
using test::saidIn;
using test::with;
using Texts = std::vector<std::string>;

class CliMeasure : public Cli {
protected:
    void SetUp() override {
        Cli::SetUp();
        put("pond.toml", kPlainPond);
    }
    void expectRefused(const std::string& arguments, const std::string& sentence) const {
        SCOPED_TRACE(arguments);
        const CliRun refused = run("measure " + arguments);
        EXPECT_EQ(refused.code, 2);
        EXPECT_EQ(refused.out, "");
        expectContains(refused.err, "dawnline-cli: " + sentence);
        EXPECT_FALSE(std::filesystem::exists(m_folder / "out"));
    }
};

TEST_F(CliMeasure, WritesItsTablesAndSaysWhatToMeasure) {
    const CliRun done = run("measure pond.toml --out out --ramp doubling --members 100 --progress");
    ASSERT_EQ(done.code, 0) << done.err;
    EXPECT_EQ(placesSaid(done.out, SentenceKey::MeasureTitle, "ramp"), Texts{"doubling"}) << done.out;
    EXPECT_EQ(placesSaid(done.out, SentenceKey::MeasureWorst, "members"), Texts{"100"}) << done.out;
    EXPECT_FALSE(saidIn(done.out, SentenceKey::MeasureVisit).empty()) << done.out;
    EXPECT_EQ(saidIn(done.out, SentenceKey::CautionComparison).size(), 1U);
    EXPECT_EQ(placesSaid(done.out, SentenceKey::FilesWritten, "folder"), Texts{"\"out\""});
    expectContains(done.err, "100 %\n");
    const std::string shares = fileText(m_folder / "out/measure.csv");
    EXPECT_TRUE(shares.starts_with(
        "input,low,high,worst_at_low_mg_per_l,worst_at_high_mg_per_l,share_of_variance\r\n"));
    const Texts inputs = firstColumn(shares);
    EXPECT_EQ(std::count(inputs.begin(), inputs.end(), "oxygen_debt_mg_per_l"), 1);
    const std::string gain = fileText(m_folder / "out/measure_gain.csv");
    EXPECT_EQ(std::count(shares.begin(), shares.end(), '\n'), std::count(gain.begin(), gain.end(), '\n'));
    ASSERT_EQ(run("measure pond.toml --out again --ramp doubling --members 100 --threads 3").code, 0);
    EXPECT_EQ(fileText(m_folder / "again/measure.csv"), shares);
    EXPECT_EQ(fileText(m_folder / "again/measure_gain.csv"), gain);
}

TEST_F(CliMeasure, RefusesWhatItCannotDo) {
    expectRefused("pond.toml --out out --ramp gentel",
                  "The pond file has no ramp \"gentel\"; the nearest is \"gentle\".");
    expectRefused("pond.toml --out out --members 99",
                  "The option --members is \"99\", but must be a whole number from 100 to 10000.");
    expectRefused("pond.toml --out out --days 3", "There is no option \"--days\"");
    expectRefused("pond.toml --out out --line 4", "There is no option \"--line\"");
    expectRefused("pond.toml --out out --ramp a --ramp b", "The option --ramp is given more than once.");
    expectRefused("pond.toml", "The command measure needs --out and a folder for its tables.");
    expectRefused("--out out", "The command measure needs a pond file.");
}

TEST_F(CliMeasure, AWarningOfTheProfileChangesNoExit) {
    put("hot.toml", with(kPlainPond, "oxygen_mg_per_l = [8.5,", "oxygen_mg_per_l = [14.5,"));
    const CliRun checked = run("check hot.toml");
    EXPECT_EQ(checked.code, 0);
    EXPECT_EQ(placesSaid(checked.out, SentenceKey::ProfileSupersaturated, "oxygen"), Texts{"14.5"})
        << checked.out;
    EXPECT_EQ(placesSaid(checked.out, SentenceKey::ProfileSupersaturated, "depth"), Texts{"0.0"});
    EXPECT_EQ(saidIn(checked.out, SentenceKey::TriageOfTheStart).size(), 1U);
}

}  // namespace
}  // namespace engine
