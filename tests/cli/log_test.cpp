// fit, today, incident, log and review as a user calls them.

#include "engine/pond/local_time.h"
#include "tests/cli/run_cli.h"
#include "tests/pond_texts.h"
#include "tests/sentences.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>

namespace engine::test {
namespace {

using Texts = std::vector<std::string>;

class CliLog : public Cli {
protected:
    void SetUp() override {
        Cli::SetUp();
        std::ofstream pond(m_folder / "pond.toml", std::ios::binary);
        pond << fileText(DAWNLINE_SCENARIOS "/grandfathers-pond.toml");
        pond << kStartedLog;
    }
};

constexpr const char* kQuick = " --members 8 --layers 14 --step-s 1800";
const std::string kHold =
    "  " + std::string(englishTerm("hold")) + ": " + std::string(englishTerm("hold-means")) + "\n";

/// A note with a line that looks like the program's own, and with what would erase others on a terminal.
TEST_F(CliLog, NoNoteOrNameFakesALineOrMovesTheCursor) {
    std::ofstream(m_folder / "pond.toml", std::ios::app | std::ios::binary)
        << "[[reading]]\nat = 2026-06-15T06:00:00\ndepth_m = 1\noxygen_mg_per_l = 2\n"
           "note = \"fine\\n  Head of the log: 2-0-0-00\\u001B[2K\\u009B8m\\u202E\"\nmeter = \"a\\nb\"\n";
    const CliRun log = run("log pond.toml");
    ASSERT_EQ(log.code, 0) << log.err;
    EXPECT_EQ(saidIn(log.out, SentenceKey::LogHeadIs).size(), 1U) << log.out;
    expectContains(log.out, "fine\\n  Head of the log: 2-0-0-00\\x1B[2K\\u009B8m\\u202E");
    expectContains(log.out, "meter a\\nb");
    const CliRun missing = run("check $'a\\nb\\e[2J.toml'", "bash -c 'exec \"$0\" \"$@\"'");
    EXPECT_EQ(missing.code, 2);
    EXPECT_EQ(missing.err.find('\x1B'), std::string::npos);
}

TEST_F(CliLog, LogListsEntriesAndKnowsItsHead) {
    const CliRun first = run("log pond.toml");
    ASSERT_EQ(first.code, 0) << first.err;
    // Readings and events are worded alike; what has no time before its colon is another sentence.
    std::vector<Places> entries = saidIn(first.out, SentenceKey::LogEvent);
    std::erase_if(entries, [](const Places& entry) { return !parseLocalTime(entry.at("at")); });
    ASSERT_EQ(entries.size(), 4U) << first.out;
    EXPECT_EQ(entries[0],
              (Places{{"at", "2026-06-14 09:00"}, {"text", "started, ramp gentle, twelve days"}}));
    EXPECT_EQ(entries[3].at("at"), "2026-06-15 05:45");
    const Texts heads = placesSaid(first.out, SentenceKey::LogHeadIs, "head");
    ASSERT_EQ(heads.size(), 1U) << first.out;
    const std::string& head = heads[0];
    EXPECT_EQ(head.substr(0, 6), "3-1-0-");
    const auto expectJudged = [&](SentenceKey wanted) {
        const CliRun judged = run("log pond.toml --head " + head);
        for (const SentenceKey key :
             {SentenceKey::LogHeadSame, SentenceKey::LogHeadAdded, SentenceKey::LogHeadChanged}) {
            EXPECT_EQ(saidIn(judged.out, key).size(), key == wanted ? 1U : 0U) << judged.out;
        }
    };
    expectJudged(SentenceKey::LogHeadSame);
    std::ofstream(m_folder / "pond.toml", std::ios::app)
        << "[[event]]\nat = 2026-06-15T12:00:00\nkind = \"rain\"\n";
    expectJudged(SentenceKey::LogHeadAdded);
    std::string text = fileText(m_folder / "pond.toml");
    text.replace(text.find("oxygen_mg_per_l = 5.1"), 21, "oxygen_mg_per_l = 5.9");
    std::ofstream(m_folder / "pond.toml", std::ios::binary) << text;
    expectJudged(SentenceKey::LogHeadChanged);
}

TEST_F(CliLog, FitWritesItsTables) {
    const CliRun fit = run(std::string("fit pond.toml --out out") + kQuick);
    ASSERT_EQ(fit.code, 0) << fit.err;
    EXPECT_EQ(fileText(m_folder / "out/fit.csv").substr(0, 72),
              "input,prior_p05,prior_p50,prior_p95,fitted_p05,fitted_p50,fitted_p95\r\n"
              "ox");
    EXPECT_EQ(fileText(m_folder / "out/forecast.csv").substr(0, 66),
              "time_h,depth_m,oxygen_p05,oxygen_p50,oxygen_p95,temperature_p50\r\n3");
    const Texts nights = placesSaid(fit.out, SentenceKey::FitNight, "date");
    EXPECT_EQ(std::count(nights.begin(), nights.end(), "2026-06-15"), 1) << fit.out;
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
    EXPECT_TRUE(today.out.starts_with(kHold)) << today.out;
    const Texts reasons = placesSaid(today.out, SentenceKey::TodayReason, "reason");
    EXPECT_EQ(std::count(reasons.begin(), reasons.end(), englishTerm("weather-hold")), 1) << today.out;
    EXPECT_EQ(saidIn(today.out, SentenceKey::TodayTonight).size(), 1U) << today.out;
    const Texts days = placesSaid(today.out, SentenceKey::TodayStepDay, "date");
    ASSERT_FALSE(days.empty()) << today.out;
    EXPECT_EQ(days[0], "2026-06-15");
    EXPECT_EQ(run("today pond.toml --at '2026-06-10 05:00'").code, 2);
}

TEST_F(CliLog, TodayPlansAnewFromTodayWhereAFolderIsGiven) {
    const CliRun today = run(std::string("today pond.toml --out out") + kQuick);
    ASSERT_EQ(today.code, 0) << today.err;
    const std::size_t plan = today.out.find("\nThe verdict above ");
    ASSERT_NE(plan, std::string::npos) << today.out;
    EXPECT_TRUE(today.out.starts_with(kHold)) << today.out;
    EXPECT_EQ(placesSaid(today.out.substr(plan), SentenceKey::PlanTitle, "date"), Texts{"2026-06-15"});
    EXPECT_EQ(fileText(m_folder / "out/schedule.csv").substr(0, 4), "day,");
}

TEST_F(CliLog, IncidentNeedsNoMoreThanThreeReadings) {
    const CliRun incident = run(std::string("incident pond.toml") + kQuick);
    ASSERT_EQ(incident.code, 0) << incident.err;
    EXPECT_EQ(placesSaid(incident.out, SentenceKey::IncidentPresent, "state"),
              Texts{std::string(englishTerm("stratified"))})
        << incident.out;
    Texts options = placesSaid(incident.out, SentenceKey::IncidentOption, "option");
    const Texts never = placesSaid(incident.out, SentenceKey::IncidentOptionNever, "option");
    options.insert(options.end(), never.begin(), never.end());
    EXPECT_EQ(options.size(), 4U) << incident.out;
    EXPECT_EQ(std::count(options.begin(), options.end(), englishTerm("option-surface")), 1) << incident.out;
    EXPECT_NE(incident.out.find("  " + std::string(englishTerm("advice-stratified")) + "\n"),
              std::string::npos)
        << incident.out;
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
    EXPECT_NE(review.out.find("  " + std::string(englishTerm("verdict-wait")) + "\n"), std::string::npos)
        << review.out;
    const Texts rows = firstColumn(fileText(m_folder / "out/review.csv"));
    EXPECT_GT(std::count(rows.begin(), rows.end(), "2026-06-15"), 0);
}

}  // namespace
}  // namespace engine::test
