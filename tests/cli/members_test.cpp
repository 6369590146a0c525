#include "engine/base/text.h"
#include "tests/cli/run_cli.h"
#include "tests/pond_texts.h"
#include "tests/sentences.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <sstream>
#include <vector>

namespace engine {
namespace {

using test::CliRun;
using test::expectContains;
using test::fileText;
using test::kPlainPond;
using test::saidIn;

class CliMembers : public test::Cli {
protected:
    void SetUp() override {
        Cli::SetUp();
        put("pond.toml", kPlainPond);
    }
    /// The numbers of a table's last `count` columns, header left out. No name of the plain pond holds a
    /// comma.
    [[nodiscard]] std::vector<std::vector<double>> lastColumns(const std::string& file,
                                                               std::size_t count) const {
        std::istringstream lines(fileText(m_folder / file));
        std::string line;
        std::getline(lines, line);
        std::vector<std::vector<double>> rows;
        while (std::getline(lines, line)) {
            line.pop_back();  // the carriage return
            std::vector<double> row;
            for (std::size_t i = 0; i < count; ++i) {
                const std::size_t comma = line.rfind(',');
                row.insert(row.begin(), toNumber(line.substr(comma + 1)).value());
                line.resize(comma);
            }
            rows.push_back(row);
        }
        return rows;
    }
};

TEST_F(CliMembers, TheyFillPercentilesAndChances) {
    const CliRun run12 = run("compare pond.toml --days 2 --layers 16 --members 12 --out out");
    ASSERT_EQ(run12.code, 0) << run12.err;
    EXPECT_EQ(saidIn(run12.out, SentenceKey::AdviceChanceAlone).size(), 2U);
    EXPECT_EQ(saidIn(run12.out, SentenceKey::AdviceChance).size() +
                  saidIn(run12.out, SentenceKey::AdviceMore).size() +
                  saidIn(run12.out, SentenceKey::AdviceFewer).size(),
              6U)
        << "two lines for each of three ramps";
    const auto drawn = saidIn(run12.out, SentenceKey::MembersDrawn);
    ASSERT_EQ(drawn.size(), 1U) << run12.out;
    EXPECT_EQ(drawn[0], (test::Places{{"members", "12"}, {"seed", "1"}}));
    bool isSpread = false;
    const auto hours = lastColumns("out/hourly.csv", 5);
    ASSERT_FALSE(hours.empty());
    for (const auto& row : hours) {
        EXPECT_TRUE(std::is_sorted(row.begin(), row.end()));
        isSpread = isSpread || row.back() - row.front() > 0.5;
    }
    EXPECT_TRUE(isSpread);
    const auto chances = lastColumns("out/summary.csv", 3);
    ASSERT_EQ(chances.size(), 4U);
    EXPECT_EQ(chances[0][2], 0.0) << "do-nothing adds no chance to its own";
    for (const auto& row : chances) {
        EXPECT_GE(row[0], row[1]) << "the lethal line is the lower one";
        EXPECT_NEAR(row[2], row[0] - chances[0][0], 1e-12) << "with the ramp minus left alone";
    }
    EXPECT_GT(chances[1][1], chances[0][1]) << "air at once kills in more of these ponds than none";
}

TEST_F(CliMembers, SeedAndNumberDecideAndThreadsDoNot) {
    const std::string call = "compare pond.toml --days 2 --layers 16 --members 9 ";
    ASSERT_EQ(run(call + "--threads 1 --out one").code, 0);
    ASSERT_EQ(run(call + "--threads 3 --out three").code, 0);
    ASSERT_EQ(run(call + "--seed 2 --out other").code, 0);
    for (const char* file : {"summary.csv", "daily.csv", "hourly.csv", "layers.csv", "budget.csv"}) {
        EXPECT_EQ(fileText(m_folder / "one" / file), fileText(m_folder / "three" / file)) << file;
    }
    EXPECT_NE(fileText(m_folder / "one/hourly.csv"), fileText(m_folder / "other/hourly.csv"));
    EXPECT_EQ(fileText(m_folder / "one/daily.csv"), fileText(m_folder / "other/daily.csv"))
        << "of the central run";
}

TEST_F(CliMembers, AnInterruptEndsThemEarly) {
    const CliRun stopped = run("compare pond.toml --days 14 --members 10000 --out out",
                               "timeout --preserve-status --signal=INT 2");
    EXPECT_EQ(stopped.code, 1) << stopped.err;
    EXPECT_LT(stopped.seconds, 5.0);
    expectContains(stopped.err, "Stopped on request before the runs were done. Nothing was written.");
    EXPECT_FALSE(std::filesystem::exists(m_folder / "out"));
}

}  // namespace
}  // namespace engine
