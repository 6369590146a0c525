#include "tests/cli/run_cli.h"

#include <gtest/gtest.h>

namespace engine {
namespace {

using test::Cli;
using test::CliRun;
using test::expectContains;

class CliNew : public Cli {};

constexpr const char* kTold =
    "new pond.toml --us --latitude 36.2 --longitude '90.5 W' --elevation 390 --first-day 2026-06-14 "
    "--area 1.8 --depth 11 --age 48 --muck knee --smell strong --colour soup --high 91 --low 70";

TEST_F(CliNew, OptionsMakeAPondThatIsSoundAndComputes) {
    const CliRun made = run(kTold);
    EXPECT_EQ(made.code, 0) << made.err;
    EXPECT_EQ(made.err, "");
    expectContains(made.out, "Not told, so taken: ");
    expectContains(made.out, "dawnline-cli compare pond.toml --out first");
    const std::string text = test::fileText(m_folder / "pond.toml");
    expectContains(text, "area_m2 = { value = \"1.8 ac\"");
    expectContains(text, "longitude_deg = \"90.5 W\"");
    expectContains(text, "# Area of the water's surface.");
    const CliRun checked = run("check pond.toml");
    EXPECT_EQ(checked.code, 0) << checked.err;
    const CliRun compared = run("compare pond.toml --out first --days 3");
    EXPECT_EQ(compared.code, 0) << compared.err;
}

TEST_F(CliNew, AsksWhatIsNotGiven) {
    const std::string answers =
        "printf '36.2\\n90.5 "
        "W\\n\\n\\n8000\\n3,4\\n3.4\\n\\n\\nstrnog\\nstrong\\n\\n\\n\\n\\n\\n\\n\\n\\n\\n\\n\\n' |";
    const CliRun made = run("new asked.toml --ask --name 'Mill Pond' --first-day 2026-06-14", answers);
    EXPECT_EQ(made.code, 0) << made.err << made.out;
    expectContains(made.out, "Where does it lie");
    expectContains(made.out, "Smell of the muck (none, faint, strong) [faint]: ");
    expectContains(made.out, "Did you mean strong?");
    const std::string text = test::fileText(m_folder / "asked.toml");
    expectContains(text, "smell = \"strong\"");
    EXPECT_EQ(run("check asked.toml").code, 0);
}

TEST_F(CliNew, SaysWhatIsMissingAndWritesNothing) {
    const CliRun bare = run("new pond.toml < /dev/null");
    EXPECT_EQ(bare.code, 2);
    expectContains(bare.err, "The option --latitude is missing");
    expectContains(bare.err, "The option --area is missing");
    EXPECT_FALSE(std::filesystem::exists(m_folder / "pond.toml"));
    expectContains(run("new").err, "The command new needs one name");
    const CliRun wrong = run(std::string(kTold) + " --feed 'much'");
    EXPECT_EQ(wrong.code, 2);
    expectContains(wrong.err, "The option --feed: No number stands at the front of \"much\"");
    EXPECT_FALSE(std::filesystem::exists(m_folder / "pond.toml"));
}

TEST_F(CliNew, NeverWritesOverAFile) {
    EXPECT_EQ(run(kTold).code, 0);
    const std::string before = test::fileText(m_folder / "pond.toml");
    const CliRun again = run(kTold);
    EXPECT_EQ(again.code, 2);
    expectContains(again.err, "is there already");
    EXPECT_EQ(test::fileText(m_folder / "pond.toml"), before);
}

TEST_F(CliNew, TakesAPastedForecast) {
    std::ofstream(m_folder / "week.txt")
        << "Sun 91/70 wind 8 mph sunny\nMon 93/71 calm mostly cloudy\nTue 90/72\n";
    const CliRun made = run(std::string(kTold) + " --forecast week.txt");
    EXPECT_EQ(made.code, 0) << made.err;
    expectContains(made.out, "3 days of weather are taken, from 2026-06-14 to 2026-06-16");
    expectContains(made.out, "Wind is missing on 1 day");
    EXPECT_EQ(run("compare pond.toml --out first --days 2").code, 0);
}

TEST_F(CliNew, ExplainSaysWhatAKeyMeans) {
    const CliRun area = run("explain area_m2");
    EXPECT_EQ(area.code, 0);
    expectContains(area.out, "basin.area_m2");
    expectContains(area.out, "Example: area_m2 = 8000");
    const CliRun slip = run("explain secci");
    EXPECT_EQ(slip.code, 2);
    expectContains(slip.err, "water.secchi_m");
    expectContains(run("explain").out, "[[weather.day]]");
    EXPECT_GT(run("explain --all").out.size(), 30000U);
}

}  // namespace
}  // namespace engine
