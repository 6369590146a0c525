// fit, today, incident, log and review as a user calls them.

#include "tests/cli/run_cli.h"

#include <gtest/gtest.h>

#include <fstream>

namespace engine::test {
namespace {

class CliLog : public Cli {
protected:
    void SetUp() override {
        Cli::SetUp();
        std::ofstream pond(m_folder / "pond.toml", std::ios::binary);
        pond << fileText(DAWNLINE_SCENARIOS "/grandfathers-pond.toml");
        pond << R"(
[[reading]]
at = 2026-06-15T05:40:00
depth_m = 0.5
temperature_c = 26.8
oxygen_mg_per_l = 5.6
[[reading]]
at = 2026-06-15T05:42:00
depth_m = 1.5
temperature_c = 25
oxygen_mg_per_l = 5.1
smell = "none"
[[reading]]
at = 2026-06-15T05:45:00
depth_m = 2.9
temperature_c = 20.4
oxygen_mg_per_l = 0.1
[[event]]
at = 2026-06-14T09:00:00
kind = "started"
ramp = "gentle, twelve days"
)";
    }
};

constexpr const char* kQuick = " --members 8 --layers 14 --step-s 1800";

TEST_F(CliLog, LogListsEntriesAndKnowsItsHead) {
    const CliRun first = run("log pond.toml");
    ASSERT_EQ(first.code, 0) << first.err;
    EXPECT_NE(first.out.find("2026-06-14 09:00: started, ramp gentle, twelve days"), std::string::npos)
        << first.out;
    const std::string mark = "Head of the log: ";
    const std::size_t at = first.out.find(mark);
    ASSERT_NE(at, std::string::npos);
    const std::string head = first.out.substr(at + mark.size(), first.out.find('\n', at) - at - mark.size());
    EXPECT_EQ(head.substr(0, 6), "3-1-0-");
    EXPECT_NE(run("log pond.toml --head " + head).out.find("is the one that this head was printed of."),
              std::string::npos);
    std::ofstream(m_folder / "pond.toml", std::ios::app)
        << "[[event]]\nat = 2026-06-15T12:00:00\nkind = \"rain\"\n";
    EXPECT_NE(run("log pond.toml --head " + head).out.find("with entries added since"), std::string::npos);
    std::string text = fileText(m_folder / "pond.toml");
    text.replace(text.find("oxygen_mg_per_l = 5.1"), 21, "oxygen_mg_per_l = 5.9");
    std::ofstream(m_folder / "pond.toml", std::ios::binary) << text;
    EXPECT_NE(run("log pond.toml --head " + head).out.find("is not the one"), std::string::npos);
}

TEST_F(CliLog, FitWritesItsTables) {
    const CliRun fit = run(std::string("fit pond.toml --out out") + kQuick);
    ASSERT_EQ(fit.code, 0) << fit.err;
    EXPECT_EQ(fileText(m_folder / "out/fit.csv").substr(0, 72),
              "input,prior_p05,prior_p50,prior_p95,fitted_p05,fitted_p50,fitted_p95\r\n"
              "ox");
    EXPECT_EQ(fileText(m_folder / "out/forecast.csv").substr(0, 66),
              "time_h,depth_m,oxygen_p05,oxygen_p50,oxygen_p95,temperature_p50\r\n3");
    EXPECT_NE(fit.out.find("The low of the night of 2026-06-15 is expected at"), std::string::npos)
        << fit.out;
    const std::string before = fileText(m_folder / "out/fit.csv");
    ASSERT_EQ(run(std::string("fit pond.toml --out out --threads 1") + kQuick).code, 0);
    EXPECT_EQ(fileText(m_folder / "out/fit.csv"), before);
}

TEST_F(CliLog, FitWithoutReadingsByThenSaysSo) {
    const CliRun fit = run("fit pond.toml --out out --until '2026-06-14 12:00'");
    EXPECT_EQ(fit.code, 2);
    EXPECT_NE(fit.err.find("There is no sound reading"), std::string::npos) << fit.err;
    EXPECT_FALSE(std::filesystem::exists(m_folder / "out"));
}

TEST_F(CliLog, TodaySaysItsVerdictWithReasons) {
    const CliRun today = run(std::string("today pond.toml") + kQuick);
    ASSERT_EQ(today.code, 0) << today.err;
    for (const char* part : {"HOLD: ", "Because the weather or the calendar says hold",
                             "Tonight's low is expected at", "From today", "2026-06-15: "}) {
        EXPECT_NE(today.out.find(part), std::string::npos) << part << "\n" << today.out;
    }
    EXPECT_EQ(run("today pond.toml --at '2026-06-10 05:00'").code, 2);
}

TEST_F(CliLog, TodayPlansAnewFromTodayWhereAFolderIsGiven) {
    const CliRun today = run(std::string("today pond.toml --out out") + kQuick);
    ASSERT_EQ(today.code, 0) << today.err;
    const std::size_t verdict = today.out.find("HOLD: ");
    const std::size_t plan = today.out.find(": a plan from 2026-06-15");
    ASSERT_NE(plan, std::string::npos) << today.out;
    EXPECT_LT(verdict, plan);
    EXPECT_EQ(fileText(m_folder / "out/schedule.csv").substr(0, 4), "day,");
}

TEST_F(CliLog, IncidentNeedsNoMoreThanThreeReadings) {
    const CliRun incident = run(std::string("incident pond.toml") + kQuick);
    ASSERT_EQ(incident.code, 0) << incident.err;
    EXPECT_NE(incident.out.find("Still stratified"), std::string::npos) << incident.out;
    EXPECT_NE(incident.out.find("Air off and surface air on: lowest"), std::string::npos) << incident.out;
}

TEST_F(CliLog, AnInterruptEndsTodayAndTheIncidentInWords) {
    // Each takes far longer than the time after which it is interrupted.
    const CliRun today =
        run("today pond.toml --members 4096 --layers 160", "timeout --preserve-status --signal=INT 0.5");
    EXPECT_EQ(today.code, 1) << today.err;
    EXPECT_EQ(today.out, "");
    EXPECT_NE(today.err.find("was stopped before"), std::string::npos) << today.err;
    const CliRun incident =
        run("incident pond.toml --layers 160 --step-s 60", "timeout --preserve-status --signal=INT 0.5");
    EXPECT_EQ(incident.code, 1) << incident.err;
    EXPECT_EQ(incident.out, "");
    EXPECT_NE(incident.err.find("was stopped before"), std::string::npos) << incident.err;
}

TEST_F(CliLog, ReviewWritesItsTable) {
    const CliRun review = run(std::string("review pond.toml --out out") + kQuick);
    ASSERT_EQ(review.code, 0) << review.err;
    EXPECT_NE(review.out.find("Wait: "), std::string::npos) << review.out;
    EXPECT_NE(fileText(m_folder / "out/review.csv").find("2026-06-15,"), std::string::npos);
}

}  // namespace
}  // namespace engine::test
